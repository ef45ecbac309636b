"""What a service near customers is asked: limits that hold, texts that stay texts, silent logs."""

from __future__ import annotations

import base64
import io
import json
import signal
import sys
import zipfile
from pathlib import Path

import apron
import httpx
import pikepdf
import pytest
from asking import Service, example, refused
from serving import Server

from drafting.garments import GARMENTS
from service.answers import LimitsAnswer
from service.app import create_app
from service.settings import Settings

sys.path.insert(0, str(Path(__file__).parents[1] / "fuzz"))

from targets import WORDS, whole

KEY = base64.urlsafe_b64encode(b"k" * 32).decode()
MARK, LABEL = 73.1357, "Marked-label-Zyqqur"

SMALL = Settings(
    max_body_bytes=4096,
    max_json_depth=8,
    batch_lines=3,
    batch_bytes=8192,
    range_sizes=2,
    link_keys=(KEY,),
    link_seconds=3600,
)
"""An installation with narrow limits."""


@pytest.fixture(name="small", scope="module")
def small_fixture():
    service = Service(create_app(SMALL, {**GARMENTS, "apron": apron.GARMENT}))
    yield service
    service.app.state.house.hands.close()
    service.app.state.house.press.close()


@pytest.fixture(name="limits", scope="module")
def limits_fixture(small):
    return small.get("/v1/limits").json()


def nested(depth: int) -> bytes:
    return b'{"measurements": ' + b"[" * depth + b"]" * depth + b"}"


def batch(service: Service, body: bytes) -> httpx.Response:
    headers = {"Content-Type": "application/x-ndjson"}
    return service.ask("POST", "/v1/batches", content=body, headers=headers)


def lay(count: int) -> dict:
    return {"orders": [{}] * count}


def sizes(count: int) -> dict:
    own = [{"name": str(n), "measurements": apron.order()["measurements"]} for n in range(count)]
    return {"garment": {"kind": "apron"}, "sizes": {"own": own}}


OVER = {
    "body_bytes": lambda s, most: s.send(b" " * (most + 1)),
    "json_depth": lambda s, most: s.send(nested(most + 1)),
    "reference_characters": lambda s, most: s.order({**apron.order(), "reference": "x" * 121}),
    "pages": lambda s, _: s.order({**example(), "output": {"format": "pdf", "margin": 90}}),
    "batch_lines": lambda s, most: batch(s, b"{}\n" * (most + 1)),
    "batch_bytes": lambda s, most: batch(s, b"x" * (most + 1)),
    "range_sizes": lambda s, most: s.ask("POST", "/v1/size-ranges", json=sizes(most + 1)),
    "lay_orders": lambda s, most: s.ask("POST", "/v1/lay-plans", json=lay(most + 1)),
    "link_characters": lambda s, most: s.get("/v1/links/" + "A" * (most + 1)),
    "link_seconds": lambda s, most: s.ask(
        "POST", "/v1/links", json={**apron.order(), "expires_in": most + 1}
    ),
}
"""One more than each limit that the service tells, asked for."""

ELSEWHERE = {
    "order_seconds",  # test_bad_input, test_press
    "orders_at_once",
    "orders_waiting",  # test_limits, test_press
    "batches_at_once",  # test_batches
    "lay_pieces",  # test_lay_plans
    "lay_budget",  # not a limit but what holds where a request names none
}
"""Limits that have their test at another place."""


def test_every_limit_that_is_told_is_tried(limits):
    assert set(limits) == {*OVER, *ELSEWHERE} == set(LimitsAnswer.__annotations__)


@pytest.mark.parametrize("name", OVER)
def test_one_more_than_a_limit_is_refused(small, limits, name):
    answer = OVER[name](small, limits[name])
    assert answer.status_code in (400, 404, 413, 422), answer.text[:300]
    assert answer.headers["content-type"] == "application/problem+json"


NASTY = [
    *WORDS,
    '"><script>alert(1)</script>',
    "<!--<![CDATA[",
    "&lt;!ENTITY x SYSTEM 'file:///etc/passwd'&gt;",
    ") Tj ET /JS (app.alert\\(1\\)) endstream endobj",
    "\\U+0041 %%d \\P{\\fArial;x}",
    "../../etc/passwd",
    "=cmd|' /C calc'!A0",
]

CARRIED = {
    "/v1/patterns": (lambda order: order, ("svg", "pdf", "dxf", "json", "zip")),
    "/v1/lay-plans": (
        lambda order: {"orders": [order], "laying": {"budget": 0}},
        ("svg", "pdf", "dxf", "json"),
    ),
    "/v1/draft-sheets": (lambda order: order, ("svg", "pdf", "json")),
}
"""Where the text that a client sends comes back, and in which forms."""


def plain(body: bytes) -> None:
    """A PDF that does nothing when it is opened, and has no page, file or form too many."""
    with pikepdf.open(io.BytesIO(body)) as pdf:
        for each in pdf.objects:
            if isinstance(each, pikepdf.Dictionary):
                assert not {"/JS", "/JavaScript", "/OpenAction", "/AA", "/Launch", "/URI"} & set(
                    each.keys()
                )


@pytest.mark.parametrize("text", NASTY)
@pytest.mark.parametrize("path", CARRIED)
def test_a_clients_text_stays_a_text_in_every_document(small, path, text):
    ask, formats = CARRIED[path]
    document = ask({**apron.order(), "reference": text})
    for name in formats:
        answer = small.ask("POST", f"{path}?format={name}", json=document)
        if any(ord(each) < 32 for each in text):
            refused(answer, 422, "invalid-order")
            continue
        assert answer.status_code == 200, answer.text[:300]
        assert text not in str(answer.headers)
        if name == "zip":
            with zipfile.ZipFile(io.BytesIO(answer.content)) as packed:
                assert not [n for n in packed.namelist() if ".." in n or n.startswith("/")]
            continue
        whole(name, answer.content)
        if name == "pdf":
            plain(answer.content)


def test_a_size_cannot_be_called_what_a_file_cannot(small):
    for name in ("../x", "a\nb", "=1", "<b>", "x" * 21, ""):
        order = sizes(1)
        order["sizes"]["own"][0]["name"] = name
        refused(small.ask("POST", "/v1/size-ranges", json=order), 422, "invalid-order")


def marked(**changes) -> dict:
    order = example()
    order["measurements"]["waist_girth"] = MARK
    return {**order, "reference": LABEL, **changes}


MARKED = [
    marked(),
    marked(unit=LABEL),
    marked(**{LABEL: MARK}),
    marked(measurements={LABEL: MARK}),
    marked(measurements={"waist_girth": MARK}),
    marked(garment={"kind": LABEL}),
    marked(garment={"kind": "trousers", "hem_girth": MARK * 10}),
    marked(output={"paper": LABEL}),
    marked(output={"format": "pdf", "margin": MARK}),
]


def own_size(order: dict) -> dict:
    kept = {k: v for k, v in order.items() if k != "measurements"}
    own = [{"name": LABEL[:20], "measurements": order["measurements"]}]
    return {**kept, "sizes": {"own": own}}


POSTED = {
    "/v1/patterns": (lambda o: o, ("json", "svg", "pdf", "dxf", "zip", LABEL)),
    "/v1/draft-sheets": (lambda o: o, ("json", "svg", "pdf", LABEL)),
    "/v1/measurement-checks": (
        lambda o: {k: o[k] for k in ("unit", "measurements", LABEL) if k in o},
        ("",),
    ),
    "/v1/lay-plans": (lambda o: {"orders": [o], "laying": {"budget": 0}}, ("json", "dxf", LABEL)),
    "/v1/size-ranges": (own_size, ("json", "zip", LABEL)),
    "/v1/links": (lambda o: {**o, "expires_in": 60}, ("",)),
    "/v1/batches": (None, ("json", LABEL)),
}
"""Every address that takes a document: what is sent there, and which formats are asked for."""

ASKED = (
    "/{}", "/v1/garments/{}", "/v1/garments/{}/sample", "/v1/measurements?garment={}",
    "/v1/size-tables/{}", "/v1/size-tables/women/{}/trousers", "/v1/links/{}", "/problems/{}",
    "/assets/{}", "/v1/garments/trousers/sample?format={}", "/healthz?x={}", "/metrics?x={}",
    "/docs?x={}", "/openapi.json?x={}", "/?x={}", "/v1/limits?x={}", "/readyz?x={}",
)  # fmt: skip


def test_marked_documents_are_sent_to_every_address(service):
    paths = service.get("/openapi.json").json()["paths"]
    assert set(POSTED) == {path for path, told in paths.items() if "post" in told}
    known = {path.partition("{")[0].rstrip("/") for path, told in paths.items() if "get" in told}
    tried = {path.partition("{")[0].partition("?")[0].rstrip("/") for path in ASKED}
    assert known <= tried


def post_everything(client: httpx.Client) -> list[httpx.Response]:
    answers = []
    for path, (form, formats) in POSTED.items():
        for name in formats:
            query = f"{path}?format={name}&x={LABEL}" if name else path
            if form is None:
                lines = "".join(json.dumps({"id": LABEL, **o}) + "\n" for o in MARKED)
                headers = {"Content-Type": "application/x-ndjson"}
                answers.append(client.post(query, content=lines + LABEL, headers=headers))
            else:
                sent = MARKED if name in ("", "json", LABEL) else MARKED[:1]
                answers += [client.post(query, json=form(order)) for order in sent]
        answers.append(client.post(path, content=json.dumps(marked())[:-9]))
        answers.append(client.post(path, content=LABEL, headers={"Content-Type": LABEL}))
        answers.append(client.request(LABEL, path))
    return answers


def test_nothing_of_any_request_to_any_address_is_logged(tmp_path):
    server = Server(tmp_path / "log", TAPELINE_LINK_KEYS=KEY, TAPELINE_ORDER_SECONDS="60")
    try:
        server.wait()
        with httpx.Client(base_url=server.address.rstrip("/"), timeout=120) as client:
            answers = post_everything(client)
            answers += [client.get(path.format(LABEL)) for path in ASKED]
            metrics = client.get("/metrics").text
        assert server.stop() in (0, -signal.SIGTERM)
    finally:
        server.kill()
    statuses = {answer.status_code for answer in answers}
    assert {200, 404, 405, 406, 415, 422} <= statuses
    assert max(statuses) < 500
    ids = {a.headers["pattern-id"] for a in answers if "pattern-id" in a.headers}
    linked = (a for a in answers if a.request.url.path == "/v1/links" and a.is_success)
    tokens = {answer.json()["token"] for answer in linked}
    assert ids
    assert tokens
    log = server.logs.read_text()
    assert log.count('"event": "request"') > len(answers)
    for secret in (str(MARK), "731.357", LABEL, LABEL[:20], KEY, *ids, *tokens):
        assert secret not in log
        assert secret not in metrics
