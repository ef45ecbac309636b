"""Pages for people. They load nothing from anywhere else."""

from __future__ import annotations

import re
from functools import partial
from typing import Annotated

from fastapi import APIRouter, Path, Query, Request
from fastapi.responses import HTMLResponse, Response

from drafting.drawing import PAPERS
from drafting.drawing.measuring import VIEWS
from drafting.export import FORMATS
from service.answers import ProblemPage
from service.caching import kept, kept_json
from service.formats import preferred
from service.house import HouseDep
from service.languages import LanguageDep
from service.measuring import form, picture
from service.openapi import problem_answers
from service.pages import HTML, asset, landing, measuring_page, problem_page, reference_page
from service.problems import PROBLEMS, ProblemError
from service.routes.patterns import PICTURE_POLICY

router = APIRouter(tags=["pages"])

CodePath = Annotated[str, Path(description="Code of a problem; the end of its `type`.")]

REFERENCE_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; "
    "img-src 'self' data:; connect-src 'self'; base-uri 'none'; frame-ancestors 'none'"
)
"""The reference's viewer writes its styles into the page; it calls this service alone."""

LANDING_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""The first page's form asks this service alone, and shows and saves what it answers."""

_ADDRESS = re.compile(r"https?://[\w.:\[\]-]+(?:/[\w./-]*)?/", re.ASCII)
USUAL_ADDRESS = "http://127.0.0.1:8000/"


@router.get(
    "/",
    operation_id="landing",
    summary="The first page",
    response_class=HTMLResponse,
    responses=problem_answers("not-found"),
)
async def first_page(request: Request, house: HouseDep, language: LanguageDep) -> Response:
    """A form for measures, samples, and links to the API reference and to the sources."""
    said = str(request.base_url)
    address = said if _ADDRESS.fullmatch(said) else USUAL_ADDRESS
    headers = {"Content-Security-Policy": LANDING_POLICY, "Content-Language": language}
    return kept(request, house.settings, landing(house, address, language), HTML, headers)


@router.get(
    "/problems/{code}",
    operation_id="show_problem",
    summary="What a problem means",
    response_model=ProblemPage,
    responses={
        200: {"description": "Its meaning and its cure.", "content": {"text/html": {}}},
        **problem_answers("not-found"),
    },
)
async def show_problem(request: Request, house: HouseDep, code: CodePath) -> Response:
    """What a problem means and how to mend it, as JSON or as a page."""
    if code not in PROBLEMS:
        raise ProblemError("not-found", f"There is no such problem. All: {', '.join(PROBLEMS)}.")
    kind = PROBLEMS[code]
    accept = request.headers.get("accept")
    if preferred(accept, ("application/json", "text/html")) == "text/html":
        return kept(request, house.settings, problem_page(kind), HTML)
    told: ProblemPage = {
        "code": kind.code,
        "status": kind.status,
        "title": kind.title,
        "meaning": kind.meaning,
        "mend": kind.mend,
    }
    return kept_json(request, house.settings, told)


GarmentQuery = Annotated[str | None, Query(description="Kind of a garment; else all measures.")]


@router.get("/measuring", include_in_schema=False)
async def measuring(
    request: Request, house: HouseDep, language: LanguageDep, garment: GarmentQuery = None
) -> Response:
    """How to measure, for all measures or a garment's."""
    chapter = house.garment(garment) if garment is not None else None
    page, told = measuring_page(chapter, house, language), {"Content-Language": language}
    return kept(request, house.settings, page, HTML, told)


@router.get("/measuring/form.pdf", include_in_schema=False)
async def measuring_form(
    request: Request,
    house: HouseDep,
    language: LanguageDep,
    garment: GarmentQuery = None,
    paper: str = "a4",
) -> Response:
    """A blank form to print and fill in."""
    chapter = house.garment(garment) if garment is not None else None
    if paper not in PAPERS:
        raise ProblemError("not-found", f"There is no such paper. All: {', '.join(PAPERS)}.")
    made = await house.run(partial(form, chapter, paper, language), "pdf")
    told = {"Content-Language": language}
    return kept(request, house.settings, made, FORMATS["pdf"].media_type, told)


@router.get("/measuring/{view}.svg", include_in_schema=False)
async def measuring_figure(
    request: Request,
    house: HouseDep,
    view: str,
    language: LanguageDep,
    garment: GarmentQuery = None,
) -> Response:
    """The figure from one side, with the measures on it."""
    chapter = house.garment(garment) if garment is not None else None
    if view not in VIEWS:
        raise ProblemError("not-found", f"There is no such figure. All: {', '.join(VIEWS)}.")
    drawn = await house.run(partial(picture, view, chapter, language), "svg")
    policy = {"Content-Security-Policy": PICTURE_POLICY, "Content-Language": language}
    return kept(request, house.settings, drawn, FORMATS["svg"].media_type, policy)


@router.get("/docs", include_in_schema=False)
async def docs(request: Request, house: HouseDep) -> Response:
    """The API reference to read and to try."""
    policy = {"Content-Security-Policy": REFERENCE_POLICY}
    return kept(request, house.settings, reference_page(), HTML, policy)


@router.get("/assets/{name}", include_in_schema=False)
async def assets(request: Request, house: HouseDep, name: str) -> Response:
    """A file that the pages load."""
    found = asset(name)
    if found is None:
        raise ProblemError("not-found", "There is no such file.")
    return kept(request, house.settings, *found)
