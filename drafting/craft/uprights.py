"""Upright edges of a panel: on the fold, sewn, or sewn under a zip.

Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.craft.around import ZIP
from drafting.craft.rules import NOTCH_FROM_CORNER
from drafting.craft.seam_pocket import MOUTH
from drafting.geometry import Path
from drafting.pattern import Edge, Mark, Notch, Role


@dataclass(frozen=True, slots=True)
class Upright:
    """An upright edge, divided into stretches.

    Attributes:
        edges: From the waist down to the hem.
        sewn: Names of those that are sewn, from the top down; () on a fold.
        notches: On these edges, measured along them from the top down.
        hem: The hem of what stands out from it, as of a vent, from the edge outward.
        marks: Lines inside the panel.
    """

    edges: tuple[Edge, ...]
    sewn: tuple[str, ...]
    notches: tuple[Notch, ...] = ()
    hem: tuple[Edge, ...] = ()
    marks: tuple[Mark, ...] = ()

    @property
    def on_fold(self) -> bool:
        """Whether the panel is cut on the fold here."""
        return any(e.role is Role.FOLD for e in self.edges)

    @property
    def upward(self) -> tuple[Edge, ...]:
        """The edges from the hem up to the waist."""
        return tuple(e.reversed() for e in reversed(self.edges))

    @property
    def notches_upward(self) -> tuple[Notch, ...]:
        """The notches on the edges walked from the hem up."""
        lengths = {e.name: e.path.length() for e in self.edges}
        return tuple(Notch(n.edge, lengths[n.edge] - n.at, n.count, n.match) for n in self.notches)


def on_fold(name: str, line: Path) -> Upright:
    """An upright on the fold."""
    return Upright((Edge(name, line, Role.FOLD, "raw"),), ())


def plain_seam(
    name: str,
    line: Path,
    slit: float = 0.0,
    *,
    kind: str = "seam",
    hip: float | None = None,
    count: int = 1,
    pocket: tuple[float, float] | None = None,
) -> Upright:
    """A seam, its top joined by the zip, or with a pocket in it.

    Args:
        name: Name of the sewn edge.
        line: From the waist down to the hem, cm.
        slit: Length in cm of the stretch that the zip joins; 0 for none.
        kind: Which allowance the sewn edge takes.
        hip: Distance in cm from the hem up to the hip, for a notch there if the sewn edge reaches.
        count: How often that notch is cut.
        pocket: Lengths in cm of the stretch over a pocket in the seam, and of its opening.
    """
    if pocket is not None:
        return _pocketed(name, line, pocket, kind, hip, count)
    sewn = line.split(slit)[1] if slit else line
    at = sewn.length() - (hip or 0.0)
    # the two sides of a seam may differ by a rounding error
    shown = hip is not None and at > NOTCH_FROM_CORNER + 1e-6
    marks = (Notch(name, at, count, f"{name}-hip"),) if shown else ()
    edge = Edge(name, sewn, kind=kind)
    if not slit:
        return Upright((edge,), (name,), marks)
    top = Edge(ZIP, line.split(slit)[0], kind="opening")
    return Upright((top, edge), (ZIP, name), (*zip_end(slit), *marks))


def _pocketed(
    name: str,
    line: Path,
    pocket: tuple[float, float],
    kind: str,
    hip: float | None,
    count: int,
) -> Upright:
    """A seam that a pocket opens: sewn above it and below it, the opening between."""
    above, mouth = pocket
    over, rest = line.split(above)
    opened, below = rest.split(mouth)
    seam = plain_seam(name, below, kind=kind, hip=hip, count=count)
    edges = (Edge(f"{name}_above", over, kind=kind), Edge(MOUTH, opened, kind=kind), *seam.edges)
    ends = (
        Notch(edges[0].name, above, 1, "pocket-top"),
        Notch(name, 0.0, 1, "pocket-end"),
    )
    return Upright(edges, (f"{name}_above", name), (*ends, *seam.notches))


def zip_end(slit: float) -> tuple[Notch, ...]:
    """The mark at a zip's end, on an edge that is walked from the waist down."""
    return (Notch(ZIP, slit, 1, "zip-end"),)
