"""The cutting line put together: stretches beside the edges, turned into each other."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Cubic, Line, Path, Point, Segment, nearest, self_crossing
from drafting.geometry.offset import beside
from drafting.pattern.arm import TINY, Arm, Place, Turn
from drafting.pattern.caps import cap
from drafting.pattern.mitre import joined
from drafting.pattern.piece import Edge, Taken

CORNER_ANGLE = 0.01
"""Where an edge's line turns by more than this (degrees) it has a corner of its own: at 4 cm of
allowance a lesser turn opens the cutting line by less than 0.001 cm, which is closed silently."""

_PATIENCE = 50
"""Loops taken out of one cutting line at most; a piece with more is no piece."""


Part = tuple[int, Segment]
"""A segment of the whole line and its owner: 2 n for edge n, 2 n + 1 for the corner at its end."""


@dataclass(slots=True, init=False)
class Run:
    """A stretch of an edge without corner or dart, and its cutting line, not yet trimmed.

    Attributes:
        stitch: The stretch.
        cut: Its cutting line.
        allowance: Their distance in cm.
        start: The arm at its start, turned round.
        end: The arm at its end.
    """

    stitch: Path
    cut: Path
    allowance: float
    start: Arm
    end: Arm

    def __init__(self, stitch: Path, cut: Path, allowance: float) -> None:
        self.stitch = stitch
        self.cut = cut
        self.allowance = allowance
        ahead, back = stitch.end_tangent, -stitch.start_tangent
        self.start = Arm(stitch.start, back, back.left, cut.reversed(), allowance)
        self.end = Arm(stitch.end, ahead, ahead.right, cut, allowance)


@dataclass(slots=True, init=False)
class Stretch:
    """All runs of one edge and the turns between them."""

    runs: tuple[Run, ...]
    turns: tuple[Turn, ...]

    def __init__(self, runs: tuple[Run, ...], turns: tuple[Turn, ...]) -> None:
        self.runs = runs
        self.turns = turns


@dataclass(slots=True, init=False)
class Contour:
    """The whole cutting line: each part with the number of its edge or corner; a part may be ()."""

    edges: tuple[tuple[Segment, ...], ...]
    corners: tuple[tuple[Segment, ...], ...]
    line: Path

    def __init__(
        self,
        edges: tuple[tuple[Segment, ...], ...],
        corners: tuple[tuple[Segment, ...], ...],
        line: Path,
    ) -> None:
        self.edges = edges
        self.corners = corners
        self.line = line


def beside_edge(edge: Edge, taken: tuple[Taken, ...], allowance: float) -> Stretch:
    """The cutting line beside an edge, in runs: split at its own corners, darts and pleats."""
    pieces, mouths = _stretches(edge.path, taken)
    runs: list[Run] = []
    turns: list[Turn] = []
    for k, piece in enumerate(pieces):
        for n, line in enumerate(_without_corners(piece)):
            run = Run(line, _cut(line, allowance), allowance)
            if runs and n == 0:
                turns.append(cap(mouths[k - 1], runs[-1].end, run.start))
            elif runs:
                turns.append(joined(runs[-1].end, run.start))
            runs.append(run)
    return Stretch(tuple(runs), tuple(turns))


def _stretches(path: Path, taken: tuple[Taken, ...]) -> tuple[list[Path], list[Taken]]:
    """The stretches beside and between the mouths; a mouth at the very end counts as edge."""
    pieces: list[Path] = []
    mouths: list[Taken] = []
    rest = path
    for one in taken:
        head, tail = _parted(rest, one.first)
        after = tail and _parted(tail, one.second)[1]
        if head is not None and after is not None:
            pieces.append(head)
            mouths.append(one)
            rest = after
    return [*pieces, rest], mouths


def _parted(path: Path, p: Point) -> tuple[Path | None, Path | None]:
    """The line before and after a point on it; None where nothing is left."""
    head, tail = path.split_at(*_place_of(path, p))
    return (head if _is_long(head) else None), (tail if _is_long(tail) else None)


def _place_of(path: Path, p: Point) -> Place:
    """The place of a point on the line, exactly on a joint where it lies on one."""
    for i, s in enumerate(path.segments):
        if s.start.distance(p) < TINY:
            return i, 0.0
    i, t, _ = nearest(path, p)
    return (i, 1.0) if path.segments[i].end.distance(p) < TINY else (i, t)


def _is_long(path: Path) -> bool:
    if abs(path.end.x - path.start.x) + abs(path.end.y - path.start.y) > 1e-4:
        return True
    x0, y0, x1, y1 = path.bounds()
    return x1 - x0 + y1 - y0 > 1e-4


def _without_corners(path: Path) -> list[Path]:
    """The path split where its direction jumps."""
    if len(path.segments) == 1:
        return [path]
    solid = [s for s in path.segments if not _is_speck(s)] or list(path.segments)
    groups: list[list[Segment]] = [[solid[0]]]
    for a, b in pairwise(solid):
        if a.tangent(1).angle_to(b.tangent(0)) > CORNER_ANGLE:
            groups.append([])
        groups[-1].append(b)
    return [Path(tuple(g)) for g in groups]


def _is_speck(s: Segment) -> bool:
    """Whether a segment is too short to have a direction."""
    if abs(s.end.x - s.start.x) + abs(s.end.y - s.start.y) >= TINY:
        return False
    x0, y0, x1, y1 = s.bounds()
    return x1 - x0 + y1 - y0 < TINY


def _cut(path: Path, allowance: float) -> Path:
    """The offset of a line without corners, closed where rounding parts it.

    Where the line ends in a bend tighter than the allowance the offset runs back; that is cut off.
    """
    drawn = [piece for s in path.segments for piece in beside(s, -allowance)]
    if len(drawn) == 1:
        return Path((drawn[0][1],))
    forward = [n for n, (runs_on, _) in enumerate(drawn) if runs_on]
    kept = drawn[forward[0] : forward[-1] + 1] if forward else drawn
    result = [kept[0][1]]
    for _, s in kept[1:]:
        result.append(_snapped(s, result[-1].end))
    return Path(tuple(result))


def _snapped(s: Segment, start: Point) -> Segment:
    """The segment with its start moved by a rounding error."""
    if s.start is start or (s.start.x == start.x and s.start.y == start.y):
        return s
    if isinstance(s, Line):
        return Line(start, s.end)
    return Cubic(start, s.leaving + (start - s.start), s.arriving, s.end)


def contour(stretches: tuple[Stretch, ...], corners: list[Turn]) -> Contour:
    """Join the stretches of all edges and the corners between them, and take out the loops."""
    parts: list[Part] = []
    count = len(stretches)
    for e, stretch in enumerate(stretches):
        opening = corners[e - 1].second
        for k, run in enumerate(stretch.runs):
            turn = stretch.turns[k] if k < len(stretch.turns) else corners[e]
            parts += [(2 * e, s) for s in _clipped(run.cut, opening, turn.first)]
            inner = k < len(stretch.turns)
            parts += [(2 * e if inner else 2 * e + 1, s) for s in turn.segments]
            opening = turn.second
    return _sorted(_welded(_rotated(untangled(parts))), count)


def _clipped(cut: Path, opening: Place, closing: Place) -> tuple[Segment, ...]:
    """What two corners leave of a cutting line; run backward where they have passed each other.

    The opening corner sees the line turned round.
    """
    first, last = (len(cut.segments) - 1 - opening[0], 1 - opening[1]), closing
    ahead = last[0] + last[1] - first[0] - first[1]
    if abs(ahead) < 1e-12:
        return ()
    if ahead > 0:
        return cut.stretch(first, last).segments
    return cut.stretch(last, first).reversed().segments


def untangled(parts: list[Part]) -> list[Part]:
    """A closed line without loops: where it crosses itself the shorter way round is left out."""
    for _ in range(_PATIENCE):
        hit = self_crossing([s for _, s in parts])
        if hit is None:
            break
        parts = _without_loop(parts, *hit)
    return parts


def _without_loop(parts: list[Part], first: Place, second: Place) -> list[Part]:
    (i, t), (j, u) = first, second
    (one, a), (two, b) = parts[i], parts[j]
    (a_head, a_tail), (b_head, b_tail) = a.split(t), b.split(u)
    loop = [(one, a_tail), *parts[i + 1 : j], (two, b_head)]
    rest = [*parts[:i], (one, a_head), (two, b_tail), *parts[j + 1 :]]
    kept = rest if _length(rest) >= _length(loop) else loop
    return [(k, s) for k, s in kept if not _is_speck(s)]


def _length(parts: list[Part]) -> float:
    return sum(s.length() for _, s in parts)


def _welded(parts: list[Part]) -> list[Part]:
    """The same closed line with rounding taken out of its joints: each starts where one ended."""
    ends = [s.end for _, s in parts]
    return [(k, _snapped(s, ends[n - 1])) for n, (k, s) in enumerate(parts)]


def _sorted(parts: list[Part], count: int) -> Contour:
    """The parts by edge and corner; where loops have torn one apart its longest piece counts."""
    owned: list[tuple[Segment, ...]] = [()] * (2 * count)
    for owner, piece in _grouped(parts):
        if not owned[owner] or _size(piece) > _size(owned[owner]):
            owned[owner] = piece
    line = Path(tuple([s for _, s in parts]))
    return Contour(tuple(owned[::2]), tuple(owned[1::2]), line)


def _grouped(parts: list[Part]) -> list[tuple[int, tuple[Segment, ...]]]:
    """What runs on with one owner, with that owner."""
    first = [n for n, (owner, _) in enumerate(parts) if n == 0 or parts[n - 1][0] != owner]
    return [
        (parts[n][0], tuple([s for _, s in parts[n:after]]))
        for n, after in pairwise([*first, len(parts)])
    ]


def _size(segments: tuple[Segment, ...]) -> float:
    return sum(s.length() for s in segments)


def _rotated(parts: list[Part]) -> list[Part]:
    """The same closed line, begun where the first edge begins."""
    owners = [k for k, _ in parts]
    first = min(owners, default=0)
    for n, owner in enumerate(owners):
        if owner == first and owners[n - 1] != first:
            return parts[n:] + parts[:n]
    return parts
