"""A yoke: the top of a panel cut off below its darts, and the darts closed in it.

Source: 6 to 8 cm deep at the centre back and 3 to 5 cm at the side, its seam through the ends of
the darts, redrawn smooth when they are closed: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.darts import PlannedDart, closings
from drafting.errors import ConstructionError
from drafting.geometry import Path, Transform, polyline, root, with_handles


@dataclass(frozen=True, slots=True)
class Yoke:
    """A panel cut in two.

    Attributes:
        top: The yoke's top, from the centre to the side, darts closed, cm.
        yoke_side: Its side, downward.
        foot: Its seam, from the centre to the side.
        yoke_centre: Its centre, downward.
        seam: The panel's seam below it, from the centre to the side, as long as the foot.
        side: The panel's side from there down.
        centre: The panel's centre from there down.
    """

    top: Path
    yoke_side: Path
    foot: Path
    yoke_centre: Path
    seam: Path
    side: Path
    centre: Path


def cut_yoke(
    top: Path, side: Path, centre: Path, darts: tuple[PlannedDart, ...], depths: tuple[float, float]
) -> Yoke:
    """Cut a yoke off a panel.

    Args:
        top: The panel's top with its darts closed, from the centre to the side, cm.
        side: Its side downward, as it lies with the darts open.
        centre: Its centre downward.
        darts: The darts, from the centre to the side; they end at the yoke's seam.
        depths: Depth in cm at the centre and at the side, along the seams.

    Raises:
        ConstructionError: The darts are so wide that no smooth seam is as long as the panel's.
    """
    (yoke_centre, below), (yoke_side, rest) = centre.split(depths[0]), side.split(depths[1])
    seam = polyline(below.start, rest.start)
    closed = closings(darts)[-1]
    foot = _smooth(seam, closed) if darts else seam
    return Yoke(top, yoke_side.transformed(closed), foot, yoke_centre, seam, rest, below)


def _smooth(seam: Path, closed: Transform) -> Path:
    """The seam with the darts closed: one curve of the same length and the same directions."""
    start, end, along = seam.start, closed.point(seam.end), seam.start_tangent
    arriving, chord = closed.vector(along), start.distance(end)

    def drawn(share: float) -> Path:
        return Path((with_handles(start, along, end, arriving, share * chord),))

    share = root(lambda s: drawn(s).length() - seam.length(), 0.05, 1.2, 1e-6)
    if share is None:
        raise ConstructionError(
            "The darts are too wide to be closed into a yoke of this depth.", where="yoke"
        )
    return drawn(share)
