"""Where the tape lies: an invented figure from the front, the back and the side, with its measures.

The figure is 170 cm tall and seven and a half heads high. Source: common practice, no source. It
shows where a measure is taken, not how large it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal, get_args

from drafting.drawing.sheet import Group, Item, Pen, Role, Sheet, Stroke, Text
from drafting.geometry import Cubic, Path, Point, Transform, Vector, mirror, polyline, scale, shift

View = Literal["front", "back", "side"]
VIEWS: tuple[View, ...] = get_args(View)

Spot = tuple[float, float]
"""A place on the figure: cm to the side of its middle, cm above the floor."""

SCALE = 0.13
"""A body's cm on the sheet."""
COLUMN, APART, DIGITS = 38.0, 4.4, 2.4
"""Numbers stand so far beside the middle, so far from each other, so high; body's cm."""
BODY, TAPE, LEADER = Pen(0.35), Pen(0.7), Pen(0.15, (0.6, 0.8))


@dataclass(frozen=True, slots=True)
class Ring:
    """A tape round the body or a limb: its middle, and how far it reaches to both sides."""

    middle: Spot
    reach: float

    @property
    def line(self) -> Path:
        """The half of it that is seen, sagging a little."""
        (x, y), sag = self.middle, 0.35 + self.reach / 12
        left, right = Point(x - self.reach, y), Point(x + self.reach, y)
        low = [Point(x + side * self.reach / 2, y - sag) for side in (-1, 1)]
        return Path((Cubic(left, low[0], low[1], right),))


@dataclass(frozen=True, slots=True)
class Run:
    """A tape along the body, from spot to spot."""

    spots: tuple[Spot, ...]

    @property
    def line(self) -> Path:
        """All of it."""
        return polyline(*(Point(*spot) for spot in self.spots))


def _run(*spots: Spot) -> Run:
    return Run(spots)


TAPES: dict[str, tuple[View, Ring | Run]] = {
    "waist_girth": ("front", Ring((0, 104), 13.3)),
    "top_hip_girth": ("front", Ring((0, 95), 15.7)),
    "hip_girth": ("front", Ring((0, 87), 17.8)),
    "maximum_hip_girth": ("front", Ring((0, 81), 18.0)),
    "side_waist_to_hip": ("front", _run((-13.5, 104), (-15.9, 95), (-17.9, 87))),
    "body_rise": ("side", _run((0.5, 104), (0.5, 78))),
    "total_crotch_length": (
        "side",
        _run((9, 104), (10.4, 95), (9.4, 84), (5, 78), (-4, 77), (-12.6, 86), (-10, 95), (-7, 104)),
    ),
    "front_crotch_length": ("side", _run((7.4, 104), (8.6, 95), (7.8, 86), (4, 80.5), (1, 79.5))),
    "back_crotch_length": (
        "side",
        _run((0, 79.5), (-4, 79.5), (-10.6, 86.5), (-8.4, 95), (-5.4, 104)),
    ),
    "outside_leg_length": ("front", _run((-13.7, 104), (-18.6, 84), (-18.6, 0))),
    "inside_leg_height": ("front", _run((0, 77.5), (0, 0))),
    "thigh_girth": ("front", Ring((9.2, 73), 8.0)),
    "mid_thigh_girth": ("front", Ring((9.4, 62), 6.6)),
    "lower_thigh_girth": ("front", Ring((9.5, 51.5), 5.0)),
    "knee_girth": ("front", Ring((9.3, 46.5), 4.6)),
    "lower_knee_girth": ("front", Ring((9.3, 42), 4.4)),
    "calf_girth": ("front", Ring((9.2, 35), 4.7)),
    "minimum_leg_girth": ("front", Ring((8.6, 14), 2.8)),
    "ankle_girth": ("front", Ring((8.3, 9), 2.7)),
    "heel_ankle_girth": ("side", _run((-7.6, 2.5), (5.4, 8.8))),
    "stature": ("side", _run((23, 0), (23, 170))),
    "waist_height": ("side", _run((-17, 0), (-17, 104))),
    "hip_height": ("side", _run((-20, 0), (-20, 87))),
    "knee_height": ("side", _run((18.5, 0), (18.5, 46.5))),
    "ankle_height": ("side", _run((-13, 0), (-13, 9))),
    "head_girth": ("front", Ring((0, 163.5), 8.0)),
    "neck_girth": ("front", Ring((0, 149), 5.4)),
    "neck_base_girth": ("front", Ring((0, 145), 7.0)),
    "bust_girth": ("front", Ring((0, 124), 15.9)),
    "chest_girth": ("front", Ring((0, 128), 16.2)),
    "upper_chest_girth": ("front", Ring((0, 132), 16.4)),
    "under_bust_girth": ("front", Ring((0, 117), 15.2)),
    "armscye_girth": ("front", _run((19.0, 139.5), (15.6, 135), (16.4, 129))),
    "upper_arm_girth": ("front", Ring((20.4, 124), 2.9)),
    "elbow_girth": ("front", Ring((23.3, 112), 2.4)),
    "forearm_girth": ("front", Ring((24.8, 105), 2.3)),
    "wrist_girth": ("front", Ring((27.3, 89.5), 1.6)),
    "hand_girth": ("front", Ring((28.0, 82), 2.0)),
    "bust_point_width": ("front", _run((-8, 122.5), (8, 122.5))),
    "armscye_front_to_back_width": ("side", _run((-7.5, 131), (7, 131))),
    "shoulder_length": ("back", _run((-7, 145), (-18.6, 140))),
    "back_shoulder_width": ("back", _run((-18.6, 139.4), (18.6, 139.4))),
    "across_back_shoulder_width": ("back", _run((-18.6, 140.4), (0, 146.4), (18.6, 140.4))),
    "across_back_width": ("back", _run((-15.8, 132), (15.8, 132))),
    "back_neck_point_to_waist": ("back", _run((0, 146), (0, 104))),
    "scye_depth_length": ("back", _run((2, 146), (2, 128.5))),
    "across_front_width": ("front", _run((-14.6, 135), (14.6, 135))),
    "front_neck_point_to_waist": ("front", _run((0, 144), (0, 104))),
    "side_neck_point_to_bust_point": ("front", _run((-6.6, 145), (-8, 122.5))),
    "side_neck_point_to_waist_front": ("front", _run((-7.6, 145), (-9, 122.5), (-8.4, 104))),
    "upper_arm_length": ("back", _run((19.4, 139), (24.6, 111.5))),
    "lower_arm_length": ("back", _run((24.9, 111), (28.6, 89.5))),
    "back_neck_point_to_wrist_length": (
        "back",
        _run((0, 147.4), (-18.8, 141.2), (-24.4, 111.5), (-28.2, 89.5)),
    ),
    "outer_arm_length": ("back", _run((-20.2, 139), (-26.0, 111.5), (-29.8, 89.5))),
    "back_neck_height": ("side", _run((-23, 0), (-23, 146))),
    "shoulder_slope": ("back", _run((19.4, 145), (7, 145), (18.6, 140))),
}
"""Where the tape lies for each measure that a tape can take, and from which side that is seen."""

_HALF: tuple[tuple[Spot, ...], ...] = (
    ((0, 170), (5.5, 168.5), (8, 162), (7.4, 155), (5.2, 150.5), (5.2, 147), (8, 144.6),
     (17.5, 140.8), (20.6, 136), (23, 125), (25.4, 112), (27.4, 100), (28.9, 90), (30.3, 82),
     (29.2, 74)),
    ((29.2, 74), (26.6, 79), (25.8, 89), (22.6, 104), (20.4, 115), (16.6, 129)),
    ((16.6, 129), (16, 122), (14.6, 112), (13.3, 104), (15, 97), (17.6, 88), (18.1, 80), (16.8, 68),
     (14.6, 53), (13.8, 46), (14, 36), (11.6, 19), (10.9, 9), (12, 3.5), (13.5, 0)),
    ((13.5, 0), (5.4, 0)),
    ((5.4, 0), (5.8, 8), (5.6, 20), (4.5, 35), (4.8, 46), (2.6, 62), (0, 77.5)),
)  # fmt: skip
"""The figure from the front or the back, one half: head to fingers, arm, side, foot, inner leg."""

_PROFILE: tuple[tuple[Spot, ...], ...] = (
    ((-1, 170), (6, 168), (9, 162), (10.4, 156.5), (9, 151), (4.8, 148.5), (4.6, 145.5), (8.4, 136),
     (12.4, 126), (11.2, 117), (9.4, 109), (9, 104), (10.4, 95), (9.9, 86), (9.4, 76), (9.6, 66),
     (8.2, 52), (8.6, 46), (6.6, 39), (5, 20), (5.2, 9), (12, 3.4), (15.5, 0)),
    ((15.5, 0), (-7, 0)),
    ((-7, 0), (-7.8, 3), (-6, 9), (-6.6, 18), (-9.6, 36), (-7.8, 48), (-9, 63), (-9.4, 76),
     (-12, 81), (-13, 87), (-10.4, 95), (-7, 104), (-9, 113), (-11.6, 129), (-9.4, 139), (-6, 146),
     (-6.8, 151), (-9.6, 158), (-7.6, 166), (-1, 170)),
)  # fmt: skip
"""The figure from the side, looking right: its front, its sole, its back."""


def figure(view: View, numbers: Mapping[str, int]) -> Sheet:
    """The figure from one side with the tapes of some measures, each with its number.

    Args:
        view: From where it is seen.
        numbers: Name of each measure, and its number; those seen from elsewhere are left out.

    Returns:
        A sheet in cm, the figure at a little more than an eighth of its size.
    """
    seen = {name: TAPES[name][1] for name in numbers if name in TAPES and TAPES[name][0] == view}
    lines = {name: tape.line for name, tape in seen.items()}
    items: list[Item] = [
        *_outline(view),
        *(Stroke(p, Role.NEW, name, TAPE) for name, p in lines.items()),
    ]
    for to_right in (True, False):
        ends = {n: p for n, p in lines.items() if _is_right(seen[n]) == to_right}
        items += _numbered(ends, numbers, 1 if to_right else -1)
    to = shift(COLUMN + 6, 2).then(scale(SCALE)).then(shift(0.5, 0.4))
    title = f"The figure from the {view}"
    told = "; ".join(f"{numbers[name]}: {name.replace('_', ' ')}" for name in seen)
    return Sheet(
        width=2 * (COLUMN + 6) * SCALE + 1,
        height=174 * SCALE + 0.8,
        title=title,
        description=f"{title}, invented. {told}",
        groups=(Group(view, title, tuple(_moved(each, to) for each in items)),),
    )


def _is_right(tape: Ring | Run) -> bool:
    """Whether its number stands at the right: all rings do, so that they stand in one column."""
    return isinstance(tape, Ring) or _end(tape.line, -1).x > 1


def _moved(item: Item, to: Transform) -> Item:
    match item:
        case Stroke():
            return item.transformed(to)
        case Text():
            return replace(item, at=to.point(item.at), height=item.height * SCALE)


def _outline(view: View) -> Iterator[Stroke]:
    flip = mirror(Point(0, 0), Vector(0, 1))
    for spots in _PROFILE if view == "side" else _HALF:
        line = _smooth(spots)
        yield Stroke(line, Role.FAINT, "", BODY)
        if view != "side":
            yield Stroke(line.transformed(flip), Role.FAINT, "", BODY)


def _smooth(spots: tuple[Spot, ...]) -> Path:
    """A curve through all spots (Catmull and Rom's)."""
    points = [Point(*spot) for spot in spots]
    ends = [points[0], *points, points[-1]]
    pulls = [(after - before) * (1 / 6) for before, after in zip(ends, ends[2:], strict=False)]
    return Path(
        tuple(
            Cubic(a, a + pull, b + other * -1, b)
            for (a, b), (pull, other) in zip(pairwise(points), pairwise(pulls), strict=True)
        )
    )


def _numbered(lines: Mapping[str, Path], numbers: Mapping[str, int], side: int) -> Iterator[Item]:
    """The numbers of lines in a column at one side, each with a thin line to what it names."""
    ends = {name: _end(line, side) for name, line in lines.items()}
    order = sorted(ends, key=lambda name: -ends[name].y)
    for name, y in zip(order, _spread([ends[name].y for name in order]), strict=True):
        at = Point(side * COLUMN, y)
        yield Stroke(polyline(ends[name], at), Role.FAINT, "", LEADER)
        beside = Point(side * (COLUMN + 0.8), y - DIGITS / 2)
        yield Text(str(numbers[name]), beside, DIGITS, anchor="start" if side > 0 else "end")


def _end(line: Path, side: int) -> Point:
    """Where a number's thin line meets a tape: at the end of a level one, else in the middle."""
    start, end = line.start, line.end
    if side > 0 and abs(start.y - end.y) < 1:
        return start if start.x > end.x else end
    segment = line.segments[len(line.segments) // 2]
    return segment.start.toward(segment.end, 0.5)


def _spread(heights: Iterable[float]) -> list[float]:
    """Heights from the top down, moved so that no two are nearer than they may be."""
    found: list[float] = []
    for height in heights:
        found.append(min(height, found[-1] - APART) if found else height)
    below = (found[-1] if found else 0.0) - 1.0
    return [height - min(below, 0.0) for height in found]
