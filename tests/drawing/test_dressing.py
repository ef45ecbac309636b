"""The form asked for: shrinkage, allowances off, lines, pairs, halves unfolded, small scales."""

from dataclasses import replace

import pytest
import shapely
from hand_made import band, front, numbered, yoke
from rulers import area, misplaced, sampled
from shapely import affinity

from drafting.drawing import (
    PRINT_WORDS,
    Form,
    Output,
    Role,
    Shrinkage,
    draw_pieces,
    drawn_as,
    dressed,
)
from drafting.errors import OutputError
from drafting.geometry import polyline
from drafting.pattern import Allowances, Finish, Mark, Pattern, Seam, SeamPart
from drafting.pattern import Role as EdgeRole
from drafting.pattern.finish import finish_pattern

WORDS = PRINT_WORDS["en"]
FINISH = Finish(allowances=Allowances(seam=1.0, hem=4.0))


def pattern():
    """Front, yoke on the fold and band, finished by the project's own allowances."""
    half = yoke()
    fold = half.edges[-1].path
    half = replace(
        half,
        levels=(("hip", fold.end, half.edges[0].path.end),),
        marks=(Mark("drill", polyline(half.grain[0], half.grain[0])),),
    )
    pieces = (numbered(front(), 1), numbered(half, 2), numbered(band(), 3))
    seams = (
        Seam("side", (SeamPart("front", "side"),), (SeamPart("yoke", "side"),)),
        Seam("waist", (SeamPart("front", "waist"),), (SeamPart("yoke", "upper"),)),
    )
    net = Pattern(kind="hand_made", title="Hand-made trousers", pieces=pieces, seams=seams)
    return finish_pattern(net, FINISH)


def drawn(**form):
    return drawn_as(pattern(), Output(**form), WORDS)


def outlines(finished):
    return area(finished.piece.outline), area(finished.cut_line)


def same(one, two, tolerance=0.01):
    return one.symmetric_difference(two).area < tolerance * one.length


def test_as_drafted_nothing_is_changed():
    made = pattern()
    assert drawn_as(made, Output(), WORDS).pieces == made.pieces
    assert dressed(made, Output()) is made


@pytest.mark.parametrize(("along", "across"), [(5.0, 0.0), (0.0, 3.0), (4.0, 2.5)])
def test_after_the_wash_the_net_lines_are_those_of_the_draft(along, across):
    """Shrunk by so many percent along the grain and across, the drawn net line is the draft's."""
    shrinks = Shrinkage(lengthwise=along, crosswise=across)
    for form in (dressed(pattern(), Output(shrinkage=shrinks)), drawn(shrinkage=shrinks)):
        for before, after in zip(pattern().pieces, form.pieces, strict=True):
            washed = affinity.scale(
                outlines(after)[0], 1 - across / 100, 1 - along / 100, origin=(0, 0)
            )
            assert same(washed, outlines(before)[0], 1e-4)


def test_allowances_do_not_grow_with_the_cloth():
    """Beside straight edges the cut stays 1 and 4 cm away, whatever the cloth shrinks by."""
    piece = drawn(shrinkage=Shrinkage(lengthwise=10.0, crosswise=8.0)).pieces[0]
    net, cut = outlines(piece)
    low = piece.piece.edge("hem").path.at(10.0)
    below = shapely.LineString([(low.x, low.y - 0.01), (low.x, low.y - 20)])
    assert below.intersection(cut).length == pytest.approx(4.0, abs=0.02)
    assert net.bounds[1] == pytest.approx(0.0)


def test_notches_stay_at_their_places_when_the_cloth_shrinks():
    before, after = pattern().pieces[0], drawn(shrinkage=Shrinkage(lengthwise=8.0)).pieces[0]
    for one, two in zip(before.notches, after.notches, strict=True):
        assert (two.point.x, two.point.y * 0.92) == pytest.approx((one.point.x, one.point.y))
        edge = after.piece.edge(two.notch.edge).path
        assert edge.at(two.notch.at).distance(two.point) < 1e-3


def test_without_allowances_the_cut_is_the_stitching_line_but_for_dart_caps():
    for finished in drawn(allowances=False).pieces:
        net, cut = outlines(finished)
        mouths = shapely.union_all(
            [
                shapely.LineString([(d.first.x, d.first.y), (d.second.x, d.second.y)]).buffer(0.5)
                for d in finished.piece.darts
            ]
        )
        for one, two in ((net, cut), (cut, net)):
            line = one.boundary.difference(mouths)
            assert two.boundary.buffer(0.005).contains(line)
        assert set(finished.allowances) == {0.0}


def test_net_lines_alone_tell_what_is_to_be_added():
    made = drawn(lines="net")
    pieces = draw_pieces(
        made, reference="", verdict="sound", form=Form(without=frozenset({Role.CUT}))
    )
    for piece in pieces:
        assert Role.CUT not in {item.role for item in piece.group.items}
        assert Role.STITCH in {item.role for item in piece.group.items}
    assert dict(zip((e.name for e in front().edges), made.pieces[0].allowances, strict=True)) == {
        "hem": 4.0, "inseam": 1.0, "crotch": 1.0, "waist": 1.0, "side": 1.0,
    }  # fmt: skip


def test_pairs_are_mirror_images_with_half_of_the_quantity_each():
    made = drawn(pairs=True)
    assert [p.piece.name for p in made.pieces] == ["front_right", "front_left", "yoke", "waistband"]
    right, left = made.pieces[:2]
    for one, two in zip(outlines(right), outlines(left), strict=True):
        assert same(affinity.scale(one, -1, 1, origin=(0, 0)), two)
    assert [c.quantity for p in (right, left) for c in p.piece.cut] == [1, 1]
    assert not any(c.mirrored for p in (right, left) for c in p.piece.cut)
    assert (right.piece.number, left.piece.number) == (1, 1)
    assert left.piece.outline.area() > 0  # still walked with the cloth on its left
    for one, two in zip(right.notches, left.notches, strict=True):
        assert (one.cut.x, one.cut.y) == pytest.approx((-two.cut.x, two.cut.y), abs=0.02)
    assert "left" in left.piece.title


def test_a_half_piece_unfolded_is_twice_as_big_and_its_own_mirror_image():
    before, after = pattern().pieces[1], drawn(unfold=True).pieces[1]
    for half, whole in zip(outlines(before), outlines(after), strict=True):
        assert whole.area == pytest.approx(2 * half.area, rel=1e-4)
        assert same(whole, affinity.scale(whole, -1, 1, origin=(0, 0)))
        assert half.difference(whole.buffer(0.01)).area < 1e-6
    piece = after.piece
    assert not piece.half
    assert all(edge.role is not EdgeRole.FOLD for edge in piece.edges)
    names = [edge.name for edge in piece.edges]
    assert len(names) == len(set(names)) == 6
    assert piece.outline.area() > 0
    assert [mark.kind for mark in piece.marks].count("fold") == 1
    ((_, left, right),) = piece.levels
    assert (left.x, right.x) == pytest.approx((-18.0, 18.0))
    for notch in after.notches:
        assert piece.edge(notch.notch.edge).path.at(notch.notch.at).distance(notch.point) < 1e-6
    assert sorted(round(n.point.x, 6) for n in after.notches) == pytest.approx([-9.0, 9.0])


def test_whole_pieces_are_left_as_they_are_when_halves_are_unfolded():
    assert drawn(unfold=True).pieces[0].cut_line == pattern().pieces[0].cut_line


@pytest.mark.parametrize(("scale", "share"), [("1:2", 2), ("1:4", 4), ("1:5", 5)])
def test_small_scales_draw_everything_smaller_and_tell_the_true_allowance(scale, share):
    made = drawn(scale=scale)
    for before, after in zip(pattern().pieces, made.pieces, strict=True):
        for one, two in zip(outlines(before), outlines(after), strict=True):
            assert two.area == pytest.approx(one.area / share**2, rel=1e-3)
        assert after.allowances == before.allowances
        for one, two in zip(before.notches, after.notches, strict=True):
            assert (two.cut.x * share, two.cut.y * share) == pytest.approx((one.cut.x, one.cut.y))


def test_pieces_are_drawn_in_the_pattern_s_order_whatever_order_they_are_asked_in():
    made = drawn(pieces=("waistband", "front"))
    assert [p.piece.name for p in made.pieces] == ["front", "waistband"]


def test_a_piece_that_is_not_there_is_refused_with_those_that_are():
    with pytest.raises(OutputError, match="no piece 'sleeve'") as caught:
        drawn(pieces=("front", "sleeve"))
    assert caught.value.where == "output.pieces"
    assert caught.value.allowed == ["front", "yoke", "waistband"]


def test_cutting_lines_alone_without_allowances_would_be_nothing():
    with pytest.raises(OutputError) as caught:
        drawn(lines="cut", allowances=False)
    assert (caught.value.code, caught.value.where) == ("nothing_to_draw", "output.lines")


@pytest.mark.parametrize(
    "form",
    [
        {"pairs": True, "unfold": True},
        {"scale": "1:4", "lines": "net"},
        {"shrinkage": Shrinkage(lengthwise=5, crosswise=3), "unfold": True, "scale": "1:2"},
        {"view": "screen", "pairs": True},
    ],
    ids=str,
)
def test_labels_of_every_form_lie_in_their_pieces_and_cover_nothing(form):
    made = drawn(**form)
    left_out = frozenset({Role.CUT} if form.get("lines") == "net" else ())
    brief = form.get("view") == "screen"
    for piece in draw_pieces(
        made,
        reference="order 1042",
        verdict="sound",
        form=Form(left_out, 3, ("Scale 1:4",), brief=brief),
    ):
        assert misplaced(piece.group) == []
        labels = [i.text for i in piece.group.items if i.role is Role.LABEL]
        assert any("Cut" in text for text in labels)
        assert brief != any("1042" in text for text in labels)


def test_everything_at_once_is_still_a_pattern():
    made = drawn(
        pairs=True, unfold=True, allowances=False, lines="net", scale="1:5",
        shrinkage=Shrinkage(lengthwise=5, crosswise=3), pieces=("yoke", "front"),
    )  # fmt: skip
    assert [p.piece.name for p in made.pieces] == ["front_right", "front_left", "yoke"]
    for finished in made.pieces:
        ring = shapely.LinearRing(sampled(finished.cut_line)[:-1])
        assert ring.is_simple
        assert ring.is_ccw
