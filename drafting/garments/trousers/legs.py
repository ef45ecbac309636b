"""Trousers, the leg: its shape below the thigh, and how long it is.

Source: tapered legs lose evenly at both seams from the knee down; flared ones are straight to a knee
line raised by 3 to 5 cm and gain 2 to 10 cm at each seam below it, their back hem 1 cm longer; wide
ones fall straight from the thigh; shorts gain 1 to 2 cm at each seam, their back hem 0.5 to 1 cm
lower; a shaped hem is hollowed by 0.5 to 1 cm over the shoe and as much lower behind: common practice,
no source. How far down the named lengths reach is house method.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.errors import SpecError
from drafting.garments.trousers import fits
from drafting.garments.trousers.spec import LegLength, LegShape, Trousers
from drafting.trace import Length, larger

SHAPED = 0.75
SHORT_BACK = 0.75


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """What a leg's shape makes of the straight leg.

    Attributes:
        hem: The hem, from the straight leg's and what passes the foot, cm.
        knee: The knee, from the straight leg's and this leg's hem, cm.
        knee_up: How much higher the knee line lies, cm.
        back_longer: How much lower the back's hem hangs in its middle, cm.
        true_to: Whether a hem and a knee still make this shape, the straight leg's hem given.
        rule: What they must do for it.
    """

    hem: Callable[[Length, Length], Length] = lambda usual, foot: usual  # noqa: ARG005
    knee: Callable[[Length, Length], Length] = lambda usual, hem: usual  # noqa: ARG005
    knee_up: float = 0.0
    back_longer: float = 0.0
    true_to: Callable[[float, float, float], bool] = lambda hem, knee, usual: True  # noqa: ARG005
    rule: str = ""


LEGS: dict[LegShape, Shape] = {
    "straight": Shape(),
    "tapered": Shape(
        hem=lambda usual, foot: larger(usual - 8, foot),
        true_to=lambda hem, knee, _: hem < knee - 2, rule="narrows from the knee to the hem",
    ),
    "flared": Shape(
        hem=lambda usual, _: usual + 12, knee=lambda usual, _: usual - 4, knee_up=4.0, back_longer=1.0,
        true_to=lambda hem, knee, _: knee + 4 < hem < knee + 40, rule="widens from the knee to the hem, by 1 to 10 cm at each seam",
    ),
    "wide": Shape(
        hem=lambda usual, _: usual + 16, knee=lambda _, hem: hem,
        true_to=lambda hem, knee, usual: min(hem, knee) >= usual, rule="is nowhere narrower than a straight one's hem",
    ),
    "culottes": Shape(),
}
"""What each shape makes of the straight leg."""

INSIDE: dict[LegLength, float] = {"full": 1.0, "cropped": 0.75, "knee": 0.42, "shorts": 0.17}
"""The inside leg of each length, as a share of the way from the crotch line to the floor."""


MOST_SHARE, MOST_FLARE = 0.85, 40.0
"""The knee is at most 85 % of the hip; the hem at most 10 cm wider or narrower than it at each seam.
House method."""


LEAST_KNEE = 0.85
"""A leg is at the knee at least 85 % of the knee, in a cloth that stretches. House method."""


def is_full(cut: Trousers) -> bool:
    """Whether the legs reach down to the shoe."""
    return cut.length == "full" and cut.inside_leg is None


def inside_leg(crotch_to_floor: Length, cut: Trousers) -> Length:
    """Crotch line to hem in cm."""
    if cut.inside_leg is not None:
        return Length(cut.inside_leg, "inside leg")
    if cut.length == "full":
        return crotch_to_floor + Length(cut.shoe_height, "shoe height") - Length(cut.hem_over_floor, "hem over floor")
    return crotch_to_floor * INSIDE[cut.length]


def hem_girth(body: Body, cut: Trousers) -> Length:
    """Girth in cm of a full leg's hem: as ordered, or by the shape; a shorter leg is cut off it."""
    if cut.leg == "straight":
        return fits.hem_girth(body, cut if is_full(cut) else _plain(cut))
    if cut.hem_girth is not None and is_full(cut):
        return Length(cut.hem_girth, "hem girth")
    return LEGS[cut.leg].hem(fits.hem_girth(body, _plain(cut)), fits.foot_girth(body))


def knee_girth(body: Body, cut: Trousers) -> Length:
    """Girth at the knee in cm: as ordered, or by the shape."""
    if cut.leg == "straight":
        return fits.knee_girth(body, cut if is_full(cut) else replace(cut, hem_girth=None))
    if cut.knee_girth is not None or cut.knee_ease is not None:
        return fits.knee_girth(body, cut)
    return LEGS[cut.leg].knee(fits.knee_girth(body, _plain(cut)), hem_girth(body, cut))


def _plain(cut: Trousers) -> Trousers:
    """The same with nothing ordered about the leg's girths."""
    return cut if cut.hem_girth is cut.knee_girth is None else replace(cut, hem_girth=None, knee_girth=None)


def true_to_shape(body: Body, cut: Trousers) -> None:
    """Refuse girths that do not make the leg that is ordered.

    Raises:
        SpecError: Names both options.
    """
    if cut.leg == "culottes":
        return
    hem, knee, usual = (float(g) for g in (hem_girth(body, cut), knee_girth(body, cut), fits.hem_girth(body, _plain(cut))))
    most = MOST_SHARE * float(body.hip_girth)
    if knee > most:
        raise SpecError(
            f"{knee:.1f} cm at the knee is more than a leg under a hip_girth of {float(body.hip_girth):.1f} cm can fall to: at most {most:.1f} cm. Give a smaller knee_girth or hem_girth.",
            where="garment.knee_girth" if cut.knee_girth else "garment.hem_girth", received=cut.knee_girth or cut.hem_girth, allowed=(None, most),
        )
    if hem > knee + MOST_FLARE:
        raise SpecError(
            f"A hem_girth of {hem:.1f} cm is more than {MOST_FLARE:g} cm over the knee_girth of {knee:.1f} cm: bring them nearer to each other.",
            where="garment.hem_girth", received=cut.hem_girth, allowed=(None, knee + MOST_FLARE),
        )
    if knee > hem + MOST_FLARE:
        ordered = next((o for o in ("knee_girth", "knee_ease") if getattr(cut, o) is not None), "hem_girth")
        raise SpecError(
            f"{ordered} makes the leg {knee:.1f} cm round at the knee, more than {MOST_FLARE:g} cm over its hem_girth of {hem:.1f} cm: bring them nearer to each other.",
            where=f"garment.{ordered}", received=getattr(cut, ordered),
        )
    if knee < LEAST_KNEE * float(fits.knee_of(body)):
        raise SpecError(
            f"A knee_girth of {knee:.1f} cm does not pass the body's knee of about {float(fits.knee_of(body)):.1f} cm.",
            where="garment.knee_girth", received=cut.knee_girth, allowed=(LEAST_KNEE * float(fits.knee_of(body)), most),
        )
    shape = LEGS[cut.leg]
    if not shape.true_to(hem, knee, usual):
        ordered = "hem_girth" if cut.hem_girth is not None else "knee_girth"
        raise SpecError(
            f'leg "{cut.leg}" and {ordered} exclude each other: such a leg {shape.rule}, and this one would measure {knee:.1f} cm at the knee and {hem:.1f} cm at the hem. '
            'Change one of them, or choose leg "straight".',
            where=f"garment.{ordered}", received=getattr(cut, ordered),
        )


def dips(cut: Trousers, *, short: bool) -> tuple[float, float]:
    """How much lower than level the middle of the front's and of the back's hem hangs, in cm."""
    shaped = SHAPED if cut.hem == "shaped" else 0.0
    straight_fold = cut.turn_ups > 0
    back = 0.0 if straight_fold else max(shaped, LEGS[cut.leg].back_longer, SHORT_BACK if short else 0.0)
    return -shaped, back
