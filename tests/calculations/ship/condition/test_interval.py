"""The years to the next docking: what they do to steel, anodes and coating."""

from __future__ import annotations

import itertools

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.interval import YEARS, docking_interval, years_ahead
from tenderwright.calculations.steps.outcome import Lacking
from tests.replacing import replace

from .ship import marram


def test_the_longer_she_waits_the_worse_she_is() -> None:
    _, _, calculated = marram()
    ahead = calculated.found(years_ahead)
    assert ahead is not None
    assert tuple(one.years for one in ahead) == YEARS
    for sooner, later in itertools.pairwise(ahead):
        assert set(sooner.plates or ()) <= set(later.plates or ())
        assert (sooner.anodes_spent or 0) <= (later.anodes_spent or 0)
        assert all(a[1] < b[1] for a, b in zip(sooner.bare, later.bare, strict=True))


def test_the_coating_acts_as_bare_by_its_constants() -> None:
    """DNV-RP-B401 (from memory): a + b t, here 0.02 and 0.012 a year after ten years."""
    _, _, calculated = marram()
    ahead = calculated.found(years_ahead)
    assert ahead is not None
    assert dict(ahead[1].bare)["shell under water, painted"] == pytest.approx(0.02 + 0.012 * 10)


def test_it_is_held_against_her_own_history() -> None:
    package, record, _ = marram()
    assert record.values["interval.shortest"].si / (365.25 * 86400) == pytest.approx(19.4, abs=0.01)
    alone = calculate(replace(package, history=())).outcome(docking_interval)
    assert isinstance(alone, Lacking)
    assert "history/" in alone.why


def test_without_surveys_and_anodes_it_says_what_it_needs() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    bare = replace(package, surveys=(), anodes=(), condition=replace(package.condition, anodes=None))
    found = calculate(bare).outcome(years_ahead)
    assert isinstance(found, Lacking)
    assert "surveys/" in found.why
