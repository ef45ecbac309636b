"""The printed draft, carried out literally by a stranger, gives the draft.

The interpreter in `carrying_out` reads the JSON alone. What it draws is held against the printed
coordinates, against the printed paths as another library reads them, and against the outlines of
the pattern's own pieces. Bound: 0.1 mm.
"""

from __future__ import annotations

import cmath
import json
from itertools import chain

import bib
import numpy as np
import pytest
import shapely
from carrying_out import Paper, along, left, on, unit, walked
from classroom import CASES, methods, options, sheet_of, worked
from svgelements import CubicBezier
from svgelements import Path as SvgPath

from drafting.body import Body
from drafting.drawing import Output
from drafting.errors import DraftingError
from drafting.export import FORMATS, draft_json
from drafting.garments import GARMENTS
from drafting.pattern import Finish
from drafting.teaching.form import DraftForm
from drafting.teaching.taught import teach
from drafting.trace.place import MOVES
from drafting.workroom import work

CLOSE = 0.1


def steps(sheet):
    return [step for chapter in sheet["chapters"] for step in chapter["steps"]]


def lines(sheet):
    return [line for step in steps(sheet) for line in step["lines"]]


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
    for told in lines(sheet):
        drawn = line(walked(paper.lines[told["name"]]))
        assert drawn.hausdorff_distance(line(flattened(told["path"]))) < CLOSE, told["name"]
        assert drawn.length == pytest.approx(told["length"], abs=CLOSE), told["name"]


def test_curves_pass_where_their_guides_say(sheet, paper):
    """What a hand goes by is true of the curve: the diagonal's end, the middle off the chord."""
    told = 0
    for curve in lines(sheet):
        for part, drawn in zip(curve["parts"], paper.lines[curve["name"]], strict=False):
            match part.get("guide"):
                case {"kind": "diagonal", "corner": corner, "by": by}:
                    foot = paper.found(corner)
                    outward = 45 if drawn[-1].real > drawn[0].real else 135
                    end = foot + left(outward) * by
                    near = np.abs(on(drawn, np.linspace(0, 1, 2001)) - end).min()
                    assert near < 0.3, curve["name"]
                    told += 1
                case {"kind": "middle", "by": by, "side": side}:
                    chord = unit(drawn[-1] - drawn[0])
                    out = (on(drawn, 0.5) - drawn[0]) / (chord * left(90))
                    assert out.real * (1 if side == "left" else -1) == pytest.approx(by, abs=CLOSE)
                    told += 1
    assert told or not any("guide" in part for curve in lines(sheet) for part in curve["parts"])


def test_outlines_close_and_are_as_long_as_told(sheet, paper):
    for outline in sheet["outlines"]:
        ring = paper.traced(outline)
        assert abs(ring[0] - ring[-1]) < CLOSE
        length = np.abs(np.diff(ring)).sum()
        assert length == pytest.approx(outline["length"], abs=CLOSE)


def test_every_piece_of_the_pattern_is_carried_out(draft, sheet, paper):
    """The pieces as a client reads them, moved to a corner, turned over or not."""
    work, _ = draft
    assert missed(work, sheet, paper) == []


def missed(work, sheet, paper) -> list[str]:
    """The pieces that the sheet does not give, or gives otherwise."""
    pieces = json.loads(FORMATS["json"].write(work, Output()))["pieces"]
    outlines = {outline["name"]: outline for outline in sheet["outlines"]}
    assert set(outlines) == {piece["name"] for piece in pieces}
    return [p["name"] for p in pieces if not alike(paper.traced(outlines[p["name"]]), p)]


@pytest.mark.slow
@pytest.mark.parametrize("kind", GARMENTS)
def test_every_piece_is_carried_out_whatever_is_chosen(kind):
    """Every value of every option; no point, no line and no label comes twice either."""
    for option in options(kind):
        try:
            done = worked(kind, option.pop("method", ""), "sample", **option)
        except DraftingError:
            continue  # a choice that needs another one beside it
        sheet = json.loads(draft_json.write(done, sheet_of(kind, done)))
        assert missed(done, sheet, Paper(sheet)) == [], option
        points = [point for step in steps(sheet) for point in step["points"]]
        for names in (
            [p["label"] for p in points],
            [p["name"] for p in points],
            [told["name"] for told in lines(sheet)],
        ):
            assert len(set(names)) == len(names), option


def alike(ring, piece) -> bool:
    """Whether a ring is a piece's stitch line, laid on it one way or the other."""
    printed = flattened(piece["stitch_line"])
    there = ((cornered(z), cornered(printed)) for z in (ring, -ring.conj()))
    turned = ((laid(z), laid(printed)) for w in (ring, ring.conj()) for z in (w, -w))
    pairs = chain(there, turned)
    return any(line(a).hausdorff_distance(line(b)) < CLOSE for a, b in pairs)


def cornered(ring):
    return ring - complex(ring.real.min(), ring.imag.min())


def laid(ring):
    """A ring with its middle at the origin and its longer axis level, as its own area tells."""
    a, b = ring[:-1], ring[1:]
    sweep = (a.conj() * b).imag
    middle = (sweep * (a + b)).sum() / sweep.sum() / 3
    a, b = a - middle, b - middle
    sweep = (a.conj() * b).imag
    spread = (sweep * (a * a + a * b + b * b)).sum() / sweep.sum()
    return (ring - middle) * cmath.exp(-0.5j * cmath.phase(spread))


def line(points) -> shapely.LineString:
    return shapely.LineString(np.column_stack((points.real, points.imag)))


def test_every_method_of_every_garment_is_carried_out():
    assert {(kind, method) for kind, method, _ in CASES} == set(methods())


def test_a_wrong_number_is_noticed(sheet):
    """The interpreter does go by the moves: one of them changed shows in what it draws."""
    moved = next(p for step in steps(sheet) for p in step["points"] if "by" in p["moves"][-1])
    moved["moves"][-1]["by"] += 5
    there = Paper(sheet).points[moved["label"]]
    assert abs(there - complex(*moved["at"])) > CLOSE


def flattened(path: str) -> np.ndarray:
    """A printed path as another library reads it."""
    shares = np.linspace(0, 1, 201)
    drawn = [s for s in SvgPath(path) if s.start is not None]
    parts = [s.npoint(shares if isinstance(s, CubicBezier) else shares[[0, -1]]) for s in drawn]
    points = np.concatenate(parts)
    return points[:, 0] + 1j * points[:, 1]


def test_lengths_along_a_line_are_measured_as_another_library_does(sheet, paper):
    for told in lines(sheet):
        half = told["length"] / 2
        measured = shapely.line_interpolate_point(line(flattened(told["path"])), half)
        assert abs(along(paper.lines[told["name"]], half) - complex(measured.x, measured.y)) < CLOSE


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
    for told in lines(sheet):
        drawn = line(walked(paper.lines[told["name"]]))
        assert drawn.hausdorff_distance(line(flattened(told["path"]))) < 0.01, told["name"]
