"""A real browser, without a window."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

BROWSER = next(
    filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), ""
)

needs_browser = pytest.mark.skipif(not BROWSER, reason="no Chromium is installed")

FLAGS = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@contextmanager
def browser(**options) -> Iterator:
    """A page of a fresh browser."""
    with chromium() as started, opened(started, **options) as page:
        yield page


@contextmanager
def chromium() -> Iterator:
    """A browser, for many pages that know nothing of each other."""
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where there is a browser

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=BROWSER, args=FLAGS, chromium_sandbox=False
        )
        try:
            yield started
        finally:
            started.close()


@contextmanager
def opened(started, **options) -> Iterator:
    """A page; whatever it complains of is in `page.complaints`."""
    page = started.new_page(**options)
    page.complaints = []
    page.on("pageerror", lambda error: page.complaints.append(str(error)))
    page.on("console", lambda told: told.type == "error" and page.complaints.append(told.text))
    page.set_default_timeout(60_000)
    try:
        yield page
    finally:
        page.close()
