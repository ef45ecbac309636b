"""Trousers over a published step of sizes: where each point of the draft must go.

Source of the moves: derived by hand from the rules of W. Aldrich, Metric Pattern Cutting for
Women's Wear, for 4 cm more waist and hip; the sizes' other steps (waist to hip 0.3, rise 0.7, waist
to floor 1.0, half the hem 0.5) are from memory of the same book.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from drafting.body import Body, size_body
from drafting.garments import GARMENTS
from drafting.grading import grade_report, measure_table, size_range
from drafting.pattern import Finish

TWELVE = {
    "waist_girth": 72.0,
    "hip_girth": 96.0,
    "side_waist_to_hip": 20.6,
    "body_rise": 28.0,
    "outside_leg_length": 104.0,
}
STEP = {
    "waist_girth": 4.0,
    "hip_girth": 4.0,
    "side_waist_to_hip": 0.3,
    "body_rise": 0.7,
    "outside_leg_length": 1.0,
}

HIP, CROTCH, KNEE, HEM = 0.3, 0.7, 0.85, 1.0
"""How far the level lines go down from the waist, cm."""

MOVES = {
    "front crotch corner": (0.333, CROTCH),
    "centre front at the hip": (0.333, HIP),
    "centre front at the waist": (0.333, 0.0),
    "front fork": (0.583, CROTCH),
    "front side at the hip": (-0.667, HIP),
    "front side at the waist": (-0.667, 0.0),
    "front side at the knee": (-0.25, KNEE),
    "front inseam at the knee": (0.25, KNEE),
    "front side at the hem": (-0.25, HEM),
    "front inseam at the hem": (0.25, HEM),
    "back crotch corner": (0.25, CROTCH),
    "back fork": (0.708, CROTCH),
    "centre back at the waist": (0.25, 0.0),
    "back side at the hip": (-0.75, HIP),
    "back side at the waist": (-0.75, 0.0),
    "back side at the knee": (-0.25, KNEE),
    "back inseam at the knee": (0.25, KNEE),
    "back side at the hem": (-0.25, HEM),
    "back inseam at the hem": (0.25, HEM),
}
"""From the crease outward (centre and inseam positive) and down from the waist, cm."""

ROUNDED = 0.011
"""The published moves are rounded to a thousandth, the side at the waist to a quarter centimetre:
it slides along a slanting waist line."""


def sizes(*steps: int):
    """The published size 12 and others so many steps from it, called 12, 14, ..."""
    trousers = GARMENTS["trousers"]
    bodies = tuple(
        (str(12 + 2 * k), Body.of({n: v + k * STEP[n] for n, v in TWELVE.items()})) for k in steps
    )
    return size_range(trousers, bodies, trousers.spec(kind="trousers"), Finish())


def test_every_point_moves_as_the_published_grade_says():
    report = grade_report(sizes(0, 1))
    moves = {point.name: point.steps[0] for point in report.points}
    for name, (across, down) in MOVES.items():
        assert moves[name].x == pytest.approx(across, abs=ROUNDED), name
        assert -moves[name].y == pytest.approx(down, abs=ROUNDED), name


def test_darts_keep_their_width_and_length_from_size_to_size():
    one, two = (work.pattern.pattern for _, work in sizes(0, 1).works)
    for piece in one.pieces:
        for before, after in zip(piece.darts, two.piece(piece.name).darts, strict=True):
            assert after.intake == pytest.approx(before.intake, abs=0.02)
            assert after.length == pytest.approx(before.length, abs=0.2)


def test_a_wider_body_needs_a_longer_line_at_the_top_while_the_leg_hardly_changes():
    """The principle of Tanya Dove, "Grading Trousers" (class slides)."""
    table = measure_table(sizes(0, 1, 2))
    rows = {row.name: row.values for row in table.rows if row.kind == "finished"}
    crotch = [b - a for a, b in pairwise(rows["crotch_seam_length"])]
    inside = [b - a for a, b in pairwise(rows["inside_leg_seam"])]
    assert min(crotch) > 1.0
    assert max(map(abs, inside)) <= 0.4
    assert min(crotch) > 3 * max(map(abs, inside))


def test_no_published_point_steps_unevenly_within_one_band_of_the_handbook():
    report = grade_report(sizes(-1, 0, 1))  # hips 92, 96, 100
    uneven = {n for f in report.findings if f.code == "uneven_step" for n in f.names}
    assert uneven & set(MOVES) == set()


def test_sizes_of_a_table_jump_only_where_the_handbooks_bands_do():
    # hips 92 to 104; the bands of the block end at 102
    trousers = GARMENTS["trousers"]
    names = [f"{bust}-regular" for bust in (84, 88, 92, 96)]
    bodies = tuple((name, size_body("women", name)) for name in names)
    report = grade_report(size_range(trousers, bodies, trousers.spec(kind="trousers"), Finish()))
    jumps = [f for f in report.findings if f.code == "uneven_step"]
    assert any("knee girth" in jump.names for jump in jumps)
    for jump in jumps:
        assert jump.sizes[-1] == "96-regular"
        assert jump.by < 1.0


def test_the_step_of_the_handbooks_knee_from_one_band_to_the_next_is_named():
    # Source: the block's knee is 1.3 cm a side wider than the hem up to hip 102, 1.5 above it
    report = grade_report(sizes(0, 1, 2, 3))  # hips 96, 100, 104, 108
    found = [f for f in report.findings if "knee girth" in f.names]
    assert [f.sizes for f in found] == [("14", "16")]
    assert found[0].by == pytest.approx(4 * (1.5 - 1.3), abs=1e-6)
    assert {"front side at the knee", "back inseam at the knee"} <= set(found[0].names)
