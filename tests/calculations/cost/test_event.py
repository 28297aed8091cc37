from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.event import METHOD, Event
from tenderwright.calculations.method import OutOfRange

UNIFORMS = (np.arange(200_000) + 0.5) / 200_000
"""Probabilities spread evenly: the whole distribution, without chance."""


@st.composite
def events(draw: st.DrawFn) -> Event:
    low, high = sorted((draw(st.floats(-1e5, 1e6)), draw(st.floats(-1e5, 1e6))))
    return Event(draw(st.floats(0.0, 1.0)), low, high)


@given(events())
def test_mean_and_spread_of_the_draws_are_exact(risk: Event) -> None:
    costs = risk.at_uniforms(UNIFORMS)
    size = max(abs(risk.low), abs(risk.high), 1.0)
    assert costs.mean() == pytest.approx(risk.mean, abs=1e-5 * size)
    assert costs.var() == pytest.approx(risk.variance, abs=2e-5 * size**2)


@given(events())
def test_it_costs_nothing_or_between_low_and_high(risk: Event) -> None:
    costs = risk.at_uniforms(UNIFORMS)
    happened = 1.0 - risk.likelihood < UNIFORMS
    assert not costs[~happened].any()
    slack = 1e-9 * max(abs(risk.low), abs(risk.high), 1.0)
    assert (costs[happened] >= risk.low - slack).all()
    assert (costs[happened] <= risk.high + slack).all()
    if risk.low >= 0.0:
        assert (np.diff(costs) >= -slack).all()


def test_by_hand() -> None:
    # Derived: three in ten, 6000 to 28 000.
    risk = Event(0.3, 6000.0, 28000.0)
    assert risk.mean == pytest.approx(5100.0)
    assert risk.variance == pytest.approx(0.3 * (36e6 + 168e6 + 784e6) / 3 - 5100.0**2)
    assert risk.at_uniforms(np.array([0.0, 0.69, 0.85, 1.0])) == pytest.approx([0.0, 0.0, 17000.0, 28000.0])


def test_sure_and_impossible_events() -> None:
    assert (Event(0.0, 5.0, 9.0).at_uniforms(UNIFORMS) == 0.0).all()
    assert (Event(1.0, 5.0, 5.0).at_uniforms(UNIFORMS) == 5.0).all()
    assert Event(1.0, 5.0, 5.0).variance == 0.0


def test_what_is_no_risk_is_refused() -> None:
    for likelihood in (-0.1, 1.1, float("nan")):
        with pytest.raises(OutOfRange, match="likelihood"):
            Event(likelihood, 1.0, 2.0)
    for high in (0.5, float("inf"), float("nan")):
        with pytest.raises(OutOfRange, match="high"):
            Event(0.5, 1.0, high)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(likelihood=0.3, low=6000.0, high=28000.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["deviation"] == pytest.approx(8531.7, abs=0.05)
