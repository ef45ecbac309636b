"""What those who run the service and those who call it ask about it."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import PlainTextResponse, Response

from drafting.export.plan import MAX_PAGES
from drafting.laying import MOST_PIECES
from service.answers import Health, LimitsAnswer
from service.caching import kept, kept_json
from service.house import HouseDep
from service.laying.form import MOST_ORDERS
from service.limits import RETRY_AFTER
from service.links import LONGEST_TOKEN
from service.metrics import TEXT
from service.openapi import document_bytes, problem_answers
from service.problems import ProblemError
from service.schemas import LONGEST_REFERENCE

router = APIRouter(tags=["operations"])

UNKEPT = {"Cache-Control": "no-store"}


@router.get(
    "/v1/limits",
    operation_id="show_limits",
    summary="Show the limits",
    response_model=LimitsAnswer,
)
async def show_limits(request: Request, house: HouseDep) -> Response:
    """The limits in force on this installation."""
    settings = house.settings
    told: LimitsAnswer = {
        "body_bytes": settings.max_body_bytes,
        "json_depth": settings.max_json_depth,
        "reference_characters": LONGEST_REFERENCE,
        "order_seconds": settings.order_seconds,
        "orders_at_once": settings.workers,
        "orders_waiting": settings.queue_length,
        "pages": MAX_PAGES,
        "batch_lines": settings.batch_lines,
        "batch_bytes": settings.batch_bytes,
        "batches_at_once": settings.batches_at_once,
        "link_characters": LONGEST_TOKEN if house.links.on else 0,
        "link_seconds": settings.link_seconds,
        "range_sizes": settings.range_sizes,
        "lay_orders": MOST_ORDERS,
        "lay_pieces": MOST_PIECES,
        "lay_budget": settings.lay_budget,
    }
    return kept_json(request, settings, told)


@router.get("/healthz", operation_id="healthz", summary="Is the process alive?")
async def healthz() -> Health:
    """Answers as long as the process serves requests at all."""
    return {"status": "ok"}


@router.get(
    "/readyz",
    operation_id="readyz",
    summary="Would an order be taken?",
    responses=problem_answers("not-ready"),
)
async def readyz(house: HouseDep) -> Health:
    """Answers 503 while the service stops, and while no place in the queue is free."""
    if not house.bench.is_open:
        raise ProblemError("not-ready", "No order is taken at present.", headers=RETRY_AFTER)
    return {"status": "ok"}


@router.get(
    "/metrics",
    operation_id="metrics",
    summary="Tell Prometheus",
    response_class=PlainTextResponse,
    responses=problem_answers("not-found"),
)
async def metrics(house: HouseDep) -> Response:
    """Requests, stages, sizes, and findings and problems by their codes; nothing of any body.

    Off where the installation says so.
    """
    if not house.settings.metrics:
        raise ProblemError("not-found", "This installation tells no metrics.")
    return Response(house.metrics.text(), headers=UNKEPT, media_type=TEXT)


@router.get("/openapi.json", include_in_schema=False)
async def openapi(request: Request, house: HouseDep) -> Response:
    """The API reference as OpenAPI 3.1."""
    return kept(request, house.settings, document_bytes(request.app.openapi()), "application/json")
