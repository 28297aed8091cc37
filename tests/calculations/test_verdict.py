"""One comparison for every limit: whichever way the last digit was rounded, what reaches a limit is judged alike."""

from __future__ import annotations

from math import inf, nan, nextafter

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.alone import input_schema, to_si
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.registry import methods
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.landing import entry_limit
from tenderwright.calculations.ship.side_loads import side_block_standing
from tenderwright.calculations.verdict import Limit, least, limits_from_input, verdict, within, within_each
from tests.calculations.ship.marram import found as ship_found

FIGURES = st.floats(-1e9, 1e9).filter(lambda x: abs(x) > 1e-3)


@given(FIGURES, st.booleans())
def test_the_last_digit_decides_nothing(limit: float, at_least: bool) -> None:
    for near in (nextafter(limit, -inf), limit, nextafter(limit, inf)):
        assert within(near, limit, at_least=at_least)
        assert not within(near, limit, strict=True, at_least=at_least)


def test_seven_tenths_reached_by_sums_is_seven_tenths() -> None:
    reached = 0.1 * 3 + 0.4
    assert within(0.1 + 0.2 + 0.4, 0.7)
    assert within(reached, 0.7)
    assert within(0.7, reached)


@given(FIGURES, FIGURES)
def test_no_more_and_no_less_are_opposites(a: float, b: float) -> None:
    assert within(a, b) == within(b, a, at_least=True)
    assert within(a, b) != within(a, b, strict=True, at_least=True)


@given(FIGURES, st.floats(1e-6, 1e6))
def test_what_differs_in_earnest_is_told_apart(limit: float, by: float) -> None:
    more = limit + max(by, 1e-6 * abs(limit))
    assert not within(more, limit)
    assert within(more, limit, at_least=True, strict=True)


@given(FIGURES, FIGURES, st.booleans(), st.booleans())
def test_many_at_once_are_judged_like_one(a: float, b: float, strict: bool, at_least: bool) -> None:
    figures = np.array([a, b, nextafter(b, inf), nextafter(b, -inf), b + 0.5e-9, 0.0])
    found = within_each(figures, b, strict=strict, at_least=at_least)
    assert found.tolist() == [within(float(one), b, strict=strict, at_least=at_least) for one in figures]


def test_what_is_not_a_number_is_within_nothing() -> None:
    for strict in (True, False):
        for at_least in (True, False):
            assert not within_each(np.array([nan]), 1.0, strict=strict, at_least=at_least).any()
            assert not within(nan, 1.0, strict=strict, at_least=at_least)


def test_a_figure_that_must_be_no_less() -> None:
    gm = Limit("metacentric height", "length", 0.30, 0.45, at_least=True, source="the owner")
    assert gm.met is False
    assert gm.margin == pytest.approx(-0.15)
    assert gm.use == pytest.approx(1.5)
    assert Limit("metacentric height", "length", -0.1, 0.0, at_least=True).met is False
    assert Limit("metacentric height", "length", -0.1, 0.0, at_least=True).use == inf
    assert Limit("metacentric height", "length", 0.5, 0.0, at_least=True).use == 0.0
    assert Limit("metacentric height", "length", None, 0.45, at_least=True).met is None
    assert Limit("metacentric height", "length", 0.45, None, at_least=True).met is None


def test_no_demand_meets_a_limit_that_is_not_known() -> None:
    assert Limit("load beyond the platform", "mass", 0.0, None).met is True
    assert Limit("load beyond the platform", "mass", 1.0, None).met is None


def test_a_verdict_names_what_governs() -> None:
    met, unknown = Limit("a", "mass", 1.0, 2.0), Limit("b", "mass", 1.0, None)
    worse, worst = Limit("c", "mass", 3.0, 2.0), Limit("d", "length", 9.0, 2.0, source="certificate")
    assert (verdict([met]).met, verdict([met]).words, verdict([met]).governs) == (True, "pass", met)
    found = verdict([met, unknown])
    assert (found.met, found.words, found.governs, found.unknown) == (None, "not known", unknown, (unknown,))
    found = verdict([met, unknown, worse, worst])
    assert (found.met, found.words, found.governs, found.passed) == (False, "fail", worst, (worse, worst))
    assert found.margin == -7.0
    with pytest.raises(OutOfRange, match="no limits"):
        verdict([])


@pytest.mark.parametrize(
    "limit",
    [
        Limit("a", "mass", 1.0, 2.0),
        Limit("b", "mass", None, None, strict=True),
        Limit("c", "length", 0.3, 0.45, at_least=True, source="the owner"),
    ],
)
def test_a_limit_comes_back_from_what_is_written(limit: Limit) -> None:
    assert limits_from_input([limit.as_input()]) == [limit] == limits_from_input([limit])


@given(st.floats(-1e5, 1e5), st.floats(1e-2, 1e3), st.booleans())
def test_a_pass_by_less_than_twice_its_uncertainty_is_not_known_and_a_failure_stays_one(
    limit: float, u: float, at_least: bool
) -> None:
    """95 % of what a figure may be lies within twice its standard uncertainty (JCGM 100:2008, 6.3.3)."""
    safe = 1 if at_least else -1

    def judged(by: float) -> bool | None:
        return Limit("any", "length", limit + safe * by, limit, at_least=at_least, uncertainty=u).met

    assert judged(2.1 * u) is True
    assert judged(1.9 * u) is None
    assert judged(0.0) is None
    assert judged(-0.1 * u) is False


def test_why_a_verdict_is_not_known() -> None:
    doubted = Limit("water over the blocks", "length", 3.9, 4.0, uncertainty=0.1)
    found = verdict([doubted, Limit("lift", "mass", 1.0, None)])
    assert found.why_unknown == (
        "no limit is given for lift; it is met by less than the figure is known to: water over the blocks"
    )
    assert verdict([Limit("lift", "mass", 1.0, 2.0)]).why_unknown == ""
    assert limits_from_input([doubted.as_input()]) == [doubted]


@pytest.mark.parametrize("name", ["facility.fit", "facility.shiplift", "facility.slipway", "facility.floating-dock"])
def test_every_limit_of_a_facility_names_its_source(name: str) -> None:
    method = methods()[name]
    figures = to_si(input_schema(method), dict(method.example))
    told = "the certificate of 2026"
    figures = figures | ({"berth": {**figures["berth"], "source": told}} if "berth" in figures else {"source": told})
    figures |= {"moment_source": told} if name == "facility.floating-dock" else {}
    rows = method.run(**figures)["limits"]
    assert rows
    assert all(row["source"] for row in rows)
    assert any(told in row["source"] for row in rows)


def test_every_limit_of_a_cradle_names_its_source() -> None:
    method = methods()["cradle.cars"]
    figures = to_si(input_schema(method), dict(method.example))
    rows = method.run(**figures | {"car": {**figures["car"], "source": "the certificate of 2026"}})["limits"]
    assert all(row["source"] for row in rows)


def test_every_limit_that_marram_is_held_against_names_its_source() -> None:
    for fit in ship_found(facility_fits).values():
        assert [one.name for one in fit.limits if not one.source] == []


def test_what_estimates_say_is_worse_is_not_known_whether_within_or_beyond() -> None:
    rigid = Limit("line load", "line_load", 21.0, 45.0)
    for estimate in (40.0, 50.0):
        one = rigid.or_estimate(estimate, "an estimated girder")
        assert one.met is None
        assert (one.demand, one.worse, one.margin) == (21.0, estimate, 45.0 - estimate)
        assert verdict([one]).words == "not known"
        assert limits_from_input([one.as_input()]) == [one]


def test_a_worse_figure_that_is_known_is_judged_and_a_lesser_one_is_not_looked_at() -> None:
    rigid = Limit("line load", "line_load", 21.0, 45.0)
    assert rigid.or_estimate(50.0, "").met is False
    assert rigid.or_estimate(20.0, "an estimated girder") == rigid
    assert Limit("line load", "line_load", 50.0, 45.0).or_estimate(60.0, "an estimated girder").met is False


def test_the_least_of_the_limits_that_are_known_governs() -> None:
    known = [Limit("a", "length", 0.3, 0.8), Limit("b", "length", 0.3, 0.4), Limit("c", "length", 0.3, None)]
    found = least(known)
    assert found is not None
    assert found.name == "b"
    assert least(known[2:]) is None


def test_every_limit_of_landing_and_side_blocks_names_its_source() -> None:
    judged = [*ship_found(entry_limit).limits, *ship_found(side_block_standing).limits]
    assert judged
    assert [one.name for one in judged if not one.source and one.limit is not None] == []
