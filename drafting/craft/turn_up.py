"""Turn-ups: the leg goes on below its hem, folded out and in again.

Under the hem lie the outside of the turn-up and its inside, each the mirror image of the leg over
the fold, so that they lie flat on it; then the hem's own allowance.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.trueing import square_to_ends
from drafting.errors import SpecError
from drafting.geometry import Path, mirror, polyline
from drafting.pattern import Mark

LEAST_DEPTH = 1.5
"""A turn-up of less than 1.5 cm cannot be folded. House method."""

MOST_BOW = 0.6
"""A hem that is bowed by more (cm) cannot be folded up flat. House method."""


@dataclass(frozen=True, slots=True)
class TurnUp:
    """What a turn-up adds to a panel under its hem.

    Attributes:
        side: The side from the hem down to the turn-up's own lower edge, cm.
        hem: That edge, from the side to the inseam.
        inseam: The inseam from the hem down.
        marks: The folds: the finished hem, and the turn-up's upper edge.
    """

    side: Path
    hem: Path
    inseam: Path
    marks: tuple[Mark, ...]


def turn_up(side: Path, hem: Path, inseam: Path, depth: float) -> TurnUp:
    """Draw a turn-up under a hem.

    Args:
        side: The side down to the hem, cm.
        hem: The finished hem from the side to the inseam.
        inseam: The inseam down to the hem.
        depth: Finished depth of the turn-up in cm, along the seams.

    Raises:
        SpecError: The hem is too bowed to be folded, or the leg shorter than the turn-up.
    """
    _foldable(hem, min(side.length(), inseam.length()), depth)
    out = mirror(hem.start, hem.end - hem.start)
    folded = tuple(_last(line, depth).transformed(out) for line in (side, inseam))
    ends = folded[0].end, folded[1].end
    back = mirror(ends[0], ends[1] - ends[0])
    inside = tuple(line.reversed().transformed(back) for line in folded)
    below = tuple(a.joined(b) for a, b in zip(folded, inside, strict=True))
    marks = (Mark("fold", hem), Mark("fold", polyline(*ends)))
    edge = square_to_ends(below[0].end, below[0].end_tangent, below[1].end, -below[1].end_tangent)
    return TurnUp(below[0], Path((edge,)), below[1], marks)


def _last(line: Path, depth: float) -> Path:
    """The last stretch of a seam, walked back from the hem."""
    return line.split(line.length() - depth)[1].reversed()


def _foldable(hem: Path, leg: float, depth: float) -> None:
    if depth < LEAST_DEPTH:
        raise SpecError(
            f"turn_ups are at least {LEAST_DEPTH:g} cm deep; leave them out with 0.",
            where="garment.turn_ups",
            received=depth,
            allowed=(LEAST_DEPTH, None),
        )
    along = (hem.end - hem.start).unit
    bow = max(abs((p - hem.start).cross(along)) for p in hem.flattened(0.01))
    if bow > MOST_BOW:
        raise SpecError(
            f"turn_ups need a hem that is nearly straight, and this one is bowed by {bow:.1f} cm: "
            "leave them out, or bring hem_girth and knee_girth nearer to each other.",
            where="garment.turn_ups",
            received=depth,
            allowed=(0.0, 0.0),
        )
    if depth > leg - 1:
        raise SpecError(
            f"The inside_leg of {leg:.1f} cm is too short for turn_ups of {depth:g} cm.",
            where="garment.turn_ups",
            received=depth,
            allowed=(0.0, max(0.0, leg - 1)),
        )
