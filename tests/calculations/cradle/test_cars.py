from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.cradle.cars import METHOD, judge
from tenderwright.calculations.cradle.train import Car, arrange
from tenderwright.calculations.verdict import Limit, Verdict

# An invented shiplift: figures of our own, none published (derived checks).
CAR = Car(
    length=12.0,
    gap=1.0,
    capacity=450e3,
    line_limit=45e3,
    axles=8,
    axle_limit=62e3,
    own_mass=25e3,
    available=7,
    coupled_limit=7,
)


def fit(car: Car = CAR, lcg: float = 47.0, unsupported: float | None = 0.6, number: int | None = None) -> Verdict:
    train = arrange(2e6, lcg, 8.0, 83.0, car, unsupported=unsupported or 0.0, number=number)
    return judge(train, car, unsupported)


def names(limits: tuple[Limit, ...]) -> list[str]:
    return [limit.name for limit in limits]


def test_fits_with_every_margin_known() -> None:
    found = fit()
    assert found.met is True
    assert found.passed == found.unknown == ()
    assert all(limit.margin is not None and limit.margin >= 0.0 for limit in found.limits)


@pytest.mark.parametrize(
    ("change", "name", "demand", "limit"),
    [
        ({"available": 5}, "cars available", 6.0, 5.0),
        ({"coupled_limit": 4}, "cars coupled", 6.0, 4.0),
        ({"capacity": 350e3}, "load on a car", 368298.67, 350e3),
        ({"line_limit": 30e3}, "line load", 32355.56, 30e3),
        ({"axle_limit": 40e3}, "load on an axle", (368298.67 + 25e3) / 8, 40e3),
    ],
)
def test_says_which_limit_is_passed_and_by_how_much(
    change: dict[str, float], name: str, demand: float, limit: float
) -> None:
    found = fit(replace(CAR, **change))  # type: ignore[arg-type]
    assert found.met is False
    assert names(found.passed) == [name]
    assert found.governs.name == name
    assert found.governs.demand == pytest.approx(demand, abs=0.01)
    assert found.governs.margin == pytest.approx(limit - demand, abs=0.01)


def test_names_the_worst_of_several_passed_limits() -> None:
    found = fit(replace(CAR, capacity=360e3, axle_limit=20e3))
    assert names(found.passed) == ["load on a car", "load on an axle"]
    assert found.governs.name == "load on an axle"


def test_unsupported_keel_is_a_reason() -> None:
    found = fit(number=5)
    assert found.met is False
    assert names(found.passed) == ["unsupported keel aft", "unsupported keel forward"]
    # Derived: keel 75 m, five cars 64 m, so 5.5 m free at each end.
    assert found.passed[0].demand == pytest.approx(5.5)
    assert found.passed[0].margin == pytest.approx(0.6 - 5.5)


@pytest.mark.parametrize("name", ["capacity", "line_limit", "axle_limit", "available", "coupled_limit", "axles"])
def test_does_not_know_where_a_limit_is_not_known(name: str) -> None:
    found = fit(replace(CAR, **{name: None}))  # type: ignore[arg-type]
    assert found.met is None
    assert len(found.unknown) == 1


def test_passed_limit_outweighs_an_unknown_one() -> None:
    found = fit(replace(CAR, capacity=None, line_limit=30e3))
    assert found.met is False
    assert names(found.passed) == ["line load"]
    assert names(found.unknown) == ["load on a car"]


def test_supported_keel_needs_no_limit_for_its_ends() -> None:
    assert fit(unsupported=None).met is True


def test_unsupported_ends_without_a_limit_are_not_known() -> None:
    found = fit(unsupported=None, number=5)
    assert names(found.unknown) == ["unsupported keel aft", "unsupported keel forward"]
    assert found.met is None


def test_hull_that_cannot_stand_is_told_as_a_limit() -> None:
    # Keel 8-83 m, two cars about 45.5 m reach 33 to 58 m; the centre of gravity at 60 m is beyond them.
    found = fit(lcg=60.0, number=2)
    assert found.met is False
    assert found.governs.name == "centre of gravity from the middle of the supported keel"
    assert found.governs.margin == pytest.approx(12.5 - 14.5)
    assert {"load on a car", "line load", "load on an axle"} <= set(names(found.unknown))


def test_weight_over_the_very_end_cannot_stand() -> None:
    found = fit(lcg=58.0, number=2)
    assert found.met is False
    assert found.passed[0].margin == pytest.approx(0.0)


def test_limit_of_nothing() -> None:
    assert Limit("x", "each", 1.0, 0.0).met is False
    assert Limit("x", "each", 0.0, 0.0).met is True


@given(st.floats(1.0, 1.5))
def test_more_capacity_never_makes_it_worse(factor: float) -> None:
    assert CAR.capacity is not None
    assert CAR.line_limit is not None
    better = replace(CAR, capacity=factor * CAR.capacity, line_limit=factor * CAR.line_limit)
    assert fit(better).met is True


@given(st.floats(20.0, 71.0))
def test_deciding_limit_is_used_most(lcg: float) -> None:
    found = fit(lcg=lcg)
    assert found.governs.use == max(limit.use for limit in found.limits if limit.use is not None)
    assert (found.governs.met is False) == (found.met is False)


def test_method_gives_its_outputs_and_reasons_as_data() -> None:
    car = {"length": 12.0, "gap": 1.0, "capacity": 350e3, "available": 7}
    outputs = METHOD.run(weight=2e6, lcg=47.0, keel_aft=8.0, keel_forward=83.0, car=car)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["fits"] is False
    assert outputs["cars_to_cover"] == outputs["cars_to_carry"] == 6.0
    assert outputs["axle_load"] == []
    reasons = [row for row in outputs["limits"] if row["met"] is False]
    assert [(row["name"], round(row["margin"])) for row in reasons] == [("load on a car", -18299)]


def test_method_where_the_hull_cannot_stand() -> None:
    car = {"length": 12.0, "gap": 1.0}
    outputs = METHOD.run(weight=2e6, lcg=60.0, keel_aft=8.0, keel_forward=83.0, car=car, number=2)
    assert outputs["fits"] is False
    assert outputs["lift_off"] is None
    assert outputs["car_load"] == outputs["car_peak"] == outputs["axle_load"] == []
