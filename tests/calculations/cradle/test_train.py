from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cradle.line_load import line_load
from tenderwright.calculations.cradle.train import Car, arrange, cars_to_carry, cars_to_cover
from tenderwright.calculations.method import OutOfRange


def test_ship_of_100_m_stands_on_several_coupled_cars() -> None:
    # Sanity check (common practice, no source): keel of 75 m, cars of 12 m, gaps of 1 m: ceil(76/13) = 6.
    train = arrange(2e6, 47.0, 8.0, 83.0, Car(length=12.0, gap=1.0))
    assert len(train.cars) == 6
    assert train.coupled_length == pytest.approx(77.0)
    assert [train.start, train.end] == pytest.approx([7.0, 84.0])
    assert train.unsupported_aft == train.unsupported_forward == 0.0


def test_cars_that_just_cover_the_keel_are_not_one_too_many() -> None:
    # Derived: n (c + g) - g = L_k exactly, in numbers that floats do not hold exactly.
    assert cars_to_cover(6 * 12.1 + 5 * 0.3, Car(12.1, 0.3)) == 6
    assert cars_to_cover(6 * 12.1 + 5 * 0.3 + 0.001, Car(12.1, 0.3)) == 7
    assert cars_to_cover(6 * 12.1 + 5 * 0.3 + 1.1, Car(12.1, 0.3), unsupported=0.6) == 6


def test_cars_to_carry_a_weight() -> None:
    # Derived: ceil(W/Q).
    assert cars_to_carry(2000e3, Car(12.0, 1.0, capacity=400e3)) == 5
    assert cars_to_carry(2000.1e3, Car(12.0, 1.0, capacity=400e3)) == 6
    assert cars_to_carry(2000e3, Car(12.0, 1.0)) == 1


def test_loads_are_the_integrals_from_mid_gap_to_mid_gap() -> None:
    # Derived, by hand: 1000 t over 31 m evenly; cars of 10 m, gaps of 0.5 m: 10.25, 10.5 and 10.25 m.
    train = arrange(1000e3, 15.5, 0.0, 31.0, Car(10.0, 0.5, axles=4, own_mass=20e3))
    assert [car.load for car in train.cars] == pytest.approx([x / 31 * 1000e3 for x in (10.25, 10.5, 10.25)])
    assert train.cars[1].peak == pytest.approx(1000e3 / 31 * 10.5 / 10)
    assert train.cars[1].axle_load == pytest.approx((10.5 / 31 * 1000e3 + 20e3) / 4)


def test_keel_shorter_than_one_car() -> None:
    train = arrange(300e3, 21.0, 18.0, 26.0, Car(20.0, 1.0))
    (only,) = train.cars
    assert [only.start, only.end, only.contact] == pytest.approx([12.0, 32.0, 8.0])
    assert only.load == pytest.approx(300e3)
    # A single car has no gap to span, so nothing raises the hull's own line load.
    assert only.peak == pytest.approx(line_load(300e3, 21.0, 18.0, 26.0).peak)


def test_one_more_car_where_only_that_keeps_each_within_its_capacity() -> None:
    # Derived: one car of 20 m under 20 m of keel carries all 1000 t; two under the middle carry half each.
    train = arrange(1000e3, 10.0, 0.0, 20.0, Car(20.0, 0.0, capacity=800e3))
    assert [car.load for car in train.cars] == pytest.approx([500e3, 500e3])


def test_more_cars_are_not_added_where_they_cannot_help() -> None:
    # Four cars under 40 m carry 500 t each; five would leave 500 t on those between, and so would any number.
    train = arrange(2000e3, 20.0, 0.0, 40.0, Car(10.0, 0.0, capacity=400e3))
    assert len(train.cars) == 4


def test_car_that_the_keel_does_not_reach_carries_nothing() -> None:
    train = arrange(1000e3, 20.0, 10.0, 30.0, Car(10.0, 1.0), number=5)
    assert train.cars[0].load == train.cars[-1].load == 0.0
    assert train.cars[0].contact == 0.0
    assert sum(car.load for car in train.cars) == pytest.approx(1000e3)


def test_keel_that_ends_over_a_gap_is_held_up_to_the_last_car_only() -> None:
    # Three cars about x = 15: 0-9, 10.5-19.5 ... the keel ends 0.5 m into the gap after the middle car.
    train = arrange(500e3, 15.0, 10.0, 20.0, Car(9.0, 1.5), number=3)
    assert [train.supported_aft, train.supported_forward] == pytest.approx([10.5, 19.5])
    assert train.unsupported_aft == pytest.approx(0.5)
    assert train.unsupported_forward == pytest.approx(0.5)
    assert train.cars[1].load == pytest.approx(500e3)


def test_too_few_cars_leave_keel_unsupported_and_still_carry_the_weight() -> None:
    train = arrange(2000e3, 20.0, 0.0, 40.0, Car(10.0, 0.0), number=3)
    assert train.unsupported_aft == train.unsupported_forward == pytest.approx(5.0)
    assert sum(car.load for car in train.cars) == pytest.approx(2000e3)


def test_centring_under_the_centre_of_gravity() -> None:
    train = arrange(2000e3, 23.0, 0.0, 40.0, Car(10.0, 0.0), centring="centre of gravity")
    assert 0.5 * (train.start + train.end) == pytest.approx(23.0)
    assert train.unsupported_aft == pytest.approx(3.0)
    assert train.load is not None
    assert sum(car.load for car in train.cars) == pytest.approx(2000e3)


def test_hull_with_her_weight_beyond_the_cars_does_not_stand() -> None:
    train = arrange(2000e3, 38.0, 0.0, 40.0, Car(10.0, 0.0), number=2)
    assert train.load is None
    assert all(car.load == 0.0 for car in train.cars)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"length": 0.0}, "length"),
        ({"gap": -0.1}, "gap"),
        ({"axles": 0}, "axle"),
        ({"own_mass": -1.0}, "mass of a car"),
        ({"capacity": -1.0}, "capacity"),
        ({"available": -1}, "available"),
    ],
)
def test_refuses_what_is_no_car(changes: dict[str, float], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        Car(**({"length": 10.0, "gap": 1.0} | changes))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("weight", "lcg", "aft", "forward", "unsupported", "number", "words"),
    [
        (0.0, 20.0, 0.0, 40.0, 0.0, None, "weight"),
        (1e6, 20.0, 40.0, 40.0, 0.0, None, "keel"),
        (1e6, float("nan"), 0.0, 40.0, 0.0, None, "finite"),
        (1e6, 20.0, 0.0, 40.0, -1.0, None, "unsupported"),
        (1e6, 20.0, 0.0, 40.0, 0.0, 0, "from 1 to 500 cars"),
        (1e6, 20.0, 0.0, 40.0, 0.0, 10**15, "from 1 to 500 cars"),
    ],
)
def test_refuses_what_cannot_be_arranged(
    weight: float, lcg: float, aft: float, forward: float, unsupported: float, number: int | None, words: str
) -> None:
    with pytest.raises(OutOfRange, match=words):
        arrange(weight, lcg, aft, forward, Car(10.0, 1.0), unsupported=unsupported, number=number)


def test_refuses_a_train_that_is_nowhere_under_the_keel() -> None:
    with pytest.raises(OutOfRange, match="no car"):
        arrange(1e6, 90.0, 0.0, 40.0, Car(10.0, 1.0), centring="centre of gravity", number=1)


keels = st.tuples(st.floats(-20.0, 30.0), st.floats(2.0, 150.0), st.floats(0.05, 0.95))
cars = st.builds(Car, length=st.floats(2.0, 25.0), gap=st.floats(0.0, 2.0))


@given(keels, cars, st.floats(1e4, 1e7))
def test_cars_carry_the_whole_weight(keel: tuple[float, float, float], car: Car, weight: float) -> None:
    aft, length, share = keel
    train = arrange(weight, aft + share * length, aft, aft + length, car)
    assert sum(one.load for one in train.cars) == pytest.approx(weight, rel=1e-9)
    assert train.unsupported_aft == pytest.approx(0.0, abs=1e-6)
    assert train.unsupported_forward == pytest.approx(0.0, abs=1e-6)


@given(keels, cars)
def test_weight_moved_forward_loads_the_forward_car_more(keel: tuple[float, float, float], car: Car) -> None:
    aft, length, share = keel
    lcg = aft + share * length
    further = lcg + 0.02 * length
    before = arrange(1e6, lcg, aft, aft + length, car)
    after = arrange(1e6, further, aft, aft + length, car)
    assert after.cars[-1].load >= before.cars[-1].load - 1e-3
    assert after.cars[0].load <= before.cars[0].load + 1e-3


@given(keels, cars)
def test_mirrored_hull_gives_the_loads_in_reverse(keel: tuple[float, float, float], car: Car) -> None:
    aft, length, share = keel
    lcg = aft + share * length
    there = [one.load for one in arrange(1e6, lcg, aft, aft + length, car).cars]
    back = [one.load for one in arrange(1e6, -lcg, -aft - length, -aft, car).cars]
    assert back[::-1] == pytest.approx(there, rel=1e-6, abs=1.0)


@given(keels, cars, st.floats(-30.0, 30.0))
def test_loads_do_not_depend_on_where_x_is_counted_from(
    keel: tuple[float, float, float], car: Car, shift: float
) -> None:
    aft, length, share = keel
    lcg = aft + share * length
    here = [one.load for one in arrange(1e6, lcg, aft, aft + length, car).cars]
    moved = arrange(1e6, lcg + shift, aft + shift, aft + length + shift, car)
    assert [one.load for one in moved.cars] == pytest.approx(here, rel=1e-6, abs=1.0)


@given(keels, cars, st.floats(0.1, 10.0))
def test_loads_grow_with_the_weight(keel: tuple[float, float, float], car: Car, factor: float) -> None:
    aft, length, share = keel
    lcg = aft + share * length
    once = [one.load for one in arrange(1e6, lcg, aft, aft + length, car).cars]
    more = [one.load for one in arrange(factor * 1e6, lcg, aft, aft + length, car).cars]
    assert more == pytest.approx([factor * load for load in once], rel=1e-9, abs=1e-3)


@given(st.floats(2.0, 200.0), cars)
def test_number_is_the_least_that_covers_the_keel(length: float, car: Car) -> None:
    number = cars_to_cover(length, car)
    assert number * car.pitch - car.gap >= length - 1e-6
    assert number == 1 or (number - 1) * car.pitch - car.gap < length
