"""Pages of other origins may call the service only where the settings name them."""

from __future__ import annotations

import pytest
from asking import Service, example

from service.app import create_app
from service.settings import Settings

ORIGIN = "https://atelier.example"


@pytest.fixture(name="open_service", scope="module")
def open_service_fixture() -> Service:
    return Service(create_app(Settings(cors_origins=(ORIGIN,))))


def preflight(service: Service, origin: str):
    headers = {
        "Origin": origin,
        "Access-Control-Request-Method": "POST",
        "Access-Control-Request-Headers": "content-type",
    }
    return service.ask("OPTIONS", "/v1/patterns", headers=headers)


def test_it_is_off_unless_origins_are_set(service):
    assert preflight(service, ORIGIN).status_code == 405
    answer = service.order(example(), Origin=ORIGIN)
    assert not any(name.startswith("access-control") for name in answer.headers)


def test_a_named_origin_may_order_and_read_the_headers(open_service):
    assert preflight(open_service, ORIGIN).status_code == 200
    answer = open_service.order(example(), Origin=ORIGIN)
    assert answer.headers["access-control-allow-origin"] == ORIGIN
    exposed = answer.headers["access-control-expose-headers"]
    for name in ("Pattern-Verdict", "Pattern-Id", "Drafting-Version", "Request-Id", "ETag"):
        assert name in exposed
    refused = open_service.order({}, Origin=ORIGIN)
    assert refused.headers["access-control-allow-origin"] == ORIGIN


def test_another_origin_may_not(open_service):
    assert preflight(open_service, "https://other.example").status_code == 400
    answer = open_service.order(example(), Origin="https://other.example")
    assert "access-control-allow-origin" not in answer.headers
