"""Nothing that a client sends is found in any log, whatever becomes of the request."""

from __future__ import annotations

import asyncio
import base64
import json
import logging

import apron
import pytest
from asking import Service, example

from service.app import create_app
from service.logs import OneLine
from service.settings import Settings

MARK = "73.1357"
"""A waist that no one else has: wherever it turns up, it was the client's."""

LABEL = "Marked-label-Zyqqur"


class Everything(logging.Handler):
    """Keeps each record as the service writes it and as Python would."""

    def __init__(self) -> None:
        super().__init__(logging.DEBUG)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        plain = logging.Formatter("%(name)s %(message)s").format(record)
        self.lines += [OneLine().format(record), plain, repr(record.__dict__)]


@pytest.fixture(name="logged")
def logged_fixture():
    handler = Everything()
    root = logging.getLogger()
    level = root.level
    root.addHandler(handler)
    root.setLevel(logging.DEBUG)
    logging.getLogger("httpx").setLevel(logging.WARNING)  # the client's own log names the address
    yield handler.lines
    root.removeHandler(handler)
    root.setLevel(level)
    logging.getLogger("httpx").setLevel(logging.NOTSET)


def marked(**changes) -> dict:
    order = example()
    order["measurements"]["waist_girth"] = float(MARK)
    return {**order, "reference": LABEL, **changes}


def marked_apron(trouble: str) -> dict:
    order = apron.order(trouble=trouble)
    order["measurements"]["waist_girth"] = float(MARK)
    return {**order, "reference": LABEL}


ORDERS = [
    marked(),
    marked(unit="in"),
    marked(unit=LABEL),
    marked(figure=LABEL),
    marked(**{LABEL: MARK}),
    marked(measurements={LABEL: float(MARK)}),
    marked(measurements={"waist_girth": MARK}),
    marked(measurements={"waist_girth": float(MARK)}),
    marked(garment={"kind": LABEL}),
    marked(garment={"kind": "trousers", "hem_girth": float(MARK) * 10, LABEL: 1}),
    marked(output={"format": LABEL}),
    marked(reference=LABEL + "\n"),
    *(marked_apron(t) for t in apron.Trouble.__args__ if t != "slow"),
]


def test_marked_orders_leave_no_trace_in_the_logs(apron_service, hasty_service, logged, capfd):
    answers = [
        apron_service.order(order, f"?format={name}&{LABEL}={MARK}")
        for order in ORDERS
        for name in ("json", "svg", "pdf", LABEL)
    ]
    statuses = {answer.status_code for answer in answers}
    assert statuses == {200, 406, 422, 500}
    assert hasty_service.order(marked_apron("slow")).status_code == 503
    ids = {a.headers["pattern-id"] for a in answers if "pattern-id" in a.headers}
    assert ids
    assert_clean(logged, capfd, *ids)


def test_marked_bytes_and_addresses_leave_no_trace_in_the_logs(apron_service, logged, capfd):
    text = json.dumps(marked()).encode()
    for body in (
        text[:-9],
        text + b"x",
        b"[" * 99 + text,
        text.replace(b"{", b"{" + text[1:-1] + b",", 1),
    ):
        assert apron_service.send(body).status_code in (400, 422)
    assert apron_service.send(text, **{"Content-Type": f"text/{LABEL}"}).status_code == 415
    assert apron_service.send(text, **{"Content-Encoding": LABEL}).status_code == 415
    assert apron_service.send(text * 2000).status_code == 413
    for path in (
        f"/{LABEL}",
        f"/v1/garments/{LABEL}",
        f"/problems/{LABEL}",
        f"/assets/{LABEL}",
        f"/v1/measurements?garment={LABEL}",
        f"/v1/garments/trousers/sample?format={LABEL}",
    ):
        assert apron_service.get(path).status_code in (404, 406)
    assert apron_service.ask(LABEL, "/v1/garments").status_code == 405
    assert apron_service.get("/v1/limits", X_Request_Id=LABEL, Cookie=LABEL).status_code == 200
    assert_clean(logged, capfd)


def test_marked_orders_in_links_and_checks_leave_no_trace_in_the_logs(logged, capfd):
    key = base64.urlsafe_b64encode(b"k" * 32).decode()
    service = Service(create_app(Settings(link_keys=(key,)), {"apron": apron.GARMENT}))
    order = marked_apron("none")
    told = service.ask("POST", "/v1/links", json={**order, "expires_in": 3600}).json()
    token = told["token"]
    for path in (*told["formats"].values(), told["href"], told["href"][:-1], told["href"] + LABEL):
        assert service.get(path).status_code in (200, 404)
    for bad in ({"expires_in": LABEL}, {LABEL: 1}, {"reference": LABEL * 99}):
        answer = service.ask("POST", "/v1/links", json={**order, **bad})
        assert answer.status_code == 422
    measures = {"unit": "cm", "measurements": order["measurements"]}
    for document in (measures, {**measures, "figure": LABEL}, {**measures, "unit": "mm"}):
        answer = service.ask("POST", "/v1/measurement-checks", json=document)
        assert answer.status_code in (200, 422)
    service.get(f"/v1/size-tables/{LABEL}")
    service.get(f"/v1/size-tables/women/{LABEL}/apron")
    assert_clean(logged, capfd, token, token[20:60], key)


def assert_clean(logged: list[str], capfd, *more: str) -> None:
    printed = capfd.readouterr()
    text = "\n".join((*logged, printed.out, printed.err))
    assert text.count('"event": "request"') > 5
    for secret in (MARK, LABEL, "731.357", *more):
        assert secret not in text


def test_each_request_is_one_line_of_json(service, logged):
    answer = service.order(example(), "?format=svg")
    lines = [json.loads(line) for line in logged if line.startswith('{"time')]
    (line,) = [each for each in lines if each["event"] == "request"]
    assert line == {
        "time": line["time"],
        "level": "info",
        "event": "request",
        "request_id": answer.headers["request-id"],
        "method": "POST",
        "route": "/v1/patterns",
        "status": 200,
        "ms": line["ms"],
        "bytes_in": len(answer.request.content),
        "bytes_out": int(answer.headers["content-length"]),
    }


def test_a_fault_is_logged_by_its_kind_and_its_place(apron_service, logged):
    answer = apron_service.order(marked_apron("fault"))
    lines = [json.loads(line) for line in logged if line.startswith('{"time')]
    (fault,) = [line for line in lines if line["event"] == "fault"]
    assert fault["fault"] == "ValueError"
    assert fault["request_id"] == answer.headers["request-id"]
    assert fault["at"][-1].startswith("apron.py:")


def test_what_libraries_log_is_cut_before_it_can_quote_anything(logged):
    async def careless():
        task = asyncio.create_task(asyncio.sleep(0))
        task.get_loop().call_exception_handler(
            {
                "message": "Task exception was never retrieved",
                "exception": ValueError(f"cannot use {MARK}"),
                "task": f"<Task exception=ValueError({MARK})>",
            }
        )
        await task

    asyncio.run(careless())
    lines = [json.loads(line) for line in logged if line.startswith('{"time')]
    (line,) = [line for line in lines if line["level"] == "error"]
    assert line["event"] == "Task exception was never retrieved"
    assert line["fault"] == "ValueError"
    assert MARK not in json.dumps(lines)


def test_a_clients_own_request_id_is_not_used(service):
    answer = service.get("/healthz", Request_Id=LABEL)
    assert answer.headers["request-id"] != LABEL


def test_documents_do_not_carry_measures_they_need_not(service):
    for name in ("svg", "pdf"):
        answer = service.order(marked(), f"?format={name}")
        assert MARK not in answer.headers["content-disposition"]
        assert MARK.encode() not in answer.content
