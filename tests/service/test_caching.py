"""GET answers may be kept, and are not drafted again for those who have them."""

from __future__ import annotations

import pytest

KEPT = [
    "/",
    "/docs",
    "/openapi.json",
    "/assets/style.css",
    "/v1/garments",
    "/v1/garments/trousers",
    "/v1/garments/trousers/sample",
    "/v1/garments/trousers/sample?format=svg",
    "/v1/garments/trousers/sample?format=pdf",
    "/v1/measurements",
    "/v1/measurements?garment=trousers",
    "/v1/limits",
    "/problems/busy",
]


@pytest.mark.parametrize("path", KEPT)
def test_what_is_had_is_not_sent_again(service, path):
    first = service.get(path)
    assert first.status_code == 200
    etag = first.headers["etag"]
    assert etag.startswith('"')
    assert "max-age=" in first.headers["cache-control"]
    assert first.headers["vary"] == "Accept, Accept-Language, Accept-Encoding"
    for said in (etag, f'"other", {etag}', f"W/{etag}", "*"):
        again = service.get(path, If_None_Match=said)
        assert (again.status_code, again.content) == (304, b"")
        assert again.headers["etag"] == etag
        assert "cache-control" in again.headers
    assert service.get(path, If_None_Match='"other"').status_code == 200


@pytest.mark.parametrize("path", KEPT)
def test_head_tells_what_get_would_send(service, path):
    got, head = service.get(path), service.ask("HEAD", path)
    assert (head.status_code, head.content) == (200, b"")
    for name in ("content-type", "content-length", "etag", "vary", "cache-control"):
        assert head.headers[name] == got.headers[name]


def test_head_is_refused_where_get_is(service):
    assert service.ask("HEAD", "/v1/patterns").status_code == 405
    assert service.ask("HEAD", "/nowhere").status_code == 404


def test_each_format_and_garment_has_its_own_tag(apron_service):
    paths = [
        f"/v1/garments/{kind}/sample?format={name}"
        for kind in ("trousers", "apron")
        for name in ("json", "svg", "pdf")
    ]
    assert len({apron_service.get(path).headers["etag"] for path in paths}) == len(paths)


def test_a_sample_that_is_had_is_not_drafted(service, monkeypatch):
    etag = service.get("/v1/garments/trousers/sample").headers["etag"]
    monkeypatch.setattr("service.drafts.work", None)
    again = service.get("/v1/garments/trousers/sample", If_None_Match=etag)
    assert again.status_code == 304


def test_problems_and_orders_are_never_kept(service):
    assert service.get("/nowhere").headers["cache-control"] == "no-store"
    assert service.order({}).headers["cache-control"] == "no-store"
