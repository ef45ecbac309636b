"""Bodies by size: girth steps by the standard for size labels, the rest by statistics.

No standard's table of bodies is repeated here. A size is what its label says (bust or chest,
waist, hip, stature); every other measure is what the reference statistics expect of such a body.

Source: girth steps from memory: EN 13402-3, "Size designation of clothes - Measurements and
intervals"; men's hips by stature and waist from ANSUR II (2012), rounded; the rest as `survey.py`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.body.body import Body, Figure, Measured
from drafting.body.completing import estimated
from drafting.body.survey import ESTIMABLE
from drafting.pattern import Finding

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping


@dataclass(frozen=True, slots=True)
class Size:
    """One size of a table.

    Attributes:
        name: Stable name, as in "88-regular": bust or chest girth, and how tall.
        label: What the label says, in cm by the vocabulary's names.
    """

    name: str
    label: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class SizeTable:
    """Bodies of one figure on girth steps, each at three statures.

    Attributes:
        name: Stable name.
        title: In words.
        figure: Whose statistics complete the bodies.
        sizes: By name, the smallest first.
        from_memory: Whether the steps were written down from memory of the standard.
        sources: Where steps and measures come from.
    """

    name: str
    title: str
    figure: Figure
    sizes: Mapping[str, Size]
    from_memory: bool
    sources: tuple[str, ...]


WOMEN: tuple[tuple[float, float, float], ...] = (
    (76, 60, 84),
    (80, 64, 88),
    (84, 68, 92),
    (88, 72, 96),
    (92, 76, 100),
    (96, 80, 104),
    (100, 84, 108),
    (104, 88, 112),
    (110, 94, 117),
    (116, 100, 122),
    (122, 106, 127),
    (128, 112, 132),
    (134, 118, 137),
    (140, 124, 142),
    (146, 130, 147),
    (152, 136, 152),
)
"""Bust, waist, hip in cm. From memory: EN 13402-3."""

MEN: tuple[tuple[float, float, float], ...] = (
    (84, 72, 92),
    (88, 76, 94),
    (92, 80, 96),
    (96, 84, 99),
    (100, 88, 101),
    (104, 92, 103),
    (108, 96, 105),
    (112, 100, 107),
    (116, 104, 109),
    (120, 108, 112),
    (126, 114, 115),
    (132, 120, 118),
    (138, 126, 121),
    (144, 132, 124),
)
"""Chest, waist (from memory: EN 13402-3) and hip (from ANSUR II, rounded) in cm."""

STATURES: dict[Figure, tuple[tuple[str, float], ...]] = {
    "women": (("short", 160), ("regular", 168), ("tall", 176)),
    "men": (("short", 170), ("regular", 178), ("tall", 186)),
}
"""cm; steps of 8 about the standard's middle, from memory."""


def _sizes(figure: Figure, girths: tuple[tuple[float, float, float], ...]) -> Iterator[Size]:
    for bust, waist, hip in girths:
        for tall, stature in STATURES[figure]:
            label = {"bust_girth": bust, "waist_girth": waist, "hip_girth": hip, "stature": stature}
            yield Size(f"{bust:g}-{tall}", label)


_SOURCES = (
    "girth steps from memory: EN 13402-3, Size designation of clothes",
    "other measures: expected values by ANSUR II (2012)",
)

SIZE_TABLES: dict[str, SizeTable] = {
    "women": SizeTable(
        "women",
        "Women, by bust girth",
        "women",
        {size.name: size for size in _sizes("women", WOMEN)},
        from_memory=True,
        sources=_SOURCES,
    ),
    "men": SizeTable(
        "men",
        "Men, by chest girth",
        "men",
        {size.name: size for size in _sizes("men", MEN)},
        from_memory=True,
        sources=(*_SOURCES, "hip girths: by stature and waist from ANSUR II (2012), rounded"),
    ),
}


def size_body(table: str, size: str) -> Body:
    """The body of a size, complete; every value's origin is "size table".

    What the label does not say carries the sd of its prediction and what it was predicted from.

    Raises:
        KeyError: There is no such table, or no such size in it.
    """
    chosen = SIZE_TABLES[table]
    label = chosen.sizes[size].label
    rest = tuple(name for name in ESTIMABLE if name not in label)
    expected = estimated(label, chosen.figure, rest)
    values = {name: Measured(float(value), "size table") for name, value in label.items()}
    for name, one in expected.items():
        values[name] = Measured(one.value, "size table", one.sd, one.sources)
    return Body(chosen.figure, values)


def size_findings(table: str) -> tuple[Finding, ...]:
    """A note where the table's steps were written down from memory. Raises KeyError."""
    if not SIZE_TABLES[table].from_memory:
        return ()
    return (
        Finding(
            code="size_from_memory",
            severity="note",
            where="size",
            message="The girth steps of this size table were written down from memory of the "
            "standard. Compare them with the label's own measures before cutting for sale.",
        ),
    )
