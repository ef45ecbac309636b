"""How each role looks on paper: black on white, told apart by breadth and dashes, not by colour."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.drawing import Role, Stroke


@dataclass(frozen=True, slots=True)
class Style:
    """Breadth in mm, dash and gap lengths in mm (empty: solid), grey from 0 black to 1 white."""

    width: float
    dashes: tuple[float, ...] = ()
    grey: float = 0.0


STYLES: dict[Role, Style] = {
    Role.CUT: Style(0.7),
    Role.STITCH: Style(0.35, (4.0, 2.0)),
    Role.DART: Style(0.35, (2.5, 1.5)),
    Role.FOLD: Style(0.5, (8.0, 2.0, 1.5, 2.0)),
    Role.GRAIN: Style(0.5),
    Role.NOTCH: Style(0.6),
    Role.DRILL: Style(0.4),
    Role.LEVEL: Style(0.2, (), 0.35),
    Role.LENGTHEN: Style(0.3),
    Role.MARK: Style(0.3, (1.5, 1.5)),
    Role.LABEL: Style(0.3),
    Role.CAUTION: Style(0.3),
    Role.SQUARE: Style(0.25),
    Role.GRID: Style(0.15, (), 0.6),
    Role.JOIN: Style(0.15, (1.0, 2.0), 0.4),
    Role.DIAMOND: Style(0.2, (), 0.3),
    Role.NEW: Style(0.5),
    Role.OLD: Style(0.25, (), 0.4),
    Role.FAINT: Style(0.12, (), 0.6),
    Role.DIMENSION: Style(0.15, (), 0.15),
}
"""Source for thick cut, dashed stitch and thin level lines: common practice, no source."""


def look(stroke: Stroke) -> Style:
    """The look of a line: its own, else that of its role."""
    if stroke.pen is None:
        return STYLES[stroke.role]
    return Style(stroke.pen.width, stroke.pen.dashes)


TEXT_GREY: dict[Role, float] = {Role.LEVEL: 0.25, Role.GRID: 0.55, Role.OLD: 0.4}
"""Grey of texts by role; black where none is given."""

CLEARED = frozenset({Role.LABEL, Role.NEW, Role.OLD, Role.DIMENSION})
"""Texts that white out the thin lines under them, since on a small piece they must cross some."""
