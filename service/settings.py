"""What an installation can set, each from one environment variable, with its default."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

PREFIX = "TAPELINE_"


class SettingsError(ValueError):
    """An environment variable holds a value that cannot be used; the message names it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """The limits and addresses in force. `GET /v1/limits` tells the limits.

    Each is read from the environment variable TAPELINE_ and its name in capitals, such as
    TAPELINE_MAX_BODY_BYTES.

    Attributes:
        host: Address that `python -m service serve` listens on.
        port: Port that it listens on.
        max_body_bytes: Longest request body, in bytes.
        max_json_depth: Deepest nesting of objects and lists in an order.
        order_seconds: Longest time for one order, in seconds.
        workers: Orders drafted at the same time in one process.
        queue_length: Orders that may wait for a worker; more are answered 503, and fewer wait where
            their turn would not come within half of `order_seconds`.
        heavy_workers: Processes that write what takes long (PDF, PNG, ZIP) of single orders; 0 for
            threads.
        batch_workers: Processes that draft batches and size ranges; 0 for one a core.
        cluster: Address of a Dask scheduler whose workers do that instead; empty for none.
        batches_at_once: Batches that run at the same time; more are answered 503.
        batch_lines: Most orders in a batch.
        batch_bytes: Longest batch, in bytes.
        batch_body_seconds: Longest time for a batch to arrive, in seconds.
        reader_seconds: A client that takes nothing of its answer for so long is given up.
        beat_seconds: From one progress report of a batch to the next.
        ranges_at_once: Size ranges in work or waiting; more are answered 503.
        range_sizes: Most sizes in a range.
        range_seconds: Longest time for a size range, in seconds.
        link_keys: Keys of links, as `python -m service key` makes them, separated by commas; the
            first seals, all of them open. Links are off where there is none.
        link_seconds: Longest life of a link; 0 for no end.
        api_keys: Digests of the keys that orders need, as `python -m service key` shows them,
            separated by commas; without any, everyone may order.
        key_rate: Requests a minute that a key may make; 0 for any number.
        lays_at_once: Lay plans in work or waiting; more are answered 503.
        lay_seconds: Longest time for a lay plan, in seconds.
        lay_budget: Seconds that the engine may search for a lay where the request names none.
        leave_seconds: Told to stop (SIGTERM), the server says for so long that it is not ready, and
            still answers.
        stop_seconds: What is then in flight has so long to end, in seconds.
        metrics: Whether GET /metrics tells anything: 1 or 0.
        max_age: How long GET answers may be cached, in seconds.
        cors_origins: Origins whose pages may call the service, separated by commas; "*" for all.
    """

    host: str = "127.0.0.1"
    port: int = 8000
    max_body_bytes: int = 256 * 1024
    max_json_depth: int = 32
    order_seconds: float = 30.0
    workers: int = 2
    queue_length: int = 64
    heavy_workers: int = 1
    batch_workers: int = 0
    cluster: str = ""
    batches_at_once: int = 2
    batch_lines: int = 10_000
    batch_bytes: int = 16 * 1024 * 1024
    batch_body_seconds: float = 120.0
    reader_seconds: float = 60.0
    beat_seconds: float = 1.0
    ranges_at_once: int = 8
    range_sizes: int = 20
    range_seconds: float = 60.0
    link_keys: tuple[str, ...] = field(default=(), repr=False)
    link_seconds: int = 0
    api_keys: tuple[str, ...] = field(default=(), repr=False)
    key_rate: int = 0
    lays_at_once: int = 4
    lay_seconds: float = 60.0
    lay_budget: float = 2.0
    leave_seconds: float = 1.0
    stop_seconds: float = 60.0
    metrics: int = 1
    max_age: int = 3600
    cors_origins: tuple[str, ...] = ()


def from_environment(environ: Mapping[str, str]) -> Settings:
    """Settings from the variables that are set; the defaults for the rest.

    Raises:
        SettingsError: A variable does not hold what its setting needs.
    """
    names = {PREFIX + field.name.upper(): field for field in fields(Settings)}
    given = {
        field.name: _value(variable, environ[variable], field.default)
        for variable, field in names.items()
        if variable in environ
    }
    return Settings(**given)  # type: ignore[arg-type]


def _value(variable: str, text: str, default: object) -> object:
    match default:
        case tuple():
            return tuple(part.strip() for part in text.split(",") if part.strip())
        case str():
            return text
        case _:
            return _number(variable, text, type(default))


def _number(variable: str, text: str, kind: type) -> object:
    try:
        number: float = kind(text)
    except ValueError:
        raise SettingsError(f"{variable} must be a number, not {text!r}.") from None
    if not 0 <= number < float("inf"):
        raise SettingsError(f"{variable} must be zero or more, not {text!r}.")
    return number
