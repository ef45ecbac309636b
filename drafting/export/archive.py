"""Files in one ZIP with a manifest: no clock is read, so the same files give the same bytes."""

from __future__ import annotations

import hashlib
import json
import re
import zipfile
from collections.abc import Iterable
from dataclasses import dataclass
from io import BytesIO
from typing import Any

MEDIA_TYPE = "application/zip"
EPOCH = (1980, 1, 1, 0, 0, 0)
"""The earliest time that a ZIP can tell; every entry has it."""
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
    def told(self) -> dict[str, Any]:
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


def zipped(files: Iterable[ArchivedFile]) -> bytes:
    """These files in one ZIP, in their order."""
    out = BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for file in files:
            archive.writestr(entry(file.name), file.body)
    return out.getvalue()


def with_manifest(files: tuple[ArchivedFile, ...], told: dict[str, Any]) -> bytes:
    """These files in one ZIP, and a manifest that tells of them beside what it is given."""
    manifest = json_text(told | {"files": [file.told for file in files]})
    return zipped((*files, ArchivedFile(MANIFEST, "application/json", manifest)))


def json_text(document: dict[str, Any]) -> bytes:
    """A document for people to read in an archive, in UTF-8."""
    return (json.dumps(document, ensure_ascii=False, indent=1, allow_nan=False) + "\n").encode()


def file_stem(name: str) -> str:
    """A name as part of a file's name that every system takes."""
    return re.sub(r"[^A-Za-z0-9_-]+", "-", name).strip("-") or "size"
