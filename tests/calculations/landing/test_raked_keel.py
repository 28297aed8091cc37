"""A ship whose keel rakes against her baseline lands as the same ship does when heights are taken from her keel."""

from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.hydrostatics.lofting import lofting
from tenderwright.calculations.landing.curve import landing_curve
from tenderwright.calculations.landing.exact import Lander, held_particulars, settle_exactly
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.landing.settling import settle
from tests.calculations.hydrostatics.hulls import wigley
from tests.calculations.hydrostatics.sectioned import sectioned, spread

DRAG = 0.012
"""Rise of the keel forward per length: half a metre in 40 m."""
LCG, VCG = 19.4, 2.4


def _raised(read: dict[str, Any], rake: float) -> dict[str, Any]:
    """Take heights from a baseline against which the keel rakes."""
    sections = [one | {"heights": [z + rake * one["x"] for z in one["heights"]]} for one in read["sections"]]
    ends = {
        name: read[name]
        | {"heights": [z + rake * x for x, z in zip(read[name]["x"], read[name]["heights"], strict=True)]}
        for name in ("stern", "stem")
    }
    return {**read, "sections": sections, **ends}


def landed(rake: float, declivity: float = 0.0) -> Lander:
    form = wigley(40.0, 8.0, 4.0)
    read = _raised(sectioned(form, spread(form, 9)), rake)
    blocks = BlockLine(4.0, 36.0, declivity)
    return Lander(lofting(**read).form, 360e3, LCG, VCG + rake * LCG, 1025.0, blocks, -0.15, 4e3, 0.3, rake=rake)


@pytest.mark.parametrize("rake", [DRAG, -DRAG])
@pytest.mark.parametrize("declivity", [0.0, 0.004])
def test_heights_from_the_keel_or_from_a_baseline_land_her_alike(rake: float, declivity: float) -> None:
    level, raked = landed(0.0, declivity), landed(rake, declivity)
    one, other = settle_exactly(level), settle_exactly(raked)
    assert other.settling.first_block == one.settling.first_block
    assert other.settling.upthrust == pytest.approx(one.settling.upthrust, rel=0.06)
    for figure in ("water_at_touch", "fall", "draft_aft", "draft_forward"):
        assert getattr(other.settling, figure) == pytest.approx(getattr(one.settling, figure), abs=0.012), figure
    assert other.settling.stability.gm == pytest.approx(one.settling.stability.gm, abs=0.02)
    assert other.instability.upthrust == pytest.approx(one.instability.upthrust, rel=0.05)
    by_hand = [settle(held_particulars(ship), ship.blocks).settling.upthrust for ship in (level, raked)]
    assert by_hand[1] == pytest.approx(by_hand[0], rel=0.06)


def test_on_level_blocks_the_water_over_a_raked_keel_is_alike_fore_and_aft_once_she_is_settled() -> None:
    ship = landed(DRAG)
    x, upthrust = ship.contact
    settled = ship.under(upthrust, x)
    assert ship.water_over(settled, 4.0) == pytest.approx(ship.water_over(settled, 36.0), abs=1e-6)
    assert settled.trim == pytest.approx(-DRAG * 40.0, abs=1e-6)
    curve = landing_curve(ship)
    assert curve.draft_aft[curve.settled :] == pytest.approx(curve.draft_forward[curve.settled :], abs=1e-6)
