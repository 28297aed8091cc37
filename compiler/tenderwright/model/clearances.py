"""Clearances of shaft, bearings and rudder with every look at them: those listed, and those of earlier dockings."""

from __future__ import annotations

from msgspec.structs import replace

from tenderwright.model.history import EarlierDocking
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import Clearance, Measured


def clearances_of(package: Package) -> tuple[Clearance, ...]:
    """Give the clearances, oldest look first; a docking tells of one where it names it in the same words."""
    listed = package.condition.clearances if package.condition is not None else ()
    return tuple(_with_history(one, package.history) for one in listed)


def _with_history(one: Clearance, history: tuple[EarlierDocking, ...]) -> Clearance:
    looks = {look.on: look for look in one.found}
    for docking in history:
        for taken in docking.clearances:
            if taken.where.casefold() == one.what.casefold():
                looks.setdefault(docking.docked, Measured(on=docking.docked, clearance=taken.found, here=docking.here))
                if taken.left is not None:
                    left = Measured(on=docking.undocked, clearance=taken.left, here=docking.here)
                    looks.setdefault(docking.undocked, left)
    return replace(one, found=tuple(looks[on] for on in sorted(looks)))
