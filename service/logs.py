"""One line of JSON for each request, and never a word of what was in it.

Method, route, status, time, sizes and the request id. No address of the client, no query, no
header, no body, no digest of an order: a digest of few numbers can be guessed back. What libraries
log is cut to its first line, since the others may quote values.
"""

from __future__ import annotations

import logging
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, Any

import structlog
from structlog.stdlib import BoundLogger, ProcessorFormatter

if TYPE_CHECKING:
    from collections.abc import Mapping
    from types import TracebackType

    from structlog.typing import EventDict

LONGEST_FOREIGN = 200
"""Characters of what a library logs."""

LOGGER: BoundLogger = structlog.wrap_logger(
    logging.getLogger("tapeline"),
    processors=[ProcessorFormatter.wrap_for_formatter],
    wrapper_class=BoundLogger,
)


class OneLine(ProcessorFormatter):
    """Writes what this service and its libraries log, each as one line of JSON."""

    def __init__(self) -> None:
        super().__init__(
            foreign_pre_chain=[_cut],
            processors=[
                _headed,
                ProcessorFormatter.remove_processors_meta,
                structlog.processors.JSONRenderer(),
            ],
        )


def _cut(_: object, __: str, told: EventDict) -> EventDict:
    """A library's record: its first line; an exception's class and way, never its message."""
    told["event"] = told["event"].split("\n", 1)[0][:LONGEST_FOREIGN]
    told.pop("stack_info", None)
    failed = told.pop("exc_info", None)
    told.update(outline(failed[0], failed[2]) if failed and failed[0] else {})
    return told


def _headed(_: object, __: str, told: EventDict) -> EventDict:
    """Moment, level and event first."""
    record: logging.LogRecord = told["_record"]
    when = time.strftime("%Y-%m-%dT%H:%M:%S", time.gmtime(record.created))
    head = {"time": f"{when}.{int(record.msecs):03d}Z", "level": record.levelname.lower()}
    return {**head, "event": told["event"], **told}


class OutlinedError(Exception):
    """A fault in another process, told by its outline alone.

    Attributes:
        told: What may be logged of it.
    """

    def __init__(self, told: Mapping[str, Any]) -> None:
        super().__init__()
        self.told = told


def outline(kind: type[BaseException], trace: TracebackType | None) -> dict[str, Any]:
    """What may be told of an exception: its class and its way, never its message."""
    return {"fault": kind.__name__, "at": places(trace)}


def places(trace: TracebackType | None) -> list[str]:
    """Where an exception went through, innermost last: file, line and function, no values."""
    found: list[str] = []
    while trace is not None:
        code = trace.tb_frame.f_code
        found.append(f"{Path(code.co_filename).name}:{trace.tb_lineno} {code.co_name}")
        trace = trace.tb_next
    return found[-12:]


def set_up() -> None:
    """Send all that is logged in the process to standard error, a line of JSON each."""
    handler = logging.StreamHandler(sys.stderr)
    handler.setFormatter(OneLine())
    logging.basicConfig(level=logging.INFO, handlers=[handler], force=True)
    logging.getLogger("ezdxf").setLevel(logging.WARNING)  # it tells each table that it makes
    logging.captureWarnings(capture=True)


def request_line(**told: object) -> None:
    """Log a request that has been answered."""
    LOGGER.info("request", **told)


def fault(error: BaseException, request_id: str) -> None:
    """Log a fault of the service itself, without its message: that may quote the order."""
    known = error.told if isinstance(error, OutlinedError) else None
    outlined(known or outline(type(error), error.__traceback__), request_id)


def outlined(told: Mapping[str, Any], request_id: str) -> None:
    """Log a fault that was outlined elsewhere."""
    LOGGER.error("fault", request_id=request_id, **told)
