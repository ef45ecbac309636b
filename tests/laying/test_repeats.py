"""Stripes and checks: what is sewn together lies on the same place of the repeat."""

from __future__ import annotations

import pytest
from audit import audit
from orders import order, piece, seam

from drafting.errors import SpecError
from drafting.laying import Cloth, Laying, Repeat, lay


def on_cloth(placement, notch):
    """Where a notch's point lies, in cm along and across the cloth."""
    point = next(n.point for n in placement.finished.notches if n.notch.match == notch)
    return placement.move.point(point)


def off(value, step):
    """Distance from the nearest multiple of a step."""
    return abs(value - step * round(value / step))


@pytest.mark.parametrize("one_way", [True, False])
@pytest.mark.parametrize("budget", [0.0, 0.3])
def test_hip_notches_of_all_legs_lie_on_a_bar(one_way, budget, standard):
    cloth = Cloth(one_way=one_way, repeat=Repeat(lengthwise=9.0))
    (plan,) = lay((standard,), {"main": cloth}, Laying(budget=budget)).cloths
    audit(plan, (standard,))
    legs = [p for p in plan.placements if p.piece in ("front", "back")]
    assert len(legs) == 4
    for leg in legs:
        assert off(on_cloth(leg, "side-hip").x, 9.0) < 0.01


def test_the_centre_front_lies_on_the_middle_of_a_stripe(standard):
    cloth = Cloth(repeat=Repeat(crosswise=7.0, match=("front_crotch",)))
    (plan,) = lay((standard,), {"main": cloth}, Laying(budget=0.0)).cloths
    audit(plan, (standard,))
    fronts = [p for p in plan.placements if p.piece == "front"]
    for front in fronts:
        edge = front.finished.piece.edge("front_crotch").path
        upper = max(edge.start, edge.end, key=lambda p: p.y)
        across = front.move.point(upper).y
        assert off(across - 150.0 / 2, 7.0) < 0.01


def two_panels():
    """A front and a back whose side notches stand at different heights, a yoke on the fold."""
    front = piece(
        "front",
        *((0, 0), (20, 0), (20, 50), (0, 50)),
        cut=("main", 2, True),
        notches=((1, 18.0, "hip"),),
    )
    back = piece(
        "back",
        *((0, 0), (24, 0), (24, 54), (0, 54)),
        cut=("main", 2, True),
        notches=((3, 54.0 - 21.0, "hip"),),
    )
    yoke = piece("yoke", (0, 0), (18, 0), (16, 12), (0, 11), half=True)
    return order(front, back, yoke, seams=(seam("side", ("front", 1), ("back", 3)),))


@pytest.mark.parametrize("folded", [True, False])
def test_pieces_are_set_to_each_other_along_and_across(folded):
    made = two_panels()
    repeat = Repeat(lengthwise=8.0, crosswise=5.0, match=("front_1",))
    cloth = Cloth(width=120.0, folded=folded, repeat=repeat)
    (plan,) = lay((made,), {"main": cloth}, Laying(budget=0.0)).cloths
    audit(plan, (made,))
    middle = 0.0 if folded else 60.0
    for placement in plan.placements:
        if placement.piece == "yoke":
            fold = placement.move.point(placement.finished.piece.edge("yoke_3").path.start)
            assert off(fold.y - middle, 5.0) < 0.01
        else:
            at = on_cloth(placement, "hip")
            assert off(at.x, 8.0) < 0.01
            assert off(at.y - middle, 5.0) < 0.01


def test_a_seam_that_cannot_meet_is_told_with_its_miss(standard):
    cloth = Cloth(repeat=Repeat(lengthwise=10.0, match=("side", "inseam")))
    (plan,) = lay((standard,), {"main": cloth}, Laying(budget=0.0)).cloths
    told = next(f for f in plan.findings if f.code == "seam_off_repeat")
    front, back = (
        next(p for p in plan.placements if p.piece == name and not p.mirrored)
        for name in ("front", "back")
    )

    def over_hip(placement):
        knee, hip = (
            next(n.point.y for n in placement.finished.notches if n.notch.match == match)
            for match in ("inseam-knee", "side-hip")
        )
        return knee - hip

    assert told.measured == pytest.approx(off(over_hip(front) - over_hip(back), 10.0), abs=1e-6)


def test_an_edge_that_no_piece_has_is_refused(standard):
    cloth = Cloth(repeat=Repeat(lengthwise=10.0, match=("armhole",)))
    with pytest.raises(SpecError, match="armhole") as refused:
        lay((standard,), {"main": cloth}, Laying(budget=0.0))
    assert refused.value.where == "cloths.main.repeat.match"
    assert "side" in refused.value.allowed


def test_a_repeat_broader_than_the_cloth_is_refused(standard):
    cloth = Cloth(width=90.0, repeat=Repeat(crosswise=95.0))
    with pytest.raises(SpecError, match="broader than the cloth") as refused:
        lay((standard,), {"main": cloth}, Laying(budget=0.0))
    assert refused.value.code == "repeat_longer_than_cloth"


def test_a_repeat_longer_than_the_cloth_is_refused(standard):
    cloth = Cloth(repeat=Repeat(lengthwise=90.0))
    with pytest.raises(SpecError, match="longer than the cloth") as refused:
        lay((standard,), {"pocketing": cloth}, Laying(budget=0.0))
    assert refused.value.where == "cloths.pocketing.repeat.lengthwise"
