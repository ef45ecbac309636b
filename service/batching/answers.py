"""How the answers of a batch are written: a line of JSON each, or a file each in a ZIP."""

from __future__ import annotations

import base64
import json
import zipfile
from collections.abc import AsyncIterator
from io import RawIOBase
from typing import Any, Protocol

from anyio import to_thread

from drafting import DRAFTING_VERSION
from drafting.export.archive import MANIFEST, ArchivedFile, entry, file_stem
from drafting.export.compact import compact
from service.batching.flow import Answered, Count
from service.batching.task import Done

NDJSON = "application/x-ndjson"
ZIP = "application/zip"
TEXTUAL = ("image/svg+xml", "text/")


class Writer(Protocol):
    """Turns what a batch yields into the bytes of its answer."""

    def write(self, stream: AsyncIterator[Answered | Count], count: Count) -> AsyncIterator[bytes]:
        """The bytes, as they become ready; the last ones tell that nothing is lacking."""
        ...


class Lines:
    """A line of JSON for each answer, for progress now and then, and for the end."""

    async def write(
        self, stream: AsyncIterator[Answered | Count], count: Count
    ) -> AsyncIterator[bytes]:
        """The lines."""
        async for each in stream:
            yield answer_line(each) if isinstance(each, Answered) else _count_line("progress", each)
        yield _count_line("end", count)


def answer_line(answered: Answered) -> bytes:
    """One answer as a line; what is JSON already is put in as it is."""
    done = answered.done
    told: dict[str, Any] = {
        "type": "problem" if done.failed else "result",
        "line": answered.line,
        "id": answered.id,
        "status": done.status,
    }
    if not done.failed:
        told |= {"verdict": done.verdict, "pattern_id": done.pattern_id}
    return compact(told)[:-1] + b',"answer":' + _answer(done) + b"}\n"


def _answer(done: Done) -> bytes:
    if done.media_type.endswith("json"):
        return done.body
    if done.media_type.startswith(TEXTUAL):
        return compact({"media_type": done.media_type, "text": done.body.decode()})
    packed = base64.b64encode(done.body).decode()
    return compact({"media_type": done.media_type, "base64": packed})


def _count_line(kind: str, count: Count) -> bytes:
    return compact({"type": kind, **told(count)}) + b"\n"


def told(count: Count) -> dict[str, Any]:
    """How far a batch is."""
    seconds = count.seconds
    return {
        "done": count.done,
        "failed": count.failed,
        "total": count.total,
        "seconds": round(seconds, 3),
        "rate": round(count.done / seconds, 2) if seconds else 0.0,
    }


class Archive:
    """A file for each pattern as it is ready; the manifest, which tells all, comes last."""

    async def write(
        self, stream: AsyncIterator[Answered | Count], count: Count
    ) -> AsyncIterator[bytes]:
        """The archive's bytes."""
        sink, told_of = _Sink(), []
        with zipfile.ZipFile(sink, "w") as archive:
            async for each in stream:
                if isinstance(each, Answered):
                    told_of.append(await to_thread.run_sync(_put, archive, each))
                    yield sink.taken()
            manifest = {
                "drafting_version": DRAFTING_VERSION,
                **{k: v for k, v in told(count).items() if k in ("done", "failed", "total")},
                "orders": told_of,
            }
            archive.writestr(entry(MANIFEST), json.dumps(manifest, ensure_ascii=False, indent=1))
        yield sink.taken()


def _put(archive: zipfile.ZipFile, answered: Answered) -> dict[str, Any]:
    """Put an answer into the archive; gives what the manifest says of it."""
    done = answered.done
    known: dict[str, Any] = {"line": answered.line, "id": answered.id, "status": done.status}
    if done.failed:
        return {**known, "problem": json.loads(done.body)}
    name = f"{answered.line:05d}-{file_stem(str(answered.id))[:60]}.{done.extension}"
    file = ArchivedFile(name, done.media_type, done.body)
    archive.writestr(entry(name), file.body)
    return {**known, "verdict": done.verdict, "pattern_id": done.pattern_id, **file.told}


class _Sink(RawIOBase):
    """Takes what a ZIP writes and gives it away in pieces; cannot go back."""

    def __init__(self) -> None:
        super().__init__()
        self._held = bytearray()

    def writable(self) -> bool:
        return True

    def write(self, part: Any) -> int:
        self._held += part
        return len(part)

    def taken(self) -> bytes:
        held = bytes(self._held)
        self._held.clear()
        return held
