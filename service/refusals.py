"""What validation refuses, said so that a client knows what to change."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import islice
from typing import TYPE_CHECKING, Any

from service.lengths import in_words, told_limits
from service.problems import MOST_TROUBLES, Trouble, pointer
from service.suggestions import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from pydantic import ValidationError
    from pydantic_core import ErrorDetails

    from service.plan import Parts

Schema = dict[str, Any]

OBJECT_TYPES = frozenset({"dataclass_type", "model_type", "dict_type", "model_attributes_type"})

SEND: dict[str, str] = {
    "float_type": "a number",
    "float_parsing": "a number",
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "int_parsing": "a whole number",
    "int_parsing_size": "a smaller whole number",
    "bool_type": "true or false",
    "string_type": "a text",
    "list_type": "a list",
    "tuple_type": "a list",
    "none_required": "null",
    **dict.fromkeys(OBJECT_TYPES, "an object"),
}
"""What to send instead, by the kind of refusal."""


@dataclass(frozen=True, slots=True)
class Form:
    """What is known of the order that was refused.

    Attributes:
        raw: The order as it was sent.
        schema: JSON Schema of the form, limits in cm.
        is_length: Whether the field at a path is a length.
        unit: The order's unit.
    """

    raw: Any
    schema: Schema
    is_length: Callable[[Parts], bool]
    unit: str


@dataclass(frozen=True, slots=True)
class _Refused:
    """One refusal, looked up in the order and in the form."""

    form: Form
    parts: Parts
    value: Any
    node: Schema
    parent: Schema
    kind: str
    message: str

    @property
    def name(self) -> str:
        return str(self.parts[-1]) if self.parts else "order"

    def trouble(self, code: str, detail: str, allowed: Any = None, value: Any = None) -> Trouble:
        return Trouble(
            pointer=pointer(self.parts),
            code=code,
            detail=detail,
            received=self.value if value is None else value,
            allowed=allowed,
        )


def refusals(error: ValidationError, form: Form) -> list[Trouble]:
    """A trouble for each refusal, as many as are told."""
    return [
        _trouble(_looked_up(form, e["loc"], e["type"], e["msg"]))
        for e in islice(_errors(error), MOST_TROUBLES)
    ]


def _errors(error: ValidationError) -> list[ErrorDetails]:
    return error.errors(include_url=False, include_context=False, include_input=False)


def _looked_up(form: Form, loc: tuple[int | str, ...], kind: str, message: str) -> _Refused:
    if kind.startswith("union_tag"):
        loc = (*loc, "kind")
    parts, value = _in_order(form.raw, loc)
    node = _in_form(form.schema, form.schema, loc)
    parent = _in_form(form.schema, form.schema, loc[:-1])
    return _Refused(form, parts, value, node, parent, kind, message)


def _in_order(raw: Any, loc: tuple[int | str, ...]) -> tuple[Parts, Any]:
    """The path in the order, without the names of union members, and the value there."""
    parts: list[str | int] = []
    for i, part in enumerate(loc):
        here = _child(raw, part)
        if here is None and isinstance(raw, dict) and part not in raw and i + 1 < len(loc):
            continue
        parts.append(part)
        raw = here
    return tuple(parts), raw


def _child(raw: Any, part: str | int) -> Any:
    if isinstance(raw, dict):
        return raw.get(part)
    return raw[part] if isinstance(raw, list) and isinstance(part, int) else None


def _in_form(root: Schema, node: Schema, loc: tuple[int | str, ...]) -> Schema:
    """The form's own words on a field; {} where it has none."""
    node = _opened(root, node)
    if not loc:
        return node
    part, *rest = loc
    if isinstance(part, int):
        return _in_form(root, node.get("items", {}), tuple(rest))
    mapping = node.get("discriminator", {}).get("mapping", {})
    if part in mapping:
        return _in_form(root, {"$ref": mapping[part]}, tuple(rest))
    return _in_form(root, node.get("properties", {}).get(part, {}), tuple(rest))


def _opened(root: Schema, node: Schema) -> Schema:
    if "$ref" in node:
        return _opened(root, root["$defs"][node["$ref"].rsplit("/", 1)[-1]])
    choices = [c for c in node.get("anyOf", ()) if c.get("type") != "null"]
    return _opened(root, choices[0]) if len(choices) == 1 else node


def _trouble(refused: _Refused) -> Trouble:
    if refused.kind in SEND:
        send = f"Send {SEND[refused.kind]}, not {what(refused.value)}."
        return refused.trouble("wrong_type", send)
    if refused.kind in SAID:
        return SAID[refused.kind](refused)
    return refused.trouble(refused.kind, refused.message)


def what(value: object) -> str:
    """A JSON value's kind, for a sentence."""
    match value:
        case None:
            return "null"
        case bool():
            return str(value).lower()
        case int() | float():
            return "this number"
        case str():
            return "a text"
        case dict():
            return "an object"
        case _:
            return "a list"


def _missing(refused: _Refused) -> Trouble:
    allowed = _choices(refused.node) or None
    detail = f"The field {refused.name} is missing; the order needs it."
    if refused.kind == "union_tag_not_found":
        allowed = sorted(refused.parent.get("discriminator", {}).get("mapping", ()))
        detail = "The field kind is missing: it says which garment to draft."
    return refused.trouble("missing", detail, allowed)


def _unknown(refused: _Refused) -> Trouble:
    known = list(refused.parent.get("properties", ()))
    near = did_you_mean(refused.name, known)
    detail = f"There is no field {refused.name[:60]!r} here.{near}"
    return refused.trouble("unknown_field", detail, known or None)


def _other_choice(refused: _Refused) -> Trouble:
    allowed = _choices(refused.node)
    if refused.kind == "union_tag_invalid":
        allowed = sorted(refused.parent.get("discriminator", {}).get("mapping", ()))
    near = did_you_mean(refused.value, allowed) if len(allowed) > 1 else ""
    code = "unknown_garment" if refused.parts == ("garment", "kind") else "not_a_choice"
    return refused.trouble(code, f"Choose {_either(allowed)}.{near}", allowed)


def _choices(node: Schema) -> list[str]:
    return [str(c) for c in node.get("enum", [node["const"]] if "const" in node else [])]


def _either(names: Iterable[str]) -> str:
    *others, last = [repr(name) for name in names]
    return f"{', '.join(others)} or {last}" if others else last


def _out_of_bounds(refused: _Refused) -> Trouble:
    node = refused.node
    low = node.get("minimum", node.get("exclusiveMinimum"))
    high = node.get("maximum", node.get("exclusiveMaximum"))
    if not refused.form.is_length(refused.parts):
        return refused.trouble("out_of_range", _between(low, high), [low, high])
    unit = refused.form.unit
    words = [None if b is None else in_words(b, unit) for b in (low, high)]
    allowed = None if low is None or high is None else told_limits(low, high, unit)
    return refused.trouble("out_of_range", _between(*words), allowed)


def _between(low: object, high: object) -> str:
    if low is None or high is None:
        return f"Send {'at most' if low is None else 'at least'} {high if low is None else low}."
    return f"Send a value from {low} to {high}."


def _long_text(refused: _Refused) -> Trouble:
    most = refused.node.get("maxLength")
    detail = f"Send at most {most} characters."
    return refused.trouble("text_too_long", detail, [0, most])


def _no_date(refused: _Refused) -> Trouble:
    detail = 'Send a day of the calendar as year, month and day, such as "2026-11-25".'
    return refused.trouble("unreadable_date", detail)


SAID: dict[str, Callable[[_Refused], Trouble]] = {
    "missing": _missing,
    "union_tag_not_found": _missing,
    "extra_forbidden": _unknown,
    "unexpected_keyword_argument": _unknown,
    "literal_error": _other_choice,
    "enum": _other_choice,
    "union_tag_invalid": _other_choice,
    "greater_than_equal": _out_of_bounds,
    "greater_than": _out_of_bounds,
    "less_than_equal": _out_of_bounds,
    "less_than": _out_of_bounds,
    "string_too_long": _long_text,
    "date_type": _no_date,
    "date_parsing": _no_date,
    "date_from_datetime_parsing": _no_date,
    "date_from_datetime_inexact": _no_date,
}
"""How each kind of refusal is said; the rest speak for themselves."""
