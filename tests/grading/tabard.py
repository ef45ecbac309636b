"""An invented garment whose rules jump where these tests want them to: one rectangle."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError
from drafting.garments import Garment
from drafting.geometry import Point, polyline
from drafting.pattern import (
    Cut,
    Edge,
    EdgeLength,
    Finish,
    Pattern,
    Piece,
    Role,
    Seam,
    SeamPart,
    Want,
)
from drafting.trace import larger
from drafting.trace.place import corner_of_paper

JUMP_AT, JUMP = 79.0, 1.5
"""From a waist over 79 cm on, the hem is 1.5 cm wider."""
DART_AT = 90.0
"""From a waist over 90 cm on, there is a dart's point."""
LEAST_LENGTH = 45.0
UNSOUND_AT = 120.0
"""From a waist over 120 cm on, a check fails."""
TOO_BIG = 150.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Tabard:
    """No options."""

    kind: Literal["tabard"] = "tabard"


def draw(body: Body, cut: Tabard, sheet: DraftSheet) -> Pattern:
    if body.waist_girth > TOO_BIG:
        raise ConstructionError("No cloth is so wide.", where="hem corner")
    sheet.heading("Tabard")
    foot = sheet.point("foot", corner_of_paper(), "Start.")
    length = sheet.length("length", larger(body.hip_girth / 2, LEAST_LENGTH), "At least 45 cm.")
    wider = JUMP if body.waist_girth > JUMP_AT else 0.0
    corner = sheet.point("hem corner", foot.right(body.waist_girth / 2 + wider), "Half round.")
    top = sheet.point("top", foot.up(length), "The shoulder.")
    if sheet.decide("a dart", body.waist_girth > DART_AT, "Is the waist over 90 cm?", "Else flat."):
        sheet.point("dart point", foot.right(5), "Where the dart ends.")
    return Pattern(
        kind="tabard",
        title="Tabard",
        pieces=(_panel(float(corner.x), float(top.y)),),
        seams=(Seam("side", (SeamPart("panel", "right"),), (SeamPart("panel", "left"),)),),
        wants=(
            Want(
                name="hem_passes",
                measuring=EdgeLength("panel", ("hem",)),
                wanted=50.0,
                low=20.0,
                high=UNSOUND_AT / 2 + JUMP,
            ),
        ),
        finished_measurements=(
            Want(
                name="hem_width", measuring=EdgeLength("panel", ("hem",)), wanted=0, low=0, high=0
            ),
        ),
    )


def _panel(width: float, length: float) -> Piece:
    corners = (Point(0, 0), Point(width, 0), Point(width, length), Point(0, length), Point(0, 0))
    lines = [polyline(a, b) for a, b in pairwise(corners)]
    names = (("hem", Role.HEM), ("right", Role.SEAM), ("top", Role.FINISHED), ("left", Role.SEAM))
    return Piece(
        name="panel",
        title="Panel",
        cut=(Cut("main", 1),),
        edges=tuple(Edge(n, path, r) for (n, r), path in zip(names, lines, strict=True)),
        grain=(Point(width / 2, 2), Point(width / 2, length - 2)),
    )


GARMENT = Garment(
    kind="tabard",
    title="Tabard",
    summary="Invented for these tests.",
    spec=Tabard,
    needs=("waist_girth", "hip_girth"),
    pieces=("panel",),
    sources=("common practice, no source",),
    sample=(("waist_girth", 74.0), ("hip_girth", 101.0)),
    draw=draw,
)


def bodies(*waists: float) -> tuple[tuple[str, Body], ...]:
    """Bodies of these waists, hips 24 cm wider, each called by its waist."""
    return tuple((f"{w:g}", Body.of({"waist_girth": w, "hip_girth": w + 24})) for w in waists)


FINISH = Finish()
