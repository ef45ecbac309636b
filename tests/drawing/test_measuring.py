"""The figure that shows where the tape lies: every measure, at the body's own heights."""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree import ElementTree as ET

import pytest

from drafting.body import MEASURES
from drafting.drawing import Stroke, Text
from drafting.drawing.measuring import SCALE, TAPES, VIEWS, Ring, figure
from drafting.export.svg import render

NUMBERS = {name: number for number, name in enumerate(MEASURES, 1)}
FLOOR = 2 * SCALE + 0.4
"""Height of the figure's floor on its sheet, cm."""


def test_every_measure_of_the_tape_lies_somewhere_on_the_figure():
    assert set(TAPES) == {name for name, measure in MEASURES.items() if measure.unit != "kg"}
    assert {view for view, _ in TAPES.values()} == set(VIEWS)


def test_girths_go_round_and_lengths_go_along():
    straight_round = {"total_crotch_length", "armscye_girth", "heel_ankle_girth"}
    for name in set(TAPES) - straight_round:
        assert isinstance(TAPES[name][1], Ring) == (MEASURES[name].kind == "girth"), name


def drawn(view):
    """Strokes of the tapes by name, and the numbers with their heights, of the sheet with all."""
    (group,) = figure(view, NUMBERS).groups
    strokes = {i.name: i for i in group.items if isinstance(i, Stroke) and i.name}
    return strokes, [i for i in group.items if isinstance(i, Text)]


@pytest.mark.parametrize("view", VIEWS)
def test_each_tape_has_its_number_and_no_two_numbers_touch(view):
    strokes, texts = drawn(view)
    assert {int(text.text) for text in texts} == {NUMBERS[name] for name in strokes}
    for anchor in ("start", "end"):
        heights = sorted(text.at.y for text in texts if text.anchor == anchor)
        assert all(b - a > texts[0].height * 1.2 for a, b in pairwise(heights))


ORDER = (
    *("ankle_girth", "calf_girth", "knee_girth", "thigh_girth", "hip_girth", "top_hip_girth"),
    *("waist_girth", "under_bust_girth", "bust_girth", "neck_base_girth", "neck_girth"),
)


def test_girths_lie_over_each_other_as_on_a_body():
    strokes, _ = drawn("front")
    heights = [strokes[name].path.start.y for name in ORDER]
    assert heights == sorted(heights)


SHARES = {"knee_height": 0.275, "waist_height": 0.61, "back_neck_height": 0.86}


def test_heights_are_those_of_a_body():
    """Shares of the stature (from memory: Drillis and Contini, Body Segment Parameters)."""
    strokes, _ = drawn("side")
    tall = strokes["stature"].path.length()
    assert tall == pytest.approx(170 * SCALE)
    for name, share in SHARES.items():
        assert strokes[name].path.length() / tall == pytest.approx(share, abs=0.015), name
    for name in ("stature", "waist_height", "hip_height", "knee_height", "ankle_height"):
        assert min(p.y for p in (strokes[name].path.start, strokes[name].path.end)) == (
            pytest.approx(FLOOR)
        )


@pytest.mark.parametrize("view", VIEWS)
def test_all_of_the_figure_is_on_its_sheet(view):
    sheet = figure(view, NUMBERS)
    root = ET.fromstring(render(sheet, "figure"))  # noqa: S314 - our own
    assert root.find("{http://www.w3.org/2000/svg}title").text == f"The figure from the {view}"
    for item in sheet.groups[0].items:
        spot = isinstance(item, Text)
        x0, y0, x1, y1 = (item.at.x, item.at.y) * 2 if spot else item.path.bounds()
        assert 0 <= x0 <= x1 <= sheet.width
        assert 0 <= y0 <= y1 <= sheet.height


def test_only_what_is_asked_for_is_drawn():
    sheet = figure("front", {"waist_girth": 1, "body_rise": 2})
    names = {item.name for item in sheet.groups[0].items if isinstance(item, Stroke) and item.name}
    assert names == {"waist_girth"}
    assert re.search("1: waist girth", sheet.description)
