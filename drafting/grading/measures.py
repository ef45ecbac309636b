"""The table of a range: what each size measures when it is finished, and how long its seams are."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from drafting.checks import SeamMeasured, finished_measurements
from drafting.grading.sizes import SizeRange
from drafting.pattern import Pattern
from drafting.workroom import Work

RowKind = Literal["body", "finished", "seam"]
RowUnit = Literal["cm", "deg"]
Key = tuple[RowKind, str, RowUnit]


@dataclass(frozen=True, slots=True)
class MeasureRow:
    """One measure over all sizes.

    Attributes:
        kind: Of the body, of the finished garment, or the sewn length of an edge in a seam.
        name: The measure; for seams "seam: piece edge".
        unit: "cm" or "deg".
        values: One for each size of the table; None where the size has none.
    """

    kind: RowKind
    name: str
    unit: RowUnit
    values: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class MeasureTable:
    """Measures in rows, sizes in columns."""

    sizes: tuple[str, ...]
    rows: tuple[MeasureRow, ...]


def measure_table(sizes: SizeRange) -> MeasureTable:
    """The measures of all sizes; a size that was not drafted has an empty column.

    The body's are those that the garment needs or uses; the others are measured on the drawn
    lines.
    """
    columns = [dict(_measures(s.work, sizes)) if s.work else {} for s in sizes.sizes]
    keys = dict.fromkeys(key for column in columns for key in column)
    return MeasureTable(
        sizes.names,
        tuple(MeasureRow(*key, tuple(column.get(key) for column in columns)) for key in keys),
    )


def _measures(work: Work, sizes: SizeRange) -> Iterator[tuple[Key, float]]:
    for name in (*sizes.garment.needs, *sizes.garment.optional):
        if work.body.has(name):
            yield ("body", name, "cm"), work.body.value(name)
    yield from measured_on(work.pattern.pattern, work.seams)


def measured_on(pattern: Pattern, seams: tuple[SeamMeasured, ...]) -> Iterator[tuple[Key, float]]:
    """Key and value of everything that is measured on one size's drawn lines."""
    units = {want.name: want.unit for want in pattern.finished_measurements}
    for name, value in finished_measurements(pattern):
        yield ("finished", name, units[name]), value
    for measured in seams:
        parts = (*measured.seam.one, *measured.seam.two)
        lengths = (length for side in measured.lengths for length in side)
        for part, length in zip(parts, lengths, strict=True):
            yield ("seam", f"{measured.seam.name}: {part.piece} {part.edge}", "cm"), length
