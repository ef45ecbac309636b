"""The pattern in the form asked for: allowances off, cloth that shrinks, pairs, halves, scale.

Everything is done on the net pieces, which are then finished again; so corners, caps and notches
are those of the pattern, whatever was asked for. Centimetres, Y up.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.craft.piecework import moved, turned_over
from drafting.drawing.output import SCALES, Output
from drafting.drawing.print_words import PrintWords
from drafting.drawing.unfolding import MIRRORED, unfolded
from drafting.errors import OutputError
from drafting.geometry import Path, Transform, scale
from drafting.pattern import (
    Allowances,
    Cut,
    Finish,
    FinishedNotch,
    FinishedPattern,
    FinishedPiece,
    Notch,
    Pattern,
    Piece,
    Seam,
    SeamPart,
)
from drafting.pattern.finish import edge_allowance, finish_pattern

SCREEN = 3
"""On screens pieces are drawn a third of their size, so that texts and marks on them are bigger."""

NO_ALLOWANCES = Finish(allowances=Allowances(seam=0.0, hem=0.0))


def dressed(pattern: FinishedPattern, output: Output) -> FinishedPattern:
    """The pattern with the allowances and the shrinkage asked for, as every format tells it.

    Net lines lie farther apart for cloth that shrinks; allowances stay as they are, since they are
    sewn before the first wash. Seams and checks keep speaking of the washed garment.
    """
    net = _enlarged(pattern.pattern, output)
    if net is pattern.pattern and output.allowances:
        return pattern
    return _finished(pattern, net, replace(output, lines="both"))


def drawn_as(pattern: FinishedPattern, output: Output, words: PrintWords) -> FinishedPattern:
    """The dressed pattern with the pieces to draw: chosen, in pairs, unfolded, to scale.

    Args:
        pattern: The finished pattern.
        output: What to draw.
        words: The sheet's language.

    Raises:
        OutputError: A piece is named that is not there, or nothing would be left to draw.
    """
    if output.lines == "cut" and not output.allowances:
        raise OutputError(
            "Without allowances there are no cutting lines: choose the lines net or both.",
            where="output.lines",
            code="nothing_to_draw",
            received=output.lines,
            allowed=["both", "net"],
        )
    names = _chosen(pattern, output)
    net = _multiplied(_enlarged(pattern.pattern, output), output, words)
    if net is pattern.pattern and output.allowances and output.lines != "net":
        whole = pattern
    else:
        whole = _finished(pattern, net, output)
    pieces = tuple(p for p in whole.pieces if p.piece.number in names)
    factor = SCREEN if output.view == "screen" else SCALES[output.scale]
    if factor != 1:
        pieces = tuple(_scaled(p, scale(1 / factor)) for p in pieces)
    return replace(whole, pieces=pieces)


def _finished(pattern: FinishedPattern, net: Pattern, output: Output) -> FinishedPattern:
    """Net pieces finished again; net lines are drawn bare and tell what is to be added."""
    finish = pattern.finish if output.allowances else NO_ALLOWANCES
    drawn = NO_ALLOWANCES if output.lines == "net" else finish
    pieces = finish_pattern(net, drawn).pieces
    if drawn != finish:
        pieces = tuple(
            replace(p, allowances=tuple(edge_allowance(e, finish) for e in p.piece.edges))
            for p in pieces
        )
    return replace(pattern, pattern=net, pieces=pieces)


def _chosen(pattern: FinishedPattern, output: Output) -> frozenset[int]:
    """Numbers of the pieces asked for."""
    numbers = {p.piece.name: p.piece.number for p in pattern.pieces}
    for name in output.pieces:
        if name not in numbers:
            raise OutputError(
                f"There is no piece {name!r} in this pattern.",
                where="output.pieces",
                code="unknown_piece",
                received=name,
                allowed=list(numbers),
            )
    return frozenset(numbers[name] for name in output.pieces or numbers)


def _enlarged(net: Pattern, output: Output) -> Pattern:
    """The net pattern drawn larger by what the cloth will shrink."""
    along, across = output.shrinkage.lengthwise, output.shrinkage.crosswise
    if not (along or across):
        return net
    by = scale(100 / (100 - across), 100 / (100 - along))
    return replace(net, pieces=tuple(_stretched(piece, by) for piece in net.pieces))


def _stretched(piece: Piece, by: Transform) -> Piece:
    """The piece's image under a move that changes lengths: notches stay at their places."""
    image = moved(piece, by)

    def carried(notch: Notch) -> Notch:
        place = piece.edge(notch.edge).path.locate(notch.at)
        return replace(notch, at=image.edge(notch.edge).path.distance_of(*place))

    return replace(image, notches=tuple(map(carried, piece.notches)))


def _multiplied(net: Pattern, output: Output, words: PrintWords) -> Pattern:
    """The pattern with halves unfolded and pairs drawn, where that was asked for.

    The seams name the new edges and pieces too, since allowances meet in the order of sewing.
    """
    pieces, seams = net.pieces, net.seams
    if output.unfold:
        pieces = tuple(unfolded(p) if p.half else p for p in pieces)
        seams = tuple(_with_twins(seam, "", MIRRORED) for seam in seams)
    if output.pairs:
        pieces = tuple(each for p in pieces for each in _both(p, words))
        for side in ("_right", "_left"):
            seams = tuple(_with_twins(seam, side, "") for seam in seams)
    return net if pieces == net.pieces else replace(net, pieces=pieces, seams=seams)


def _with_twins(seam: Seam, piece: str, edge: str) -> Seam:
    """The seam with each edge named a second time, by the names that end so."""

    def twins(parts: tuple[SeamPart, ...]) -> tuple[SeamPart, ...]:
        return tuple(replace(p, piece=p.piece + piece, edge=p.edge + edge) for p in parts)

    return replace(seam, one=(*seam.one, *twins(seam.one)), two=(*seam.two, *twins(seam.two)))


def _both(piece: Piece, words: PrintWords) -> Iterator[Piece]:
    """The right and the left of a pair; a single piece as it is."""
    if not piece.is_pair:
        yield piece
        return
    for side, title, image in (
        ("right", words.right, piece),
        ("left", words.left, turned_over(piece)),
    ):
        yield replace(
            image,
            name=f"{piece.name}_{side}",
            title=title.format(title=piece.title),
            cut=tuple(_one(c) for c in piece.cut if c.mirrored or side == "right"),
        )


def _one(cut: Cut) -> Cut:
    return Cut(cut.cloth, cut.quantity // 2 if cut.mirrored else cut.quantity)


def _scaled(finished: FinishedPiece, by: Transform) -> FinishedPiece:
    """The piece's image; allowances tell what they are in life."""

    def cut(path: Path | None) -> Path | None:
        return path and path.transformed(by)

    return replace(
        finished,
        piece=_stretched(finished.piece, by),
        cut_line=finished.cut_line.transformed(by),
        edge_cuts=tuple(map(cut, finished.edge_cuts)),
        corners=tuple(replace(c, at=by.point(c.at), path=cut(c.path)) for c in finished.corners),
        notches=tuple(_notch(n, by) for n in finished.notches),
    )


def _notch(notch: FinishedNotch, by: Transform) -> FinishedNotch:
    at = notch.notch.at * by.a
    return replace(
        notch,
        notch=replace(notch.notch, at=at),
        point=by.point(notch.point),
        cut=by.point(notch.cut),
    )
