"""Numbers about the service for Prometheus: how much, how long, how large. Nothing of a body.

Findings and problems are counted by their codes, which name a measure but never its value.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from prometheus_client import (
    CollectorRegistry,
    Counter,
    Gauge,
    GCCollector,
    Histogram,
    PlatformCollector,
    ProcessCollector,
    generate_latest,
)

if TYPE_CHECKING:
    from service.drafts import Drafted
    from service.limits import Workbench

TEXT = "text/plain; version=0.0.4; charset=utf-8"
"""The exposition format that every version of Prometheus reads."""

SECONDS = (0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0, 30.0)
BYTES = (1e2, 1e3, 1e4, 3e4, 1e5, 3e5, 1e6, 3e6, 1e7, 1e8)


class Metrics:
    """Counts and clocks of one process.

    Args:
        bench: Its orders in hand are told when someone asks.
    """

    def __init__(self, bench: Workbench) -> None:
        self._registry = CollectorRegistry()
        ProcessCollector(registry=self._registry)
        PlatformCollector(registry=self._registry)
        GCCollector(registry=self._registry)
        self._requests = self._counter(
            "requests", "Requests answered.", "method", "route", "status"
        )
        self._seconds = self._histogram("request_seconds", "From first byte to last.", SECONDS)
        self._received = self._histogram("request_bytes", "Bodies of requests.", BYTES)
        self._sent = self._histogram("answer_bytes", "Bodies of answers, as sent.", BYTES)
        self._stages = self._histogram(
            "stage_seconds", "Stages of a pattern.", SECONDS, "stage", "format"
        )
        self._patterns = self._counter(
            "patterns", "Patterns drafted.", "garment", "format", "verdict"
        )
        self._findings = self._counter("findings", "Remarks on patterns.", "code", "severity")
        self._problems = self._counter("problems", "Problems answered.", "code")
        gauge = Gauge("tapeline_orders_in_hand", "Drafted or waiting.", registry=self._registry)
        gauge.set_function(lambda: bench.taken)

    def _counter(self, name: str, what: str, *labels: str) -> Counter:
        return Counter(f"tapeline_{name}", what, labels, registry=self._registry)

    def _histogram(
        self, name: str, what: str, buckets: tuple[float, ...], *labels: str
    ) -> Histogram:
        return Histogram(
            f"tapeline_{name}", what, labels or ("route",), buckets=buckets, registry=self._registry
        )

    def answered(
        self, *, method: str, route: str, status: int, seconds: float, received: int, sent: int
    ) -> None:
        """Count a request that has been answered."""
        self._requests.labels(method, route, str(status)).inc()
        self._seconds.labels(route).observe(seconds)
        self._received.labels(route).observe(received)
        self._sent.labels(route).observe(sent)

    def drafted(self, garment: str, format_: str, done: Drafted) -> None:
        """Count a pattern: its stages, verdict and findings."""
        self._patterns.labels(garment, format_, done.verdict).inc()
        for stage, seconds in done.stages:
            self.stage(stage, format_, seconds)
        for code, severity in done.findings:
            self._findings.labels(code, severity).inc()

    def stage(self, name: str, format_: str, seconds: float) -> None:
        """Clock a stage of a pattern."""
        self._stages.labels(name, format_).observe(seconds)

    def problem(self, code: str) -> None:
        """Count a problem that has been answered."""
        self._problems.labels(code).inc()

    def text(self) -> bytes:
        """All of it, as Prometheus reads it."""
        return generate_latest(self._registry)
