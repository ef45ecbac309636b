"""What one worker does with one order, from the line's bytes to the answer's.

Runs in other processes, here or on other machines: everything that goes in and out is plain.
"""

from __future__ import annotations

import signal
import threading
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from drafting.export import FORMATS
from service.drafts import drafted
from service.formats import chosen
from service.languages import spoken
from service.logs import outline
from service.problems import ProblemError, problem_response
from service.reading import decode
from service.schemas import packed, unpacked

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from drafting.garments.garment import Garment
    from drafting.language import Language
    from service.schemas import OrderForm


@dataclass(frozen=True, slots=True)
class Tools:
    """What a worker needs to know.

    Attributes:
        garments: The chapters on offer, packed: a worker unpacks them once.
        json_depth: Deepest nesting of an order.
        seconds: Longest time for a task.
        language: Of the texts where a request names none.
    """

    garments: bytes
    json_depth: int
    seconds: float
    language: Language = "en"

    @classmethod
    def of(cls, garments: Mapping[str, Garment], json_depth: int, seconds: float) -> Tools:
        """Tools for these chapters; they must be importable where the work is done."""
        return cls(packed(garments), json_depth, seconds)

    @property
    def form(self) -> OrderForm:
        """The form that orders are filled in on."""
        return unpacked(self.garments)


@dataclass(frozen=True, slots=True)
class Done:
    """The answer to one order.

    Attributes:
        status: As of a single order's answer.
        media_type: Of the body.
        body: The pattern, or the problem as JSON.
        extension: Ending of a file's name.
        verdict: Of the pattern; empty for a problem.
        pattern_id: Of the pattern; empty for a problem.
        fault: What may be logged of a fault of the service itself.
        language: Of the pattern's texts.
    """

    status: int
    media_type: str
    body: bytes
    extension: str = "json"
    verdict: str = ""
    pattern_id: str = ""
    fault: Mapping[str, Any] | None = None
    language: Language = "en"

    @property
    def failed(self) -> bool:
        """Whether it is a problem."""
        return self.status >= 400


def draft_line(tools: Tools, line: bytes, format_: str | None) -> Done:
    """Draft one order of a batch.

    Args:
        tools: Chapters and limits.
        line: The order as JSON, with its id.
        format_: Format that goes before the order's own.
    """
    return guarded(tools, lambda: _drafted(tools, line, format_))


def _drafted(tools: Tools, line: bytes, format_: str | None) -> Done:
    raw = decode(line, tools.json_depth)
    raw.pop("id", None)
    order = tools.form.read(spoken(raw, tools.language))
    asked = chosen(format_, order.output.format, None, FORMATS.values())
    done = drafted(order, tools.form, asked)
    return Done(200, done.media_type, done.body, done.extension, done.verdict, done.pattern_id)


def guarded(tools: Tools, work: Callable[[], Done]) -> Done:
    """The work's answer, or the problem that it met; never an exception of its own."""
    try:
        with time_limit(tools.seconds):
            return work()
    except ProblemError as problem:
        return refused(problem)
    except TooSlowError:
        detail = f"It was not ready within {tools.seconds:g} seconds."
        return refused(ProblemError("too-slow", detail))
    except Exception as error:  # noqa: BLE001 - the last one who can answer
        return faulty(error)


def refused(problem: ProblemError, fault: Mapping[str, Any] | None = None) -> Done:
    """A problem as an answer."""
    answer = problem_response(problem)
    return Done(answer.status_code, answer.media_type or "", bytes(answer.body), fault=fault)


def faulty(error: Exception) -> Done:
    """A fault of the service itself as an answer, without its message: that may quote the order."""
    detail = "Something went wrong in the service; the order was not kept."
    told = outline(type(error), error.__traceback__)
    return refused(ProblemError("internal-error", detail), told)


class TooSlowError(Exception):
    """Time is up."""


@contextmanager
def time_limit(seconds: float) -> Iterator[None]:
    """Raise TooSlowError in the block after so many seconds, where the system can do that."""
    main = threading.current_thread() is threading.main_thread()
    if not main or not hasattr(signal, "setitimer"):
        yield
        return

    def up(*_: object) -> None:
        raise TooSlowError

    before = signal.signal(signal.SIGALRM, up)
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
