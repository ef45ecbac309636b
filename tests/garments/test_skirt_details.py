"""What is sewn into skirts and what excludes what, measured on what was drawn."""

from __future__ import annotations

import math

import pytest
import shapely
from test_skirts import check, line, made, seam

from drafting.body import Body, Measured
from drafting.errors import SpecError
from drafting.garments import GARMENTS
from drafting.garments.skirts import a_line, circle, gathered, gored, pleated
from drafting.garments.skirts.options import SHAPED
from drafting.pattern import Finish
from drafting.workroom import work

CLASHES = {
    "straight_skirt": SHAPED,
    "a_line_skirt": a_line.CLASHES,
    "gored_skirt": gored.CLASHES,
    "circle_skirt": circle.CLASHES,
    "gathered_skirt": gathered.CLASHES,
    "pleated_skirt": pleated.CLASHES,
}
CHOSEN = {
    "hem_at": "knee",
    "length": 60.0,
    "underlap": 3.0,
    "band_depth": 3.0,
    "facing_depth": 5.0,
    "waist_fullness": 1.0,
    "pocket": "in_seam",
    "pocket_mouth": 15.0,
    "back_narrower": 1.0,
    "flare": 8.0,
    "hem_girth": 180.0,
    "circle": "half",
    "angle": 200.0,
    "bias_give": 1.0,
    "waist_ease": 1.0,
    "tier_fullness": 1.4,
    "yoke_depth": 9.0,
    "closure": "side",
}
VALUES = {
    "waistband": ("straight", "contoured", "facing", "elastic"),
    "closure": ("side", "centre_back"),
    "pocket": ("none",),
    "method": ("block",),
    "tiers": (1,),
    "top": ("band",),
}


@pytest.mark.parametrize(
    ("kind", "clash"),
    [(kind, clash) for kind, clashes in CLASHES.items() for clash in clashes],
    ids=lambda v: v if isinstance(v, str) else f"{v.option}-{v.other}",
)
def test_options_that_exclude_each_other_are_refused_by_both_names(kind, clash):
    fields = GARMENTS[kind].spec.__dataclass_fields__
    assert {clash.option, clash.other} <= set(fields)
    others = (*VALUES.get(clash.other, ()), CHOSEN.get(clash.other))
    other = next(v for v in others if v is not None and clash.that(v))
    with pytest.raises(SpecError, match="exclude each other") as refused:
        made(kind, **{clash.option: CHOSEN[clash.option], clash.other: other})
    assert clash.option in str(refused.value)
    assert clash.other in str(refused.value)
    assert refused.value.where == f"garment.{clash.option}"


@pytest.mark.parametrize("top", ["band", "yoke"])
@pytest.mark.parametrize("face", [3.0, 5.0, 20.0])
def test_knife_pleats_hide_the_side_seam_at_an_inner_fold(face, top):
    """Folded over its last fold, the front's seam lies a pleat deep under its last face.

    Seams of a pleated skirt lie at an inner fold: common practice, no source.
    """
    done = made("pleated_skirt", face=face, top=top)
    front, back = (done.pattern.pattern.piece(n) for n in ("front", "back"))
    (fold,) = (m.path for m in front.marks if m.kind == "fold")
    (laid_on,) = (m.path for m in back.marks if m.kind == "placement")
    assert line(fold).length == pytest.approx(line(laid_on).length, abs=0.002)
    side = line(front.edge("side").path)
    for height in (-25.0, -40.0):
        y = front.edge("waist").path.end.y + height
        level = shapely.LineString([(-500, y), (500, y)])
        at_fold, at_seam = (level.intersection(one).x for one in (line(fold), side))
        deep = at_fold - at_seam
        for pleat in front.pleats:
            depth = abs(pleat.two.end.x - pleat.one.end.x) / 2
            assert deep == pytest.approx(depth, abs=0.001)
        assert deep > 2
    under = front.edge("waist_under").path
    up = fold.start - fold.segments[0].end
    assert (under.end - under.start).dot(up) == pytest.approx(0, abs=1e-9)
    assert seam(done, "side_under").matches


@pytest.mark.parametrize("pleats", ["box", "inverted"])
def test_box_pleats_hide_the_side_seam_where_two_folds_meet(pleats):
    pattern = made("pleated_skirt", pleats=pleats).pattern.pattern
    for name in ("back", "front"):
        piece = pattern.piece(name)
        x = piece.edge("side").path.end.x
        folds = [pleat.lines[0].end.x for pleat in piece.pleats]
        placed = [pleat.lines[1].end.x for pleat in piece.pleats]
        assert min(abs(x - at) for at in placed) == pytest.approx(0.1, abs=0.001)
        assert min(abs(x - at) for at in folds) > 1


@pytest.mark.parametrize("tiers", [1, 3])
def test_an_elastic_waist_passes_the_hips_and_needs_no_zip(tiers):
    """The elastic 5 to 10 % shorter than the waist (74): common practice, no source."""
    done = made("gathered_skirt", waistband="elastic", tiers=tiers, hem_at="mid_calf")
    pattern = done.pattern.pattern
    ring = pattern.piece("waistband")
    assert line(ring.edge("waist").path).length == pytest.approx(101 + 2, abs=0.001)
    (elastic,) = (n for n in pattern.notions if n.name.startswith("elastic"))
    assert 0.90 * 74 <= elastic.length <= 0.95 * 74
    assert not [n for n in pattern.notions if n.name == "zip"]
    assert not [e for p in pattern.pieces for e in p.edges if e.name == "zip"]
    full = 2 * sum(line(pattern.piece(p).edge("waist").path).length for p in ("back", "front"))
    assert seam(done, "waist").seam.ease.wanted == pytest.approx(full - 103, abs=0.001)
    assert check(done, "opening_passes_hip").passed


@pytest.mark.parametrize(
    ("kind", "options"),
    [
        ("straight_skirt", {}),
        ("a_line_skirt", {}),
        ("gored_skirt", {}),
        ("gored_skirt", {"gores": 4}),
        ("circle_skirt", {"panels": 4}),
        ("circle_skirt", {"circle": "half", "panels": 3}),
        ("gathered_skirt", {}),
    ],
)
def test_a_pocket_opens_the_side_seam_below_the_waist(kind, options):
    """15 to 16 cm, 4 to 6 cm below the waist: common practice, no source."""
    done = made(kind, pocket="in_seam", **options)
    pattern = done.pattern.pattern
    (joined,) = seam(done, "pocket_mouth").seam.one
    for piece in (joined.piece, seam(done, "pocket_mouth_back").seam.one[0].piece):
        panel = pattern.piece(piece)
        assert 4 <= line(panel.edge("side_above").path).length <= 6
        assert line(panel.edge("pocket_mouth").path).length == pytest.approx(16, abs=0.001)
    bags = [pattern.piece(n) for n in ("pocket_bag", "pocket_bag_under")]
    assert all(shapely.LinearRing(line(b.outline).coords).is_simple for b in bags)
    assert check(done, "pocket_passes_hand").passed
    assert done.verdict == "sound"


def test_a_pocket_needs_a_side_seam():
    with pytest.raises(SpecError, match="panels") as refused:
        made("circle_skirt", pocket="in_seam", panels=2)
    assert refused.value.where == "garment.pocket"


@pytest.mark.parametrize(
    ("kind", "options", "waist"),
    [
        ("gored_skirt", {"gores": 4}, 75.0),
        ("gored_skirt", {"gores": 6}, 75.0),
        ("gored_skirt", {"gores": 8, "closure": "side"}, 75.0),
        ("circle_skirt", {}, 75.0),
        ("circle_skirt", {"circle": "half", "closure": "side"}, 75.0),
    ],
)
def test_a_facing_is_as_long_as_the_waist_and_everywhere_as_deep(kind, options, waist):
    pattern = made(kind, waistband="facing", facing_depth=5.0, **options).pattern.pattern
    facings = [p for p in pattern.pieces if p.name.startswith("facing")]
    copies = [2 if p.half else p.cut[0].quantity for p in facings]
    top = sum(n * line(p.edge("waist").path).length for n, p in zip(copies, facings, strict=True))
    assert top == pytest.approx(waist, abs=0.02)
    for piece in facings:
        upper, lower = (line(piece.edge(e).path) for e in ("waist", "lower"))
        for k in range(11):
            deep = lower.interpolate(k / 10, normalized=True).distance(upper)
            assert deep == pytest.approx(5.0, abs=0.12)


@pytest.mark.parametrize("kind", ["gored_skirt", "circle_skirt"])
@pytest.mark.parametrize("waistband", ["straight", "facing"])
def test_the_lining_of_a_flared_skirt_hangs_shorter(kind, waistband):
    """2 to 3 cm shorter: common practice, no source."""
    pattern = made(kind, waistband=waistband, lining=True).pattern.pattern
    lined = [p for p in pattern.pieces if p.name.endswith("_lining")]
    assert lined
    for piece in lined:
        shell = pattern.piece(piece.name.removesuffix("_lining"))
        lengths = [
            max(line(e.path).length for e in p.edges if e.name not in {"waist", "hem"})
            for p in (shell, piece)
        ]
        begins = 6.0 if waistband == "facing" else 0.0
        assert 2 <= lengths[0] - begins - lengths[1] <= 3
        assert {c.cloth for c in piece.cut} == {"lining"}


def test_sides_that_differ_are_told():
    garment = GARMENTS["straight_skirt"]
    measured = {n: Measured(v) for n, v in garment.sample}
    sides = {"side_waist_to_hip": {"left": Measured(21.5), "right": Measured(19.5)}}
    body = Body("women", measured, sides)
    done = work(garment, body, garment.spec(kind="straight_skirt"), Finish())
    (found,) = (f for f in done.pattern.findings if f.code == "sides_by_their_mean")
    assert found.where == "side_waist_to_hip"
    assert found.measured == pytest.approx(2.0)
    assert done.verdict == "sound_with_remarks"
    even = work(garment, Body("women", measured), garment.spec(kind="straight_skirt"), Finish())
    assert "sides_by_their_mean" not in {f.code for f in even.pattern.findings}


@pytest.mark.parametrize("flare", [10.0, 22.0])
def test_a_curved_hem_goes_on_plumb_at_the_centre_seam(flare):
    """The turned-up hem lies on the cloth over it: its cut edge is the seam's carried on."""
    done = made("a_line_skirt", flare=flare)
    back = next(p for p in done.pattern.pieces if p.piece.name == "back")
    cut = [(p.x, p.y) for p in back.cut_line.flattened(0.001)]
    low = min(y for _, y in cut)
    foot = [x for x, y in cut if y < low + 0.3 and x < 0]
    assert foot
    left = min(x for x, _ in cut)
    assert min(abs(x - left) for x in foot) == pytest.approx(0, abs=1e-6)
    assert math.isclose(left, -1.0, abs_tol=0.6)
