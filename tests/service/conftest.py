"""The service as it is sold, and one that also makes aprons."""

from __future__ import annotations

import apron
import pytest
from asking import Service
from browsing import chromium

from drafting.garments import GARMENTS
from service.app import create_app
from service.settings import Settings


@pytest.fixture(scope="session")
def service() -> Service:
    return Service(create_app(Settings()))


@pytest.fixture(scope="session")
def apron_service() -> Service:
    return Service(create_app(Settings(), {**GARMENTS, "apron": apron.GARMENT}))


@pytest.fixture(scope="session")
def hasty_service() -> Service:
    """Waits a fifth of a second for an order, and an apron can take a whole one."""
    return Service(create_app(Settings(order_seconds=0.2), {"apron": apron.GARMENT}))


@pytest.fixture(scope="session")
def only_aprons() -> Service:
    return Service(create_app(Settings(), {"apron": apron.GARMENT}))


@pytest.fixture(scope="module")
def started():
    """A browser, for the tests that need one."""
    with chromium() as browser:
        yield browser
