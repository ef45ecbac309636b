"""The service's own pages: plain HTML, one style sheet, nothing from anywhere else."""

from __future__ import annotations

import json
from functools import cache
from html import escape
from importlib.resources import files
from string import Template
from typing import TYPE_CHECKING, get_args

from drafting.drawing import WORDS, PaperName
from service.drafts import sample_order
from service.measuring import page_parts
from service.problems import PROBLEMS

if TYPE_CHECKING:
    from collections.abc import Iterable

    from drafting.garments.garment import Garment
    from service.house import House
    from service.problems import ProblemKind

HTML = "text/html; charset=utf-8"

OWN_ASSETS: dict[str, str] = {
    "style.css": "text/css; charset=utf-8",
    "docs.js": "text/javascript; charset=utf-8",
    "landing.js": "text/javascript; charset=utf-8",
}

REFERENCE_ASSETS: dict[str, str] = {
    "swagger-ui.css": "text/css; charset=utf-8",
    "swagger-ui-bundle.js": "text/javascript; charset=utf-8",
}
"""Files of the API reference's viewer, from the package `fastapi_offline`."""


@cache
def asset(name: str) -> tuple[bytes, str] | None:
    """Bytes and media type of a file that the pages load; None where there is none."""
    if name in OWN_ASSETS:
        return (files("service") / "assets" / name).read_bytes(), OWN_ASSETS[name]
    if name in REFERENCE_ASSETS:
        folder = files("fastapi_offline") / "static"
        return (folder / name).read_bytes(), REFERENCE_ASSETS[name]
    return None


@cache
def _template(name: str) -> Template:
    return Template((files("service") / "assets" / name).read_text("utf-8"))


def _filled(name: str, **values: str) -> bytes:
    return _template(name).substitute(values).encode()


def landing(house: House, address: str) -> bytes:
    """The first page: a form for measures, samples, and where to go from them.

    Args:
        house: For its garments.
        address: The service's own address, for the example.
    """
    first = next(iter(house.garments.values()))
    return _filled(
        "landing.html",
        first=escape(first.kind),
        title=escape(first.title),
        kinds="\n".join(_option(g.kind, g.title) for g in house.garments.values()),
        papers="\n".join(_option(name, name) for name in get_args(PaperName)),
        garments="\n".join(_garment(garment) for garment in house.garments.values()),
        sources="\n".join(_sources(garment) for garment in house.garments.values()),
        order=escape(json.dumps(sample_order(first), indent=2)),
        address=escape(address),
        cautions=_items(escape(caution) for caution in WORDS["en"].cautions),
    )


def _garment(garment: Garment) -> str:
    return _template("garment.html").substitute(
        kind=escape(garment.kind),
        title=escape(garment.title),
        summary=escape(garment.summary),
        formats=" ".join(_sample_link(garment.kind, name) for name in ("svg", "pdf", "json")),
    )


def _option(value: str, title: str) -> str:
    return f'<option value="{escape(value)}">{escape(title)}</option>'


def _sources(garment: Garment) -> str:
    items = _items(escape(source) for source in garment.sources)
    return f"<p>{escape(garment.title)}:</p>\n<ul>\n{items}\n</ul>"


def _sample_link(kind: str, name: str) -> str:
    return f'<a href="v1/garments/{escape(kind)}/sample?format={name}">{name.upper()}</a>'


def _items(texts: Iterable[str]) -> str:
    return "\n".join(f"<li>{text}</li>" for text in texts)


def problem_page(kind: ProblemKind) -> bytes:
    """What a problem means and how to mend it."""
    others = (f'<a href="{code}">{escape(k.title)}</a>' for code, k in PROBLEMS.items())
    return _filled(
        "problem.html",
        code=kind.code,
        status=str(kind.status),
        title=escape(kind.title),
        meaning=escape(kind.meaning),
        mend=escape(kind.mend),
        others=_items(others),
    )


def measuring_page(garment: Garment | None, house: House) -> bytes:
    """How to measure, for everything or for one garment."""
    return _filled("measuring.html", **page_parts(garment, house.garments.values()))


def reference_page() -> bytes:
    """The API reference."""
    return _filled("docs.html")
