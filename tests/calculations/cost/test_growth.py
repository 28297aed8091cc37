from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.growth import METHOD, growth, growth_by_kind
from tenderwright.calculations.method import OutOfRange

SUMS = st.integers(-1_000_000, 1_000_000).map(float)
WORKS = st.lists(st.tuples(st.sampled_from(["steel", "paint", "valves"]), SUMS, SUMS), max_size=20)


def test_by_hand() -> None:
    # Derived: 25 400 ordered, 33 900 in the end.
    found = growth([(18_000.0, 26_500.0), (7_400.0, 7_400.0)])
    assert found.share == pytest.approx(8_500 / 25_400)
    assert found.pieces == 2


def test_a_credit_is_measured_by_its_size() -> None:
    found = growth([(1000.0, 1300.0), (-500.0, -500.0)])
    assert found.share == pytest.approx(300 / 1500)
    assert (found.ordered, found.final) == (500.0, 800.0)


def test_of_nothing_ordered_there_is_no_share() -> None:
    assert growth([]).share is None
    assert growth([(0.0, 900.0)]).share is None
    assert growth_by_kind([]) == {}


@given(WORKS)
def test_kinds_add_up_to_the_whole(works: list[tuple[str, float, float]]) -> None:
    kinds = growth_by_kind(works)
    whole = growth((ordered, final) for _, ordered, final in works)
    assert list(kinds) == list(dict.fromkeys(kind for kind, _, _ in works))
    assert sum(one.pieces for one in kinds.values()) == whole.pieces
    assert sum(one.final for one in kinds.values()) == pytest.approx(whole.final, abs=1e-6)
    if whole.share is not None and whole.ordered_size > 1.0:
        weighted = sum(one.share * one.ordered_size for one in kinds.values() if one.share is not None)
        unordered = sum(one.final for one in kinds.values() if one.share is None)
        assert (weighted + unordered) / whole.ordered_size == pytest.approx(whole.share, abs=1e-6)


@given(st.lists(st.floats(1.0, 1e6), min_size=1), st.floats(-1.0, 3.0))
def test_work_that_all_grows_alike_grows_by_that(ordered: list[float], share: float) -> None:
    assert growth((one, one * (1.0 + share)) for one in ordered).share == pytest.approx(share, abs=1e-9)


def test_what_is_no_number_is_refused() -> None:
    with pytest.raises(OutOfRange, match="numbers"):
        growth([(1.0, float("nan"))])


def test_method_gives_its_outputs_and_refuses_nothing_ordered() -> None:
    outputs = METHOD.run(**METHOD.example)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["growth"] == pytest.approx(8_500 / 25_400)
    with pytest.raises(OutOfRange, match="nothing was ordered"):
        METHOD.run(works=[{"ordered": 0.0, "final": 5.0}])
