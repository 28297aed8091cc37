"""Rivets of earlier dockings that are not as built, as the papers tell of them."""

from __future__ import annotations

from tenderwright.calculations.renewal.known_rivets import METHOD as KNOWN_RIVETS
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.value import Given
from tenderwright.model.ship_condition import ShipCondition


@step_of(KNOWN_RIVETS, "shell.rivets", names={"cold": "driven-cold", "ring_welded": "ring-welded", "bolts": "bolts"})
def known_rivets(condition: ShipCondition) -> Uses | Absent:
    """Count them."""
    if not condition.rivets:
        return NotAsked("vessel/condition.yaml names no rivets of earlier dockings")
    rivets = [{"how": one.how, "number": one.number} for one in condition.rivets]
    words = "; ".join(f"{one.number} {one.how}, {one.source}" for one in condition.rivets)
    return Uses("rivets of the shell", {"rivets": Given(rivets, words, condition.rivets[0].here)}, condition.here)
