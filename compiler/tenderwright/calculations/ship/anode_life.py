"""Anodes by the day on which they were fitted: what was left of them, and how long they last."""

from __future__ import annotations

from datetime import date

from msgspec import Struct

from tenderwright.calculations.anodes.life import METHOD as LIFE
from tenderwright.calculations.anodes.mean_current import METHOD as MEAN_CURRENT
from tenderwright.calculations.ship.anodes import one_alloy
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.readings import year_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.anode_duty import AnodeDuty, AnodeLot
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.tender import Tender
from tenderwright.model.vessel import Anode

_YEAR = 365.25 * 86400.0
_LIFE = {
    name: name.replace("_", "-") for name in ("rate", "wasted", "left_to_use", "whole_life", "at_next", "decision")
}


class FittedLot(Struct, frozen=True):
    """Anodes fitted new on one day, those of them that were looked at on the last day on which any was."""

    lot: AnodeLot
    seen: tuple[Anode, ...]
    on: date | None
    """The day on which they were seen; None where none ever was."""

    @property
    def years(self) -> float:
        """Give the time from when they were fitted to when they were seen, in years."""
        return year_of(str(self.on)) - year_of(str(self.lot.on))

    @property
    def left(self) -> float:
        """Give the fraction left of them, on the mean."""
        return sum(anode.left.si for anode in self.seen if anode.left) / len(self.seen)

    @property
    def least_left(self) -> float:
        """Give the fraction left of the one that wasted most."""
        return min(anode.left.si for anode in self.seen if anode.left)


@step()
def anode_lots(anode_duty: AnodeDuty, listed_anodes: tuple[Anode, ...]) -> dict[str, FittedLot]:
    """Give the anodes of each lot."""
    named = {anode.anode: anode for anode in listed_anodes}
    lots = {}
    for number, lot in enumerate(anode_duty.fitted, start=1):
        anodes = [named[name.name] for name in lot.anodes if name.name in named]
        days = [anode.seen for anode in anodes if anode.left is not None and anode.seen is not None]
        last = max(days, default=None)
        seen = tuple(anode for anode in anodes if anode.left is not None and anode.seen == last) if last else ()
        lots[f"lot-{number}"] = FittedLot(lot, seen, last)
    return lots


@step_of(LIFE, "anodes.{}", names=_LIFE, each="anode_lots")
def lot_life(fitted: FittedLot, anode_duty: AnodeDuty, condition: ShipCondition, tender: Tender) -> Uses | Absent:
    """Find how long the anodes of a lot last."""
    if not fitted.seen:
        return _not_seen(fitted)
    docking = tender.programme.docking
    next_docking = year_of(str(docking)) + condition.next_docking.si / _YEAR
    to_next = next_docking - year_of(str(fitted.on))
    look = {"time": fitted.years * _YEAR, "left": fitted.left}
    words = f"{fitted.left:.0%} on the mean after {fitted.years:.2f} yr: {_names(fitted)}"
    inputs = {
        "found": Given([look], words, fitted.seen[0].here),
        "utilisation": given(anode_duty.utilisation),
        "to_next": Given(
            to_next * _YEAR,
            f"{to_next:.2f} yr, from {fitted.on} to {condition.next_docking} after the docking of {docking}",
            condition.next_docking.at,
        ),
    }
    return Uses(f"anodes fitted {fitted.lot.on}", inputs, fitted.lot.here)


@step_of(MEAN_CURRENT, "anodes.{}", names={"current": "mean-current"}, each="anode_lots")
def lot_current(fitted: FittedLot, anode_duty: AnodeDuty) -> Uses | Absent:
    """Find the mean current that the anodes of a lot gave."""
    if not fitted.seen:
        return _not_seen(fitted)
    alloy = one_alloy(fitted.seen)
    if isinstance(alloy, Absent):
        return alloy
    mass = sum(anode.mass.si for anode in fitted.seen)
    inputs = {
        "left": Given(fitted.left, f"{fitted.left:.0%} on the mean, seen {fitted.on}", fitted.seen[0].here),
        "mass": Given(mass, f"{mass:.1f} kg: {_names(fitted)}", fitted.seen[0].here),
        "capacity": Given(anode_duty.capacity, f"{anode_duty.capacity:g} A h/kg, {anode_duty.source}", anode_duty.here),
        "time": Given(fitted.years * _YEAR, f"{fitted.years:.2f} yr", fitted.lot.here),
    }
    return Uses(f"anodes fitted {fitted.lot.on}", inputs, fitted.lot.here)


def _not_seen(fitted: FittedLot) -> Lacking:
    return Lacking(f"it needs `left` and `seen` of the anodes fitted {fitted.lot.on} in vessel/anodes.yaml")


def _names(fitted: FittedLot) -> str:
    return ", ".join(anode.anode for anode in fitted.seen)
