"""A range as one ZIP: a file for each size, the tables, and a manifest. Same range, same bytes."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from drafting import DRAFTING_VERSION
from drafting.drawing import Output
from drafting.errors import DraftingError
from drafting.export import Format, pattern_id
from drafting.export.archive import ArchivedFile, file_stem, json_text, with_manifest
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
    table, grade = measure_table(sizes), grade_document(grade_report(sizes), output.language)
    patterns = list(_patterns(sizes, chosen, output, refuse, allow_unsound=allow_unsound))
    files = [file for _, file in patterns if file is not None]
    files += [
        ArchivedFile("measures.csv", "text/csv", table_csv(table).encode()),
        ArchivedFile("measures.json", "application/json", json_text(table_document(table))),
        ArchivedFile("grade.json", "application/json", json_text(grade)),
    ]
    manifest = {
        "drafting_version": DRAFTING_VERSION,
        "kind": sizes.garment.kind,
        "sizes": [size for size, _ in patterns],
    }
    return with_manifest(tuple(files), manifest)


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
