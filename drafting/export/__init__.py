"""Bytes: JSON, SVG, PDF, PNG, DXF, ZIP. The only rooms that write files' formats."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from drafting import DRAFTING_VERSION
from drafting.export import archive, dxf, json, png, svg
from drafting.export.identity import pattern_id
from drafting.export.language import told

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


Write = Callable[["Work", "Output"], bytes]


@dataclass(frozen=True, slots=True)
class _InLanguage:
    """A writer that is given the work in the language that is asked for."""

    write: Write

    def __call__(self, work: Work, output: Output) -> bytes:
        return self.write(told(work, output), output)


def _pdf(work: Work, output: Output) -> bytes:
    from drafting.export import pdf  # noqa: PLC0415 - a service writes PDF in other processes

    return pdf.write(work, output)


def _everything(work: Work, output: Output) -> bytes:
    """A file in each of the other formats, named by the garment's kind, and a manifest."""
    kind = work.pattern.pattern.kind
    files = tuple(
        archive.ArchivedFile(f"{kind}.{f.extension}", f.media_type, f.write(work, output))
        for f in FORMATS.values()
        if f.name != "zip"
    )
    told = {
        "id": pattern_id(work),
        "drafting_version": DRAFTING_VERSION,
        "verdict": work.verdict,
        "kind": kind,
    }
    return archive.with_manifest(files, told)


FORMATS: dict[FormatName, Format] = {
    "json": Format("json", "application/json", "json", _InLanguage(json.write)),
    "svg": Format("svg", "image/svg+xml", "svg", _InLanguage(svg.write)),
    "pdf": Format("pdf", "application/pdf", "pdf", _InLanguage(_pdf)),
    "png": Format("png", "image/png", "png", _InLanguage(png.write)),
    "dxf": Format("dxf", "image/vnd.dxf", "dxf", _InLanguage(dxf.write)),
    "zip": Format("zip", archive.MEDIA_TYPE, "zip", _everything),
}
"""Every format that an order may ask for."""

__all__ = ["FORMATS", "Format", "pattern_id"]
