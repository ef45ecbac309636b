"""A batch as it is sent: one order on each line, each with an id of its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from service.problems import ProblemError, Trouble
from service.reading import decode
from service.refusals import what

if TYPE_CHECKING:
    from service.settings import Settings

LONGEST_ID = 120
"""Characters of an order's id."""

Id = str | int | None


@dataclass(frozen=True, slots=True)
class Ticket:
    """An order of a batch that can be drafted, or at least tried.

    Attributes:
        line: Number of its line, from 1.
        id: What the client calls it.
        body: The line.
    """

    line: int
    id: Id
    body: bytes


@dataclass(frozen=True, slots=True)
class Spoiled:
    """A line that holds no order of this batch; `id` is None where none could be read."""

    line: int
    id: Id
    problem: ProblemError


def split(body: bytes, settings: Settings) -> list[bytes]:
    """The lines of a batch; blank ones are kept so that the numbers of the others hold.

    Raises:
        ProblemError: malformed-json where there is no order at all, too-large where there are
            more lines than are taken.
    """
    lines = body.split(b"\n")
    count = sum(1 for line in lines if line.strip())
    if not count:
        detail = "The batch is empty: send one order as JSON on each line."
        trouble = Trouble(pointer="", code="empty_batch", detail=detail)
        raise ProblemError("malformed-json", detail, (trouble,))
    if count > settings.batch_lines:
        detail = f"The batch has {count} orders; at most {settings.batch_lines} are taken."
        raise ProblemError("too-large", detail)
    return lines


def sort_out(lines: list[bytes], settings: Settings) -> Iterator[Ticket | Spoiled]:
    """Each line as an order, or as what is wrong with it; blank lines are passed over."""
    seen: dict[str, int] = {}
    for number, line in enumerate(lines, 1):
        if line.strip():
            yield _sorted(number, line, seen, settings)


def _sorted(number: int, line: bytes, seen: dict[str, int], settings: Settings) -> Ticket | Spoiled:
    if len(line) > settings.max_body_bytes:
        detail = f"A line of a batch has at most {settings.max_body_bytes} bytes."
        return Spoiled(number, None, ProblemError("too-large", detail))
    try:
        raw = decode(line, settings.max_json_depth)
    except ProblemError as problem:
        return Spoiled(number, None, problem)
    known = _id(raw)
    wrong = _wrong_id(raw, seen.get(str(known)))
    if wrong is not None:
        return Spoiled(number, known, _refused(*wrong, raw))
    seen[str(known)] = number
    return Ticket(number, known, line)


def _id(raw: Any) -> Id:
    """The id of an order, where it is one that can be told back."""
    found = raw.get("id") if isinstance(raw, dict) else None
    if isinstance(found, str):
        return found if 0 < len(found) <= LONGEST_ID and found.isprintable() else None
    return found if isinstance(found, int) and not isinstance(found, bool) else None


def _wrong_id(raw: Any, before: int | None) -> tuple[str, str] | None:
    """Code and detail of what is wrong with an order's id."""
    if not isinstance(raw, dict):
        return "wrong_type", f"An order is a JSON object, not {what(raw)}."
    if "id" not in raw:
        return "missing", "Each order of a batch has an id of its own, a text or a whole number."
    if _id(raw) is None:
        detail = f"Send as id a printable text of 1 to {LONGEST_ID} characters, or a whole number."
        return "bad_id", detail
    if before is not None:
        return "id_twice", f"Line {before} has the same id; each order needs one of its own."
    return None


def _refused(code: str, detail: str, raw: Any) -> ProblemError:
    at = "/id" if isinstance(raw, dict) else ""
    received = raw.get("id") if isinstance(raw, dict) else raw
    trouble = Trouble(pointer=at, code=code, detail=detail, received=received)
    return ProblemError("invalid-order", detail, (trouble,))
