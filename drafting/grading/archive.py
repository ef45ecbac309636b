"""A range as one ZIP: a file for each size, the tables, and a manifest. Same range, same bytes."""

from __future__ import annotations

import hashlib
import json
import re
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from io import BytesIO

from drafting import DRAFTING_VERSION
from drafting.drawing import Output
from drafting.errors import DraftingError
from drafting.export import Format, pattern_id
from drafting.grading.documents import (
    Plain,
    grade_document,
    refusal_document,
    size_told,
    table_csv,
    table_document,
)
from drafting.grading.grade import grade_report
from drafting.grading.measures import measure_table
from drafting.grading.sizes import SizeRange

MEDIA_TYPE = "application/zip"
EPOCH = (1980, 1, 1, 0, 0, 0)
"""The earliest time that a ZIP can tell; every entry has it, since no clock is read."""
READABLE = 0o100644 << 16
"""A plain file that everybody may read."""
MANIFEST = "manifest.json"


@dataclass(frozen=True, slots=True)
class ArchivedFile:
    """A file of an archive."""

    name: str
    media_type: str
    body: bytes

    @property
    def told(self) -> Plain:
        """What a manifest says of it."""
        return {
            "file": self.name,
            "media_type": self.media_type,
            "bytes": len(self.body),
            "sha256": hashlib.sha256(self.body).hexdigest(),
        }


def entry(name: str) -> zipfile.ZipInfo:
    """The entry of a file, without a clock's time."""
    told = zipfile.ZipInfo(name, EPOCH)
    told.create_system = 3
    told.external_attr = READABLE
    told.compress_type = zipfile.ZIP_DEFLATED
    return told


def zipped(files: list[ArchivedFile]) -> bytes:
    """These files in one ZIP, in their order."""
    out = BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for file in files:
            archive.writestr(entry(file.name), file.body)
    return out.getvalue()


def file_stem(name: str) -> str:
    """A name as part of a file's name that every system takes."""
    return re.sub(r"[^A-Za-z0-9_-]+", "-", name).strip("-") or "size"


Refuse = Callable[[DraftingError], Plain]


def range_archive(
    sizes: SizeRange,
    chosen: Format,
    output: Output,
    *,
    allow_unsound: bool = False,
    refuse: Refuse = refusal_document,
) -> bytes:
    """A file for each size in a format, measures.csv, measures.json, grade.json and the manifest.

    Args:
        sizes: The range.
        chosen: Format of the sizes' files.
        output: Paper, language and unit.
        allow_unsound: Write unsound sizes too; else only the manifest tells of them.
        refuse: Tells why a size cannot be drafted.

    Raises:
        OutputError: A size cannot be made in the form that was asked for.
    """
    table, grade = measure_table(sizes), grade_document(grade_report(sizes))
    patterns = list(_patterns(sizes, chosen, output, refuse, allow_unsound=allow_unsound))
    files = [file for _, file in patterns if file is not None]
    files += [
        ArchivedFile("measures.csv", "text/csv", table_csv(table).encode()),
        ArchivedFile("measures.json", "application/json", _json(table_document(table))),
        ArchivedFile("grade.json", "application/json", _json(grade)),
    ]
    manifest = {
        "drafting_version": DRAFTING_VERSION,
        "kind": sizes.garment.kind,
        "sizes": [size for size, _ in patterns],
        "files": [file.told for file in files],
    }
    return zipped([*files, ArchivedFile(MANIFEST, "application/json", _json(manifest))])


def _patterns(
    sizes: SizeRange, chosen: Format, output: Output, refuse: Refuse, *, allow_unsound: bool
) -> Iterator[tuple[Plain, ArchivedFile | None]]:
    """What the manifest says of each size, and its file where it has one."""
    taken: set[str] = set()
    for size in sizes.sizes:
        told: Plain = {"name": size.name, **size_told(size, refuse)}
        file = None
        if size.work is not None:
            told["id"] = pattern_id(size.work)
        if size.work is not None and (size.sound or allow_unsound):
            stem = _unused(f"{sizes.garment.kind}-{file_stem(size.name)}", taken)
            name = f"{stem}.{chosen.extension}"
            file = ArchivedFile(name, chosen.media_type, chosen.write(size.work, output))
            told["file"] = name
        yield told, file


def _unused(stem: str, taken: set[str]) -> str:
    """The stem, with a number where another size has it already."""
    name, number = stem, 1
    while name.lower() in taken:
        number += 1
        name = f"{stem}-{number}"
    taken.add(name.lower())
    return name


def _json(document: Plain) -> bytes:
    return (json.dumps(document, ensure_ascii=False, indent=1, allow_nan=False) + "\n").encode()
