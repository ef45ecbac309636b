"""Batches over HTTP, in one process with two workers: every line answered once, whatever it is."""

from __future__ import annotations

import base64
import io
import json
import zipfile

import apron
import pytest
from asking import Service, example, refused

from drafting.export import FORMATS
from drafting.garments import GARMENTS
from service.app import create_app
from service.settings import Settings

NDJSON = {"Content-Type": "application/x-ndjson"}


def orders(count: int, **more) -> list[dict]:
    """So many orders for trousers, no two of them alike."""
    found = []
    for number in range(count):
        order = example()
        order["measurements"] = {**order["measurements"], "hip_girth": 98 + number / 10}
        found.append({"id": f"order-{number}", **order, **more})
    return found


def lines(*documents: object) -> bytes:
    return b"".join(
        d if isinstance(d, bytes) else json.dumps(d).encode() + b"\n" for d in documents
    )


class Batches:
    """A service that is sent batches."""

    def __init__(self, **settings) -> None:
        self.app = create_app(
            Settings(batch_workers=2, **settings), {**GARMENTS, "apron": apron.GARMENT}
        )
        self.service = Service(self.app)

    def send(self, body: bytes, query: str = "", **headers: str):
        return self.service.ask(
            "POST", f"/v1/batches{query}", content=body, headers={**NDJSON, **headers}
        )

    def answers(self, body: bytes, query: str = "") -> list[dict]:
        answer = self.send(body, query)
        assert answer.status_code == 200, answer.text
        assert answer.headers["content-type"] == "application/x-ndjson"
        assert answer.headers["cache-control"] == "no-store"
        return [json.loads(line) for line in answer.text.splitlines()]


@pytest.fixture(name="batches", scope="module")
def batches_fixture():
    found = Batches(batch_lines=60, batch_bytes=200_000, max_body_bytes=4000, beat_seconds=0.05)
    yield found
    found.app.state.house.hands.close()


def told(answers: list[dict], kind: str) -> list[dict]:
    return [answer for answer in answers if answer["type"] == kind]


def test_every_order_gets_the_answer_that_it_would_get_alone(batches):
    sent = orders(6)
    answers = batches.answers(lines(*sent))
    results = {answer["id"]: answer for answer in told(answers, "result")}
    assert set(results) == {order["id"] for order in sent}
    for number, order in enumerate(sent, 1):
        alone = batches.service.order({k: v for k, v in order.items() if k != "id"})
        result = results[order["id"]]
        assert result["answer"] == alone.json()
        assert result["line"] == number
        assert result["status"] == 200
        assert result["pattern_id"] == alone.headers["pattern-id"]
        assert result["verdict"] == alone.headers["pattern-verdict"]


def test_the_last_line_tells_the_counts_and_progress_comes_before(batches):
    answers = batches.answers(lines(*orders(8), b"{\n"))
    end = answers[-1]
    assert end["type"] == "end"
    assert (end["done"], end["failed"], end["total"]) == (9, 1, 9)
    assert len(told(answers, "end")) == 1
    progress = told(answers, "progress")
    assert progress
    assert [p["done"] for p in progress] == sorted(p["done"] for p in progress)
    for each in progress:
        assert each["total"] == 9
        assert each["rate"] == pytest.approx(each["done"] / each["seconds"], rel=0.02, abs=0.02)


def one(**more) -> bytes:
    """A good order, but for what is said."""
    return lines({**orders(1)[0], **more})


NO_ID = {k: v for k, v in orders(1)[0].items() if k != "id"}

BAD_LINES = {
    "broken JSON": (b'{"id": "x", \n', None, 400, "malformed-json"),
    "no object": (b"[1]\n", None, 422, "invalid-order"),
    "no UTF-8": (b'{"id": "\xff"}\n', None, 400, "malformed-json"),
    "NaN": (b'{"id": NaN}\n', None, 400, "malformed-json"),
    "no id": (lines(NO_ID), None, 422, "invalid-order"),
    "an empty id": (one(id=""), None, 422, "invalid-order"),
    "an endless id": (one(id="x" * 121), None, 422, "invalid-order"),
    "an id of control characters": (one(id="a\u0007"), None, 422, "invalid-order"),
    "an id that is true": (one(id=True), None, 422, "invalid-order"),
    "too long": (one(id="long", reference="x" * 5000), None, 413, "too-large"),
    "no measures": (b'{"id": "bare"}\n', "bare", 422, "invalid-order"),
    "an unknown format": (one(id=7, output={"format": "dwg"}), 7, 422, "invalid-order"),
    "an unknown field": (one(ids=1), "order-0", 422, "invalid-order"),
    "a fault": (lines({**apron.order(trouble="fault"), "id": "f"}), "f", 500, "internal-error"),
    "an unsound pattern": (
        lines({**apron.order(trouble="unsound"), "id": "u"}),
        "u",
        422,
        "unsound-pattern",
    ),
}
"""Each: the line, the id that is told back, status and problem."""


@pytest.fixture(name="spoiled", scope="module")
def spoiled_fixture(batches):
    """All bad lines in one batch, good ones between them."""
    bad = [line for line, *_ in BAD_LINES.values()]
    good = orders(len(bad))
    mixed = [part for n, line in enumerate(bad) for part in (line, {**good[n], "id": f"good-{n}"})]
    return batches.answers(lines(*mixed))


@pytest.mark.parametrize("name", BAD_LINES)
def test_a_bad_line_is_a_problem_and_never_ends_the_batch(spoiled, name):
    _, id_, status, code = BAD_LINES[name]
    number = 1 + 2 * list(BAD_LINES).index(name)
    (answer,) = [a for a in spoiled if a.get("line") == number]
    assert answer["type"] == "problem"
    assert answer["id"] == id_
    assert answer["status"] == answer["answer"]["status"] == status
    assert answer["answer"]["type"] == f"/problems/{code}"


def test_the_good_lines_between_bad_ones_are_all_drafted(spoiled):
    good = {answer["id"] for answer in told(spoiled, "result")}
    assert good == {f"good-{n}" for n in range(len(BAD_LINES))}
    assert spoiled[-1]["failed"] == len(BAD_LINES)


def test_an_id_that_stands_twice_is_drafted_once(batches):
    first, second = orders(2)
    answers = batches.answers(lines(first, {**second, "id": first["id"]}, {**second, "id": "7"},
                                    {**second, "id": 7}))  # fmt: skip
    assert {a["line"] for a in told(answers, "result")} == {1, 3}
    problems = {a["line"]: a for a in told(answers, "problem")}
    assert problems[2]["answer"]["errors"][0]["code"] == "id_twice"
    assert "Line 1" in problems[2]["answer"]["detail"]
    assert problems[4]["id"] == 7


def test_blank_lines_and_a_missing_last_line_break_are_no_matter(batches):
    one, two = orders(2)
    body = b"\n \r\n" + json.dumps(one).encode() + b"\r\n\n" + json.dumps(two).encode()
    answers = batches.answers(body)
    assert {(a["line"], a["id"]) for a in told(answers, "result")} == {
        (3, "order-0"),
        (5, "order-1"),
    }
    assert answers[-1]["total"] == 2


@pytest.mark.parametrize("name", FORMATS)
def test_every_format_comes_through_unharmed(batches, name):
    (order,) = orders(1)
    (result,) = told(batches.answers(lines(order), f"?format={name}"), "result")
    alone = batches.service.order({k: v for k, v in order.items() if k != "id"}, f"?format={name}")
    answer = result["answer"]
    if name == "json":
        assert answer == alone.json()
    else:
        assert answer["media_type"] == alone.headers["content-type"]
        body = answer["text"].encode() if "text" in answer else base64.b64decode(answer["base64"])
        assert body == alone.content


def test_a_zip_has_a_file_for_each_pattern_and_the_manifest_last(batches):
    one, two = orders(2, output={"format": "svg"})
    answer = batches.send(lines(one, b"{\n", {**two, "id": "../../x"}), Accept="application/zip")
    assert answer.headers["content-type"] == "application/zip"
    archive = zipfile.ZipFile(io.BytesIO(answer.content))
    assert archive.testzip() is None
    *files, last = archive.namelist()
    assert last == "manifest.json"
    manifest = json.loads(archive.read(last))
    assert (manifest["done"], manifest["failed"], manifest["total"]) == (3, 1, 3)
    by_line = {entry["line"]: entry for entry in manifest["orders"]}
    assert by_line[2]["problem"]["type"] == "/problems/malformed-json"
    assert {by_line[n]["file"] for n in (1, 3)} == set(files)
    assert by_line[3]["id"] == "../../x"
    assert not any("/" in name or ".." in name for name in files)
    alone = batches.service.order({k: v for k, v in one.items() if k != "id"})
    assert archive.read(by_line[1]["file"]) == alone.content


def test_batches_that_are_no_batches_are_refused_whole(batches):
    refused(batches.send(b""), 400, "malformed-json")
    refused(batches.send(b" \n\r\n"), 400, "malformed-json")
    refused(batches.send(b"{}\n" * 61), 413, "too-large")
    refused(batches.send(b"{}" + b" " * 200_000), 413, "too-large")
    plain = {"Content-Type": "application/json"}
    refused(batches.send(b"{}", **plain), 415, "unsupported-media-type")
    refused(batches.send(b"{}", Accept="image/png"), 406, "not-acceptable")
    refused(batches.send(b"{}", "?format=dwg"), 406, "not-acceptable")
    assert batches.app.state.house.batches.free == 2


def test_what_the_limits_say_is_what_holds(batches):
    limits = batches.service.get("/v1/limits").json()
    assert (limits["batch_lines"], limits["batch_bytes"]) == (60, 200_000)


def test_past_the_last_place_batches_are_turned_away():
    batches = Batches(batches_at_once=0)
    answer = batches.send(lines(*orders(1)))
    refused(answer, 503, "busy")
    assert "retry-after" in answer.headers


def test_an_order_that_takes_too_long_is_given_up_and_its_worker_works_on():
    batches = Batches(order_seconds=0.8)
    slow = {**apron.order(trouble="slow"), "id": "slow"}
    answers = batches.answers(lines(slow, {**apron.order(), "id": "quick"}))
    batches.app.state.house.hands.close()
    by_id = {answer.get("id"): answer for answer in answers}
    assert by_id["slow"]["answer"]["type"] == "/problems/too-slow"
    assert by_id["quick"]["status"] == 200


def test_the_example_of_the_reference_is_taken(batches):
    reference = batches.service.get("/openapi.json").json()
    content = reference["paths"]["/v1/batches"]["post"]["requestBody"]["content"]
    answers = batches.answers(content["application/x-ndjson"]["example"].encode())
    assert answers[-1]["failed"] == 0
    assert answers[-1]["done"] == len(GARMENTS) + 1
