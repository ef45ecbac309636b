"""JSON on one line, as answers carry it."""

from __future__ import annotations

import json
from typing import Any

import orjson


def compact(told: Any) -> bytes:
    """Plain values as UTF-8 JSON without needless blanks; halves of letters become a mark.

    Numbers must be finite: what the tape has measured is.
    """
    try:
        return orjson.dumps(told)
    except TypeError:  # half of a letter, which no UTF-8 can carry
        text = json.dumps(told, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
        return text.encode("utf-8", "replace")
