"""The service as it is sold, and one that also makes aprons."""

from __future__ import annotations

import apron
import pytest
from asking import Service

from drafting.garments import GARMENTS
from service.app import create_app
from service.settings import Settings


@pytest.fixture(scope="session")
def service() -> Service:
    return Service(create_app(Settings()))


@pytest.fixture(scope="session")
def apron_service() -> Service:
    garments = {**GARMENTS, "apron": apron.GARMENT}
    return Service(create_app(Settings(order_seconds=0.3), garments))


@pytest.fixture(scope="session")
def only_aprons() -> Service:
    return Service(create_app(Settings(), {"apron": apron.GARMENT}))
