"""What every route needs, made once when the service starts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

from fastapi import Depends, Request

from service.limits import Workbench
from service.problems import ProblemError
from service.schemas import OrderForm
from service.suggestions import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Mapping

    from drafting.garments.garment import Garment
    from service.settings import Settings


@dataclass(frozen=True, slots=True)
class House:
    """The settings, the chapters, the form that orders are filled in on, and the workbench."""

    settings: Settings
    garments: Mapping[str, Garment]
    form: OrderForm
    bench: Workbench

    @classmethod
    def built(cls, settings: Settings, garments: Mapping[str, Garment]) -> House:
        """A house for these garments."""
        return cls(settings, garments, OrderForm(garments), Workbench(settings))

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
