"""Every plan is proven by shapely on the outlines that it tells."""

from __future__ import annotations

import pytest
from audit import area_of, audit, placed
from orders import order, piece

from drafting.laying import Cloth, Laying, Repeat, lay

CLOTHS = {
    "open": Cloth(),
    "one way": Cloth(one_way=True),
    "folded": Cloth(folded=True),
    "folded, one way": Cloth(folded=True, one_way=True),
    "narrow": Cloth(width=90.0),
    "narrow and folded": Cloth(width=90.0, folded=True),
    "broad selvedges": Cloth(width=115.0, selvedge=4.0),
    "shrinking": Cloth(shrinkage_lengthwise=3.0, shrinkage_crosswise=5.0),
    "checked": Cloth(repeat=Repeat(lengthwise=7.0, crosswise=6.0)),
}


@pytest.mark.parametrize("name", CLOTHS)
def test_trousers_can_be_cut_from(name, standard):
    (plan,) = lay((standard,), {"main": CLOTHS[name]}, Laying(budget=0.25)).cloths
    audit(plan, (standard,))


@pytest.mark.parametrize("name", ["open", "folded", "checked"])
@pytest.mark.parametrize("budget", [0.0, 0.5])
def test_all_cloths_of_the_trousers_can_be_cut_from(name, budget, standard):
    kinds = ("main", "pocketing", "fusible")
    plan = lay((standard,), dict.fromkeys(kinds, CLOTHS[name]), Laying(budget=budget))
    assert [cloth.kind for cloth in plan.cloths] == list(kinds)
    for cloth in plan.cloths:
        audit(cloth, (standard,))


@pytest.mark.parametrize("budget", [0.0, 0.6])
def test_four_sizes_share_one_cloth(budget, sizes):
    (plan,) = lay(sizes, {"main": Cloth()}, Laying(budget=budget)).cloths
    audit(plan, sizes)
    assert {p.reference for p in plan.placements} == {"first", "second", "third", "fourth"}


@pytest.mark.parametrize("gap", [0.0, 1.5])
@pytest.mark.parametrize("budget", [0.0, 0.25])
def test_the_gap_asked_for_is_kept(gap, budget, standard):
    (plan,) = lay((standard,), {"main": Cloth()}, Laying(budget=budget, gap=gap)).cloths
    audit(plan, (standard,))
    areas = [placed(p) for p in plan.placements]
    apart = min(a.distance(b) for n, a in enumerate(areas) for b in areas[:n])
    assert apart >= gap - 0.01


YOKE = ((0, 0), (18, 0), (16, 12), (0, 11))
SLEEVE = ((0, 0), (20, 0), (24, 40), (12, 50), (-4, 38))


def hand_made():
    """A half piece twice, a pair, three alike, and a single one."""
    return order(
        piece("yoke", *YOKE, cut=("main", 2, False), half=True),
        piece("sleeve", *SLEEVE, cut=("main", 2, True)),
        piece("loop", (0, 0), (4, 0), (4, 10), (0, 10), cut=("main", 3, False)),
        piece("patch", (0, 0), (12, 0), (15, 16), (0, 14)),
    )


def test_on_folded_cloth_each_piece_is_cut_as_it_must_be():
    made = hand_made()
    (plan,) = lay((made,), {"main": Cloth(width=80.0, folded=True)}, Laying(budget=0.0)).cloths
    audit(plan, (made,))
    how = sorted((p.piece, p.copies, p.layers) for p in plan.placements)
    upper = {p.layers for p in plan.placements if p.piece == "patch"}.pop()
    assert upper in ("upper", "single")
    assert how == [
        ("loop", (1, 2), "double"),
        ("loop", (3,), upper),
        ("patch", (1,), upper),
        ("sleeve", (1, 2), "double"),
        ("yoke", (1,), "fold"),
        ("yoke", (2,), "fold"),
    ]


def test_on_open_cloth_half_pieces_are_unfolded_and_lefts_lie_face_down():
    made = hand_made()
    (plan,) = lay((made,), {"main": Cloth(width=80.0)}, Laying(budget=0.2)).cloths
    audit(plan, (made,))
    down = {(p.piece, p.copies) for p in plan.placements if p.mirrored}
    assert down == {("sleeve", (2,))}
    yokes = [p for p in plan.placements if p.piece == "yoke"]
    assert len(yokes) == 2
    half = 16 * 11.5 + 2 * 12 / 2  # a trapezium from 11 to 12 high, and a triangle
    assert [abs(yoke.outline.area()) for yoke in yokes] == [pytest.approx(2 * half)] * 2


def test_the_area_is_that_of_all_copies(standard):
    (plan,) = lay((standard,), {"main": Cloth()}, Laying(budget=0.0)).cloths
    wanted = sum(
        area_of(finished.cut_line).area * cut.quantity
        for finished in standard.pattern.pieces
        for cut in finished.piece.cut
        if cut.cloth == "main"
    )
    assert plan.area == pytest.approx(wanted, rel=1e-3)
    assert plan.use == pytest.approx(100 * wanted / (plan.length * 147.0), rel=1e-3)


def test_without_a_budget_the_plan_is_the_same_every_time(standard):
    first, again = (
        lay((standard,), {"main": Cloth()}, Laying(budget=0.0)).cloths[0] for _ in range(2)
    )
    assert [p.move for p in first.placements] == [p.move for p in again.placements]
    assert first.engine == "plain"


def test_a_fold_with_a_gap_is_unfolded_with_the_gap_as_a_hole_closed():
    """A slit on the fold is cut after the piece is: the outline is what the cloth must hold."""
    corners = ((0, 0), (18, 0), (18, 20), (0, 20), (0, 12), (3, 10), (0, 8))
    made = order(piece("front", *corners, half=True))
    (plan,) = lay((made,), {"main": Cloth(width=60.0)}, Laying(budget=0.0)).cloths
    (front,) = plan.placements
    assert abs(front.outline.area()) == pytest.approx(36 * 20, rel=1e-3)


def test_a_pattern_that_is_not_for_cutting_says_so(standard):
    made = order(piece("patch", (0, 0), (12, 0), (15, 16), (0, 14)), verdict="unsound")
    plan = lay((made,), {"main": Cloth(width=60.0)}, Laying(budget=0.0))
    assert [(f.code, f.severity) for f in plan.findings] == [("not_for_cutting", "error")]
