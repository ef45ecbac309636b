"""What Prometheus is told: how much, how long, how large, and nothing of any body."""

from __future__ import annotations

import re

import apron
import pytest
from asking import Service, refused
from prometheus_client.parser import text_string_to_metric_families

from service.app import create_app
from service.settings import Settings

MARK = 73.1357
LABEL = "Marked-label-Zyqqur"


def house(**settings) -> Service:
    return Service(create_app(Settings(**settings), {"apron": apron.GARMENT}))


def told(service: Service) -> dict[tuple[str, frozenset], float]:
    """Every sample by its name and labels, as Prometheus' own reader reads it."""
    answer = service.get("/metrics")
    assert answer.status_code == 200
    assert answer.headers["content-type"].startswith("text/plain; version=")
    assert answer.headers["cache-control"] == "no-store"
    return {
        (sample.name, frozenset(sample.labels.items())): sample.value
        for family in text_string_to_metric_families(answer.text)
        for sample in family.samples
    }


def value(samples: dict, name: str, **labels: str) -> float:
    return samples.get((name, frozenset(labels.items())), 0.0)


def test_requests_are_counted_by_route_and_status():
    service = house()
    for _ in range(3):
        service.order(apron.order())
    service.order({})
    service.get(f"/{LABEL}")
    service.ask(LABEL, "/v1/limits")
    service.ask("HEAD", "/v1/limits")
    samples = told(service)
    name, route = "tapeline_requests_total", "/v1/patterns"
    assert value(samples, name, method="POST", route=route, status="200") == 3
    assert value(samples, name, method="POST", route=route, status="422") == 1
    assert value(samples, name, method="GET", route="none", status="404") == 1
    assert value(samples, name, method="other", route="/v1/limits", status="405") == 1
    assert value(samples, name, method="HEAD", route="/v1/limits", status="200") == 1


def test_times_and_sizes_are_those_of_the_requests():
    service = house()
    sizes = [len(service.order(apron.order(length=40 + n)).request.content) for n in range(4)]
    samples = told(service)
    route = "/v1/patterns"
    assert value(samples, "tapeline_request_seconds_count", route=route) == 4
    assert 0 < value(samples, "tapeline_request_seconds_sum", route=route) < 60
    assert value(samples, "tapeline_request_bytes_sum", route=route) == sum(sizes)
    answer = service.order(apron.order(), Accept_Encoding="identity")
    sent = value(told(service), "tapeline_answer_bytes_sum", route=route) - value(
        samples, "tapeline_answer_bytes_sum", route=route
    )
    assert sent == len(answer.content)


@pytest.mark.parametrize("name", ["json", "pdf"])
def test_stages_are_clocked_wherever_they_are_done(name):
    service = house()
    assert service.order(apron.order(), f"?format={name}").status_code == 200
    samples = told(service)
    for stage in ("draft", "write"):
        assert value(samples, "tapeline_stage_seconds_count", stage=stage, format=name) == 1
        assert value(samples, "tapeline_stage_seconds_sum", stage=stage, format=name) > 0
    assert value(samples, "tapeline_stage_seconds_count", stage="read", format="json") == 1
    labels = {"garment": "apron", "format": name, "verdict": "sound"}
    assert value(samples, "tapeline_patterns_total", **labels) == 1


def test_findings_and_problems_are_counted_by_their_codes():
    service = house()
    order = apron.order()
    order["measurements"]["waist_girth"] = 56
    assert service.order(order).status_code == 200
    unsound = {**apron.order(trouble="unsound"), "allow_unsound": True}
    assert service.order(unsound).status_code == 200
    for trouble in ("unsound", "construction", "option", "fault"):
        service.order(apron.order(trouble=trouble))
    service.get("/nowhere")
    samples = told(service)
    found, met = "tapeline_findings_total", "tapeline_problems_total"
    assert value(samples, found, code="unusual_waist_girth", severity="warning") == 1
    assert value(samples, found, code="seam_mismatch", severity="error") == 1
    for code in ("unsound-pattern", "cannot-draft", "invalid-order", "internal-error", "not-found"):
        assert value(samples, met, code=code) == 1


def test_nothing_of_a_body_or_a_text_is_told():
    service = house()
    order = apron.order(length=MARK)
    order["measurements"]["waist_girth"] = MARK
    order["reference"] = LABEL
    for query in ("", "?format=pdf", f"?format={LABEL}", f"?{LABEL}={MARK}"):
        id_ = service.order(order, query).headers.get("pattern-id", "no id")
        assert id_ not in service.get("/metrics").text
    service.order({**order, LABEL: MARK})
    service.get(f"/v1/garments/{LABEL}")
    service.get(f"/v1/size-tables/{LABEL}/{MARK}/{LABEL}")
    text = service.get("/metrics").text
    for secret in (str(MARK), LABEL, "731.357"):
        assert secret not in text


def test_the_numbers_of_the_process_are_told():
    text = house().get("/metrics").text
    for name in ("process_resident_memory_bytes", "process_cpu_seconds_total", "python_info"):
        assert re.search(f"^{name}", text, re.MULTILINE)


def test_two_houses_count_apart():
    one, two = house(), house()
    one.order(apron.order())
    assert "tapeline_patterns_total{" in one.get("/metrics").text
    assert "tapeline_patterns_total{" not in two.get("/metrics").text


def test_an_installation_may_tell_nothing():
    refused(house(metrics=0).get("/metrics"), 404, "not-found")
