"""Anodes one by one: what was left of each, how long a new one lasts there, and what they gave of what is reckoned."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.anodes.each import METHOD as EACH
from tenderwright.calculations.anodes.each import EachAnode
from tenderwright.calculations.anodes.reconciled import METHOD as RECONCILED
from tenderwright.calculations.ship.anodes import one_alloy
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.readings import year_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.history import EarlierDocking
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.tender import Programme
from tenderwright.model.vessel import Anode
from tenderwright.quantities.quantity import Quantity

_YEAR = 365.25 * 86400.0
_EACH = {"to_renew": "to-renew", "fastest": "fastest", "shortest_life": "shortest-life", "current": "current-given"}


class SeenAnode(Struct, frozen=True):
    """An anode with the days on which it was fitted new and last seen."""

    anode: Anode
    fitted: date
    seen: date
    left: float
    renewed: date | None = None
    """Day on which a new one was fitted in its place, as it was seen."""

    @property
    def years(self) -> float:
        """Give the time from when it was fitted to when it was seen, in years."""
        return year_of(str(self.seen)) - year_of(str(self.fitted))


class SeenAnodes(Struct, frozen=True):
    """The anodes of which something is known, and those of which nothing is."""

    seen: tuple[SeenAnode, ...]
    not_seen: tuple[str, ...]


@step()
def seen_anodes(
    anode_duty: AnodeDuty, listed_anodes: tuple[Anode, ...], history: tuple[EarlierDocking, ...]
) -> SeenAnodes | Absent:
    """Give each anode with when it was fitted and last seen, in the list or at an earlier docking."""
    fitted = {name.name: lot.on for lot in anode_duty.fitted for name in lot.anodes}
    seen, not_seen = [], []
    for anode in listed_anodes:
        found = _last_seen(anode, fitted.get(anode.anode), history)
        if found is not None:
            seen.append(found)
        else:
            not_seen.append(anode.anode)
    if not seen:
        return Lacking("it needs `left` and `seen` of the anodes in vessel/anodes.yaml, and `fitted` under `anodes`")
    return SeenAnodes(tuple(seen), tuple(not_seen))


def _last_seen(anode: Anode, fitted: date | None, history: tuple[EarlierDocking, ...]) -> SeenAnode | None:
    """Give what was last seen of an anode; one renewed at a docking is told by the old one until it is seen."""
    found: SeenAnode | None = None
    for docking in sorted(history, key=lambda one: one.docked):
        for look in docking.anodes:
            if look.anode is None or look.anode.name != anode.anode:
                continue
            left = look.left.si if look.left is not None else _share(look.left_mass, anode)
            if fitted is not None and left is not None and fitted < docking.docked:
                found = SeenAnode(anode, fitted, docking.docked, left)
            if look.fitted is not None and (fitted is None or fitted < docking.undocked):
                fitted = docking.undocked
                found = replace(found, renewed=fitted) if found is not None and found.seen == docking.docked else None
    if anode.left is None or anode.seen is None or fitted is None or fitted >= anode.seen:
        return found
    if found is not None and found.seen > anode.seen:
        return found
    return SeenAnode(anode, fitted, anode.seen, anode.left.si)


def _share(left: Quantity | None, anode: Anode) -> float | None:
    return min(left.si / anode.mass.si, 1.0) if left is not None else None


@step_of(EACH, "anodes", names=_EACH)
def each_anode(
    seen_anodes: SeenAnodes, anode_duty: AnodeDuty, condition: ShipCondition, programme: Programme
) -> Uses | Absent:
    """Find how each anode wastes and how long a new one lasts in its place."""
    alloy = one_alloy(tuple(one.anode for one in seen_anodes.seen))
    if isinstance(alloy, Absent):
        return alloy
    next_docking = year_of(str(programme.docking)) + condition.next_docking.si / _YEAR
    rows: list[dict[str, Any]] = [
        {
            "name": one.anode.anode,
            "mass": one.anode.mass.si,
            "left": one.left,
            "time": one.years * _YEAR,
            "to_next": (next_docking - year_of(str(one.renewed or one.seen))) * _YEAR,
            **({"renewed": True} if one.renewed is not None else {}),
        }
        for one in seen_anodes.seen
    ]
    inputs = {
        "anodes": Given(rows, f"{len(rows)} anodes, each as last seen", seen_anodes.seen[0].anode.here),
        "utilisation": given(anode_duty.utilisation),
        "capacity": Given(anode_duty.capacity, f"{anode_duty.capacity:g} A h/kg, {anode_duty.source}", anode_duty.here),
    }
    return Uses(f"each anode, {condition.next_docking} after the docking planned", inputs, anode_duty.here)


@step_of(RECONCILED, "anodes", names={"share": "given-of-reckoned"})
def anodes_reconciled(each_anode: EachAnode, anode_demand: Mapping[str, Any], anode_duty: AnodeDuty) -> Uses:
    """Set what the anodes gave beside what the surfaces are reckoned to ask."""
    spent = sum(one.life.wasted > anode_duty.utilisation.si for one in each_anode.anodes)
    demand = anode_demand["mean"]
    inputs = {
        "measured": Given(each_anode.current, f"{each_anode.current:.2f} A", "anodes.current-given"),
        "demand": Given(demand, f"{demand:.2f} A", "anodes.current-mean"),
        "spent": Given(spent, f"{spent} of {len(each_anode.anodes)}", "anodes.current-given"),
    }
    return Uses("what the anodes gave, beside what is calculated", inputs, anode_duty.here)
