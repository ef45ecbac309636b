"""A square apron, registered in the tests alone: an invented garment with an option for trouble."""

from __future__ import annotations

import itertools
import time
from dataclasses import dataclass
from math import inf
from typing import Annotated, Any, Literal

from annotated_types import Interval

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError, OutputError, SpecError
from drafting.garments.garment import Garment
from drafting.geometry import Path, Point, polyline
from drafting.pattern import Cut, Edge, Number, Pattern, Piece, Role, Seam, SeamPart, Want
from drafting.pattern.allowance import LENGTH

Trouble = Literal["none", "unsound", "construction", "option", "paper", "fault", "slow"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Apron:
    """A square apron on a tie.

    Attributes:
        kind: Always "apron".
        width: Width of the apron, half of the waist by default.
        length: Waist to hem.
        slope: Angle of the hem in degrees.
        pockets: How many patch pockets.
        fringe: Lengths of the fringe's tassels.
        trouble: What goes wrong.
    """

    kind: Literal["apron"]
    width: Annotated[float | None, Interval(ge=20, le=120), LENGTH] = None
    length: Annotated[float, Interval(ge=30, le=90), LENGTH] = 60.0
    slope: Annotated[float, Interval(ge=0, le=10)] = 0.0
    pockets: Annotated[int, Interval(ge=0, le=4)] = 0
    fringe: tuple[Annotated[float, Interval(ge=1, le=20), LENGTH], ...] = ()
    trouble: Trouble = "none"


def draw(body: Body, cut: Apron, sheet: DraftSheet) -> Pattern:
    fail(body, cut)
    sheet.heading("Apron")
    width = sheet.length("width", cut.width or body.waist_girth / 2, "Half of the body.")
    off = 5.0 if cut.trouble == "unsound" else 0.0
    return Pattern(
        kind="apron",
        title="Apron",
        pieces=(panel(float(width), cut.length), tie(float(width) + off)),
        seams=(Seam("waist", (SeamPart("panel", "waist"),), (SeamPart("tie", "lower"),)),),
        wants=(
            Want(
                name="width", measuring=Number(float(width), "by tape"), wanted=50, low=1, high=200
            ),
            Want(
                name="cover",
                measuring=Number(float(width), "by tape"),
                wanted=50,
                low=1 + 100 * off,
                high=inf,
            ),
        ),
    )


def fail(body: Body, cut: Apron) -> None:
    match cut.trouble:
        case "construction":
            raise ConstructionError(
                "The tie needs 12.7 to 25.4 cm more.", where="tie", received=5.08
            )
        case "option":
            raise SpecError(
                "A length of 60 cm excludes pockets.",
                where="length",
                received=60.0,
                allowed=(30, 50.8),
            )
        case "paper":
            raise OutputError("No room.", where="margin", received=90.0, allowed=(0, 50))
        case "fault":
            raise ValueError(f"cannot use {float(body.waist_girth)}")
        case "slow":
            time.sleep(1.0)


def panel(width: float, length: float) -> Piece:
    return rectangle("panel", width, length, "waist", Cut("main", 1))


def tie(width: float) -> Piece:
    return rectangle("tie", width, 20.0, "lower", Cut("main", 1))


def rectangle(name: str, width: float, length: float, sewn: str, cut: Cut) -> Piece:
    corners = [Point(0, 0), Point(width, 0), Point(width, length), Point(0, length), Point(0, 0)]
    lines = [polyline(a, b) for a, b in itertools.pairwise(corners)]
    names = ("hem", "right", sewn, "left") if sewn == "waist" else (sewn, "right", "upper", "left")
    return Piece(
        name=name,
        title=name.title(),
        cut=(cut,),
        edges=tuple(edge(n, p, sewn) for n, p in zip(names, lines, strict=True)),
        grain=(Point(width / 2, 2), Point(width / 2, length - 2)),
    )


def edge(name: str, path: Path, sewn: str) -> Edge:
    return Edge(name, path, Role.SEAM if name == sewn else Role.HEM, "seam")


GARMENT = Garment(
    kind="apron",
    title="Apron",
    summary="A square apron; invented for the tests.",
    spec=Apron,
    needs=("waist_girth",),
    pieces=("panel", "tie"),
    sources=("common practice, no source",),
    sample=(("waist_girth", 74.0), ("hip_girth", 101.0)),
    draw=draw,
)


def order(**options: Any) -> dict[str, Any]:
    """An order for an apron."""
    return {
        "measurements": {"waist_girth": 74, "hip_girth": 101},
        "garment": {"kind": "apron", **options},
    }
