"""How a skirt without side shaping is cut in panels, by where it opens and how wide the cloth is.

Source: as few seams as the cloth allows, none down the front before one there, the centre on the
fold: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from drafting.craft.around import Opening
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError

Panels = Literal[1, 2, 3, 4, 8]

AROUND = 3.0
"""Room in cm that allowances need across the cloth. House method."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Panels of half the skirt from the centre back forward, each with an equal share of the half.

    Attributes:
        panels: How many panels the whole skirt has.
        names: Names of those of the half.
        back_on_fold: Whether the centre back lies on the fold.
        front_on_fold: Whether the centre front does.
    """

    panels: int
    names: tuple[str, ...]
    back_on_fold: bool = False
    front_on_fold: bool = False

    @property
    def uprights(self) -> tuple[str, ...]:
        """Names of the uprights from the centre back to the centre front."""
        return UPRIGHTS[len(self.names)]

    @property
    def side(self) -> int:
        """Number of the upright at the side. Raises ValueError where there is none."""
        return self.uprights.index("side")

    def folded(self, n: int) -> bool:
        """Whether the n-th panel lies on the fold."""
        return (self.back_on_fold and n == 0) or (self.front_on_fold and n == len(self.names) - 1)

    def opened(self, n: int, whole: float) -> float:
        """What the n-th panel, unfolded, has of the whole skirt's width or angle."""
        return whole / 2 / len(self.names) * (2 if self.folded(n) else 1)

    def fold_at(self, k: int) -> bool:
        """Whether the k-th upright is a fold."""
        last = len(self.names)
        return (k == 0 and self.back_on_fold) or (k == last and self.front_on_fold)

    def in_front(self, n: int) -> bool:
        """Whether the n-th panel is drawn with its centre to the right, as a front is."""
        return n >= len(self.names) / 2 or len(self.names) == 1


FOUR = ("back", "side_back", "side_front", "front")
LAYOUTS: dict[Opening, tuple[Layout, ...]] = {
    "centre_back": (
        Layout(1, ("skirt",), front_on_fold=True),
        Layout(3, ("back", "front"), front_on_fold=True),
        Layout(2, ("skirt",)),
        Layout(4, ("back", "front")),
        Layout(8, FOUR),
    ),
    "side": (
        Layout(2, ("back", "front"), back_on_fold=True, front_on_fold=True),
        Layout(4, ("back", "front")),
        Layout(8, FOUR),
    ),
}
"""In the order in which they are tried."""

TITLES = {
    "skirt": "Skirt",
    "back": "Skirt back",
    "side_back": "Skirt side back",
    "side_front": "Skirt side front",
    "front": "Skirt front",
}
UPRIGHTS = {
    1: ("centre_back", "centre_front"),
    2: ("centre_back", "side", "centre_front"),
    4: ("centre_back", "back_princess", "side", "front_princess", "centre_front"),
}


@dataclass(frozen=True, slots=True)
class Lie:
    """A way in which panels may lie on the cloth: its words, and the width that a layout needs."""

    words: str
    needed: Callable[[Layout], float]


def pocketed_panels(plan: Layout) -> tuple[str, str]:
    """Names of the panels before and behind the side seam, which a pocket opens.

    Raises:
        SpecError: The panels go round the sides.
    """
    if "side" not in plan.uprights:
        raise SpecError(
            f'pocket "in_seam" needs side seams, and in {plan.panels} panels the skirt has none: choose panels 4, or pocket "none".',
            where="garment.pocket", received="in_seam",
        )
    return plan.names[plan.side], plan.names[plan.side - 1]


def chosen_layout(
    opening: Opening, asked: int | None, cloth: float, lies: tuple[Lie, ...], sheet: DraftSheet, *, names: tuple[str, ...] = ()
) -> tuple[Layout, Lie]:
    """The first layout whose panels lie on the cloth, and how.

    Args:
        opening: Where the skirt opens.
        asked: How many panels are asked for; None leaves it to the cloth.
        cloth: Width of the cloth in cm.
        lies: How panels may lie, the better way first; needed widths in cm without allowances.
        sheet: Records what was tried.
        names: Names of the panels of the half that the layout must have; any by default.

    Raises:
        SpecError: The cloth is too narrow, or this closure does not go with so many panels.
    """
    able = tuple(plan for plan in LAYOUTS[opening] if names in ((), plan.names))
    choices = tuple(plan for plan in able if asked in (None, plan.panels))
    if not choices:
        numbers = tuple(dict.fromkeys(plan.panels for plan in able))
        raise SpecError(
            f"With the zip at the {opening.replace('_', ' ')} the skirt is cut in {', '.join(map(str, numbers))} panels.",
            where="garment.panels", received=asked, allowed=numbers,
        )
    for plan in choices:
        for lie in lies:
            if sheet.compare(f"{plan.panels} panels, {lie.words}", lie.needed(plan) + AROUND, "<=", cloth, "Does the widest panel lie on the cloth?", "As few seams as the cloth allows."):
                return plan, lie
    best = min(lie.needed(plan) for plan in choices for lie in lies) + AROUND
    raise SpecError(
        f"The cloth is too narrow: a panel needs {best:.0f} cm. Choose wider cloth, {'other panels, ' if asked else ''}or a smaller skirt.",
        where="garment.cloth_width", received=cloth, allowed=(best, 320.0),
    )
