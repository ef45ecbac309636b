"""An order for a pattern is drafted on scrap paper: the same lines, and nothing remembered.

Reference: the same chapter drafting on the draft sheet. Every number must be equal, not nearly so.
"""

from __future__ import annotations

import pytest
from classroom import BODIES, OPTION_CUTS, body_of, methods, options

from drafting.body import Body, prepare
from drafting.craft.scrap import Scrap
from drafting.craft.sheet import DraftSheet
from drafting.errors import ConstructionError, DraftingError
from drafting.garments import GARMENTS
from drafting.trace import Length, Place
from drafting.workroom import draft


def drawn(kind: str, body: Body, *, steps: bool, **chosen):
    """The net pattern and how many steps led to it, or why there is none."""
    garment = GARMENTS[kind]
    try:
        pattern, told = draft(garment, body, garment.spec(kind=kind, **chosen), steps=steps)
    except (DraftingError, TypeError) as error:  # a choice that excludes a default
        return str(error), None
    return pattern, len(told)


def alike(kind: str, body: Body, **chosen) -> bool:
    told, steps = drawn(kind, body, steps=True, **chosen)
    bare, none = drawn(kind, body, steps=False, **chosen)
    assert bare == told, (kind, chosen)
    return bool(steps) and none == 0


@pytest.mark.parametrize("kind", GARMENTS)
def test_every_choice_draws_the_same_pattern_with_and_without_steps(kind):
    found = [alike(kind, body_of(kind, "sample"), **choice) for choice in ({}, *options(kind))]
    assert found.count(True) > len(found) / 2


@pytest.mark.parametrize(("kind", "method"), methods())
def test_so_does_every_method_on_small_and_large_bodies(kind, method):
    chosen = {"method": method} if method else {}
    assert all(alike(kind, body_of(kind, name), **chosen) for name in BODIES)


@pytest.mark.parametrize(("kind", "more", "chosen"), OPTION_CUTS)
def test_so_do_cuts_that_ask_for_more(kind, more, chosen):
    garment = GARMENTS[kind]
    given = {**dict(garment.sample), **more}
    body, _ = prepare(given, "women", garment.needs, garment.optional, accept_unusual=True)
    assert alike(kind, body, **chosen)


def test_a_bare_body_reads_plain_numbers():
    body = body_of("trousers", "sample")
    assert body.hip_girth.formula == "hip"
    assert type(body.bare.hip_girth / 4 + 1) is float
    assert body.bare.hip_girth == body.hip_girth
    assert body.bare.side("left").hip_girth == body.hip_girth


def test_on_scrap_paper_a_place_keeps_no_way_and_a_length_no_formula():
    at = Scrap().point("knee", Place(1.0, 2.0), "To try.").right(3.0).up(1.5)
    assert (at.x, at.y, at.moves) == (4.0, 3.5, ())
    assert not isinstance(Scrap().length("knee", Length(4.0, "four"), "To try."), Length)


def test_both_papers_refuse_alike():
    for sheet in (DraftSheet(), Scrap()):
        with pytest.raises(ConstructionError, match="The heel cannot be found"):
            sheet.point("heel", None, "To try.")
        with pytest.raises(ConstructionError, match=r"gives 1\.0 to 2\.0 cm"):
            sheet.solve("reach", float, 5.0, (1.0, 2.0), "To try.")


@pytest.mark.parametrize(
    ("sign", "answer"), [(">=", True), (">", False), ("<=", True), ("<", False)]
)
def test_both_papers_decide_alike(sign, answer):
    for sheet in (DraftSheet(), Scrap()):
        assert sheet.compare("as long", Length(2.0, "a"), sign, 2.0, "Is it?", "To try.") is answer
