"""The application: settings and garments in, a FastAPI application out."""

from __future__ import annotations

import asyncio
import os
from contextlib import asynccontextmanager, suppress
from functools import cache, partial
from typing import TYPE_CHECKING, Any

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.middleware.cors import CORSMiddleware
from starlette.exceptions import HTTPException

from drafting.garments import GARMENTS
from service.coding import Packing
from service.door import Door
from service.house import House
from service.keys import Gate
from service.openapi import TITLE, api_reference
from service.problems import PROBLEMS, ProblemError, problem_response
from service.routes import ROUTERS
from service.settings import Settings, from_environment

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Mapping

    from fastapi.responses import Response

    from drafting.garments import Garment

EXPOSED = (
    "Content-Disposition",
    "Drafting-Version",
    "ETag",
    "Pattern-Id",
    "Pattern-Verdict",
    "Request-Id",
    "Retry-After",
)
"""Headers that pages of other origins may read."""


CLOSING_SECONDS = 5.0
"""When the service stops, worker processes get so long to end; what they still do, no one waits
for: its client has gone."""


def create_app(
    settings: Settings | None = None, garments: Mapping[str, Garment] = GARMENTS
) -> FastAPI:
    """The service for these garments.

    Args:
        settings: Limits and addresses; from the environment where none are given.
        garments: The chapters on offer, by kind.
    """
    house = House.built(settings or from_environment(os.environ), garments)
    app = FastAPI(
        title=TITLE,
        docs_url=None,
        redoc_url=None,
        openapi_url=None,
        redirect_slashes=False,
        lifespan=_lifespan,
    )
    app.state.house = house
    for router in ROUTERS:
        app.include_router(router)
    _answer_problems(app)
    _let_in(app, house)
    app.openapi = cache(partial(api_reference, app, house))  # type: ignore[method-assign]
    return app


@asynccontextmanager
async def _lifespan(app: FastAPI) -> AsyncIterator[None]:
    house: House = app.state.house
    house.bench.open()
    warming = asyncio.create_task(house.press.warm()) if house.press else None
    yield
    if warming:
        warming.cancel()
    house.bench.close()
    with suppress(TimeoutError):
        await asyncio.wait_for(asyncio.to_thread(_close, house), CLOSING_SECONDS)


def _close(house: House) -> None:
    house.hands.close()
    if house.press:
        house.press.close()


def _let_in(app: FastAPI, house: House) -> None:
    app.add_middleware(Gate, porter=house.porter, metrics=house.metrics)
    if house.settings.cors_origins:
        app.add_middleware(
            CORSMiddleware,
            allow_origins=house.settings.cors_origins,
            allow_methods=["GET", "HEAD", "POST"],
            allow_headers=["Authorization", "Content-Type", "If-None-Match"],
            expose_headers=EXPOSED,
        )
    app.add_middleware(Packing)
    app.add_middleware(Door, metrics=house.metrics)


def _answer_problems(app: FastAPI) -> None:
    app.add_exception_handler(ProblemError, _own)
    app.add_exception_handler(HTTPException, _framework)
    app.add_exception_handler(RequestValidationError, _parameters)


async def _own(request: Request, error: Any) -> Response:
    request.app.state.house.metrics.problem(error.code)
    return problem_response(error)


async def _framework(request: Request, error: Any) -> Response:
    """What the framework refuses by itself: unknown addresses and methods."""
    codes = {kind.status: code for code, kind in reversed(PROBLEMS.items())}
    code = codes.get(error.status_code, "not-found")
    detail = PROBLEMS[code].meaning
    return await _own(request, ProblemError(code, detail, headers=error.headers))


async def _parameters(request: Request, error: Any) -> Response:
    detail = f"A parameter of the address cannot be read: {error.errors()[0]['msg']}."
    return await _own(request, ProblemError("invalid-order", detail))
