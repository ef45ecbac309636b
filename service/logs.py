"""One line of JSON for each request, and never a word of what was in it.

Method, route, status, time, sizes and the request id. No address of the client, no query, no
header, no body, no digest of an order: a digest of few numbers can be guessed back.
"""

from __future__ import annotations

import json
import logging
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Mapping
    from types import TracebackType

LOGGER = logging.getLogger("tapeline")


class OneLine(logging.Formatter):
    """Writes a record's message and its `told` fields as one line of JSON."""

    def format(self, record: logging.LogRecord) -> str:
        """The line; of an exception only its class and where it was raised."""
        when = time.strftime("%Y-%m-%dT%H:%M:%S", time.gmtime(record.created))
        line: dict[str, Any] = {
            "time": f"{when}.{int(record.msecs):03d}Z",
            "level": record.levelname.lower(),
            "event": record.getMessage(),
            **getattr(record, "told", {}),
        }
        if record.exc_info and record.exc_info[0]:
            line |= outline(record.exc_info[0], record.exc_info[2])
        return json.dumps(line)


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
    logging.captureWarnings(capture=True)


def request_line(**told: object) -> None:
    """Log a request that has been answered."""
    LOGGER.info("request", extra={"told": told})


def fault(error: BaseException, request_id: str) -> None:
    """Log a fault of the service itself, without its message: that may quote the order."""
    outlined(outline(type(error), error.__traceback__), request_id)


def outlined(told: Mapping[str, Any], request_id: str) -> None:
    """Log a fault that was outlined elsewhere."""
    LOGGER.error("fault", extra={"told": {"request_id": request_id, **told}})
