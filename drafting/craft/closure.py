"""How the garment opens, so that it goes over the hips."""

from __future__ import annotations

from drafting.craft.rules import CLOSURE_LENGTH, OPENING_ABOVE_HOOK, OPENING_OVER_HIP
from drafting.craft.sheet import DraftSheet
from drafting.errors import SpecError
from drafting.trace import Length, larger, smaller

LEAST_OPENING = 8.0
"""A fly shorter than 8 cm cannot be made: its J alone takes 5. Source: house method."""


def needed_opening(hip: Length, top: Length, band: float) -> Length:
    """Least length in cm of an opening below a waist seam, so that the hips pass.

    Args:
        hip: Hip girth of the body.
        top: Finished girth that must pass the hips together with the opening.
        band: Depth in cm of a band that opens with it, 0 where the seam is the waist.

    Source: common practice, no source.
    """
    return (hip + OPENING_OVER_HIP - top) / 2 - band


def opening_length(
    hip: Length, top: Length, straight: float, band: float, sheet: DraftSheet
) -> Length:
    """Length in cm of an opening below the waist seam, with room for it.

    As long as usual, longer where the hips ask for it, never nearer to the crotch curve than the
    zip can lie straight.

    Args:
        hip: Hip girth of the body.
        top: Finished girth that must pass the hips together with the opening.
        straight: Length of the straight line from the waist to where the crotch curve begins.
        band: Depth in cm of a band that opens with it, 0 where the seam is the waist.
        sheet: Records the length.

    Source: common practice, no source.
    """
    longest = Length(straight, "straight centre line") - OPENING_ABOVE_HOOK
    usual = smaller(Length(CLOSURE_LENGTH, "usual length"), longest)
    return sheet.length(
        "front opening",
        larger(usual, needed_opening(hip, top, band)),
        "Waist and twice the opening must pass the hips.",
    )


def zip_opening(
    hip: Length, top: Length, reach: Length, longest: Length, band: float, sheet: DraftSheet
) -> Length:
    """Length in cm of a straight opening below the waist seam, for a zip in a plain seam.

    As long as usual, nearly to the hip line, longer where the hips ask for it.

    Args:
        hip: Hip girth of the body.
        top: Finished girth that must pass the hips together with the opening.
        reach: How far down from the waist it must go at least.
        longest: How far down from the waist it may go.
        band: Depth in cm of a band that the zip runs through, 0 where it starts at the seam.
        sheet: Records the length.

    Raises:
        SpecError: The hips do not pass.

    Source: common practice, no source (18 to 20 cm, to 2 cm above the hip line).
    """
    needed = needed_opening(hip, top, 0.0)
    if needed > longest:
        raise SpecError(
            f"The zip would have to be {float(needed):.1f} cm long for the hips to pass, and there "
            f"is room for {float(longest):.1f} cm: make the garment longer, or give the waist "
            f"{2 * float(needed - longest):.1f} cm more ease.",
            where="garment.waist_ease",
        )
    usual = larger(Length(CLOSURE_LENGTH, "usual length"), reach)
    whole = smaller(larger(usual, needed), longest)
    return sheet.length(
        "zip opening",
        whole - band if band else whole,
        "Down to the hip, and waist and twice the opening must pass it.",
    )
