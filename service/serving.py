"""The server: starts at once, and stops so that no one who was let in is turned away."""

from __future__ import annotations

import signal
import time
from typing import TYPE_CHECKING

import uvicorn

if TYPE_CHECKING:
    from types import FrameType

    from fastapi import FastAPI

    from service.house import House


class Server(uvicorn.Server):
    """Stops in three steps when it is told to (SIGTERM).

    It says at once that it is not ready, and goes on answering while whoever sends requests learns
    of that; then it takes no new connections and finishes what is in flight; then it ends. Told a
    second time, or from the keyboard, it leaves out the first step.

    Args:
        config: Of uvicorn.
        house: Says whether it is ready.
        seconds: How long the first step takes.
    """

    def __init__(self, config: uvicorn.Config, house: House, seconds: float) -> None:
        super().__init__(config)
        self._house = house
        self._seconds = seconds
        self._leaves_at: float | None = None

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """Take a signal to stop."""
        told_before = self._leaves_at is not None
        super().handle_exit(sig, frame)
        self._house.bench.leave()
        self._leaves_at = time.monotonic() + self._seconds
        if sig == signal.SIGTERM and not told_before and self._seconds:
            self.should_exit = False

    async def on_tick(self, counter: int) -> bool:
        """Look ten times a second whether it is time to go."""
        if self._leaves_at is not None and time.monotonic() >= self._leaves_at:
            self.should_exit = True
        return await super().on_tick(counter)


def serve(app: FastAPI, host: str, port: int) -> None:
    """Serve until told to stop."""
    house: House = app.state.house
    settings = house.settings
    config = uvicorn.Config(
        app,
        host=host,
        port=port,
        log_config=None,
        access_log=False,
        server_header=False,
        timeout_graceful_shutdown=round(settings.stop_seconds),
    )
    Server(config, house, settings.leave_seconds).run()
