"""Bytes: JSON, SVG, PDF. The only rooms that write files' formats."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting.export import json, pdf, svg
from drafting.export.identity import pattern_id

if TYPE_CHECKING:
    from drafting.drawing import FormatName, Output
    from drafting.workroom import Work


@dataclass(frozen=True, slots=True)
class Format:
    """A format: its name in orders, its media type, its files' ending, and who writes it."""

    name: str
    media_type: str
    extension: str
    write: Callable[[Work, Output], bytes]


FORMATS: dict[FormatName, Format] = {
    "json": Format("json", "application/json", "json", json.write),
    "svg": Format("svg", "image/svg+xml", "svg", svg.write),
    "pdf": Format("pdf", "application/pdf", "pdf", pdf.write),
}
"""Every format that an order may ask for."""

__all__ = ["FORMATS", "Format", "pattern_id"]
