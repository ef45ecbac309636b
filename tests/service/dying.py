"""Tasks for workers of these tests: some that live, and one that takes its worker with it."""

from __future__ import annotations

import os
import time


def live(number: int, seconds: float = 0.0) -> int:
    time.sleep(seconds)
    return number


def die(number: int) -> int:
    os._exit(number)
