"""What every route needs, made once when the service starts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

from fastapi import Depends, Request

from service.batching.hired import hands_for
from service.batching.streamed import Places
from service.batching.task import Tools
from service.keys import Porter
from service.limits import Workbench
from service.links import Links
from service.problems import ProblemError
from service.schemas import OrderForm
from service.suggestions import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Mapping

    from drafting.garments.garment import Garment
    from service.batching.hands import Hands
    from service.settings import Settings


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

    @classmethod
    def built(cls, settings: Settings, garments: Mapping[str, Garment]) -> House:
        """A house for these garments."""
        return cls(
            settings,
            garments,
            OrderForm(garments),
            Workbench(settings),
            hands_for(settings),
            Tools.of(garments, settings.max_json_depth, settings.order_seconds),
            Places(settings.batches_at_once),
            Places(settings.ranges_at_once),
            Places(settings.lays_at_once),
            Links(settings.link_keys),
            Porter(settings.api_keys, settings.key_rate),
        )

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
