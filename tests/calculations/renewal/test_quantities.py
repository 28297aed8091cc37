from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.renewal.outlines import Outline
from tenderwright.calculations.renewal.quantities import RenewalRules, renewal_of, renewal_total
from tenderwright.calculations.renewal.rivets import Riveting
from tenderwright.calculations.renewal.shell_grid import ShellGrid

GRID = ShellGrid(np.linspace(0.0, 6.0, 11), np.array([0.0, 1.0, 2.1]))
RIVETING = Riveting(0.08, 1, 2, 0.13)


def test_one_insert_counts_its_seams_and_frames() -> None:
    # Derived: 1.2 m by 2.1 m over two strakes and two bays: three seams of 15 rivets, three frames of 17.
    found = renewal_of(GRID, Outline(0, 2, 3, 5), 0.010, RIVETING, rules=RenewalRules(tolerance=0.05))
    assert found.rivets.removed == 3 * 15 + 3 * 17
    assert found.rivets.seam == pytest.approx(3.6)
    assert found.steel.mass == pytest.approx((1.2 * 2.1 - (4 - np.pi) * 0.05**2) * 78.5 * 1.05)


def test_man_hours_follow_the_published_rate_and_the_factors() -> None:
    # Butler, Guide to Ship Repair Estimates, 2000: 240 man-hours a tonne at 10 mm, weighed at 8000 kg/m³.
    plain = renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, RIVETING)
    assert plain.man_hours == pytest.approx(1.2 * 1.0 * 0.010 * 8.0 * 240.0)
    bilge = renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, RIVETING, rules=RenewalRules(factors=(1.25, 1.2)))
    assert bilge.man_hours == pytest.approx(1.5 * plain.man_hours)
    own = renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, RIVETING, rules=RenewalRules(rate=480.0))
    assert own.man_hours == pytest.approx(2.0 * plain.man_hours)


def test_totals_add_up() -> None:
    renewals = [
        renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, RIVETING, [1.0]),
        renewal_of(GRID, Outline(1, 2, 4, 5), 0.012, RIVETING),
    ]
    total = renewal_total(renewals)
    assert total.inserts == 2
    assert total.mass == pytest.approx(renewals[0].steel.mass + renewals[1].steel.mass)
    assert total.rivets_removed == sum(renewal.rivets.removed for renewal in renewals)
    assert [total.butt, total.seam] == pytest.approx([1.0, 2 * 1.2 + 2 * 0.6])
    assert total.man_hours == pytest.approx(sum(renewal.man_hours for renewal in renewals))
    assert renewal_total([]).mass == 0
