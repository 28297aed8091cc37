from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.containers import METHOD, purchase, purchases
from tenderwright.calculations.method import OutOfRange


def test_nothing_needs_no_container() -> None:
    assert purchase(0.0, 0.02).containers == 0


def test_exact_multiples_do_not_round_up() -> None:
    # Derived: 0.1 * 3 is a little more than 0.3 in floats.
    assert purchase(0.1 * 3, 0.1).containers == 3
    assert purchase(0.3 + 1e-6, 0.1).containers == 4


def test_sets_are_not_split() -> None:
    bought = purchase(0.156, 0.02)
    assert bought.containers == 8
    assert bought.supplied == pytest.approx(0.160)
    assert bought.left_over == pytest.approx(0.004)


def test_each_coat_is_rounded_up_by_itself() -> None:
    opened, bought = purchases([0.025, 0.025, 0.025], 0.02)
    assert opened == [2, 2, 2]
    assert bought.left_over == pytest.approx(0.045)


def test_remainder_is_carried_only_when_allowed() -> None:
    opened, bought = purchases([0.025, 0.025, 0.025], 0.02, carry_remainder=True)
    assert opened == [2, 1, 1]
    assert bought.left_over == pytest.approx(0.005)


@pytest.mark.parametrize("container", [0.0, -0.02, float("nan")])
def test_refuses_no_container(container: float) -> None:
    with pytest.raises(OutOfRange, match="container"):
        purchase(1.0, container)


def test_refuses_a_volume_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="volume of paint"):
        purchases([0.1, -0.1], 0.02)


@given(st.lists(st.floats(0, 10), min_size=1, max_size=6), st.floats(0.001, 1.0))
def test_enough_and_less_than_one_too_many(volumes: list[float], container: float) -> None:
    opened, bought = purchases(volumes, container)
    for volume, count in zip(volumes, opened, strict=True):
        assert count * container >= volume - 1e-8
        assert (count - 1) * container < volume or count == 0
    carried = purchases(volumes, container, carry_remainder=True)[1]
    assert carried.supplied >= sum(volumes) - 1e-8
    assert carried.containers <= bought.containers


@given(st.integers(0, 5000), st.floats(0.0005, 0.2))
def test_whole_multiples_need_just_so_many(count: int, container: float) -> None:
    assert purchase(count * container, container).containers == count


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(volumes=[0.156, 0.160], container=0.02)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["by_coat"] == [8.0, 8.0]
