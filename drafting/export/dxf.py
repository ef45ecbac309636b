"""The pattern as a DXF for cutters and CAD: a block for each piece, in millimetres, Y up.

Written to the layer convention of ASTM D6673 (its 2010 edition was withdrawn in 2019). Only its
scope and terms could be read; layers, texts and the coding of notches are from memory, so nothing
here claims to conform. One size and no grading, hence no grade rules and no grade reference line;
no dates and no persons beside the order's own reference.

A block's frame has its origin at the upper left corner of the box round the stitching line, as in
the JSON, but Y up. Curves are polylines through points on the curve.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass, replace
from io import StringIO
from itertools import chain
from typing import TYPE_CHECKING

from drafting import DRAFTING_VERSION
from drafting.drawing import WORDS, Drawn, Role, Stroke, Text, piece_cuts
from drafting.drawing.lettering import BOX, carried, corners, width
from drafting.export.paths import MM
from drafting.export.sheets import WorkContent, remarks
from drafting.export.tags import Spot, Tags, filled
from drafting.geometry import RIGHT, Cubic, Path, Point, Transform, polyline, turn
from drafting.pattern import Role as EdgeRole

if TYPE_CHECKING:
    from ezdxf.document import Drawing

    from drafting.drawing import Output, Sheet
    from drafting.pattern import Cut, Piece
    from drafting.workroom import Work

CUT, TURNS, CURVES, NOTCHES = "1", "2", "3", "4"
FOLD, GRAIN, INSIDE, DRILLS = "6", "7", "8", "13"
SEW, NOTES = "14", "15"

LAYERS: dict[str, tuple[str, int]] = {
    CUT: ("piece boundary and system text", 7),
    TURNS: ("turn points of the boundary", 1),
    CURVES: ("curve points of the boundary", 3),
    NOTCHES: ("notches", 1),
    FOLD: ("mirror line: the fold", 6),
    GRAIN: ("grain line", 5),
    INSIDE: ("internal lines, drawn and not cut", 8),
    DRILLS: ("drill holes", 1),
    SEW: ("sew lines", 4),
    NOTES: ("annotation text", 9),
}
"""Layers used, what each means, and its colour's number. From memory: ASTM D6673."""

TURN = 1.0
"""A corner of the boundary of at least 1 degree is a turn point; else it lies in a curve."""
STRAIGHT = 0.005
"""Straight lines that turn by fewer degrees are one: on a leg's length that moves no line by more
than 0.03 mm."""
CRUMB = 0.001
"""Parts of the boundary shorter than this (cm) are left out: a cutter would stop at both ends."""
LONGEST_NAME = 31
"""Letters of a block's name. From memory: DXF R12."""
LONGEST_TEXT = 34
"""Letters of a line of annotation: 7 characters each in the worst coding stay under 255."""
LAST = 0xFFFF
"""The coding of letters in a DXF has four digits; of longer ones readers make other letters."""
TALL = 6.0
"""Greatest height of texts in mm."""
PITCH = 1.7
"""From one line of text to the next, in heights of capitals."""


def write(work: Work, output: Output) -> bytes:
    """The pattern as an ASCII DXF.

    Raises:
        OutputError: There is nothing to draw.
    """
    output = replace(output, view="print")
    content = WorkContent.of(work, output)
    composed = content.lay(None, None)
    placed = tuple(
        Placed(work, piece, move, piece.finished.piece.name)
        for piece, move in zip(content.pieces, composed.moves, strict=True)
    )
    return render(placed, composed.sheet, work, output)


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece of a work as a block: where it goes on the sheet, and what it is called.

    The move turns and shifts; it never mirrors.
    """

    work: Work
    piece: Drawn
    move: Transform
    name: str


def render(placed: tuple[Placed, ...], sheet: Sheet, style: Work, output: Output) -> bytes:
    """Any pieces as blocks on one sheet; the texts for the whole are those of one work."""
    document = _empty()
    space = document.modelspace()
    blocks: dict[str, str] = {}
    for one, name in zip(placed, _names(tuple(one.name for one in placed)), strict=True):
        document.blocks.new(name)
        tags = Tags(document.entitydb.next_handle)
        block = _Block(tags, one.piece, output.curve_tolerance / MM)
        system = tuple(_system(one.work, one.piece.finished.piece))
        block.draw(system, tuple(_notes(one.work, one.piece, output)))
        blocks[name] = tags.written()
        corner = one.move.point(Point(block.left, block.top))
        turned = round(one.move.vector(RIGHT).angle, 6) % 360
        attributes = {"layer": CUT, **({"rotation": turned} if turned else {})}
        space.add_blockref(name, (_mm(corner.x), _mm(corner.y)), dxfattribs=attributes)
    high = _mm(sheet.height)
    for k, text in enumerate(_style(style, output)):
        at = (0.0, high + 10 + 10 * k)
        space.add_text(text, height=TALL, dxfattribs={"layer": CUT, "insert": at})
    document.header["$EXTMIN"] = (0.0, 0.0, 0.0)
    document.header["$EXTMAX"] = (_mm(sheet.width), high + 100, 0.0)
    out = StringIO()
    document.write(out)
    told = f"{CONVENTION} Units: mm."
    whole = f"999\n{told}\n{filled(out.getvalue(), blocks)}"
    return whole.encode(document.output_encoding, "dxfreplace")


def _empty() -> Drawing:
    """A document with nothing in it but its layers. No clock is read: same order, same bytes."""
    import ezdxf  # noqa: PLC0415 - a fifth of the service's start, and few ask for a DXF
    from ezdxf.document import Drawing  # noqa: PLC0415

    ezdxf.options.write_fixed_meta_data_for_testing = True  # type: ignore[attr-defined]
    document = Drawing.new("R12")
    for name, (_, colour) in LAYERS.items():
        document.layers.add(name, color=colour)
    return document


CONVENTION = "Written to the layer convention of ASTM D6673-10 (withdrawn 2019)."


def _mm(cm: float) -> float:
    return round(cm * MM, 4) + 0.0


def _names(wanted: tuple[str, ...]) -> list[str]:
    """Names of the blocks: the wanted ones in capitals, cut to length, each once."""
    names: list[str] = []
    for each in wanted:
        stem = re.sub(r"[^A-Z0-9_$-]", "_", each.upper())
        name, number = stem[:LONGEST_NAME], 1
        while name in names:
            number += 1
            tail = f"_{number}"
            name = stem[: LONGEST_NAME - len(tail)] + tail
        names.append(name)
    return names


def _style(work: Work, output: Output) -> Iterator[str]:
    """What holds for the whole pattern, one entry a line."""
    yield f"STYLE NAME: {work.pattern.pattern.kind}"
    yield f"AUTHOR: Tapeline {DRAFTING_VERSION}"
    yield f"SAMPLE SIZE: {_size(work)}"
    yield "UNITS: METRIC"
    yield "VERSION: D6673"
    for text in remarks(output):
        yield f"ANNOTATION: {_plain(text)}"
    yield CONVENTION


def _size(work: Work) -> str:
    return _plain(work.reference) or "MADE TO MEASURE"


def _plain(text: str) -> str:
    """The text on one line; what a DXF cannot carry is replaced, as are letters past FFFF."""
    return "".join(c if ord(c) <= LAST else BOX for c in carried(" ".join(text.split())))


def _system(work: Work, piece: Piece) -> Iterator[str]:
    """The piece's text: fields by which a reader of the convention knows it."""
    first = piece.cut[0]
    yield f"Piece Name: {piece.name}"
    yield f"Size: {_size(work)[:LONGEST_TEXT]}"
    yield f"Category: {piece.number}"
    yield f"Quantity: {_quantity(first)}"
    yield f"Material: {first.cloth}"


def _quantity(cut: Cut) -> str:
    """How many; of a pair the right ones and the left ones. From memory, and unsure."""
    half = cut.quantity // 2
    return f"{cut.quantity - half},{half}" if cut.mirrored else str(cut.quantity)


def _notes(work: Work, piece: Drawn, output: Output) -> Iterator[str]:
    """What people read: title, cutting, the reference, allowances, remarks."""
    finished = piece.finished
    words = WORDS[output.language]
    unsound = [words.not_for_cutting] if work.verdict == "unsound" else []
    told = (*unsound, finished.piece.title, *piece_cuts(finished.piece, words))
    for text in (*told, work.reference, *remarks(output)):
        yield from textwrap.wrap(_plain(text), LONGEST_TEXT)


class _Block:
    """A block that takes a piece's lines in cm and keeps them in mm in its own frame."""

    def __init__(self, tags: Tags, piece: Drawn, tolerance: float) -> None:
        self.tags, self.piece, self.tolerance = tags, piece, tolerance
        self.left, _, _, self.top = piece.finished.piece.outline.bounds()

    def draw(self, system: tuple[str, ...], notes: tuple[str, ...]) -> None:
        """Everything that the piece has, layer by layer."""
        finished = self.piece.finished
        piece = finished.piece
        self._boundary(finished.cut_line)
        self._notches()
        for edge in piece.edges:
            if edge.role is EdgeRole.FOLD:
                self._line(FOLD, edge.path.start, edge.path.end)
        self._line(GRAIN, *piece.grain)
        inside = chain(
            ((a, b) for _, a, b in piece.levels),
            piece.lengthen,
        )
        for a, b in inside:
            self._line(INSIDE, a, b)
        for line in (line for pleat in piece.pleats for line in pleat.lines):
            self._path(INSIDE, line if isinstance(line, Path) else polyline(*line))
        for mark in piece.marks:
            if mark.kind == "drill":
                self._point(DRILLS, mark.path.start)
            else:
                self._path(INSIDE, mark.path)
        self._sewn()
        self._texts(system, notes)

    def _boundary(self, path: Path) -> None:
        """The closed line, and each of its corners as a turn point or a curve point.

        Where two straight lines run on in one direction there is no corner, and no point; nor are
        there two points in one place.
        """
        points: list[Spot] = []
        segments = [s for s in path.segments if s.start.distance(s.end) > CRUMB]
        for segment, after in zip(segments, (*segments[1:], segments[0]), strict=True):
            *inner, end = (self._at(x, y) for x, y in segment.coordinates(self.tolerance))
            points += inner
            for point in inner:
                self.tags.point(CURVES, point)
            turned = segment.tangent(1.0).angle_to(after.tangent(0.0))
            bent = isinstance(segment, Cubic) or isinstance(after, Cubic)
            if bent or turned > STRAIGHT:
                points.append(end)
                self.tags.point(CURVES if bent and turned < TURN else TURNS, end)
        self.tags.polyline(CUT, points, closed=True)

    def _notches(self) -> None:
        """A point on the boundary: how deep as its thickness, which way inward as its angle.

        From memory, and unsure.
        """
        for item in self.piece.group.items:
            if isinstance(item, Stroke) and item.role is Role.NOTCH:
                at, inward = item.path.start, item.path.end - item.path.start
                deep, angle = _mm(inward.length), round(inward.angle % 360, 3)
                self.tags.point(NOTCHES, self._at(at.x, at.y), deep, angle)

    def _sewn(self) -> None:
        """Stitching lines, and both legs of each dart in one line, with its drill hole."""
        drawn = {item.role for item in self.piece.group.items}
        for edge in self.piece.finished.piece.edges:
            if edge.role is not EdgeRole.FOLD and Role.STITCH in drawn:
                self._path(SEW, edge.path)
        for dart in self.piece.finished.piece.darts:
            self._path(SEW, polyline(*dart.around))
            self._point(DRILLS, dart.drill)

    def _texts(self, system: tuple[str, ...], notes: tuple[str, ...]) -> None:
        """All texts under each other, where the labels would be on paper."""
        labels = [i for i in self.piece.group.items if isinstance(i, Text) and i.role is Role.LABEL]
        angle = labels[0].angle
        level = turn(-angle, Point(0.0, 0.0))
        box = [level.point(p) for label in labels for p in corners(label)]
        wide = max(p.x for p in box) - min(p.x for p in box)
        tall = max(p.y for p in box) - min(p.y for p in box)
        lines = [*((CUT, text) for text in system), *((NOTES, text) for text in notes)]
        broadest = max(width(text, 1.0) for _, text in lines)
        height = min(TALL / MM, wide / broadest, tall / (PITCH * len(lines)))
        x, y = min(p.x for p in box), max(p.y for p in box)
        for k, (layer, text) in enumerate(lines):
            at = level.inverse.point(Point(x, y - (PITCH * k + 1) * height))
            self._text(layer, text, at, height, angle)

    def _text(self, layer: str, text: str, at: Point, height: float, angle: float) -> None:
        self.tags.text(layer, text, self._at(at.x, at.y), _mm(height), round(angle, 4))

    def _at(self, x: float, y: float) -> Spot:
        return _mm(x - self.left), _mm(y - self.top)

    def _point(self, layer: str, point: Point) -> None:
        self.tags.point(layer, self._at(point.x, point.y))

    def _line(self, layer: str, a: Point, b: Point) -> None:
        self.tags.line(layer, self._at(a.x, a.y), self._at(b.x, b.y))

    def _path(self, layer: str, path: Path) -> None:
        points = [self._at(x, y) for x, y in path.coordinates(self.tolerance)]
        closed = len(path.segments) > 1 and path.start.distance(path.end) < 1e-6
        self.tags.polyline(layer, points[:-1] if closed else points, closed=closed)
