"""A half piece drawn whole: its mirror image joined on along the fold."""

from __future__ import annotations

from dataclasses import replace
from typing import TypeVar

from drafting.craft.piecework import moved
from drafting.geometry import Point, Transform, join, mirror
from drafting.pattern import Dart, Edge, Mark, Notch, Piece, Pleat, Role

MIRRORED = "_mirrored"
"""Names of the new half's edges end in it."""
ON_FOLD = 1e-3
"""Ends of lines this near to the fold (cm) lie on it."""

Level = tuple[str, Point, Point]
Take = TypeVar("Take", Dart, Pleat)


def unfolded(piece: Piece) -> Piece:
    """The whole of a half piece; the fold is left as a line inside. Cm, Y up.

    A piece without a fold, or with edges between its folds, is left as it is.
    """
    half = _from_fold(piece.edges)
    folds = tuple(e for e in piece.edges if e.role is Role.FOLD)
    if not folds or len(half) != len(piece.edges) - len(folds):
        return piece
    start, end = half[-1].path.end, half[0].path.start
    by = mirror(start, end - start)
    image = moved(piece, by)
    length = {e.name: e.path.length() for e in half}
    return replace(
        piece,
        edges=(*half, *(_other(e.transformed(by)) for e in reversed(half))),
        darts=(*piece.darts, *(_named(d.transformed(by, swap=True)) for d in piece.darts[::-1])),
        pleats=(*piece.pleats, *(_named(p.transformed(by, swap=True)) for p in piece.pleats[::-1])),
        notches=(*piece.notches, *(_mirrored(n, length[n.edge]) for n in piece.notches)),
        levels=_joined(piece.levels, image.levels, by),
        lengthen=tuple((a, b) for _, a, b in _joined(_nameless(piece), _nameless(image), by)),
        marks=(*piece.marks, *image.marks, Mark("fold", join(e.path for e in folds))),
        half=False,
    )


def _from_fold(edges: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """The edges from the end of the fold round to its start."""
    count = len(edges)
    ends = (i for i, e in enumerate(edges) if e.role is Role.FOLD)
    first = next((i + 1 for i in ends if edges[(i + 1) % count].role is not Role.FOLD), 0)
    found: list[Edge] = []
    for i in range(first, first + count):
        if edges[i % count].role is Role.FOLD:
            break
        found.append(edges[i % count])
    return tuple(found)


def _other(edge: Edge) -> Edge:
    return replace(edge.reversed(), name=edge.name + MIRRORED)


def _named(taken: Take) -> Take:
    return replace(taken, edge=taken.edge + MIRRORED)


def _mirrored(notch: Notch, length: float) -> Notch:
    return replace(notch, edge=notch.edge + MIRRORED, at=length - notch.at)


def _nameless(piece: Piece) -> tuple[Level, ...]:
    return tuple(("", *ends) for ends in piece.lengthen)


def _joined(
    lines: tuple[Level, ...], images: tuple[Level, ...], by: Transform
) -> tuple[Level, ...]:
    """Level lines across both halves: one where they meet on the fold, else two."""
    found: list[Level] = []
    for (name, left, right), (_, far_left, far_right) in zip(lines, images, strict=True):
        if right.distance(by.point(right)) < ON_FOLD:
            found.append((name, left, far_right))
        elif left.distance(by.point(left)) < ON_FOLD:
            found.append((name, far_left, right))
        else:
            found += [(name, left, right), (name + MIRRORED, far_left, far_right)]
    return tuple(found)
