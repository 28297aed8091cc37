"""How much a line may come to: by the survey's own draws where it takes a value of them, else by the owner's range."""

from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.three_point import ThreePoint
from tenderwright.pricing.bids.spread import Spread
from tenderwright.pricing.bids.tendered import TenderLine, tender_lines
from tenderwright.quantities.display import in_unit
from tests.documents.composed import composed


@pytest.fixture(scope="module")
def marram() -> dict[str, TenderLine]:
    made = composed("marram")
    found = tender_lines(made.compiled.package, made.compiled.calculated, made.owner.estimate)
    return {line.number: line for line in found}


def test_steel_goes_by_the_surveys_own_draws(marram: dict[str, TenderLine]) -> None:
    spread, record = marram["310.b"].spread, composed("marram").compiled.record
    assert spread.source == "survey"
    p80 = record.values["shell.contingent.mass-p80"]
    assert float(spread.at(0.8)) == pytest.approx(in_unit(float(p80.si), "kg", "mass"), abs=6e-4)
    assert spread.draws is not None
    expected = record.values["shell.contingent.mass"]
    assert float(spread.draws.mean()) == pytest.approx(float(expected.si))
    # Tendered is the P80 rounded up, so that it is passed in a fifth of the draws at most.
    assert spread.more(float(spread.tendered)) <= 0.2


def test_other_lines_go_by_the_owners_least_and_most(marram: dict[str, TenderLine]) -> None:
    spread = marram["115.b"].spread
    assert (spread.source, spread.least, spread.most) == ("owner", 1.0, 8.0)
    assert marram["110.a"].spread.source == "none"


def test_a_quantity_without_a_range_is_certain() -> None:
    spread = Spread(Decimal(40))
    assert (spread.at(0.5), spread.at(0.8), spread.least, spread.most) == (Decimal(40), Decimal(40), 40.0, 40.0)
    assert (spread.more(39.0), spread.more(40.0), spread.less(41.0), spread.less(40.0)) == (1.0, 0.0, 1.0, 0.0)


def test_draws_are_counted() -> None:
    spread = Spread(Decimal(3), "survey", draws=np.array([0.0, 1.0, 2.0, 3.0, 10.0]))
    assert (spread.at(0.5), spread.at(0.8), spread.least, spread.most) == (Decimal(2), Decimal(3), 0.0, 10.0)
    assert (spread.more(2.0), spread.less(2.0)) == (0.4, 0.4)


@given(st.lists(st.integers(0, 500), min_size=1, max_size=40), st.integers(0, 500))
def test_more_less_and_just_so_are_all_there_is(draws: list[int], quantity: int) -> None:
    spread = Spread(Decimal(10), "survey", draws=np.array(draws, np.float64))
    just = draws.count(quantity) / len(draws)
    assert spread.more(quantity) + spread.less(quantity) + just == pytest.approx(1.0)


@given(st.floats(0.0, 100.0))
def test_of_a_range_more_and_less_are_all_there_is(quantity: float) -> None:
    spread = Spread(Decimal(40), "owner", ThreePoint(20.0, 40.0, 90.0))
    assert spread.more(quantity) + spread.less(quantity) == pytest.approx(1.0)
