"""Length of cloth for the standard figure's trousers, and how it moves with the cloth."""

from __future__ import annotations

from dataclasses import replace

import pytest
from audit import placed
from orders import order, piece

from drafting.laying import USUAL_WIDTHS, Amount, Cloth, Laying, Repeat, lay


def bought(work, budget, **cloth):
    (plan,) = lay((work,), {"main": Cloth(**cloth)}, Laying(budget=budget)).cloths
    return plan.buy.metric


@pytest.mark.parametrize(
    ("cloth", "budget", "least", "most"),
    [
        # one length and 10 to 20 cm, hips to 105. Source: common practice, no source
        ({"width": 150.0}, 2.0, 115, 130),
        # the same with a nap. Source: common practice, no source
        ({"width": 150.0, "one_way": True}, 0.0, 130, 160),
        # two lengths: the rule is for cloth laid double. Source: common practice, no source
        ({"width": 115.0, "folded": True}, 0.0, 210, 240),
        # two lengths and a fifth, laid double. Source: common practice, no source
        ({"width": 90.0, "folded": True}, 0.0, 230, 260),
    ],
)
def test_trousers_take_what_workrooms_reckon_with(cloth, budget, least, most, standard):
    assert least <= bought(standard, budget, **cloth) <= most


@pytest.mark.parametrize(("width", "most"), [(115.0, 240), (90.0, 260)])
def test_laid_open_they_take_no_more_than_laid_double(width, most, standard):
    assert bought(standard, 0.0, width=width) <= most


def test_tops_one_way_never_takes_less_without_a_search(standard):
    plain = Laying(budget=0.0)
    for width in (115.0, 150.0):
        one_way = lay((standard,), {"main": Cloth(width=width, one_way=True)}, plain).cloths[0]
        two_way = lay((standard,), {"main": Cloth(width=width)}, plain).cloths[0]
        assert two_way.length <= one_way.length + 1e-6


@pytest.mark.parametrize("budget", [0.0, 0.4])
def test_a_wider_cloth_never_takes_more_within_one_call(budget, standard):
    laying = Laying(budget=budget, alternatives=True)
    (plan,) = lay((standard,), {"main": Cloth(width=140.0)}, laying).cloths
    assert tuple(other.width for other in plan.alternatives) == USUAL_WIDTHS
    exact = [other.buy.exact for other in plan.alternatives]
    assert exact == sorted(exact, reverse=True)
    own = next(other for other in plan.alternatives if other.width == 140.0)
    assert own.buy == plan.buy


def test_a_width_that_a_piece_does_not_fit_has_no_alternative(sizes):
    huge = sizes[3]
    laying = Laying(budget=0.0, alternatives=True)
    (plan,) = lay((huge,), {"main": Cloth(folded=True)}, laying).cloths
    by_width = {other.width: other.buy for other in plan.alternatives}
    assert by_width[90.0] is None
    assert by_width[150.0] == plan.buy


def test_no_lay_undercuts_what_is_possible(standard):
    for width in (90.0, 150.0):
        cloth = Cloth(width=width)
        (plan,) = lay((standard,), {"main": cloth}, Laying(budget=0.0)).cloths
        areas = [placed(p) for p in plan.placements]
        by_area = sum(a.area for a in areas) / (width - 3.0)
        by_length = max(a.bounds[2] - a.bounds[0] for a in areas)
        assert plan.bound == pytest.approx(max(by_area, by_length), rel=1e-3)
        assert plan.ratio >= 1.0


def test_what_is_bought_has_the_ends_the_repeat_and_what_washing_takes(standard):
    cloth = Cloth(ends=3.0, repeat=Repeat(lengthwise=8.0), shrinkage_lengthwise=4.0)
    (plan,) = lay((standard,), {"main": cloth}, Laying(budget=0.0)).cloths
    assert plan.buy.exact == pytest.approx((plan.length + 2 * 3.0 + 8.0) / 0.96)


@pytest.mark.parametrize(
    ("exact", "metric", "yards"),
    # an eighth of a yard is 4 1/2 in, 11.43 cm by the international inch
    [
        (110.0, 110, 1.25),
        (110.1, 115, 1.25),
        (114.3, 115, 1.25),
        (114.4, 115, 1.375),
        (1, 5, 0.125),
    ],
)
def test_lengths_are_rounded_up_to_what_shops_cut(exact, metric, yards):
    assert (Amount(exact).metric, Amount(exact).yards) == (metric, yards)


def test_a_wider_cloth_that_saves_a_length_is_told():
    """Two panels of 60 by 100 cm lie side by side from 120 and a gap of 0.2 to 0.3 on."""
    made = order(piece("panel", (0, 0), (60, 0), (60, 100), (0, 100), cut=("main", 2, True)))
    (plan,) = lay((made,), {"main": Cloth(width=115.0)}, Laying(budget=0.0)).cloths
    told = next(f for f in plan.findings if f.code == "wider_saves")
    assert plan.length == pytest.approx(200.2, abs=0.1)
    assert told.measured == pytest.approx(2 * 60 + 0.25 + 2 * 1.5, abs=0.8)
    (wider,) = lay((made,), {"main": Cloth(width=told.measured)}, Laying(budget=0.0)).cloths
    assert wider.length == pytest.approx(100.0, abs=0.1)


def test_a_narrower_cloth_that_will_do_is_told(standard):
    (plan,) = lay((standard,), {"fusible": Cloth(width=150.0)}, Laying(budget=0.0)).cloths
    told = next(f for f in plan.findings if f.code == "narrower_will_do")
    narrower = Cloth(width=told.measured)
    (again,) = lay((standard,), {"fusible": narrower}, Laying(budget=0.0)).cloths
    assert told.measured < 150.0
    assert again.buy.metric <= plan.buy.metric


def test_each_cloth_is_laid_by_itself_and_what_is_left_out_is_told(standard):
    plan = lay((standard,), {"pocketing": Cloth(width=90.0)}, Laying(budget=0.0))
    (pocketing,) = plan.cloths
    assert {p.piece for p in pocketing.placements} == {
        finished.piece.name
        for finished in standard.pattern.pieces
        if any(cut.cloth == "pocketing" for cut in finished.piece.cut)
    }
    left_out = {f.where for f in plan.findings if f.code == "cloth_not_laid"}
    assert left_out == {"cloths.main", "cloths.fusible"}


def test_a_cloth_that_shrinks_across_is_reckoned_as_it_lies_washed(standard):
    washed = replace(Cloth(), shrinkage_crosswise=10.0)
    (plan,) = lay((standard,), {"main": washed}, Laying(budget=0.0)).cloths
    (narrow,) = lay((standard,), {"main": Cloth(width=135.0)}, Laying(budget=0.0)).cloths
    assert plan.length == pytest.approx(narrow.length, abs=1e-6)
