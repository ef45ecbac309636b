"""Links: an order sealed into an address, followed by anyone who has it, read by nobody."""

from __future__ import annotations

import base64
import json
import re
import time

import apron
import pytest
from asking import Service, example, refused, trouble
from pydantic import TypeAdapter

from service.answers import LinkAnswer
from service.app import create_app
from service.command_line import main
from service.links import LONGEST_TOKEN, Links
from service.settings import Settings, SettingsError

OLD, NEW, OTHER = (base64.urlsafe_b64encode(bytes([n]) * 32).decode() for n in (1, 2, 3))
PROPER = re.compile("[A-Za-z0-9_-]+")


def house(*keys: str, **settings) -> Service:
    return Service(create_app(Settings(link_keys=keys, **settings), {"apron": apron.GARMENT}))


@pytest.fixture(name="linking", scope="module")
def linking_fixture() -> Service:
    return house(NEW)


def order(**more) -> dict:
    return {**apron.order(), "reference": "Quillby Yard (invented)", **more}


def made(service: Service, document: object):
    return service.ask("POST", "/v1/links", json=document)


def link(service: Service, **more) -> dict:
    answer = made(service, order(**more))
    assert answer.status_code == 200, answer.text
    assert answer.headers["cache-control"] == "no-store"
    told = answer.json()
    assert TypeAdapter(LinkAnswer).validate_python(told) == told
    return told


def test_a_link_gives_the_pattern_of_its_order_in_each_format(linking):
    told = link(linking)
    for name, href in told["formats"].items():
        got = linking.get(href)
        ordered = linking.order(order(), f"?format={name}")
        assert got.content == ordered.content
        for header in ("content-type", "pattern-verdict", "pattern-id", "content-disposition"):
            assert got.headers[header] == ordered.headers[header]


def test_a_picture_on_a_page_gets_a_picture(linking):
    browser = "image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8"
    got = linking.get(link(linking)["href"], Accept=browser)
    assert got.headers["content-type"] == "image/svg+xml"
    assert got.headers["cross-origin-resource-policy"] == "cross-origin"


def test_the_format_of_the_order_goes_before_accept(linking):
    told = link(linking, output={"format": "pdf"})
    assert linking.get(told["href"], Accept="image/*").content.startswith(b"%PDF-")
    assert linking.get(told["formats"]["svg"]).headers["content-type"] == "image/svg+xml"


def test_nothing_of_the_order_can_be_read_in_a_token(linking):
    token = link(linking)["token"]
    assert PROPER.fullmatch(token)
    assert len(token) < 400
    inside = base64.urlsafe_b64decode(token + "==")
    for part in (b"waist", b"apron", b"Quillby", b"74", b"measurements"):
        assert part not in inside
    assert token not in json.dumps(order())


def test_two_links_to_one_order_cannot_be_told_to_be_so(linking):
    one, two = (link(linking)["token"] for _ in range(2))
    shared = sum(a == b for a, b in zip(one, two, strict=True))
    assert shared < len(one) / 4
    first, second = (linking.get(f"/v1/links/{token}") for token in (one, two))
    assert first.content == second.content
    assert first.headers["etag"] != second.headers["etag"]


def test_every_change_to_a_token_leads_nowhere(linking):
    token = link(linking)["token"]
    for place in range(0, len(token), 7):
        other = "A" if token[place] != "A" else "B"
        changed = token[:place] + other + token[place + 1 :]
        refused(linking.get(f"/v1/links/{changed}"), 404, "not-found")


@pytest.mark.parametrize(
    "change",
    [
        lambda t: t[:-1],
        lambda t: t[1:],
        lambda t: t + "A",
        lambda t: t + "=",
        lambda t: t[: len(t) // 2],
        lambda t: t + t,
        lambda _: "A",
        lambda _: "AQ",
        lambda _: "waist_girth-74",
        lambda _: "A" * (LONGEST_TOKEN + 1),
        lambda t: t.swapcase(),
        lambda t: "%00" + t,
        lambda t: t.replace("A", "%C3%84"),
        lambda t: f"{t}/",
    ],
)
def test_what_is_no_token_of_ours_leads_nowhere(linking, change):
    token = next(t for _ in range(50) if "A" in (t := link(linking)["token"]))
    refused(linking.get(f"/v1/links/{change(token)}"), 404, "not-found")


def test_a_foreign_link_leads_nowhere():
    refused(house(OTHER).get(link(house(NEW))["href"]), 404, "not-found")


def test_keys_are_turned_over_without_breaking_links():
    before, between, after = house(OLD), house(NEW, OLD), house(NEW)
    old = link(before)["href"]
    assert between.get(old).status_code == 200
    refused(after.get(old), 404, "not-found")
    new = link(between)["href"]
    assert after.get(new).status_code == 200
    refused(before.get(new), 404, "not-found")


def test_links_are_off_without_a_key(service):
    for answer in (made(service, example()), service.get("/v1/links/AAAA")):
        problem = refused(answer, 404, "not-found")
        assert "makes no links" in problem["detail"]
    assert service.get("/v1/limits").json()["link_characters"] == 0


def test_a_link_expires(linking, monkeypatch):
    told = link(linking, expires_in=3600)
    now = time.time()
    ends = time.strptime(told["expires"], "%Y-%m-%dT%H:%M:%SZ")
    assert 3595 < time.mktime(ends) - time.mktime(time.gmtime(now)) <= 3600
    got = linking.get(told["href"])
    assert got.status_code == 200
    assert 3500 < int(got.headers["cache-control"].rpartition("=")[2]) <= 3600
    monkeypatch.setattr("service.routes.links.time.time", lambda: now + 3601)
    refused(linking.get(told["href"]), 404, "not-found")
    refused(linking.get(told["href"], If_None_Match=got.headers["etag"]), 404, "not-found")


def test_a_link_is_kept_no_longer_than_it_holds(linking):
    got = linking.get(link(linking, expires_in=60)["href"])
    assert int(got.headers["cache-control"].rpartition("=")[2]) <= 60


def test_a_link_holds_for_ever_where_nothing_is_said(linking, monkeypatch):
    told = link(linking)
    assert told["expires"] is None
    later = time.time() + 9e8
    monkeypatch.setattr("service.routes.links.time.time", lambda: later)
    assert linking.get(told["href"]).status_code == 200


def test_an_installation_can_bound_the_life_of_links():
    service = house(NEW, link_seconds=600)
    assert link(service)["expires"] is not None
    problem = refused(made(service, order(expires_in=601)), 422, "invalid-order")
    assert trouble(problem, "/expires_in")["allowed"] == [60, 600]


def test_a_pattern_that_is_had_is_not_drafted_and_not_kept_by_others(linking, monkeypatch):
    href = link(linking)["href"]
    got = linking.get(href)
    assert got.headers["cache-control"].startswith("private, ")
    assert got.headers["x-robots-tag"].startswith("noindex")
    monkeypatch.setattr("service.drafts.work", None)
    again = linking.get(href, If_None_Match=got.headers["etag"])
    assert (again.status_code, again.content) == (304, b"")
    assert again.headers["cache-control"].startswith("private, ")
    assert again.headers["x-robots-tag"].startswith("noindex")


WRONG = [
    ([], "", "wrong_type"),
    (order(expires_in="soon"), "/expires_in", "wrong_type"),
    (order(expires_in=1.5), "/expires_in", "wrong_type"),
    (order(expires_in=0), "/expires_in", "out_of_range"),
    (order(expires_in=10**12), "/expires_in", "out_of_range"),
    (order(expires=3600), "/expires", "unknown_field"),
    (
        {**order(), "measurements": {"waist_girth": 740}},
        "/measurements/waist_girth",
        "out_of_range",
    ),
]


@pytest.mark.parametrize(("document", "pointer", "code"), WRONG)
def test_what_is_wrong_with_a_request_is_pointed_at(linking, document, pointer, code):
    problem = refused(made(linking, document), 422, "invalid-order")
    assert trouble(problem, pointer)["code"] == code


def test_all_that_is_wrong_is_told_at_once(linking):
    document = {**order(expires_in=0), "reference": 7}
    problem = refused(made(linking, document), 422, "invalid-order")
    assert {e["pointer"] for e in problem["errors"]} == {"/expires_in", "/reference"}


def test_no_link_is_made_that_leads_to_a_problem(linking):
    unsound = {**order(), "garment": {"kind": "apron", "trouble": "unsound"}}
    refused(made(linking, unsound), 422, "unsound-pattern")
    paper = {**order(output={"format": "pdf"}), "garment": {"kind": "apron", "trouble": "paper"}}
    refused(made(linking, paper), 422, "invalid-order")


def test_a_link_is_never_longer_than_an_address_may_be():
    links = Links((NEW,))
    noise = "".join(chr(0x4E00 + (n * 7919) % 20000) for n in range(6000))
    with pytest.raises(Exception, match="invalid-order"):
        links.seal({"reference": noise}, None)


def test_a_packed_order_is_not_unpacked_beyond_its_bound():
    links = Links((NEW,))
    token = links.seal({"reference": "x" * 4_000_000}, None)
    assert len(links.open(token, 0.0, 1000).order) == 1000


@pytest.mark.parametrize("key", ["short", "", "ä" * 43, NEW[:-8]])
def test_a_key_that_is_none_stops_the_start(key):
    with pytest.raises(SettingsError, match="TAPELINE_LINK_KEYS") as stopped:
        create_app(Settings(link_keys=(key,)))
    assert not key or key not in str(stopped.value)


def test_keys_do_not_show_where_settings_are_printed():
    assert NEW not in repr(Settings(link_keys=(NEW,)))


def test_the_command_line_makes_keys(capsys):
    made = set()
    for _ in range(2):
        assert main(["key"]) == 0
        made.add(capsys.readouterr().out.split()[1])
    assert len(made) == 2
    assert link(house(*made))["href"]
