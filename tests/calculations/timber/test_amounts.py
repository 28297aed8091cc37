from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.timber.borings import borings
from tenderwright.calculations.timber.days_dry import days_dry
from tenderwright.calculations.timber.fastenings import fastenings
from tenderwright.calculations.timber.moisture import moisture
from tenderwright.calculations.timber.planking import planking
from tenderwright.calculations.timber.seams import STATES, seam_lengths


def test_planks_are_summed_and_board_is_bought_with_waste() -> None:
    """By hand: 4 m x 0.2 m and 2.5 m x 0.18 m, both of 50 mm."""
    found = planking(
        [
            {"length": 4.0, "width": 0.2, "thickness": 0.05},
            {"length": 2.5, "width": 0.18, "thickness": 0.05},
        ],
        0.4,
    )
    assert found == pytest.approx({"number": 2, "length": 6.5, "area": 1.25, "net": 0.0625, "board": 0.0875})


def test_no_plank_to_renew_is_no_board() -> None:
    assert set(planking([], 0.3).values()) == {0.0}


@given(st.lists(st.tuples(st.floats(0, 100), st.sampled_from(STATES))))
def test_every_metre_of_seam_is_hard_or_raked(seams: list[tuple[float, str]]) -> None:
    found = seam_lengths([{"length": length, "state": state} for length, state in seams])
    assert found["hard"] + found["rake"] == pytest.approx(found["total"])


def test_loss_is_of_area_and_a_loss_at_the_limit_has_not_failed() -> None:
    """By hand: 9 of 10 mm leave 81 % of the area, 8 of 10 mm leave 64 %."""
    drawn = [{"new": 0.01, "now": now} for now in (0.01, 0.009, 0.008, 0.008)]
    found = fastenings(drawn, 0.36, 100, 0.95)
    assert found["mean_loss"] == pytest.approx((0 + 0.19 + 0.36 + 0.36) / 4)
    assert (found["failed"], found["likely"]) == (0, 0)
    found = fastenings(drawn, 0.35, 100, 0.95)
    assert (found["failed"], found["likely"]) == (2, 50)
    assert found["least"] < 50 < found["most"]


@given(st.lists(st.floats(0, 1), min_size=1, max_size=40), st.floats(0, 1), st.integers(1, 5000))
def test_what_is_likely_lies_between_the_bounds(now: list[float], limit: float, number: int) -> None:
    found = fastenings([{"new": 1.0, "now": one} for one in now], limit, number, 0.95)
    assert 0 <= found["least"] <= found["likely"] <= found["most"] <= number


def test_a_fastening_does_not_grow() -> None:
    with pytest.raises(OutOfRange):
        fastenings([{"new": 0.010, "now": 0.011}], 0.3, 100, 0.95)


def test_borings_are_held_against_their_own_thickness() -> None:
    found = borings([{"through": 0.05, "sound_from": 0.0125}, {"through": 0.04, "sound_from": 0.02}], 0.25)
    assert found["unsound"] == pytest.approx([0.25, 0.5])
    assert (found["number"], found["beyond"]) == (2, 1)


def test_moisture_above_the_limit_is_counted_and_what_the_meter_only_ranks_too() -> None:
    found = moisture([0.15, 0.20, 0.22, 0.31, 0.05], 0.20)
    assert (found["above"], found["ranked_only"]) == (2, 2)


def test_days_dry_are_judged_by_the_one_comparison() -> None:
    day = 86400.0
    assert days_dry(14 * day, 14 * day) == {"planned": 14 * day, "met": True, "beyond": 0.0}
    assert days_dry(15 * day, 14 * day) == {"planned": 15 * day, "met": False, "beyond": day}
