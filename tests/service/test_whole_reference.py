"""Every operation of the reference, with whatever fits it and whatever does not, by Schemathesis.

All its checks are on. An order can fit the reference and still ask for an impossible body or a
paper that is too small, so 422 is among the expected answers to what fits. The slow test also
tries every bound and every kind of value for every field.
"""

from __future__ import annotations

import base64
from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig

from service.app import create_app
from service.settings import Settings

KEY = base64.urlsafe_b64encode(b"k" * 32).decode()
ACCEPTED = ["2xx", "404", "406", "413", "422"]


def config(**more: Any) -> SchemathesisConfig:
    checks = {"positive_data_acceptance": {"expected-statuses": ACCEPTED}}
    return SchemathesisConfig.from_dict({"generation": {"mode": "all"}, "checks": checks, **more})


@schemathesis.serializer("application/x-ndjson", "application/ndjson", "application/jsonl")
def lines(_: object, text: object) -> bytes:
    """A batch is text already."""
    return str(text).encode("utf-8", "replace")


def trying(count: int) -> settings:
    return settings(
        max_examples=count,
        deadline=None,
        derandomize=True,
        suppress_health_check=list(HealthCheck),
    )


app = create_app(Settings(range_sizes=2, link_keys=(KEY,)))
some = schemathesis.openapi.from_asgi(
    "/openapi.json", app, config=config(phases={"coverage": {"enabled": False}})
)
every = schemathesis.openapi.from_asgi("/openapi.json", app, config=config())


@some.parametrize()
@trying(12)
def test_every_operation_keeps_its_promise(case: schemathesis.Case):
    case.call_and_validate()


@pytest.mark.slow
@every.parametrize()
@trying(40)
def test_every_operation_keeps_its_promise_for_every_kind_of_value(case: schemathesis.Case):
    case.call_and_validate()


def steps(count: int, length: int) -> settings:
    return settings(trying(count), stateful_step_count=length)


AnswersLeadOn = some.as_state_machine().TestCase
"""What one answer gives goes into the next request, along the links of the reference."""

AnswersLeadOn.settings = steps(5, 8)


class AnswersLeadOnAndOn(AnswersLeadOn):
    """The same with more patience."""

    settings = steps(30, 20)


AnswersLeadOnAndOn = pytest.mark.slow(AnswersLeadOnAndOn)
