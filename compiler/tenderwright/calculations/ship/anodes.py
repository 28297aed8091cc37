"""Anodes fitted: how many, their mass when new, and what they have to do."""

from __future__ import annotations

from tenderwright.calculations.anodes.fitted import METHOD as FITTED
from tenderwright.calculations.steps.outcome import Absent, Lacking, without_file
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.vessel import Anode

_FILE = "vessel/anodes.yaml"


@step()
def listed_anodes(package: Package) -> tuple[Anode, ...] | Absent:
    """Give the anodes fitted, as listed."""
    if _FILE in package.broken.files:
        return without_file(package, _FILE)
    return package.anodes or without_file(package, _FILE)


@step()
def anode_alloy(listed_anodes: tuple[Anode, ...]) -> Given | Absent:
    """Give the one alloy of the anodes fitted; of several, one capacity and one potential would be wrong for some."""
    return one_alloy(listed_anodes)


def one_alloy(anodes: tuple[Anode, ...]) -> Given | Absent:
    """Give the alloy of anodes that are all of one, or that they are not."""
    alloys = sorted({anode.alloy for anode in anodes})
    if len(alloys) > 1:
        return Lacking(f"it needs anodes of one alloy in vessel/anodes.yaml, and they are of {' and '.join(alloys)}")
    return Given(alloys[0], alloys[0], anodes[0].here)


@step_of(FITTED, "anodes")
def fitted_anodes(listed_anodes: tuple[Anode, ...]) -> Uses:
    """Count the anodes fitted, and sum their mass."""
    anodes = listed_anodes
    words = f"{len(anodes)} anodes, {', '.join(sorted({str(anode.mass) for anode in anodes}))}"
    inputs = {"masses": Given([anode.mass.si for anode in anodes], words, anodes[0].here)}
    return Uses("anodes fitted", inputs, anodes[0].here)


@step()
def anode_duty(condition: ShipCondition | None) -> AnodeDuty | Absent:
    """Give what the anodes have to do."""
    if condition is None or condition.anodes is None:
        return Lacking("it needs `anodes` in vessel/condition.yaml")
    return condition.anodes
