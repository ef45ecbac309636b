"""A bib that nobody wears, drafted with every verb of the pencil; invented for the tests."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.body import Body
from drafting.craft.circle import arc
from drafting.craft.darts import closings, reopen
from drafting.craft.pencil import draw_dart, draw_waist
from drafting.craft.sheet import DraftSheet
from drafting.garments.garment import Garment
from drafting.geometry import Cubic, Path, Point, polyline, smooth
from drafting.pattern import Cut, Edge, Pattern, Piece, Role
from drafting.trace import LEFTWARD, UPWARD, Arc, Bend, Length, along, middle_of, running
from drafting.trace.place import corner_of_paper, meeting


@dataclass(frozen=True, slots=True, kw_only=True)
class Bib:
    """A bib."""

    kind: Literal["bib"]
    waist_ease: float = 2.0


def draw(body: Body, cut: Bib, sheet: DraftSheet) -> Pattern:
    sheet.heading("Bib", "invented for the tests")
    foot = sheet.point("foot", corner_of_paper(2, 3), "Start.")
    right = sheet.point("right foot", foot.right(body.waist_girth / 4).down(1), "A quarter.")
    high = sheet.point("top", foot.up(30).left(2), "High enough.")
    peak = sheet.point("peak", high.slant(10, 60), "Up to the chin.")
    side = sheet.point("side", right.level_with(high), "As high as the top.")
    under = sheet.point("under the peak", peak.plumb_with(side), "Over the side.")
    near = sheet.point("near", high.towards(side, 4), "Four along.")
    half = sheet.point("half", high.between(side, 0.5), "Half of it.")
    reach = sheet.point("reach", foot.reaching(half, 32, "right"), "Swung up.")
    out = sheet.point("out", half.square_out(high, side, 3, "right"), "Square.")
    across = sheet.point("crossing", meeting(foot, side, right, high), "Where they cross.")
    turned = sheet.point("turned", near.swung(across, -25), "Swung aside.")
    sheet.point("there again", turned, "The same place once more.")
    edge = sheet.line("edge", foot, high, peak, why="Straight.")
    mark = sheet.point("mark", edge.at(12.5), "For the tie.")
    sheet.point("button", edge.before_end(3.5), "For the loop.")
    sheet.bulge("bow", right, side, 1.5, "right", "Rounded.")
    drawn = smooth(side, UPWARD.vector, peak, LEFTWARD.vector)
    neck = sheet.draw(
        "neck", (Bend(side, peak, UPWARD, LEFTWARD, drawn, middle_of(drawn)),), "Round."
    )
    on = running(neck, "end").left.rotated(10)
    sheet.draw(
        "tail",
        (Bend(peak, mark, on, along(high, foot), smooth(peak, on.vector, mark, foot - high)),),
        "On from the neck.",
    )
    ready = (
        Cubic(reach, Point(reach.x, reach.y + 2), Point(30, 40), Point(29, 41)),
        Cubic(Point(29, 41), Point(28, 42), Point(under.x, under.y - 3), under),
    )
    sheet.curve("ready", reach, under, ready, "as drawn by hand", "Told in degrees.")
    swept = arc(foot, foot.distance(right), 90.0 - 0.0, 30.0)
    far = sheet.point(
        "arc's end",
        sheet.point(
            "arc's start", foot.up(Length(foot.distance(right), "foot to right foot")), "So far."
        ).swung(foot, -60),
        "A sixth round.",
    )
    sheet.draw(
        "arc",
        (
            Arc(
                sheet.point("arc's own start", far.swung(foot, 60), "Back again."),
                far,
                foot,
                -60.0,
                swept,
            ),
        ),
        "Round the foot.",
    )
    dart = draw_dart("dart", (high, side), out, 3.0, 9.0, "right", sheet)
    folded = closings((dart,))[-1].point(side)
    closed = smooth(high, UPWARD.vector.right, folded, UPWARD.vector.right.rotated(-5))
    opened, darts = reopen(Path((closed,)), (dart,), "top")
    draw_waist(
        "top line",
        closed,
        opened,
        (high, side),
        along(foot, high),
        neck,
        (dart,),
        sheet,
        "Over the dart.",
    )
    del darts
    piece = Piece(
        name="bib",
        title="Bib",
        cut=(Cut("main", 1),),
        edges=tuple(
            Edge(f"edge {i}", polyline(a, b), Role.HEM, "hem")
            for i, (a, b) in enumerate(((foot, right), (right, side), (side, high), (high, foot)))
        ),
        grain=(Point(10, 8), Point(10, 20)),
    )
    return Pattern(kind="bib", title="Bib", pieces=(piece,), seams=())


GARMENT = Garment(
    kind="bib",
    title="Bib",
    summary="Invented for the tests.",
    spec=Bib,
    needs=("waist_girth",),
    pieces=("bib",),
    sources=("invented for the tests",),
    sample=(("waist_girth", 74.0),),
    draw=draw,
)
