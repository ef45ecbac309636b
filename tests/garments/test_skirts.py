"""Skirts, measured on what was drawn."""

from __future__ import annotations

import importlib
import math
import pkgutil

import pytest
import shapely

import drafting.garments
from drafting.body import Body
from drafting.errors import SpecError
from drafting.garments import GARMENTS
from drafting.garments.garment import Garment
from drafting.pattern import Finish, Piece
from drafting.workroom import Work, work

SKIRTS = [kind for kind in GARMENTS if kind.endswith("_skirt")]


def made(kind: str, measures: dict[str, float] | None = None, **options) -> Work:
    garment = GARMENTS[kind]
    body = Body.of({**dict(garment.sample), **(measures or {})})
    return work(garment, body, garment.spec(kind=kind, **options), Finish())


def line(path) -> shapely.LineString:
    return shapely.LineString([(p.x, p.y) for p in path.flattened(0.0005)])


def outline(piece: Piece) -> shapely.Polygon:
    return shapely.Polygon(shapely.remove_repeated_points(line(piece.outline), 1e-9).coords)


def check(done: Work, name: str):
    return next(c for c in done.pattern.checks if c.name == name)


def seam(done: Work, name: str):
    return next(s for s in done.seams if s.seam.name == name)


def test_every_chapter_in_the_folder_is_in_the_table():
    found = {}
    for module in pkgutil.walk_packages(drafting.garments.__path__, "drafting.garments."):
        chapter = getattr(importlib.import_module(module.name), "GARMENT", None)
        if isinstance(chapter, Garment):
            found[chapter.kind] = chapter
    assert found == GARMENTS


@pytest.mark.parametrize("kind", SKIRTS)
def test_a_skirt_is_sound_and_has_the_pieces_it_promises(kind):
    done = made(kind)
    assert done.verdict == "sound"
    assert tuple(p.name for p in done.pattern.pattern.pieces) == GARMENTS[kind].pieces


@pytest.mark.parametrize("kind", SKIRTS)
def test_no_step_lacks_its_words_or_its_reason(kind):
    for step in made(kind).steps:
        assert step.why
        assert step.source, step.name
        assert step.formula or step.kind == "trued", step.name


@pytest.mark.parametrize("kind", SKIRTS)
def test_the_same_order_gives_the_same_lines(kind):
    assert made(kind) == made(kind)


@pytest.mark.parametrize(
    ("spare_hip", "back", "front"), [(0, 0, 0), (8, 1, 0), (16, 2, 1), (26, 2, 1), (38, 2, 2)]
)
def test_a_quarter_has_none_to_two_darts_by_what_it_loses(spare_hip, back, front):
    done = made("straight_skirt", {"waist_girth": 72, "hip_girth": 72 + spare_hip})
    pattern = done.pattern.pattern
    assert (len(pattern.piece("back").darts), len(pattern.piece("front").darts)) == (back, front)
    widest = {"back": 3.55, "front": 2.55}
    for name, most in widest.items():
        assert all(d.intake <= most for d in pattern.piece(name).darts)
    asked = {s.name for s in done.steps if s.kind == "decision"}
    assert {"back darts", "a front dart"} <= asked


@pytest.mark.parametrize("kind", ["straight_skirt", "a_line_skirt"])
@pytest.mark.parametrize("waistband", ["straight", "contoured", "facing"])
def test_the_waist_comes_out_whatever_finishes_it(kind, waistband):
    """By another library on the pieces that make the waist: body 74 and ease 1.5."""
    pattern = made(kind, waistband=waistband, waist_ease=1.5).pattern.pattern
    edges = {
        "straight": [("waistband", "waist", 1)],
        "contoured": [("waistband_back", "top", 2), ("waistband_front", "top", 2)],
        "facing": [("facing_back", "waist", 2), ("facing_front", "waist", 2)],
    }
    found = sum(n * line(pattern.piece(p).edge(e).path).length for p, e, n in edges[waistband])
    assert found == pytest.approx(75.5, abs=0.01)


def test_fullness_belongs_to_a_straight_band():
    done = made("straight_skirt", waist_fullness=1.5)
    assert seam(done, "waist").seam.ease.wanted == 1.5
    with pytest.raises(SpecError, match="waistband"):
        made("straight_skirt", waistband="facing", waist_fullness=1.0)


@pytest.mark.parametrize(
    ("hem_at", "opening"), [("mini", set()), ("knee", {"vent"}), ("ankle", {"vent"})]
)
def test_a_vent_is_cut_where_the_hem_is_too_narrow(hem_at, opening):
    back = made("straight_skirt", hem_at=hem_at).pattern.pattern.piece("back")
    assert {e.name for e in back.edges} & {"vent", "slit"} == opening


def test_a_narrow_long_hem_without_opening_is_told_and_does_not_decide():
    done = made("straight_skirt", hem_at="ankle", hem_opening="none")
    assert done.verdict == "sound_with_remarks"
    (found,) = (f for f in done.pattern.findings if f.where == "hem_passes_stride")
    assert found.severity == "warning"
    assert found.measured == pytest.approx(104.0, abs=0.1)
    assert check(made("straight_skirt", hem_at="ankle"), "hem_passes_stride").passed


def test_a_vent_ends_eight_centimetres_below_the_seat():
    """At least 8 cm below the seat, 15 to 30 cm long, 4 to 7 wide: common practice, no source."""
    for hem_at in ("knee", "below_knee", "mid_calf", "ankle"):
        back = made("straight_skirt", hem_at=hem_at).pattern.pattern.piece("back")
        top = back.edge("vent_top").path
        corner = max(top.start.y, top.end.y)
        assert corner <= -20.5 - 8 + 1e-6
        (fold,) = (m.path for m in back.marks if m.kind == "fold")
        assert 15 <= fold.length() <= 30
        assert 4 <= line(back.edge("vent_hem").path).length <= 7


def test_the_lining_is_shorter_and_its_darts_are_laid_as_pleats():
    """2 to 3 cm shorter, a slit 5 to 10 cm longer than the vent: common practice, no source."""
    pattern = made("straight_skirt", lining=True, hem_at="mid_calf").pattern.pattern
    shell, lining = pattern.piece("back"), pattern.piece("back_lining")
    assert [c.cloth for c in lining.cut] == ["lining"]
    assert lining.darts == ()
    assert len(lining.pleats) == len(shell.darts) == 2
    assert lining.sewn_length("waist") == pytest.approx(shell.sewn_length("waist"), abs=1e-6)
    low, hem = min(p.y for p in lining.outline.flattened(1)), shell.level("hem")[0].y
    assert 2 <= low - hem <= 3
    (fold,) = (m.path for m in shell.marks if m.kind == "fold")
    over = lining.edge("slit").path.length() + (low - hem) - fold.length()
    assert 5 <= over <= 10


def test_the_zip_stands_where_it_is_asked_for():
    back = made("straight_skirt", closure="centre_back")
    side = made("straight_skirt", closure="side", hem_opening="none")
    assert back.pattern.pattern.piece("back").half is False
    assert side.pattern.pattern.piece("back").half is True
    (joined,) = seam(side, "zip").seam.one
    assert (joined.piece, joined.copy) == ("back", "left")
    assert seam(side, "side_above").seam.one[0].copy == "right"


@pytest.mark.parametrize("kind", SKIRTS)
@pytest.mark.parametrize("closure", ["centre_back", "side"])
def test_waist_and_both_sides_of_the_opening_pass_the_hip(kind, closure):
    measures = {"waist_girth": 66, "hip_girth": 112}
    done = made(kind, measures, closure=closure)
    assert check(done, "opening_passes_hip").drafted >= 112 + 2 - 1e-6


def test_an_a_line_hem_is_as_wide_as_asked_and_square_to_the_sides():
    done = made("a_line_skirt", hem_girth=180.0)
    pattern = done.pattern.pattern
    hem = 2 * sum(line(pattern.piece(p).edge("hem").path).length for p in ("back", "front"))
    assert hem == pytest.approx(180, abs=0.02)
    front = pattern.piece("front")
    side, foot = front.edge("side").path, front.edge("hem").path
    assert side.end_tangent.dot(foot.start_tangent) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("flare", [4.0, 10.0, 25.0])
def test_more_flare_leaves_less_dart_and_the_same_waist(flare):
    pattern = made("a_line_skirt", flare=flare).pattern.pattern
    for name in ("back", "front"):
        assert pattern.piece(name).sewn_length("waist") == pytest.approx(19.0, abs=0.001)
    taken = sum(d.intake for name in ("back", "front") for d in pattern.piece(name).darts)
    assert taken == pytest.approx(max(0, 6 - {4: 1.9, 10: 4.3, 25: 6}[flare]), abs=0.6)


@pytest.mark.parametrize("gores", [4, 6, 8])
def test_gores_share_waist_and_hip_alike(gores):
    pattern = made("gored_skirt", gores=gores).pattern.pattern
    panels = [p for p in pattern.pieces if p.level("hip")]
    for piece in panels:
        halved = gores == 6 and piece.name in {"back", "front"}
        share = gores * (2 if halved else 1)
        assert line(piece.edge("waist").path).length == pytest.approx(76 / share, abs=0.001)
        left, right = piece.level("hip")
        assert left.distance(right) == pytest.approx(104 / share, abs=0.001)


@pytest.mark.parametrize(
    ("circle", "closure", "cloth", "panels"),
    [
        ("half", "centre_back", 170, 1),
        ("full", "centre_back", 150, 3),
        ("full", "centre_back", 100, 2),
        ("full", "side", 150, 2),
        ("full", "side", 140, 4),
        ("full", "centre_back", 70, 8),
    ],
)
def test_a_circle_is_cut_in_as_few_panels_as_the_cloth_takes(circle, closure, cloth, panels):
    """Unfolded, turned as the grain says, each panel lies on the cloth.

    Radii at waist 73 and length 58: 11.6 and 69.6 cm of a full circle, 23.2 and 81.2 of a half.
    """
    done = made("circle_skirt", circle=circle, closure=closure, cloth_width=cloth)
    pieces = [p for p in done.pattern.pattern.pieces if p.name != "waistband"]
    assert sum(1 if p.half else p.cut[0].quantity for p in pieces) == panels
    for piece in pieces:
        left, _, right, _ = piece.outline.bounds()
        assert (right - left) * (2 if piece.half else 1) <= cloth


def test_the_give_of_the_bias_is_stretched_to_the_band():
    done = made("circle_skirt", bias_give=1.5)
    ease = seam(done, "waist").seam.ease
    assert (ease.kind, ease.wanted) == ("stretch", 1.5)
    skirt = done.pattern.pattern.piece("skirt")
    assert 2 * line(skirt.edge("waist").path).length == pytest.approx(75 - 1.5, abs=0.001)
    band = done.pattern.pattern.piece("waistband")
    assert line(band.edge("waist").path).length == pytest.approx(75, abs=0.001)


def test_a_ring_too_narrow_for_the_hip_is_refused_with_the_angle_that_would_do():
    with pytest.raises(SpecError, match="tight over the hip") as refused:
        made("circle_skirt", {"waist_girth": 66, "hip_girth": 112}, circle="quarter")
    least, _ = refused.value.allowed
    assert made("circle_skirt", {"waist_girth": 66, "hip_girth": 112}, angle=least)


def test_tiers_are_gathered_and_say_by_how_much():
    done = made("gathered_skirt", tiers=3, hem_at="ankle", fullness=2.0, tier_fullness=1.5)
    widths = [150.0, 225.0, 337.5]
    wanted = {"waist": 150 - 75.0, "tier_2_gathered": 75.0, "tier_3_gathered": 112.5}
    for name, full in wanted.items():
        ease = seam(done, name).seam.ease
        assert ease.kind == "gathers"
        assert ease.wanted == pytest.approx(full)
    for n in (2, 3):
        piece = done.pattern.pattern.piece(f"tier_{n}")
        left, _, right, _ = outline(piece).bounds
        assert (right - left) * piece.cut[0].quantity == pytest.approx(widths[n - 1])
    assert check(done, "skirt_length").drafted == pytest.approx(93.0)


def test_more_tiers_than_the_length_has_room_for_are_refused():
    with pytest.raises(SpecError, match="has room for") as refused:
        made("gathered_skirt", tiers=6, hem_at="mini")
    assert refused.value.where == "garment.tiers"


PLEATS = ["knife", "box", "inverted"]


@pytest.mark.parametrize("top", ["band", "yoke"])
@pytest.mark.parametrize("pleats", PLEATS)
@pytest.mark.parametrize("face", [3.0, 5.0, 9.0])
def test_the_pleated_top_is_exactly_what_it_is_sewn_to(pleats, face, top):
    """Read off the drawn edge by another library: what lies between the pleats' lines."""
    pattern = made("pleated_skirt", pleats=pleats, face=face, top=top).pattern.pattern
    laid = wanted = 0.0
    for name in ("back", "front"):
        piece = pattern.piece(name)
        edge = line(piece.edge("waist").path)
        at = [
            edge.project(shapely.Point(p.x, p.y))
            for pleat in piece.pleats
            for p in (pleat.first, pleat.second)
        ]
        assert at == sorted(at)
        laid += edge.length - sum(b - a for a, b in zip(at[::2], at[1::2], strict=True))
        wanted += (
            75 / 4
            if top == "band"
            else line(pattern.piece(f"yoke_{name}").edge("foot").path).length
        )
    assert laid == pytest.approx(wanted, abs=0.002)


@pytest.mark.parametrize("pleats", PLEATS)
def test_the_cloth_lies_three_deep_below_the_hip(pleats):
    done = made("pleated_skirt", pleats=pleats)
    cloth = check(done, "finished_hem_girth").drafted
    assert cloth == pytest.approx(3 * 105, rel=0.03)
    assert check(done, "finished_hip_girth").drafted == pytest.approx(105, abs=0.01)


@pytest.mark.parametrize("name", ["back", "front"])
def test_knife_pleats_turn_to_the_sides_and_box_pleats_by_turns(name):
    def turned(pleats: str) -> list[bool]:
        """Whether each pleat is laid toward the side, from the centre outward."""
        piece = made("pleated_skirt", pleats=pleats).pattern.pattern.piece(name)
        outward = 1 if name == "back" else -1
        ways = sorted((pleat.lines for pleat in piece.pleats), key=lambda w: w[0].start.x * outward)
        return [(placed.start.x - fold.start.x) * outward > 0 for fold, placed in ways]

    assert all(turned("knife"))
    box = turned("box")
    assert box[::2] == [True] * len(box[::2])
    assert box[1::2] == [False] * len(box[1::2])
    inverted = turned("inverted")
    assert inverted[::2] == [False] * len(inverted[::2])


def test_a_yoke_ends_above_the_hip_line():
    with pytest.raises(SpecError, match="above the hip line") as refused:
        made("pleated_skirt", {"side_waist_to_hip": 16}, top="yoke", yoke_depth=14.0)
    assert refused.value.where == "garment.yoke_depth"


def test_a_length_by_name_on_an_unknown_leg_is_told():
    garment = GARMENTS["straight_skirt"]
    body = Body.of({"waist_girth": 74, "hip_girth": 101, "side_waist_to_hip": 20.5})
    done = work(garment, body, garment.spec(kind="straight_skirt"), Finish())
    assert "usual_leg" in {f.code for f in done.pattern.findings}
    done = work(garment, body, garment.spec(kind="straight_skirt", length=60), Finish())
    assert "usual_leg" not in {f.code for f in done.pattern.findings}


def test_names_of_lengths_go_down_the_leg():
    names = ("mini", "above_knee", "knee", "below_knee", "mid_calf", "ankle", "floor")
    lengths = [check(made("gored_skirt", hem_at=n), "hem_passes_stride").wanted for n in names]
    assert lengths == sorted(lengths)
    knee = made("straight_skirt", {"knee_height": 46.0}, hem_at="knee").pattern.pattern
    assert -knee.piece("front").level("hem")[0].y == pytest.approx(103 - 46)


def test_waists_meet_in_a_straight_angle_over_the_sides():
    for kind in ("straight_skirt", "a_line_skirt"):
        pattern = made(kind, {"waist_girth": 66, "hip_girth": 108}).pattern.pattern
        back, front = pattern.piece("back"), pattern.piece("front")
        corners = (
            (back.edge("side").path.end_tangent, back.edge("waist").path.start_tangent),
            (front.edge("waist").path.end_tangent, front.edge("side").path.start_tangent),
        )
        total = sum(180 - math.degrees(math.atan2(a.cross(b), a.dot(b))) for a, b in corners)
        assert total == pytest.approx(180, abs=0.1)
