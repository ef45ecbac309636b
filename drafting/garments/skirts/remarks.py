"""Skirts, remarks of the draft: what was not known of the body, and what cannot be followed."""

from __future__ import annotations

from drafting.body import Body
from drafting.craft.hemline import Leg, unknown_leg
from drafting.pattern import Finding

SLIGHT = 0.5
"""Sides that differ by up to 0.5 cm hang alike. House method."""


def remarks(body: Body, length: float | None, under: Leg) -> tuple[Finding, ...]:
    """What is told beside the draft: a leg that was not measured, sides that differ."""
    followed = ("side_waist_to_hip", *(() if length else ("outside_leg_length",)))
    return (*unknown_leg(length, under), *_uneven(body, followed))


def _uneven(body: Body, followed: tuple[str, ...]) -> tuple[Finding, ...]:
    pairs = ((name, body.sides[name]) for name in followed if name in body.sides)
    apart = ((name, pair["left"].value - pair["right"].value) for name, pair in pairs)
    return tuple(
        Finding(
            code="sides_by_their_mean",
            severity="warning",
            where=name,
            message=f"The left side is {abs(by):.1f} cm {'longer' if by > 0 else 'shorter'} than the right; the skirt is drafted by the mean of both. "
            "Pin the waist at the fitting and level the hem from the floor.",
            measured=by,
            allowed=(-SLIGHT, SLIGHT),
        )
        for name, by in apart
        if abs(by) > SLIGHT
    )
