"""From the finished pattern to a sheet: pieces drawn, labelled, laid side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import count

import shapely

from drafting.drawing.arrange import Arrangement, Block, Ground, Roll, arrange
from drafting.drawing.labels import Verdict, label_piece
from drafting.drawing.legend import Legend
from drafting.drawing.lettering import block_corners
from drafting.drawing.marking import free_room, mark_piece, written
from drafting.drawing.setting import Clearing, clearings
from drafting.drawing.shapes import polygon
from drafting.drawing.sheet import Group, Role, Sheet, Text
from drafting.drawing.words import ENGLISH, Unit, Words
from drafting.geometry import Point, Transform, turn
from drafting.pattern import FinishedPattern, FinishedPiece, Label

LEGEND = "legend"


@dataclass(frozen=True, slots=True)
class Composed:
    """A sheet, and how what is on it was laid."""

    sheet: Sheet
    laid: Arrangement

    @property
    def areas(self) -> tuple[shapely.Polygon, ...]:
        """What each block that was laid covers, in their order."""
        return self.laid.areas

    @property
    def moves(self) -> tuple[Transform, ...]:
        """How each group was moved, in their order."""
        return self.laid.moves


@dataclass(frozen=True, slots=True)
class Note:
    """A block of text: its group, the origin at its upper left corner, and its size in cm."""

    group: Group
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Drawn:
    """A piece with its labels laid, and everything that is drawn of it, in its own frame."""

    finished: FinishedPiece
    group: Group


@dataclass(frozen=True, slots=True)
class Form:
    """What of the pieces is drawn, and what their labels say of it.

    Attributes:
        without: Roles that are left out.
        total: How many pieces the whole pattern has; 0 where all of them are drawn once.
        remarks: Sentences for every label.
        brief: Whether labels say only what the piece is and what to cut.
    """

    without: frozenset[Role] = frozenset()
    total: int = 0
    remarks: tuple[str, ...] = ()
    brief: bool = False


AS_DRAFTED = Form()


def label_pieces(
    pattern: FinishedPattern,
    *,
    reference: str,
    verdict: Verdict,
    unit: Unit = "cm",
    words: Words = ENGLISH,
    form: Form = AS_DRAFTED,
) -> tuple[FinishedPiece, ...]:
    """Every piece with its labels.

    Args:
        pattern: The finished pattern.
        reference: The order's reference, as typed; may be empty.
        verdict: The pieces of an unsound pattern are marked NOT FOR CUTTING.
        unit: Unit of the lengths in texts.
        words: The sheet's language.
        form: What the labels say.
    """

    def labels(number: int, finished: FinishedPiece, clearing: Clearing) -> tuple[Label, ...]:
        return label_piece(
            finished,
            title=pattern.pattern.title,
            number=finished.piece.number or number,
            total=form.total or len(pattern.pieces),
            reference=reference,
            finish=pattern.finish,
            verdict=verdict,
            unit=unit,
            words=words,
            remarks=form.remarks,
            brief=form.brief,
            clearing=clearing,
        )

    pieces = pattern.pieces
    asked = zip(count(1), pieces, clearings([free_room(piece) for piece in pieces]), strict=False)
    return tuple(replace(piece, labels=labels(n, piece, room)) for n, piece, room in asked)


def draw_pieces(
    pattern: FinishedPattern,
    *,
    reference: str,
    verdict: Verdict,
    unit: Unit = "cm",
    words: Words = ENGLISH,
    form: Form = AS_DRAFTED,
) -> tuple[Drawn, ...]:
    """Every piece with its marks and labels; arguments as for `label_pieces`."""
    labelled = label_pieces(
        pattern, reference=reference, verdict=verdict, unit=unit, words=words, form=form
    )
    return tuple(_drawn(piece, words, form) for piece in labelled)


def _drawn(labelled: FinishedPiece, words: Words, form: Form) -> Drawn:
    items = (item for item in mark_piece(labelled, words) if item.role not in form.without)
    texts = map(written, labelled.labels)
    return Drawn(labelled, Group(labelled.piece.name, labelled.piece.title, (*items, *texts)))


def compose(
    title: str,
    pieces: tuple[Drawn, ...],
    words: Words,
    *,
    legend: Legend | None = None,
    notes: tuple[Note, ...] = (),
    ground: Ground = None,
) -> Composed:
    """Lay the pieces, and the legend where one is given, on one sheet.

    Args:
        title: Title of the pattern.
        pieces: What to lay.
        words: The sheet's language.
        legend: Laid among the pieces; it stays upright.
        notes: Blocks of text laid among them.
        ground: What it will be printed on, if it will.
    """
    groups = [*(note.group for note in notes), *(piece.group for piece in pieces)]
    blocks = [Block(n.group.name, _box(n.width, n.height), may_turn=False) for n in notes]
    blocks += [Block(p.group.name, polygon(p.finished.cut_line)) for p in pieces]
    if legend is not None:
        groups.insert(0, legend.group)
        area = _box(legend.width, legend.height)
        blocks.insert(
            0, Block(LEGEND, area, may_turn=False, pinned=not isinstance(ground, Roll | None))
        )
    laid = arrange(tuple(blocks), ground)
    sheet = Sheet(
        width=laid.width,
        height=laid.height,
        title=title,
        description=words.description.format(
            count=len(pieces), pieces=", ".join(p.group.title for p in pieces)
        ),
        groups=tuple(_placed(g, move) for g, move in zip(groups, laid.moves, strict=True)),
    )
    return Composed(sheet, laid)


def _box(width: float, height: float) -> shapely.Polygon:
    return shapely.box(0.0, -height, width, 0.0)


def _placed(group: Group, move: Transform) -> Group:
    """The group where it lies; on a piece that lies head down the texts are turned back.

    Each name is turned in its own box and the block of labels in its box as a whole, so all keep
    exactly the room that was found for them.
    """
    moved = group.transformed(move)
    if move.a > 0:
        return moved
    texts = [item for item in moved.items if isinstance(item, Text)]
    back = turn(180.0, _middle([text for text in texts if text.role is Role.LABEL]))
    return replace(
        moved,
        items=tuple(
            item.transformed(back if item.role is Role.LABEL else turn(180.0, _middle([item])))
            if isinstance(item, Text)
            else item
            for item in moved.items
        ),
    )


def _middle(texts: Sequence[Text]) -> Point:
    """Middle of the box round texts that all run in one direction, the box along with them."""
    if not texts:
        return Point(0.0, 0.0)
    first, _, third, _ = block_corners(texts)
    return first.toward(third, 0.5)
