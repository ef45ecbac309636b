"""A lay plan held against the cloth by shapely; nothing of the planner's own shapes is used."""

from collections import Counter

import shapely
from shapely import affinity

TOLERANCE = 0.01
"""Pieces may overlap each other or the cloth's edge by 0.1 mm."""


def area_of(path):
    return shapely.Polygon([(p.x, p.y) for p in path.flattened(0.002)])


def placed(placement):
    """What the placement's own outline covers."""
    return area_of(placement.outline)


def audit(plan, works):
    """Assert that a cloth's plan can be cut. Plan: a ClothPlan."""
    areas = [placed(p) for p in plan.placements]
    _nothing_overlaps(plan, areas)
    _nothing_leaves_the_cloth(plan, areas)
    _every_copy_is_there_once(plan, works)
    for placement, area in zip(plan.placements, areas, strict=True):
        _lies_as_told(placement, area, plan)
    assert plan.length >= plan.bound - TOLERANCE
    assert plan.length >= max(a.bounds[2] for a in areas) - TOLERANCE
    assert min(a.bounds[0] for a in areas) >= -TOLERANCE


def _nothing_overlaps(plan, areas):
    shrunk = [a.buffer(-TOLERANCE / 2) for a in areas]
    one, two = shapely.STRtree(shrunk).query(shrunk, predicate="intersects")
    hits = {
        (plan.placements[i].piece, plan.placements[j].piece)
        for i, j in zip(one, two, strict=True)
        if i < j
    }
    assert not hits, f"overlap: {hits}"


def _nothing_leaves_the_cloth(plan, areas):
    cloth = plan.cloth
    washed = cloth.width * (1 - cloth.shrinkage_crosswise / 100)
    for placement, area in zip(plan.placements, areas, strict=True):
        folded = placement.layers != "single"
        low = 0.0 if folded else cloth.selvedge
        high = washed / 2 - cloth.selvedge if folded else washed - cloth.selvedge
        assert area.bounds[1] >= low - TOLERANCE, placement.piece
        assert area.bounds[3] <= high + TOLERANCE, placement.piece
        if placement.layers == "fold":
            assert abs(area.bounds[1]) < 1e-6, placement.piece


def _every_copy_is_there_once(plan, works):
    laid = Counter((p.order, p.piece, copy) for p in plan.placements for copy in p.copies)
    asked = Counter(
        (order, finished.piece.name, copy)
        for order, work in enumerate(works, 1)
        for finished in work.pattern.pieces
        for cut in finished.piece.cut
        if cut.cloth == plan.kind
        for copy in range(1, cut.quantity + 1)
    )
    assert laid == asked


def _lies_as_told(placement, area, plan):
    """The outline is the piece's own shape, turned as told, its grain along the cloth."""
    move = placement.move
    low, top = (move.point(p) for p in placement.finished.piece.grain)
    assert abs(low.y - top.y) < 0.3, placement.piece
    assert (top.x < low.x) == (placement.turn == 0), placement.piece
    assert placement.turn in ((0,) if plan.cloth.one_way else (0, 180))
    determinant = move.a * move.d - move.b * move.c
    assert abs(determinant) - 1 < 1e-9
    assert (determinant < 0) == placement.mirrored, placement.piece
    half = affinity.affine_transform(
        area_of(placement.finished.cut_line), [move.a, move.c, move.b, move.d, move.e, move.f]
    )
    if placement.finished.piece.half and placement.layers != "fold":
        assert abs(area.area - 2 * half.area) < 0.1
        assert half.difference(area.buffer(0.01)).area < 0.01
    else:
        assert area.symmetric_difference(half).area < 0.05, placement.piece
