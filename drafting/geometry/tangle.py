"""Where two cubic curves meet: halve, throw away what cannot meet, let Newton finish."""

from __future__ import annotations

import math

from drafting.geometry.segment import Cubic

Hull = tuple[float, float, float, float, float, float, float, float]
"""The four corners of a curve's control polygon, x and y in turn."""

Window = tuple[Hull, float, float]
"""A stretch of a curve with the t of its ends."""

SMALL = 1e-4
"""Stretches shorter than this in t whose directions still agree only touch."""

PATIENCE = 3000
"""Pairs looked at before two curves count as lying on top of each other; nine crossings, the most
that two cubics can have, take some 300."""


def curve_crossings(a: Cubic, b: Cubic, accuracy: float = 1e-7) -> list[tuple[float, float]]:
    """Crossings of two curves as pairs of t; contacts without crossing count as one each.

    Args:
        a: A curve.
        b: Another curve. If they run on top of each other nothing is reported.
        accuracy: How near they must come to touch, in cm.
    """
    found = _common_ends(a, b, accuracy)
    stack: list[tuple[Window, Window]] = [((_hull(a), 0.0, 1.0), (_hull(b), 0.0, 1.0))]
    looked = 0
    while stack:
        looked += 1
        if looked > PATIENCE:
            return []
        first, second = stack.pop()
        if _apart(first[0], second[0]):
            continue
        small = first[2] - first[1] < SMALL and second[2] - second[1] < SMALL
        pair = None
        if _transversal(first[0], second[0]):
            pair = _crossing(a, b, first, second, accuracy)
            small = small or pair is not None
        elif small:
            pair = _contact(a, b, first, second, accuracy)
        if pair is not None and not any(_same(a, b, pair, f, accuracy) for f in found):
            found.append(pair)
        if not small:
            stack += [(s, r) for s in _halves(first) for r in _halves(second)]
    return found


def _common_ends(a: Cubic, b: Cubic, accuracy: float) -> list[tuple[float, float]]:
    ends = [(t, u) for t in (0.0, 1.0) for u in (0.0, 1.0)]
    return [(t, u) for t, u in ends if a.at(t).distance(b.at(u)) < accuracy]


def _hull(c: Cubic) -> Hull:
    p, q, r, s = c.start, c.leaving, c.arriving, c.end
    return (p.x, p.y, q.x, q.y, r.x, r.y, s.x, s.y)


def _halves(w: Window) -> tuple[Window, Window]:
    (ax, ay, bx, by, cx, cy, dx, dy), t0, t1 = w
    ex, ey, fx, fy, gx, gy = (
        (ax + bx) / 2, (ay + by) / 2, (bx + cx) / 2, (by + cy) / 2, (cx + dx) / 2, (cy + dy) / 2,
    )  # fmt: skip
    hx, hy, ix, iy = (ex + fx) / 2, (ey + fy) / 2, (fx + gx) / 2, (fy + gy) / 2
    mx, my, t = (hx + ix) / 2, (hy + iy) / 2, (t0 + t1) / 2
    return (
        ((ax, ay, ex, ey, hx, hy, mx, my), t0, t),
        ((mx, my, ix, iy, gx, gy, dx, dy), t, t1),
    )


def _apart(a: Hull, b: Hull, slack: float = 1e-9) -> bool:
    """Whether boxes or the bands along the chords show that two stretches cannot meet."""
    ax, ay, bx, by = a[::2], a[1::2], b[::2], b[1::2]
    return (
        max(ax) < min(bx) - slack
        or max(bx) < min(ax) - slack
        or max(ay) < min(by) - slack
        or max(by) < min(ay) - slack
        or _beside_band(a, b, slack)
        or _beside_band(b, a, slack)
    )


def _beside_band(a: Hull, b: Hull, slack: float) -> bool:
    x, y = a[0], a[1]
    dx, dy = a[6] - x, a[7] - y
    size = math.hypot(dx, dy)
    if size < 1e-12:
        return False
    nx, ny = -dy / size, dx / size
    own = (0.0, (a[2] - x) * nx + (a[3] - y) * ny, (a[4] - x) * nx + (a[5] - y) * ny)
    other = [(b[k] - x) * nx + (b[k + 1] - y) * ny for k in (0, 2, 4, 6)]
    return min(other) > max(own) + slack or max(other) < min(own) - slack


def _transversal(a: Hull, b: Hull) -> bool:
    """Whether no direction of the one is a direction of the other: then they meet once at most."""
    turns = [p * s - q * r for p, q in _legs(a) for r, s in _legs(b)]
    return all(t > 0 for t in turns) or all(t < 0 for t in turns)


def _legs(h: Hull) -> list[tuple[float, float]]:
    legs = [(h[k + 2] - h[k], h[k + 3] - h[k + 1]) for k in (0, 2, 4)]
    return [leg for leg in legs if abs(leg[0]) + abs(leg[1]) > 1e-12]


def _crossing(
    a: Cubic, b: Cubic, first: Window, second: Window, accuracy: float
) -> tuple[float, float] | None:
    _, t0, t1 = first
    _, u0, u1 = second
    t, u = (t0 + t1) / 2, (u0 + u1) / 2
    for _ in range(12):
        gap, da, db = b.at(u) - a.at(t), a.derivative(t), b.derivative(u)
        turn = da.cross(db)
        if turn == 0:
            break
        dt, du = gap.cross(db) / turn, gap.cross(da) / turn
        t, u = min(t1, max(t0, t + dt)), min(u1, max(u0, u + du))
        if abs(dt) + abs(du) < 1e-14:
            break
    return (t, u) if (b.at(u) - a.at(t)).length < accuracy / 1000 else None


def _contact(
    a: Cubic, b: Cubic, first: Window, second: Window, accuracy: float
) -> tuple[float, float] | None:
    """The nearest point of two curves that run side by side, where it is near enough to touch."""
    t, u = (first[1] + first[2]) / 2, (second[1] + second[2]) / 2
    for _ in range(12):
        gap, da, db = b.at(u) - a.at(t), a.derivative(t), b.derivative(u)
        dda, ddb = a.second_derivative(t), b.second_derivative(u)
        # solve: directions parallel, gap square to a
        f, g = da.cross(db), gap.dot(da)
        ft, fu = dda.cross(db), da.cross(ddb)
        gt, gu = gap.dot(dda) - da.dot(da), db.dot(da)
        det = ft * gu - fu * gt
        if det == 0:
            break
        t = min(1.0, max(0.0, t - (f * gu - fu * g) / det))
        u = min(1.0, max(0.0, u - (ft * g - f * gt) / det))
    near = abs(t - first[1]) < 0.01 and abs(u - second[1]) < 0.01
    return (t, u) if near and (b.at(u) - a.at(t)).length < accuracy else None


def _same(
    a: Cubic, b: Cubic, pair: tuple[float, float], other: tuple[float, float], accuracy: float
) -> bool:
    """Whether two finds are one: the curves do not part between them."""
    if abs(pair[0] - other[0]) > 0.01 or abs(pair[1] - other[1]) > 0.01:
        return False
    t, u = (pair[0] + other[0]) / 2, (pair[1] + other[1]) / 2
    gap = b.at(u) - a.at(t)
    return abs(gap.cross(a.tangent(t))) < accuracy
