"""Answers are packed for those who can unpack them, and say so in their tags."""

from __future__ import annotations

import gzip
import json
import xml.etree.ElementTree as ET

import apron
import httpx
import pytest
from asking import Service, example

PATHS = [
    "/",
    "/openapi.json",
    "/v1/measurements",
    "/v1/size-tables/women",
    "/v1/garments/apron/sample",
    "/v1/garments/apron/sample?format=svg",
    "/v1/garments/apron/sample?format=pdf",
    "/v1/size-tables/women/88-regular/apron",
]


def raw(service: Service, method: str, path: str, accept_encoding: str, **kwargs):
    """The answer as it is on the wire, not unpacked."""

    async def send(client: httpx.AsyncClient) -> tuple[httpx.Response, bytes]:
        headers = {"Accept-Encoding": accept_encoding, **kwargs.pop("headers", {})}
        async with client.stream(method, path, headers=headers, **kwargs) as answer:
            return answer, b"".join([part async for part in answer.aiter_raw()])

    return service.run(send)


@pytest.mark.parametrize("path", PATHS)
def test_what_is_packed_is_the_same_and_shorter(only_aprons, path):
    plain, whole = raw(only_aprons, "GET", path, "identity")
    packed, part = raw(only_aprons, "GET", path, "gzip, br")
    assert "content-encoding" not in plain.headers
    assert packed.headers["content-encoding"] == "gzip"
    assert gzip.decompress(part) == whole
    assert int(packed.headers["content-length"]) == len(part) < len(whole)
    assert plain.headers["etag"] != packed.headers["etag"]
    assert "Accept-Encoding" in packed.headers["vary"]


@pytest.mark.parametrize("path", PATHS)
def test_each_coding_is_known_by_its_own_tag(only_aprons, path):
    etags = {}
    for coding in ("identity", "gzip"):
        etags[coding] = raw(only_aprons, "GET", path, coding)[0].headers["etag"]
    for asked, own in etags.items():
        for had in etags.values():
            answer, _ = raw(only_aprons, "GET", path, asked, headers={"If-None-Match": had})
            assert answer.status_code == (304 if had == own else 200)
            assert answer.headers["etag"] == own


def test_orders_are_packed_too(only_aprons):
    order = apron.order()
    answer, packed = raw(only_aprons, "POST", "/v1/patterns", "gzip", json=order)
    assert answer.headers["content-encoding"] == "gzip"
    assert json.loads(gzip.decompress(packed)) == only_aprons.order(order).json()
    _, drawn = raw(only_aprons, "POST", "/v1/patterns?format=svg", "gzip", json=order)
    assert ET.fromstring(gzip.decompress(drawn)).tag.endswith("svg")  # noqa: S314 - our own


def test_what_is_short_is_sent_as_it_is(only_aprons):
    for path in ("/healthz", "/nowhere"):
        answer, _ = raw(only_aprons, "GET", path, "gzip")
        assert "content-encoding" not in answer.headers


def test_head_tells_the_length_of_what_get_would_send(only_aprons):
    for coding in ("identity", "gzip"):
        got, _ = raw(only_aprons, "GET", "/v1/measurements", coding)
        head, nothing = raw(only_aprons, "HEAD", "/v1/measurements", coding)
        assert nothing == b""
        assert head.headers["content-length"] == got.headers["content-length"]
        assert head.headers.get("content-encoding") == got.headers.get("content-encoding")


@pytest.mark.parametrize("header", ["", "identity", "br, deflate", "gzip;q=0", "gzip;q=0, *", "gz"])
def test_who_does_not_take_gzip_gets_none(only_aprons, header):
    answer, whole = raw(only_aprons, "GET", "/v1/measurements", header)
    assert "content-encoding" not in answer.headers
    assert json.loads(whole)


@pytest.mark.parametrize("header", ["gzip", "GZip", "br;q=1, gzip;q=0.1", "*", "deflate , gzip"])
def test_who_takes_gzip_gets_it(only_aprons, header):
    answer, packed = raw(only_aprons, "GET", "/v1/measurements", header)
    assert answer.headers["content-encoding"] == "gzip"
    assert json.loads(gzip.decompress(packed))


def test_an_example_is_a_third_as_long(service):
    _, whole = raw(service, "POST", "/v1/patterns", "identity", json=example())
    _, packed = raw(service, "POST", "/v1/patterns", "gzip", json=example())
    assert len(packed) < len(whole) / 3
