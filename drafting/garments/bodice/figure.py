"""The figure for a bodice: eases, cup, shoulders, depth of the armhole.

Source: cup as steps of an inch from upper bust to bust, or of 2 cm from under bust to bust (from
memory: EN 13402-3), the dart 5.4 degrees wider with each step: from the strip of the US method as
published in lessons on drafting from the upper bust; the rest is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import radians, sin

from drafting.body import Body
from drafting.craft.rules import SHOULDER_SLOPE
from drafting.craft.sheet import DraftSheet
from drafting.garments.bodice.spec import Method, Shape
from drafting.trace import Length

USUAL_EASE: dict[Method, float] = {"shoulder_dart": 10.0, "armhole_dart": 12.0}
"""Bodice over bust, all round. Source: W. Aldrich, Metric Pattern Cutting for Women's Wear (10); from
memory: Bunka Fashion Series 1 (12)."""

SLEEVELESS = -2.0
"""Bust ease without sleeves, beside the usual. Source: common practice, no source."""

RAISED, NARROWED = 1.0, 0.75
"""Without sleeves the underarm is raised and the shoulder ends farther in, cm. Common practice."""

DEGREES_A_CUP = 5.4
CUPS = (-1.5, 5.0)
"""Least and greatest cup told apart, in steps from a B."""

NARROWEST = 6.0
"""Degrees; no bust dart is narrower. Source: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """What the body and the options make of a method's own draft.

    Attributes:
        ease: Bodice over body at the bust, all round.
        cup: Steps from the cup that a method's bust dart is made for.
        dropped: How much lower than usual the shoulders end.
        deeper: How much deeper the armhole is.
        narrowed: How much farther in the shoulder ends.
        above: How far up on the paper the draft begins, so that something else has room under it.
    """

    ease: Length
    cup: float
    dropped: float
    deeper: float
    narrowed: float
    above: float = 0.0


def settle(body: Body, cut: Shape, deeper: float, sheet: DraftSheet, above: float = 0.0) -> Figure:
    """Record what the options and the body ask for; `deeper` is what a large arm asks of the armhole, cm."""
    sheet.heading("Figure", "common practice, no source")
    bare = sheet.decide("a bodice without sleeves", cut.sleeve == "none", "Are there no sleeves?", "The armhole is cut closer and higher, or it gapes.")
    usual = USUAL_EASE[cut.method] + (SLEEVELESS if bare else 0.0)
    ease = sheet.length("bust ease", Length(usual if cut.bust_ease is None else cut.bust_ease, "bust ease"), "Bodice over body, all round.")
    dropped = _dropped(body)
    if sheet.decide("other shoulders", abs(dropped) > LEAST_DROP, "Do the shoulders slope more or less than usual?", "The shoulder's end and the whole armhole move with them."):
        sheet.length("dropped shoulder", dropped, "What the slope adds at the end of the shoulder.")
    if sheet.decide("a deeper armhole", deeper > 0, "Is the upper arm too large for the armhole?", "It is lowered until a sleeve can be set in."):
        sheet.length("deeper armhole", deeper, "Found by trying the sleeve on scrap paper.")
    drop = dropped if abs(dropped) > LEAST_DROP else 0.0
    return Figure(ease=ease, cup=_cup(body, sheet), dropped=drop, deeper=deeper + drop - (RAISED if bare else 0.0), narrowed=NARROWED if bare else 0.0, above=above)


LEAST_DROP = 0.3


def _dropped(body: Body) -> float:
    """What a measured slope lowers the end of the shoulder by, cm, at most 2.5 either way."""
    if not body.taken("shoulder_slope"):
        return 0.0
    found = body.value("shoulder_length") * (sin(radians(body.value("shoulder_slope"))) - sin(radians(SHOULDER_SLOPE["women"])))
    return max(-2.5, min(2.5, found))


def _cup(body: Body, sheet: DraftSheet) -> float:
    """Steps from a B cup, by the upper bust or else the under bust where one was measured."""
    if body.taken("upper_chest_girth"):
        found = (body.value("bust_girth") - body.value("upper_chest_girth") - 5.08) / 2.54
    elif body.taken("under_bust_girth"):
        found = (body.value("bust_girth") - body.value("under_bust_girth") - 15.0) / 2.0
    else:
        found = 0.0
    cup = max(CUPS[0], min(CUPS[1], found))
    sheet.decide("a measured cup", cup != 0.0, "Was the bust measured against the chest above or below it?", "The bust dart is wider for a larger cup, narrower for a smaller one.")
    return cup


def cup_letter(steps: float) -> str:
    """The cup's letter for steps from a B: A, B, C, D, DD; not a corset maker's size."""
    letters = ("A", "B", "C", "D", "DD")
    return letters[max(0, min(4, round(steps) + 1))]


def dart_angle(own: float, figure: Figure) -> float:
    """The bust dart in degrees: the method's own, wider or narrower for the cup."""
    return max(NARROWEST, own + DEGREES_A_CUP * figure.cup)
