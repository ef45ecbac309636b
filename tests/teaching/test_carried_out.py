"""The printed draft, carried out literally by a stranger, gives the draft.

The interpreter in `carrying_out` reads the JSON alone. What it draws is held against the printed
coordinates, against the printed paths as another library reads them, and against the outlines of
the pattern's own pieces. Bound: 0.1 mm.
"""

from __future__ import annotations

import json
from itertools import pairwise

import bib
import pytest
import shapely
from carrying_out import Paper, along, left, on, unit, walked
from classroom import CASES, methods, sheet_of, worked
from svgelements import Path as SvgPath

from drafting.body import Body
from drafting.drawing import Output
from drafting.export import FORMATS, draft_json
from drafting.pattern import Finish
from drafting.teaching.form import DraftForm
from drafting.teaching.taught import teach
from drafting.trace.place import MOVES
from drafting.workroom import work

CLOSE = 0.1
PLAIN = {
    "trousers": {"front_pocket": "none", "back_pocket": "none"},
    "straight_skirt": {"hem_opening": "none"},
}
"""Options with which a garment's drafted panels are cut as they were drafted."""


def steps(sheet):
    return [step for chapter in sheet["chapters"] for step in chapter["steps"]]


def lines(sheet):
    return [line for step in steps(sheet) for line in step["lines"]]


@pytest.fixture(name="paper")
def paper_fixture(sheet):
    return Paper(sheet)


def test_every_point_comes_out_where_it_was_drawn(sheet, paper):
    printed = [point for step in steps(sheet) for point in step["points"]]
    assert len(printed) == len(paper.points) > 3
    off = {p["label"]: abs(paper.points[p["label"]] - complex(*p["at"])) for p in printed}
    assert max(off.values()) < CLOSE, off


def test_every_move_leads_where_it_says(sheet, paper):
    for point in (point for step in steps(sheet) for point in step["points"]):
        here = None if point["from"] is None else paper.found(point["from"])
        for move in point["moves"]:
            here = paper.moved(here, move)
            assert abs(here - complex(*move["to"])) < CLOSE, point["name"]


def test_every_line_comes_out_as_it_was_drawn(sheet, paper):
    assert len(lines(sheet)) > 3
    for line in lines(sheet):
        drawn = shapely.LineString([(z.real, z.imag) for z in walked(paper.lines[line["name"]])])
        printed = flattened(line["path"])
        assert drawn.hausdorff_distance(printed) < CLOSE, line["name"]
        assert drawn.length == pytest.approx(line["length"], abs=CLOSE), line["name"]


def test_curves_pass_where_their_guides_say(sheet, paper):
    """What a hand goes by is true of the curve: the diagonal's end, the middle off the chord."""
    told = 0
    for line in lines(sheet):
        for part, drawn in zip(line["parts"], paper.lines[line["name"]], strict=False):
            match part.get("guide"):
                case {"kind": "diagonal", "corner": corner, "by": by}:
                    foot = paper.found(corner)
                    outward = 45 if drawn[-1].real > drawn[0].real else 135
                    end = foot + left(outward) * by
                    near = min(abs(on(drawn, i / 2000) - end) for i in range(2001))
                    assert near < 0.3, line["name"]
                    told += 1
                case {"kind": "middle", "by": by, "side": side}:
                    chord = unit(drawn[-1] - drawn[0])
                    out = (on(drawn, 0.5) - drawn[0]) / (chord * left(90))
                    assert out.real * (1 if side == "left" else -1) == pytest.approx(by, abs=CLOSE)
                    told += 1
    assert told or not any("guide" in part for line in lines(sheet) for part in line["parts"])


def test_outlines_close_and_are_as_long_as_told(sheet, paper):
    for outline in sheet["outlines"]:
        ring = outlined(outline, paper)
        assert abs(ring[0] - ring[-1]) < CLOSE
        length = sum(abs(b - a) for a, b in pairwise(ring))
        assert length == pytest.approx(outline["length"], abs=CLOSE)


@pytest.mark.parametrize("case", CASES, ids=lambda c: "-".join(filter(None, c)))
def test_the_outlines_are_those_of_the_pattern(case):
    """The pattern's own pieces, as a client reads them, moved to a corner, turned over or not."""
    kind, method, name = case
    done = worked(kind, method, name, **PLAIN.get(kind, {}))
    sheet = json.loads(draft_json.write(done, sheet_of(kind, done)))
    pieces = {p["name"]: p for p in json.loads(FORMATS["json"].write(done, Output()))["pieces"]}
    paper = Paper(sheet)
    assert sheet["outlines"]
    for outline in sheet["outlines"]:
        drawn = cornered(shapely.LinearRing([(z.real, z.imag) for z in outlined(outline, paper)]))
        turned = cornered(shapely.transform(drawn, lambda xy: xy * (-1, 1)))
        piece = cornered(flattened(pieces[outline["name"]]["stitch_line"]))
        far = min(piece.hausdorff_distance(d) for d in (drawn, turned))
        assert far < CLOSE, outline["name"]


def test_every_method_of_every_garment_is_carried_out():
    assert {(kind, method) for kind, method, _ in CASES} == set(methods())


def test_a_wrong_number_is_noticed(sheet):
    """The interpreter does go by the moves: one of them changed shows in what it draws."""
    moved = next(p for step in steps(sheet) for p in step["points"] if "by" in p["moves"][-1])
    moved["moves"][-1]["by"] += 5
    there = Paper(sheet).points[moved["label"]]
    assert abs(there - complex(*moved["at"])) > CLOSE


def outlined(outline, paper):
    ring = []
    for side in outline["lines"]:
        points = walked(paper.lines[side["line"]])
        ring += reversed(points) if side["backward"] else points
    return ring


def flattened(path: str) -> shapely.LineString:
    points = []
    for segment in SvgPath(path):
        if segment.start is not None:
            points += [segment.point(i / 400) for i in range(401)]
    return shapely.LineString([(p.x, p.y) for p in points])


def cornered(shape):
    left_edge, top, *_ = shape.bounds
    return shapely.transform(shape, lambda xy: xy - (left_edge, top))


def test_lengths_along_a_line_are_measured_as_another_library_does(sheet, paper):
    for line in lines(sheet):
        half = line["length"] / 2
        measured = shapely.line_interpolate_point(flattened(line["path"]), half)
        assert abs(along(paper.lines[line["name"]], half) - complex(measured.x, measured.y)) < CLOSE


def test_every_verb_of_the_pencil_is_carried_out():
    """A draft made for it: all moves, bearings and parts, unnamed joints and places among them."""
    done = work(bib.GARMENT, Body.of(dict(bib.GARMENT.sample)), bib.Bib(kind="bib"), Finish())
    sheet = json.loads(draft_json.write(done, teach(done, bib.GARMENT, DraftForm())))
    paper = Paper(sheet)
    used = {move["do"] for step in steps(sheet) for p in step["points"] for move in p["moves"]}
    assert used == set(draft_json.TAKES) == set(MOVES)
    parts = {part["do"] for line in lines(sheet) for part in line["parts"]}
    assert parts == {"straight", "curve", "bulge", "arc"}
    for point in (point for step in steps(sheet) for point in step["points"]):
        assert abs(paper.points[point["label"]] - complex(*point["at"])) < 0.01, point["name"]
    for line in lines(sheet):
        drawn = shapely.LineString([(z.real, z.imag) for z in walked(paper.lines[line["name"]])])
        assert drawn.hausdorff_distance(flattened(line["path"])) < 0.01, line["name"]
