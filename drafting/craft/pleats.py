"""Pleats: planned as darts that end far below, creased for a short way, open from there on.

A pleat that is planned from the waist to the knee spreads the panel as if it were slashed along the
crease and swung open: all of its width at the waist, half of it at the hip, nothing at the knee.

Source: common practice, no source.
"""

from __future__ import annotations

from drafting.geometry import Path, Point, polyline
from drafting.pattern import Dart, Pleat


def pleat_of(dart: Dart, long: float, *, toward_first: bool) -> Pleat:
    """A pleat in the place of a dart.

    Args:
        dart: Where it stands; its legs are the pleat's lines.
        long: How far down it is creased or stitched, cm.
        toward_first: Whether it is laid toward the first leg.
    """

    def line(leg: Point) -> Path:
        return polyline(leg, leg + (dart.point - leg).unit * long)

    return Pleat(dart.edge, line(dart.first), line(dart.second), toward_first=toward_first)
