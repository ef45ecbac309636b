"""A crowd at the door: everyone is answered, and whoever is turned away is told when to come."""

from __future__ import annotations

import pytest
from loading import load
from serving import Server

pytestmark = pytest.mark.slow

SECONDS = 4.0
"""Long enough for every format; `tests/benchmarks/load.py` takes its time."""


@pytest.fixture(name="server", scope="module")
def server_fixture(tmp_path_factory):
    log = tmp_path_factory.mktemp("load") / "log"
    server = Server(log, TAPELINE_ORDER_SECONDS="60", TAPELINE_QUEUE_LENGTH="16")
    try:
        server.wait()
        yield server
    finally:
        server.kill()


@pytest.mark.parametrize("connections", [1, 8, 64, 256])
def test_no_request_is_lost(server, connections):
    tally = load(server.address, connections, SECONDS)
    assert not tally.faults
    assert tally.answers.total() == tally.sent
    assert tally.answers[200] > 0
    if connections > 32:
        assert tally.answers[503] > 0, "past the queue's bound someone is turned away"
    else:
        assert tally.answers[503] == 0
