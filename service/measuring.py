"""How to measure: a page, its figures, and a form to print; for all measures or one garment's."""

from __future__ import annotations

from dataclasses import replace
from html import escape
from typing import TYPE_CHECKING

from drafting.body import MEASURES, RANGES
from drafting.drawing.measuring import TAPES, VIEWS, View, figure
from drafting.export.svg import render
from drafting.language import decimal, page_text
from service.page_words import named, told

if TYPE_CHECKING:
    from collections.abc import Iterable

    from drafting.body.measure import Measure
    from drafting.garments.garment import Garment
    from drafting.language import Language

ALL, FOR_ONE = "How to measure", "How to measure for: {title}"
"""Headings of the page."""
FORM_ALL, FORM_FOR_ONE = "Measurements", "Measurements for: {title}"
"""Titles of the form."""
SEEN: dict[View, str] = {
    "front": "A figure from the front, with a numbered line where each tape lies",
    "back": "A figure from the back, with a numbered line where each tape lies",
    "side": "A figure from the side, with a numbered line where each tape lies",
}
RANGE, UNITS = (
    "Between {low} and {high}.",
    {"cm": " cm", "deg": "\N{DEGREE SIGN}", "kg": " kg"},
)


def asked_for(garment: Garment | None) -> tuple[Measure, ...]:
    """The measures of a garment, or all, in the order of the tape."""
    names = {*garment.needs, *garment.optional} if garment else {*MEASURES}
    return tuple(measure for name, measure in MEASURES.items() if name in names)


def picture(view: View, garment: Garment | None, language: Language) -> bytes:
    """The figure from one side, with the garment's measures on it."""
    drawn = figure(view, _numbers(asked_for(garment)))
    title = page_text(SEEN[view], language)
    return render(
        replace(drawn, title=title, description=_listed(view, garment, language)), "figure"
    )


def _listed(view: View, garment: Garment | None, language: Language) -> str:
    seen = {name for name, (side, _) in TAPES.items() if side == view}
    numbered = enumerate(asked_for(garment), 1)
    return "; ".join(f"{i}: {page_text(m.title, language)}" for i, m in numbered if m.name in seen)


def form(garment: Garment | None, paper: str = "a4", language: Language = "en") -> bytes:
    """The form to print."""
    from drafting.export import measuring_form  # noqa: PLC0415 - loaded with the first PDF

    return measuring_form.write(
        asked_for(garment), _headed(garment, FORM_ALL, FORM_FOR_ONE, language), paper, language
    )


def _headed(garment: Garment | None, every: str, one: str, language: Language) -> str:
    if garment is None:
        return page_text(every, language)
    return page_text(one, language).format(title=page_text(garment.title, language))


def page_parts(
    garment: Garment | None, garments: Iterable[Garment], language: Language
) -> dict[str, str]:
    """What the page's frame is filled with."""
    measures = asked_for(garment)
    query = f"?language={language}" + (f"&amp;garment={escape(garment.kind)}" if garment else "")
    seen = {TAPES[measure.name][0] for measure in measures if measure.name in TAPES}
    every = f'<a href="measuring?language={language}">{told("Everything", language)}</a>'
    return {
        "heading": escape(_headed(garment, ALL, FOR_ONE, language)),
        "query": query,
        "garments": " ".join((every, *(_link(each, language) for each in garments))),
        "figures": "\n".join(_figure(view, query, language) for view in VIEWS if view in seen),
        "measures": "\n".join(_entry(measure, language) for measure in measures),
    }


def _link(garment: Garment, language: Language) -> str:
    address = f"measuring?garment={escape(garment.kind)}&amp;language={language}"
    return f'<a href="{address}">{told(garment.title, language)}</a>'


def _numbers(measures: Iterable[Measure]) -> dict[str, int]:
    return {measure.name: number for number, measure in enumerate(measures, 1)}


def _figure(view: View, query: str, language: Language) -> str:
    alt = named(SEEN[view], language)
    return f'<img class="drawing" src="measuring/{view}.svg{query}" alt="{alt}">'


def _entry(measure: Measure, language: Language) -> str:
    unit, limits = UNITS[measure.unit], RANGES[measure.name].hard
    low, high = (f"{decimal(limit, language)}{unit}" for limit in limits)
    return (
        f'<li id="{measure.name}"><strong>{told(measure.title, language)}</strong> '
        f"<code>{measure.name}</code>. {told(measure.how, language)} "
        f"<small>{page_text(RANGE, language).format(low=low, high=high)}</small></li>"
    )
