"""Where in an order the lengths stand. Read once from the specs' own markers.

One plan drives three things: turning lengths to cm before validation, telling limits back in the
order's unit, and describing the fields in the API reference.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass
from types import NoneType
from typing import TYPE_CHECKING, Annotated, Any, get_args, get_origin, get_type_hints

from drafting.pattern.allowance import LengthUnit
from service.lengths import Unit, read_inches, to_cm
from service.problems import Trouble, pointer

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

Parts = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class IsLength:
    """The value is a length, or a list or table of lengths."""


@dataclass(frozen=True, slots=True)
class Fields:
    """An object whose named fields hold lengths somewhere."""

    of: Mapping[str, Plan]


@dataclass(frozen=True, slots=True)
class Choice:
    """An object of one of several kinds, told by its field `kind`."""

    kinds: Mapping[str, Plan]


@dataclass(frozen=True, slots=True)
class Each:
    """A list or a table whose values all follow one plan."""

    plan: Plan


Plan = IsLength | Fields | Choice | Each | None
"""None: no length in there."""


def plan_of(hint: Any) -> Plan:
    """The plan of an annotated type, from the LENGTH markers in it."""
    if get_origin(hint) is Annotated:
        kind, *marks = get_args(hint)
        is_length = any(isinstance(m, LengthUnit) for m in marks)
        return IsLength() if is_length else plan_of(kind)
    if is_dataclass(hint):
        return _fields(hint)
    return _inside(hint)


def _fields(kind: Any) -> Plan:
    hints = get_type_hints(kind, include_extras=True)
    plans = {f.name: plan_of(hints[f.name]) for f in fields(kind)}
    return Fields({n: p for n, p in plans.items() if p}) if any(plans.values()) else None


def _inside(hint: Any) -> Plan:
    inner = [plan_of(part) for part in get_args(hint) if part not in (NoneType, ...)]
    found = [plan for plan in inner if plan]
    if not found:
        return None
    many = get_origin(hint) in (tuple, list, dict)
    return Each(found[0]) if many and not isinstance(found[0], IsLength) else found[0]


def resolved(plan: Plan, value: object) -> Plan:
    """The plan of the kind that the value says it is."""
    if isinstance(plan, Choice) and isinstance(value, dict):
        kind = value.get("kind")
        return plan.kinds.get(kind) if isinstance(kind, str) else None
    return plan


def lengths_to_cm(value: Any, plan: Plan, unit: Unit, at: Parts, told: list[Trouble]) -> Any:
    """A copy of the raw value with each length in cm; what cannot be read is told and kept.

    Args:
        value: Decoded JSON.
        plan: Where its lengths stand.
        unit: The order's unit.
        at: Where the value stands in the order.
        told: Troubles are added here.
    """
    match resolved(plan, value), value:
        case IsLength(), dict() | list():
            return _each(value, IsLength(), unit, at, told)
        case IsLength(), _:
            return _length(value, unit, at, told)
        case Each(inner), dict() | list():
            return _each(value, inner, unit, at, told)
        case Fields(known), dict():
            return {
                name: lengths_to_cm(v, known.get(name), unit, (*at, name), told)
                for name, v in value.items()
            }
        case _:
            return value


def _each(
    value: dict[str, Any] | list[Any], plan: Plan, unit: Unit, at: Parts, told: list[Trouble]
) -> Any:
    if isinstance(value, dict):
        return {k: lengths_to_cm(v, plan, unit, (*at, k), told) for k, v in value.items()}
    return [lengths_to_cm(v, plan, unit, (*at, i), told) for i, v in enumerate(value)]


def _length(value: Any, unit: Unit, at: Parts, told: list[Trouble]) -> Any:
    """The length in cm. None, booleans and other kinds are left for validation to refuse."""
    if value is None or isinstance(value, bool):
        return value
    number = read_inches(value) if isinstance(value, str) and unit == "in" else value
    if isinstance(number, str | None):
        told.append(_unreadable(value, unit, at))
        return value
    cm = to_cm(number, unit)
    if cm is None:
        told.append(_too_long(value, at))
    return value if cm is None else cm


def _unreadable(value: str, unit: Unit, at: Parts) -> Trouble:
    detail = (
        'This cannot be read as inches: send a number, or a text such as "28 1/2".'
        if unit == "in"
        else f'Send the length as a number of {unit}, not as text; texts go with "unit": "in".'
    )
    return Trouble(pointer=pointer(at), code="unreadable_length", detail=detail, received=value)


def _too_long(value: float, at: Parts) -> Trouble:
    detail = "No length of a body or a garment is as large as this: send the length as measured."
    return Trouble(pointer=pointer(at), code="out_of_range", detail=detail, received=value)


def is_length(plan: Plan, value: object, parts: Iterable[str | int]) -> bool:
    """Whether the field at a path is a length, in an order of that raw value."""
    for part in parts:
        plan = resolved(plan, value)
        value = _at(value, part)
        match plan:
            case IsLength():
                return True
            case Fields(known):
                plan = known.get(str(part))
            case Each(inner):
                plan = inner
            case _:
                return False
    return isinstance(plan, IsLength)


def _at(value: object, part: str | int) -> object:
    match value:
        case dict():
            return value.get(part)
        case list() if isinstance(part, int) and part < len(value):
            return value[part]
        case _:
            return None
