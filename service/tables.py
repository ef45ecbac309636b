"""The tables that the command line prints: seams, checks, findings. Lengths in cm."""

from __future__ import annotations

from collections import Counter
from math import isfinite
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from drafting.checks import SeamMeasured
    from drafting.pattern import Check, SeamPart
    from drafting.workroom import Work

Row = tuple[str, ...]


def seams_table(done: Work) -> str:
    """Each seam: its two sides as drawn, the ease wanted, what is left over."""
    head = ("seam", "side one", "cm", "side two", "cm", "ease", "off", "")
    return table(head, [_seam(measured) for measured in done.seams])


def checks_table(done: Work) -> str:
    """Each check: wanted, what would do, drafted."""
    head = ("check", "wanted", "at least", "at most", "drafted", "", "")
    return table(head, [_check(check) for check in done.pattern.checks])


def findings_list(done: Work) -> str:
    """Each remark on a line of its own."""
    return "".join(f"{f.severity}: {f.message}\n" for f in done.pattern.findings)


def _seam(measured: SeamMeasured) -> Row:
    seam = measured.seam
    one, two = measured.lengths
    return (
        seam.name,
        _edges(seam.one),
        f"{_sewn(seam.one, one):.2f}",
        _edges(seam.two),
        f"{_sewn(seam.two, two):.2f}",
        f"{seam.ease.wanted:.2f}",
        f"{measured.difference:+.3f}",
        "matches" if measured.matches else "DOES NOT MATCH",
    )


def _edges(parts: tuple[SeamPart, ...]) -> str:
    counts = Counter(f"{part.piece} {part.edge}" for part in parts for _ in range(part.count))
    return " + ".join(f"{count} x {name}" if count > 1 else name for name, count in counts.items())


def _sewn(parts: tuple[SeamPart, ...], lengths: tuple[float, ...]) -> float:
    return sum(part.count * length for part, length in zip(parts, lengths, strict=True))


def _check(check: Check) -> Row:
    low, high = _bound(check.low), _bound(check.high)
    drafted = f"{check.drafted:.2f}"
    verdict = "passed" if check.passed else "FAILED" if check.kind == "must" else "remark"
    return (check.name, f"{check.wanted:.2f}", low, high, drafted, check.unit, verdict)


def _bound(value: float) -> str:
    return f"{value:.2f}" if isfinite(value) else ""


def table(head: Row, rows: Sequence[Row]) -> str:
    """Rows under their heads, numbers to the right.

    >>> print(table(("seam", "cm"), [("inseam", "76.30"), ("side", "8.00")]))
    seam       cm
    ------  -----
    inseam  76.30
    side     8.00
    <BLANKLINE>
    """
    widths = [max(len(row[i]) for row in (head, *rows)) for i in range(len(head))]
    ruled = (head, tuple("-" * width for width in widths), *rows)
    right = [all(_is_number(row[i]) for row in rows) for i in range(len(head))]
    return "".join(_line(row, widths, right) for row in ruled)


def _is_number(text: str) -> bool:
    return not text.strip("+-.0123456789")


def _line(row: Row, widths: list[int], right: list[bool]) -> str:
    cells = zip(row, widths, right, strict=True)
    return "  ".join(c.rjust(w) if r else c.ljust(w) for c, w, r in cells).rstrip() + "\n"
