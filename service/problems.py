"""What can go wrong between a client and a pattern, and how it is answered (RFC 9457).

`PROBLEMS` is the table of all; `ProblemError` is raised anywhere and answered with one of them.
Troubles of the craft become problems in `service.troubles`.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from fastapi.responses import Response

from drafting.language import page_text

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

MEDIA_TYPE = "application/problem+json"

MOST_TROUBLES = 50
"""Troubles told in one answer; a client mends these first."""

LONGEST_ECHO = 120
"""Characters of a client's own text told back."""


@dataclass(frozen=True, slots=True)
class ProblemKind:
    """One sort of problem and its page.

    Attributes:
        code: Stable name; the last part of its address.
        status: HTTP status.
        title: Name in words.
        meaning: What has happened.
        mend: What the client does about it.
    """

    code: str
    status: int
    title: str
    meaning: str
    mend: str


def _table(*kinds: ProblemKind) -> dict[str, ProblemKind]:
    return {kind.code: kind for kind in kinds}


PROBLEMS: dict[str, ProblemKind] = _table(
    ProblemKind(
        "malformed-json",
        400,
        "The body is not JSON",
        "The body could not be read as JSON: it is empty, cut off, not UTF-8, nested too deep, "
        "names a field twice in one object, or holds NaN, an infinity or a number too large to "
        "hold.",
        "Send one JSON object, encoded in UTF-8, with each field once and plain numbers. The "
        "detail says where reading stopped.",
    ),
    ProblemKind(
        "unauthorized",
        401,
        "A key is needed",
        "This installation drafts for those who have one of its keys, and the request has none.",
        "Send the header Authorization: Bearer KEY, with the key that whoever runs this "
        "installation gave you.",
    ),
    ProblemKind(
        "not-found",
        404,
        "Nothing is here",
        "The address names nothing that this service has.",
        "See the API reference for the addresses, and GET /v1/garments for the garments.",
    ),
    ProblemKind(
        "method-not-allowed",
        405,
        "Not this method",
        "The address is there, but not for this method.",
        "Use a method that the Allow header lists.",
    ),
    ProblemKind(
        "not-acceptable",
        406,
        "No such format",
        "None of the formats that the request accepts can be made.",
        "Ask for one of the formats told in the answer, by ?format=, by output.format in the "
        "order, or by the Accept header; the first of these that is there holds.",
    ),
    ProblemKind(
        "request-timeout",
        408,
        "The body took too long to arrive",
        "The request was not complete within the time allowed for an order.",
        "Send it again over a steadier connection. Nothing was drafted.",
    ),
    ProblemKind(
        "too-large",
        413,
        "The body is too large",
        "The body is longer than this installation takes.",
        "Send one order at a time. GET /v1/limits tells the limit in bytes.",
    ),
    ProblemKind(
        "unsupported-media-type",
        415,
        "The body must be plain JSON",
        "The body is not labelled as JSON, or it is compressed.",
        "Send it with the header Content-Type: application/json, in UTF-8, uncompressed.",
    ),
    ProblemKind(
        "invalid-order",
        422,
        "The order has to be changed",
        "A field is missing, unknown, of the wrong type, or out of its limits, or measures of the "
        "order contradict each other.",
        "Change what each entry of errors points at; received and allowed are in the order's own "
        "unit.",
    ),
    ProblemKind(
        "cannot-draft",
        422,
        "The garment cannot be drafted",
        "The order is complete, but a step of the construction has no answer for this body and "
        "these options.",
        "Take the measures again that the detail names, or choose another option.",
    ),
    ProblemKind(
        "unusual-body",
        422,
        "These measures hardly belong to one body",
        "Each measure is possible, but together they are further from any surveyed body than a "
        "slip of the tape would explain.",
        "Take the named measures again. If they are right, send accept_unusual: true.",
    ),
    ProblemKind(
        "unsound-pattern",
        422,
        "The pattern would not sew or fit",
        "The garment was drafted, but a check on the drawn lines failed.",
        "See which checks failed, take those measures again or change the options. To see the "
        "pattern all the same, send allow_unsound: true; each piece then says NOT FOR CUTTING.",
    ),
    ProblemKind(
        "too-many-requests",
        429,
        "Too many requests with this key",
        "The key has made as many requests as this installation takes from one in a minute.",
        "Send the order again after the seconds that the Retry-After header tells. A batch counts "
        "as one request.",
    ),
    ProblemKind(
        "internal-error",
        500,
        "A fault of the service",
        "The service met something that it was not made for. Nothing of the order was kept or "
        "logged.",
        "Report the request id of the answer's Request-Id header, with the order if you may.",
    ),
    ProblemKind(
        "busy",
        503,
        "Too many orders wait",
        "As many orders are waiting as this installation lets wait.",
        "Send the order again after the seconds that the Retry-After header tells.",
    ),
    ProblemKind(
        "too-slow",
        503,
        "The order took too long",
        "The pattern was not ready within the time allowed for an order.",
        "Send the order again after the seconds that the Retry-After header tells; ask for fewer "
        "or larger pages if it happens again.",
    ),
    ProblemKind(
        "worker-lost",
        503,
        "The worker was lost",
        "Every worker that took up this order of a batch, or this size range, died over it or "
        "beside it.",
        "Send it again by itself. If that fails too, report it with the order if you may.",
    ),
    ProblemKind(
        "no-workers",
        503,
        "No workers",
        "The cluster that drafts batches and size ranges for this installation cannot be reached, "
        "or was lost on the way.",
        "Send what was not drafted again after the seconds that the Retry-After header tells. "
        "Single orders are drafted all the while.",
    ),
    ProblemKind(
        "not-ready",
        503,
        "Not taking orders now",
        "The service is starting, stopping, or full.",
        "Ask again after the seconds that the Retry-After header tells.",
    ),
)
"""Every problem by its code; `/problems/{code}` shows each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """One thing to change.

    Attributes:
        pointer: JSON pointer into the order; "" for the whole of it.
        code: Stable snake_case name.
        detail: What is wrong and what to send instead.
        received: What was sent, shortened; None where nothing was.
        allowed: What would do: [low, high], or a list of names; None where neither fits.
    """

    pointer: str
    code: str
    detail: str
    received: Any = None
    allowed: Any = None


class ProblemError(Exception):
    """Answered with the problem of that code.

    Attributes:
        code: A key of `PROBLEMS`.
        detail: What happened to this request.
        troubles: What to change in it.
        headers: Headers that the answer carries beside the usual ones; Content-Language is that
            of the details, and the title follows it.
    """

    def __init__(
        self,
        code: str,
        detail: str,
        troubles: tuple[Trouble, ...] = (),
        headers: Mapping[str, str] | None = None,
    ) -> None:
        super().__init__(code)
        self.code = code
        self.detail = detail
        self.troubles = troubles
        self.headers = headers or {}

    def __reduce__(self) -> tuple[Any, ...]:
        """Travels between processes whole."""
        return ProblemError, (self.code, self.detail, self.troubles, dict(self.headers))


def in_short(troubles: Sequence[Trouble]) -> str:
    """The first trouble, where it stands, and how many more there are."""
    first, *others = troubles
    where = f" ({first.pointer})" if first.pointer else ""
    more = f" errors tells {len(others)} more." if others else ""
    return first.detail + where + more


def problem_response(problem: ProblemError) -> Response:
    """The answer to a problem, as application/problem+json."""
    kind = PROBLEMS[problem.code]
    headers = {"Cache-Control": "no-store", **problem.headers}
    return Response(_written(problem, kind), kind.status, headers, MEDIA_TYPE)


def _written(problem: ProblemError, kind: ProblemKind) -> bytes:
    language: Any = problem.headers.get("Content-Language", "en")
    document = {
        "type": f"/problems/{kind.code}",
        "title": page_text(kind.title, language, "problem"),
        "status": kind.status,
        "detail": problem.detail,
        "errors": [told_trouble(trouble) for trouble in problem.troubles[:MOST_TROUBLES]],
    }
    return json.dumps(document, ensure_ascii=False, allow_nan=False).encode()


def told_trouble(trouble: Trouble) -> dict[str, Any]:
    """One thing to change, as answers tell it."""
    return {
        "pointer": trouble.pointer,
        "code": trouble.code,
        "detail": trouble.detail,
        "received": echo(trouble.received),
        "allowed": trouble.allowed,
    }


def echo(value: object) -> object:
    """A client's value, told back at a length that fits an answer."""
    match value:
        case None | bool() | float():
            return value
        case int():
            return value if abs(value) < 10**15 else float(value)
        case str():
            return value if len(value) <= LONGEST_ECHO else value[:LONGEST_ECHO] + "…"
        case dict():
            return "an object"
        case _:
            return "a list"


def pointer(parts: list[str] | tuple[str | int, ...]) -> str:
    """RFC 6901: "/" before each part, "~" and "/" within one written as ~0 and ~1."""
    return "".join("/" + str(p).replace("~", "~0").replace("/", "~1") for p in parts)
