"""What a pattern is called: a digest of the resolved order, without its reference."""

from __future__ import annotations

import hashlib
import json
from dataclasses import fields, is_dataclass
from functools import cache
from typing import TYPE_CHECKING, Annotated, Any, get_args, get_origin, get_type_hints

from drafting import DRAFTING_VERSION
from drafting.body import MEASURES
from drafting.export.paths import MM, rounded
from drafting.geometry import remembered
from drafting.pattern.allowance import LengthUnit

if TYPE_CHECKING:
    from drafting.body import Body
    from drafting.workroom import Work

Plain = dict[str, Any]
DIGITS = 32


@remembered
def pattern_id(work: Work) -> str:
    """First 32 hexadecimal digits of SHA-256 over body, garment, finish and drafting version.

    The order's reference, its unit and the form of the output do not change it.
    """
    order = {
        "version": DRAFTING_VERSION,
        "figure": work.body.figure,
        "body": body(work),
        "garment": in_mm(work.spec),
        "finish": in_mm(work.finish),
    }
    text = json.dumps(order, sort_keys=True, separators=(",", ":"), allow_nan=False)
    return hashlib.sha256(text.encode()).hexdigest()[:DIGITS]


def body(work: Work) -> Plain:
    """The measures used, in mm (kilograms and degrees stay), each with its origin."""
    return body_document(work.body)


def body_document(told: Body) -> Plain:
    """A body's measures, in mm (kilograms and degrees stay), each with its origin.

    A measure that was taken on each side has both values beside their mean.
    """
    return {name: _measure(told, name) for name in told.measured}


def _measure(told: Body, name: str) -> Plain:
    measured = told.measured[name]
    factor = {"cm": MM, "deg": 1.0, "kg": 1.0}[MEASURES[name].unit]
    entry: Plain = {"value": rounded(measured.value * factor), "origin": measured.origin}
    if name in told.sides:
        sides = told.sides[name]
        entry["sides"] = {side: rounded(one.value * factor) for side, one in sides.items()}
    if measured.sd is not None:
        entry["sd"] = rounded(measured.sd * factor)
    if measured.sources:
        entry["from"] = list(measured.sources)
    return entry


def in_mm(spec: Any) -> Plain:
    """A spec's fields as plain values, those that carry the LENGTH marker turned from cm to mm."""
    lengths = _length_fields(spec.__class__)
    return {
        field.name: _plain(getattr(spec, field.name), MM if field.name in lengths else None)
        for field in fields(spec)
    }


def _plain(value: Any, factor: float | None) -> Any:
    if is_dataclass(value):
        return in_mm(value)
    if isinstance(value, tuple | list):
        return [_plain(v, factor) for v in value]
    if isinstance(value, dict):
        return {k: _plain(v, factor) for k, v in value.items()}
    if isinstance(value, int | float) and not isinstance(value, bool) and factor is not None:
        return rounded(value * factor)
    return value


@cache
def _length_fields(spec: type) -> frozenset[str]:
    hints = get_type_hints(spec, include_extras=True)
    return frozenset(name for name, hint in hints.items() if _is_length(hint))


def _is_length(hint: Any) -> bool:
    if get_origin(hint) is Annotated:
        return any(isinstance(mark, LengthUnit) for mark in hint.__metadata__) or _is_length(
            get_args(hint)[0]
        )
    return any(_is_length(arg) for arg in get_args(hint))
