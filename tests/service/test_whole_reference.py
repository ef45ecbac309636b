"""Every operation of the reference, with whatever fits it and whatever does not, by Schemathesis.

All its checks are on. An order can fit the reference and still ask for an impossible body or a
paper that is too small, so 422 is among the expected answers to what fits.
"""

from __future__ import annotations

import base64

import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig

from service.app import create_app
from service.settings import Settings

CONFIG = SchemathesisConfig.from_dict(
    {
        "generation": {"mode": "all"},
        "checks": {
            "positive_data_acceptance": {
                "expected-statuses": ["2xx", "404", "406", "413", "422"],
            },
        },
    }
)


@schemathesis.serializer("application/x-ndjson", "application/ndjson", "application/jsonl")
def lines(_: object, text: object) -> bytes:
    """A batch is text already."""
    return str(text).encode("utf-8", "replace")


KEY = base64.urlsafe_b64encode(b"k" * 32).decode()
app = create_app(Settings(range_sizes=2, link_keys=(KEY,)))
reference = schemathesis.openapi.from_asgi("/openapi.json", app, config=CONFIG)


@reference.parametrize()
@settings(
    max_examples=25,
    deadline=None,
    derandomize=True,
    suppress_health_check=list(HealthCheck),
)
def test_every_operation_keeps_its_promise(case: schemathesis.Case):
    case.call_and_validate()
