"""Who may order, and how much, where an installation has keys."""

from __future__ import annotations

import apron
import pytest
from asking import Service, refused

from service.app import create_app
from service.command_line import main
from service.keys import Porter, digest
from service.problems import ProblemError
from service.settings import Settings, SettingsError

OURS, THEIRS = "ours-" + "x" * 38, "theirs-" + "y" * 36


def house(**settings) -> Service:
    keys = tuple(digest(key) for key in (OURS, THEIRS))
    garments = {"apron": apron.GARMENT}
    return Service(create_app(Settings(**{"api_keys": keys, **settings}), garments))


@pytest.fixture(name="guarded", scope="module")
def guarded_fixture() -> Service:
    return house()


POSTS = ("/v1/patterns", "/v1/size-ranges", "/v1/batches", "/v1/measurement-checks", "/v1/links")


@pytest.mark.parametrize("path", POSTS)
def test_without_a_key_nothing_is_drafted(guarded, path):
    answer = guarded.ask("POST", path, json=apron.order())
    refused(answer, 401, "unauthorized")
    assert answer.headers["www-authenticate"].startswith("Bearer")
    assert answer.headers["cache-control"] == "no-store"


@pytest.mark.parametrize("key", [OURS, THEIRS])
def test_with_a_key_it_is(guarded, key):
    for scheme in ("Bearer", "bearer", "BEARER "):
        answer = guarded.order(apron.order(), Authorization=f"{scheme} {key}")
        assert answer.status_code == 200


@pytest.mark.parametrize(
    "said",
    [
        OURS,
        f"Basic {OURS}",
        f"Bearer {OURS[:-1]}",
        f"Bearer {OURS}x",
        f"Bearer {OURS} {OURS}",
        f"Bearer {digest(OURS)}",
        "Bearer",
        "Bearer ",
        "",
        "Bearer " + "x" * 10_000,
    ],
)
def test_what_is_no_key_of_ours_opens_nothing(guarded, said):
    refused(guarded.order(apron.order(), Authorization=said), 401, "unauthorized")


def test_reference_data_samples_pages_and_health_stay_open(guarded):
    for path in ("/", "/docs", "/v1/garments", "/v1/garments/apron/sample", "/healthz", "/readyz"):
        assert guarded.get(path).status_code == 200


def test_a_body_is_not_read_for_those_who_may_not_send_it(guarded):
    async def never():
        raise AssertionError("someone has read it")
        yield b""

    answer = guarded.ask("POST", "/v1/patterns", content=never())
    assert answer.status_code == 401


def test_a_page_of_another_origin_may_ask_with_a_key():
    service = house(cors_origins=("https://shop.example",))
    asked = {
        "Origin": "https://shop.example",
        "Access-Control-Request-Method": "POST",
        "Access-Control-Request-Headers": "authorization,content-type",
    }
    allowed = service.ask("OPTIONS", "/v1/patterns", headers=asked)
    assert allowed.status_code == 200
    assert "Authorization" in allowed.headers["access-control-allow-headers"]
    answer = service.order(apron.order(), Origin="https://shop.example")
    assert answer.status_code == 401
    assert answer.headers["access-control-allow-origin"] == "https://shop.example"


def test_a_key_may_make_so_many_requests_a_minute_and_no_other_pays_for_it():
    service = house(key_rate=3)
    ours, theirs = ({"Authorization": f"Bearer {key}"} for key in (OURS, THEIRS))
    statuses = [service.order(apron.order(), **ours).status_code for _ in range(5)]
    assert statuses == [200, 200, 200, 429, 429]
    turned_away = service.order(apron.order(), **ours)
    refused(turned_away, 429, "too-many-requests")
    assert 1 <= int(turned_away.headers["retry-after"]) <= 20
    assert service.order(apron.order(), **theirs).status_code == 200


def test_an_allowance_fills_by_the_minutes_rate_and_not_beyond_it():
    now = [100.0]
    porter = Porter((digest(OURS),), 6, lambda: now[0])

    def let_in() -> int:
        try:
            porter.let_in(f"Bearer {OURS}")
        except ProblemError as problem:
            return int(problem.headers["Retry-After"])
        return 0

    assert [let_in() for _ in range(7)] == [0, 0, 0, 0, 0, 0, 10]
    now[0] += 9.9
    assert let_in() == 1
    now[0] += 0.2
    assert [let_in(), let_in()] == [0, 10]
    now[0] += 86_400
    assert [let_in() for _ in range(7)] == [0, 0, 0, 0, 0, 0, 10]


def test_a_wait_that_was_told_is_enough():
    now = [0.0]
    porter = Porter((digest(OURS),), 7, lambda: now[0])
    for _ in range(50):
        try:
            porter.let_in(f"Bearer {OURS}")
        except ProblemError as problem:
            now[0] += int(problem.headers["Retry-After"])
            porter.let_in(f"Bearer {OURS}")


@pytest.mark.parametrize(
    "settings",
    [{"api_keys": ("secret",)}, {"api_keys": (OURS,)}, {"api_keys": (), "key_rate": 5}],
)
def test_settings_that_would_open_the_house_stop_the_start(settings):
    with pytest.raises(SettingsError, match="TAPELINE_API_KEYS") as stopped:
        create_app(Settings(**settings))
    assert OURS not in str(stopped.value)


def test_the_command_line_shows_a_key_and_its_digest(capsys):
    assert main(["key"]) == 0
    told = dict(line.split() for line in capsys.readouterr().out.splitlines())
    assert told["digest:"] == digest(told["key:"])


def test_digests_do_not_show_where_settings_are_printed():
    assert digest(OURS) not in repr(Settings(api_keys=(digest(OURS),)))
