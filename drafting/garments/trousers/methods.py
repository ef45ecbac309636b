"""Trousers, the methods: each draws the stitching lines of a front and a back, before trueing.

What follows them (trueing, pockets, fly, band, checks) is the same for all.

Source: each method names its own.
"""

from __future__ import annotations

from collections.abc import Callable

from drafting.body import Body
from drafting.craft.sheet import DraftSheet
from drafting.garments.trousers import mens, quarter
from drafting.garments.trousers.back import back
from drafting.garments.trousers.figure import Figure
from drafting.garments.trousers.frame import Frame
from drafting.garments.trousers.front import front
from drafting.garments.trousers.panel import Panel
from drafting.garments.trousers.seams_off import levels_off, seams_off
from drafting.garments.trousers.spec import Method, Trousers

Panels = tuple[Frame, Panel, Panel]
"""The level lines, the front, the back."""

Drafting = Callable[[Frame, Figure, Body, Trousers, DraftSheet], Panels]


def block(level: Frame, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The two-dart block, net."""
    one = front(level, person, body, cut, sheet)
    return level, one, back(level, one, person, body, cut, sheet)


def mens_block(level: Frame, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The men's block, drafted with its seams; then they come off."""
    cloth = mens.with_seams(level, cut, sheet)
    one = mens.front(cloth, person, body, cut, sheet)
    two = mens.back(cloth, one, person, body, cut, sheet)
    net = levels_off(cloth, mens.SEAM, sheet)
    return net, seams_off(one, mens.SEAM, 2 * mens.SEAM, sheet), seams_off(two, mens.SEAM, 2 * mens.SEAM, sheet)


def quarter_draft(level: Frame, person: Figure, body: Body, cut: Trousers, sheet: DraftSheet) -> Panels:
    """The dressmaker's quarter draft, net."""
    one = quarter.front(level, person, body, cut, sheet)
    return level, one, quarter.back(level, one, person, body, cut, sheet)


METHODS: dict[Method, Drafting] = {
    "block": block,
    "mens_block": mens_block,
    "quarter": quarter_draft,
}
"""How each method drafts."""
