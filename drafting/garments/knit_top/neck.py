"""Knit top, the neck: cut away from the base of the neck by what the band fills, and wide enough for the head.

Source: the neck's seam lies outside its base by the band's depth; the band stretched over the head
and 1 cm: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.craft.rules import HEAD_GIRTH
from drafting.craft.sheet import DraftSheet
from drafting.craft.stretch_band import LONGEST, OVER_HEAD, neckband_share, shortest_passing
from drafting.errors import SpecError
from drafting.garments.knit_top.frame import Frame
from drafting.garments.knit_top.spec import KnitTop, drop
from drafting.geometry import root, with_handles
from drafting.trace import (
    LEFTWARD,
    RIGHTWARD,
    Bearing,
    Bend,
    Length,
    Place,
    Stroke,
    along,
    middle_of,
)
from drafting.trace.place import corner_of_paper

APART = 12.0
"""Pieces are drawn this far (cm) apart on one paper."""

LEAST_SHOULDER = 3.0
"""What is left of a shoulder seam, cm, at the least. House method."""

V_ASIDE = 12.0
"""Degrees by which a V meets the shoulder aside from square, and the back the other way. House method."""

V_SHARE = 0.95
"""A band on a V is hardly shorter than its seam, or it pulls the point up. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Half:
    """Where the half of a body piece stands: its centre at the nape's level, and which way its side lies.

    Attributes:
        name: "back" or "front".
        nape: The centre, level with the nape.
        hand: 1 where the side lies to the right, -1 to the left.
    """

    name: str
    nape: Place
    hand: float

    def across(self, place: Place, far: float) -> Place:
        """So far from a place toward the side."""
        return place.right(far) if self.hand > 0 else place.left(far)


@dataclass(frozen=True, slots=True, kw_only=True)
class Neck:
    """A neckline and the shoulder it ends on.

    Attributes:
        centre: Where it meets the centre.
        corner: Where it meets the shoulder.
        tip: The shoulder's outer end.
        line: From the centre to the shoulder.
    """

    centre: Place
    corner: Place
    tip: Place
    line: tuple[Bend, ...]

    @property
    def length(self) -> float:
        """Length of the half, cm."""
        return sum(part.segment.length() for part in self.line)


def halves(frame: Frame) -> tuple[Half, Half]:
    """Back and front on one paper, their sides toward each other."""
    apart = 2 * max(float(frame.bust), float(frame.hip)) + APART
    return Half(name="back", nape=corner_of_paper(), hand=1.0), Half(name="front", nape=corner_of_paper(apart), hand=-1.0)


def neck(half: Half, frame: Frame, cut: KnitTop, out: float) -> Neck:
    """Draw a half's neckline, cut `out` cm away from the base of the neck."""
    away = Length(out, "neck cut away")
    base = half.across(half.nape, frame.neck).up(frame.rise)
    outward = -frame.slope if half.hand > 0 else 180.0 + frame.slope
    tip = base.slant(frame.shoulder, outward)
    corner = base.towards(tip, away)
    if half.name == "back":
        return _round(half, half.nape.down(away), corner, tip, V_ASIDE if cut.neckline == "v" else 0.0)
    pit = half.nape.up(frame.rise).down(frame.pit)
    if cut.neckline == "v":
        return _pointed(half, pit.down(away + drop(cut)), corner, tip)
    return _round(half, pit.down(away + drop(cut)), corner, tip)


def _round(half: Half, centre: Place, corner: Place, tip: Place, aside: float = 0.0) -> Neck:
    """Square to the centre and to the shoulder, or by some degrees over square there."""
    level = RIGHTWARD if half.hand > 0 else LEFTWARD
    up = _over_shoulder(half, corner, tip, -aside)
    wide, high = abs(corner.x - centre.x), corner.y - centre.y
    drawn = with_handles(centre, level.vector, corner, up.vector, 0.55 * wide, 0.55 * high)
    return Neck(centre=centre, corner=corner, tip=tip, line=(Bend(centre, corner, level, up, drawn, middle_of(drawn)),))


def _pointed(half: Half, centre: Place, corner: Place, tip: Place) -> Neck:
    """From the point nearly straight, turning gently toward the back's neckline."""
    straight, up = along(centre, corner), _over_shoulder(half, corner, tip, V_ASIDE)
    far = centre.distance(corner)
    drawn = with_handles(centre, straight.vector, corner, up.vector, 0.4 * far, 0.4 * far)
    return Neck(centre=centre, corner=corner, tip=tip, line=(Bend(centre, corner, straight, up, drawn, middle_of(drawn)),))


def _over_shoulder(half: Half, corner: Place, tip: Place, aside: float) -> Bearing:
    """Square to the shoulder, turned by so many degrees toward it."""
    shoulder = along(corner, tip)
    return shoulder.left.rotated(-aside) if half.hand > 0 else shoulder.right.rotated(aside)


def around(frame: Frame, cut: KnitTop, out: float) -> float:
    """Length of the whole neckline, cm."""
    return 2 * sum(neck(half, frame, cut, out).length for half in halves(frame))


def head(body: Body) -> float:
    """Girth in cm of the head: as measured, else of a large one."""
    return body.value("head_girth") if body.has("head_girth") else HEAD_GIRTH[body.figure]


def longest_share(cut: KnitTop) -> float:
    """The most that a neckband is of its seam."""
    return V_SHARE if cut.neckline == "v" else LONGEST


def opened(body: Body, frame: Frame, cut: KnitTop, sheet: DraftSheet) -> Length:
    """How far the neck is cut away from its base, so that the head passes.

    Raises:
        SpecError: The cloth or the band does not stretch enough, whatever is cut away.
    """
    sheet.heading("Neckline", "common practice, no source")
    wished = Length(cut.neckband, "neckband") + Length(cut.neck_wider, "wider")
    passes = head(body) + OVER_HEAD
    least = max(shortest_passing(passes, cut.stretch), shortest_passing(passes, cut.neckband_stretch) / longest_share(cut))
    drawn = around(frame, cut, float(wished))
    if not sheet.compare("a wider neck", drawn, "<", least, "Is the neck too small for the head, stretched as far as the cloth and the band go?", "It is cut away until the head passes."):
        return sheet.length("neck cut away", wished, "What the band fills, and what is asked for beside.")
    most = float(frame.shoulder) - LEAST_SHOULDER
    found = root(lambda out: around(frame, cut, out) - least, float(wished), most) if most > wished else None
    if found is None:
        raise SpecError(
            f"No neck passes the head: it would have to be {least:.0f} cm round. Choose a cloth of more stretch, or a neckband_stretch over {cut.neckband_stretch:g}.",
            where="garment.stretch", received=cut.stretch,
        )
    return sheet.solve("neck cut away", lambda out: around(frame, cut, out), least, (float(wished), most), "Stretched, the neck and its band pass the head and 1 cm.")


def neckband_length(seam: float, body: Body, cut: KnitTop) -> float:
    """Length of the neckband in cm: its share of the seam, longer where the head asks for it."""
    share = V_SHARE if cut.neckline == "v" else neckband_share(cut.neckband_stretch)
    passes = shortest_passing(head(body) + OVER_HEAD, cut.neckband_stretch)
    return min(max(share * seam, passes), max(longest_share(cut), share) * seam)


def draw_neck(half: Half, frame: Frame, cut: KnitTop, out: Length, sheet: DraftSheet) -> tuple[Neck, Stroke, Stroke]:
    """Record a half's shoulder and neckline: the neck, its line, the shoulder's line."""
    name = half.name
    nape = sheet.point(f"{name} centre level with the nape", half.nape, "All depths are measured from it.")
    half = Half(name=name, nape=nape, hand=half.hand)
    base = sheet.point(f"{name} neck base at the shoulder", half.across(nape, frame.neck).up(frame.rise), "Where the shoulder meets the neck.")
    outward = -frame.slope if half.hand > 0 else 180.0 + frame.slope
    tip = sheet.point(f"{name} shoulder tip", base.slant(frame.shoulder, outward), f"The seam slopes by {frame.slope:.0f} degrees.")
    corner = sheet.point(f"{name} neck at the shoulder", base.towards(tip, out), "Cut away by what the band fills.")
    if name == "back":
        centre = sheet.point("back neck at the centre", nape.down(out), "As far from the nape.")
    else:
        pit = sheet.point("hollow of the throat", nape.up(frame.rise).down(frame.pit), "At the base of the neck.")
        lower = Length(drop(cut), "neck drop")
        centre = sheet.point("front neck at the centre", pit.down(out + lower if lower else out), "As far from it, and lower where that is asked for.")
    if cut.neckline == "v":
        drawn = _pointed(half, centre, corner, tip) if name == "front" else _round(half, centre, corner, tip, V_ASIDE)
    else:
        drawn = _round(half, centre, corner, tip)
    line = sheet.draw(f"{name} neckline", drawn.line, "It runs on over the shoulder seam.")
    return drawn, line, sheet.line(f"{name} shoulder", corner, tip, why="Back and front alike.")


