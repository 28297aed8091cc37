from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.renewal.outlines import Outline
from tenderwright.calculations.renewal.quantities import RenewalRules, renewal_of, renewal_total
from tenderwright.calculations.renewal.rivets import InsertJoints, Line
from tenderwright.calculations.renewal.shell_grid import ShellGrid

GRID = ShellGrid(np.linspace(0.0, 6.0, 11), np.array([0.0, 1.0, 2.1]))
NONE = InsertJoints((), ())


def line(length: float, rows: int = 1, pitch: float = 0.08) -> Line:
    return Line(length, rows, pitch, 0.019)


def test_one_insert_counts_its_joints_and_the_plate_of_its_ends() -> None:
    """1.2 m by 2.1 m; each end of 2.1 m under a strap of two rows of 19 mm a side: 2 (3 + 2.5) 19 mm broad."""
    joints = InsertJoints(((line(1.2),),) * 3, (line(2.1, 1, 0.13),) * 3, ends=(line(2.1, 4),) * 2)
    rules = RenewalRules(tolerance=0.05, ends="riveted strap")
    found = renewal_of(GRID, Outline(0, 2, 3, 5), 0.010, joints, rules)
    assert found.rivets.removed == 3 * 15 + 3 * 17
    assert found.rivets.renewed == found.rivets.removed + 2 * 4 * 27
    assert found.rivets.seam == pytest.approx(3.6)
    strap = 2 * 2 * (3 + 2.5) * 0.019 * 2.1
    assert found.ends_area == pytest.approx(strap)
    assert found.steel.mass == pytest.approx((1.2 * 2.1 - (4 - np.pi) * 0.05**2) * 78.5 * 1.05)
    assert found.mass == pytest.approx(found.steel.mass + strap * 78.5 * 1.05)


def test_a_lap_takes_its_breadth_of_plate() -> None:
    """Three rows in a lap: (3 + 2 x 3.5) 19 mm."""
    joints = InsertJoints((), (), ends=(line(2.1, 3),))
    found = renewal_of(GRID, Outline(0, 2, 3, 5), 0.010, joints, RenewalRules())
    assert found.ends_area == pytest.approx(10 * 0.019 * 2.1)


def test_man_hours_follow_the_published_rate_and_the_factors() -> None:
    # Butler, Guide to Ship Repair Estimates, 2000: 240 man-hours a tonne at 10 mm, weighed at 8000 kg/m³.
    plain = renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, NONE)
    assert plain.man_hours == pytest.approx(1.2 * 1.0 * 0.010 * 8.0 * 240.0)
    bilge = renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, NONE, RenewalRules(factors=(1.25, 1.2)))
    assert bilge.man_hours == pytest.approx(1.5 * plain.man_hours)
    own = renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, NONE, RenewalRules(rate=480.0))
    assert own.man_hours == pytest.approx(2.0 * plain.man_hours)


def test_totals_add_up() -> None:
    renewals = [
        renewal_of(GRID, Outline(0, 1, 0, 2), 0.010, InsertJoints(((line(1.2),),) * 2, (), (line(1.0),))),
        renewal_of(GRID, Outline(1, 2, 4, 5), 0.012, InsertJoints(((line(0.6),),) * 2, (), weld=2.2)),
    ]
    total = renewal_total(renewals)
    assert total.inserts == 2
    assert total.mass == pytest.approx(renewals[0].mass + renewals[1].mass)
    assert total.rivets_removed == sum(renewal.rivets.removed for renewal in renewals)
    assert [total.butt, total.seam, total.end_weld] == pytest.approx([1.0, 2 * 1.2 + 2 * 0.6, 2.2])
    assert total.joint == pytest.approx(1.0 + 3.6 + 2.2)
    assert total.by_diameter == ((0.019, total.rivets_renewed),)
    assert total.man_hours == pytest.approx(sum(renewal.man_hours for renewal in renewals))
    assert renewal_total([]).mass == 0
