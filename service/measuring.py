"""How to measure: a page, its figures, and a form to print; for all measures or one garment's."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from drafting.body import MEASURES, RANGES
from drafting.drawing.measuring import TAPES, VIEWS, View, figure
from drafting.export import measuring_form
from drafting.export.svg import render

if TYPE_CHECKING:
    from collections.abc import Iterable

    from drafting.body.measure import Measure
    from drafting.garments.garment import Garment


def asked_for(garment: Garment | None) -> tuple[Measure, ...]:
    """The measures of a garment, or all, in the order of the tape."""
    names = {*garment.needs, *garment.optional} if garment else {*MEASURES}
    return tuple(measure for name, measure in MEASURES.items() if name in names)


def picture(view: View, garment: Garment | None) -> bytes:
    """The figure from one side, with the garment's measures on it."""
    return render(figure(view, _numbers(asked_for(garment))), "figure")


def form(garment: Garment | None, paper: str = "a4") -> bytes:
    """The form to print."""
    title = f"Measurements for: {garment.title}" if garment else "Measurements"
    return measuring_form.write(asked_for(garment), title, paper)


def page_parts(garment: Garment | None, garments: Iterable[Garment]) -> dict[str, str]:
    """What the page's frame is filled with."""
    measures = asked_for(garment)
    query = f"?garment={escape(garment.kind)}" if garment else ""
    seen = {TAPES[measure.name][0] for measure in measures if measure.name in TAPES}
    links = map(_link, garments)
    return {
        "heading": f" for: {escape(garment.title)}" if garment else "",
        "query": query,
        "garments": " ".join(('<a href="measuring">Everything</a>', *links)),
        "figures": "\n".join(_figure(view, query) for view in VIEWS if view in seen),
        "measures": "\n".join(map(_entry, measures)),
    }


def _link(garment: Garment) -> str:
    return f'<a href="measuring?garment={escape(garment.kind)}">{escape(garment.title)}</a>'


def _numbers(measures: Iterable[Measure]) -> dict[str, int]:
    return {measure.name: number for number, measure in enumerate(measures, 1)}


def _figure(view: View, query: str) -> str:
    told = f"A figure from the {view}, with a numbered line where each tape lies"
    return f'<img class="drawing" src="measuring/{view}.svg{query}" alt="{told}">'


def _entry(measure: Measure) -> str:
    low, high = RANGES[measure.name].hard
    return (
        f'<li id="{measure.name}"><strong>{escape(measure.title)}</strong> '
        f"<code>{measure.name}</code>. {escape(measure.how)} "
        f"<small>Between {low:g} and {high:g} {measure.unit}.</small></li>"
    )
