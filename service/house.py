"""What every route needs, made once when the service starts."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from time import perf_counter
from typing import TYPE_CHECKING, Annotated, Any, TypeVar

from fastapi import Depends, Request

from service.batching.hired import hands_for
from service.batching.streamed import Places
from service.batching.task import Tools
from service.drafts import drafted
from service.keys import Porter
from service.limits import Workbench
from service.links import Links
from service.metrics import Metrics
from service.press import HEAVY, Press
from service.problems import ProblemError
from service.schemas import OrderForm
from service.suggestions import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from drafting.export import Format
    from drafting.garments.garment import Garment
    from service.batching.hands import Hands
    from service.drafts import Drafted
    from service.schemas import Order
    from service.settings import Settings

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class House:
    """What every route needs.

    Attributes:
        settings: Limits and addresses.
        garments: The chapters.
        form: The form that orders are filled in on.
        bench: Drafts single orders.
        hands: Draft batches and size ranges, in other processes.
        tools: What those need to know.
        batches: Places for batches.
        ranges: Places for size ranges.
        lays: Places for lay plans.
        links: Seal orders into addresses.
        porter: Knows who may order.
        press: Writes heavy formats, in other processes; None where threads do that too.
        metrics: Counts and clocks.
    """

    settings: Settings
    garments: Mapping[str, Garment]
    form: OrderForm
    bench: Workbench
    hands: Hands
    tools: Tools
    batches: Places
    ranges: Places
    lays: Places
    links: Links
    porter: Porter
    press: Press | None
    metrics: Metrics

    @classmethod
    def built(cls, settings: Settings, garments: Mapping[str, Garment]) -> House:
        """A house for these garments."""
        bench = Workbench(settings)
        return cls(
            settings,
            garments,
            OrderForm(garments),
            bench,
            hands_for(settings),
            Tools.of(garments, settings.max_json_depth, settings.order_seconds),
            Places(settings.batches_at_once),
            Places(settings.ranges_at_once),
            Places(settings.lays_at_once),
            Links(settings.link_keys),
            Porter(settings.api_keys, settings.key_rate),
            Press(settings) if settings.heavy_workers else None,
            Metrics(bench),
        )

    def read(self, raw: Any) -> Order:
        """The order of decoded JSON. Raises ProblemError (invalid-order)."""
        began = perf_counter()
        order = self.form.read(raw)
        self.metrics.stage("read", "json", perf_counter() - began)
        return order

    async def draft(self, order: Order, asked: Format) -> Drafted:
        """The pattern of an order in a format.

        Raises:
            ProblemError: The craft refuses the order, the pattern is unsound, or the house is
                full.
        """
        done = await self.run(partial(drafted, order, self.form, asked), asked.name)
        self.metrics.drafted(order.garment.kind, asked.name, done)
        return done

    async def run(self, task: Callable[[], T], format_: str) -> T:
        """A task's result: in a thread, or in another process where the format is heavy.

        Args:
            task: A partial call of a module's function with values that can be pickled.
            format_: Name of the format that it writes.
        """
        if self.press and format_ in HEAVY:
            return await self.press.run(task)
        return await self.bench.run(task)

    def garment(self, kind: str) -> Garment:
        """The chapter of that kind. Raises ProblemError (not-found)."""
        if kind not in self.garments:
            near = did_you_mean(kind, self.garments)
            detail = f"There is no such garment.{near} GET /v1/garments lists them all."
            raise ProblemError("not-found", detail)
        return self.garments[kind]


def house_of(request: Request) -> House:
    """The house that the application was built with."""
    house: House = request.app.state.house
    return house


HouseDep = Annotated[House, Depends(house_of)]
