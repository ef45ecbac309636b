"""Two methods side by side, as JSON and SVG."""

from __future__ import annotations

from typing import TYPE_CHECKING

from drafting import DRAFTING_VERSION
from drafting.export.compact import compact
from drafting.export.identity import Plain
from drafting.export.paths import MM, rounded
from drafting.export.svg import render
from drafting.teaching.comparing import overlaid
from drafting.teaching.frames import SCALE

if TYPE_CHECKING:
    from drafting.teaching.comparing import Compared, Difference

PREFIX = "beside"


def write_json(compared: Compared) -> bytes:
    """The comparison as UTF-8 JSON; lengths in mm, angles in degrees."""
    return compact(document(compared))


def document(compared: Compared) -> Plain:
    """The comparison as plain values."""
    return {
        "drafting_version": DRAFTING_VERSION,
        "unit": "mm",
        "title": compared.one.title,
        "methods": [compared.one.method, compared.two.method],
        "aligned_at": compared.anchor,
        "measures": [_difference(d) for d in compared.measures],
        "lengths": [_difference(d) for d in compared.lengths],
        "points": [
            {"name": name, "right": rounded(x * MM), "up": rounded(y * MM)}
            for name, x, y in compared.points
        ],
    }


def _difference(found: Difference) -> Plain:
    factor = MM if found.unit == "cm" else 1.0
    values = (("one", found.one), ("two", found.two), ("difference", found.by))
    told: Plain = {"what": found.what, "unit": "mm" if found.unit == "cm" else found.unit}
    return told | {k: None if v is None else rounded(v * factor) for k, v in values}


def write_svg(compared: Compared) -> bytes:
    """Both outlines over each other, in UTF-8."""
    return render(overlaid(compared, SCALE), PREFIX)
