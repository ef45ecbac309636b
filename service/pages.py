"""The service's own pages: plain HTML, one style sheet, nothing from anywhere else."""

from __future__ import annotations

import json
from functools import cache
from html import escape
from importlib.resources import files
from typing import TYPE_CHECKING, get_args

from drafting.drawing import WORDS, PaperName
from drafting.language import taught_in
from service.drafts import sample_order
from service.languages import DEFAULT, OWN_NAMES
from service.measuring import page_parts
from service.page_words import form_words, named, page_frame, told
from service.problems import PROBLEMS

if TYPE_CHECKING:
    from collections.abc import Iterable

    from drafting.garments.garment import Garment
    from drafting.language import Language
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


def _filled(name: str, language: Language = DEFAULT, **values: str) -> bytes:
    return page_frame(name, language).substitute(values, language=language).encode()


def languages(language: Language, address: str) -> str:
    """A link to the page in each language, the one it is in marked as such.

    Args:
        language: The one that the page is in.
        address: Of the page, up to the language's name.
    """
    here = {language: ' aria-current="true"'}
    return "".join(
        f'<a href="{address}{name}" hreflang="{name}" lang="{name}"{here.get(name, "")}>{own}</a>'
        for name, own in OWN_NAMES.items()
    )


def landing(house: House, address: str, language: Language) -> bytes:
    """The first page: a form for measures, samples, and where to go from them.

    Args:
        house: For its garments.
        address: The service's own address, for the example.
        language: Of the page.
    """
    garments = house.garments.values()
    first = next(iter(garments))
    return _filled(
        "landing.html",
        language,
        languages=languages(language, "?language="),
        told_in=taught_in(language),
        first=escape(first.kind),
        title=named(first.title, language),
        kinds="\n".join(_option(g.kind, named(g.title, language)) for g in garments),
        papers="\n".join(_option(name, escape(name)) for name in get_args(PaperName)),
        garments="\n".join(_garment(garment, language) for garment in garments),
        sources="\n".join(_sources(garment, language) for garment in garments),
        order=escape(json.dumps(sample_order(first), indent=2)),
        address=escape(address),
        cautions=_items(escape(caution) for caution in WORDS[language].cautions),
        words=form_words(language),
    )


def _garment(garment: Garment, language: Language) -> str:
    kind = escape(garment.kind)
    return page_frame("garment.html", language).substitute(
        kind=kind,
        language=language,
        title=named(garment.title, language),
        summary=told(garment.summary, language),
        formats=" ".join(_sample_link(kind, name, language) for name in ("svg", "pdf", "json")),
    )


def _option(value: str, title: str) -> str:
    return f'<option value="{escape(value)}">{title}</option>'


def _sources(garment: Garment, language: Language) -> str:
    items = _items(told(source, language) for source in garment.sources)
    return f"<h3>{told(garment.title, language)}</h3>\n<ul>\n{items}\n</ul>"


def _sample_link(kind: str, name: str, language: Language) -> str:
    address = f"v1/garments/{kind}/sample?format={name}&amp;language={language}"
    return f'<a href="{address}">{name.upper()}</a>'


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


def measuring_page(garment: Garment | None, house: House, language: Language) -> bytes:
    """How to measure, for everything or for one garment."""
    kept = f"?garment={escape(garment.kind)}&amp;language=" if garment else "?language="
    parts = page_parts(garment, house.garments.values(), language)
    return _filled("measuring.html", language, languages=languages(language, kept), **parts)


def reference_page() -> bytes:
    """The API reference."""
    return _filled("docs.html")
