"""The cases in which bids are ranked: sections, quantities, and whether the place counts."""

from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest

from tenderwright.calculations.cost.three_point import ThreePoint
from tenderwright.pricing.bids.cases import cases

from .bidding import LINES, USUAL


def test_sections_of_each_case() -> None:
    for counted in (True, False):
        made = {case.name: case for case in cases(LINES, USUAL if counted else USUAL[:2])}
        assert list(made) == ["published", "base", "base with options", "p50", "p80"]
        assert made["published"].sections == frozenset("ABCDEFGH" if counted else "ABCDEGH")
        assert made["base"].sections == frozenset("ABCGH")
        assert made["base with options"].sections == frozenset("ABCFGH")
        assert made["p50"].sections == made["p80"].sections == made["published"].sections
        assert [case.whole for case in made.values()] == [True, False, False, True, True]


def test_quantities_are_those_of_the_pert_distribution() -> None:
    made = {case.name: case for case in cases(LINES, USUAL)}
    line = next(one for one in LINES if one.number == "310.a")
    pert = ThreePoint(500.0, 1000.0, 2500.0)
    for name, share in (("p50", 0.5), ("p80", 0.8)):
        wanted = float(pert.quantile(np.array(share)))
        assert float(made[name].quantity(line)) == pytest.approx(wanted, abs=6e-4)
    assert made["published"].quantity(line) == 1000


def test_what_has_no_range_stays_as_tendered() -> None:
    p80 = cases(LINES, USUAL)[-1]
    assert set(p80.quantities) == {"110.b", "310.a", "310.b", "165.a"}
    lump = next(one for one in LINES if one.number == "110.a")
    assert p80.quantity(lump) == Decimal(1)
