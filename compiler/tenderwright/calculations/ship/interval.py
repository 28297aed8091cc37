"""The years to the next docking: beside those that she went before, and what they do to steel, anodes and coating."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.anodes.breakdown import coating_breakdown
from tenderwright.calculations.anodes.each import EachAnode
from tenderwright.calculations.schedule.interval import METHOD as INTERVAL
from tenderwright.calculations.ship.condition_of_shell import given_outlook
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.forecast import CALL_NEXT, CALL_NOW, CALLS
from tenderwright.calculations.thickness.shell_forecast import call_plates
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.value import Given, given
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.history import EarlierDocking
from tenderwright.model.particulars import Particulars
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.tender import Programme
from tenderwright.quantities.position import FrameTable

_YEAR = 365.25 * 86400.0
YEARS = (5, 10, 15, 20)


@step_of(INTERVAL, "interval")
def docking_interval(
    history: tuple[EarlierDocking, ...], programme: Programme, condition: ShipCondition
) -> Uses | Absent:
    """Set the time to the next docking beside those that she went before."""
    if not history:
        return Lacking("it needs an earlier docking under history/")
    planned = programme.docking
    days = [str(one.docked) for one in history if one.docked < planned]
    if not days:
        return Lacking("it needs a docking under history/ before the one planned")
    inputs = {
        "dockings": Given(days, ", ".join(days), ", ".join(one.here.path for one in history)),
        "planned": Given(str(planned), str(planned), programme.here),
        "interval": given(condition.next_docking),
    }
    return Uses("from docking to docking", inputs, condition.next_docking.at)


class After(Struct, frozen=True):
    """Her state some years after the docking, with nothing done between."""

    years: int
    plates: tuple[str, ...] | None
    """Plates that are not renewed now and will have passed their limit; None where nothing is forecast."""
    anodes_spent: int | None
    """New anodes that will be used up; None where nothing is known of how they waste."""
    bare: tuple[tuple[str, float], ...]
    """Each coated surface with the share of it that acts as bare."""


@step(lazy=True)
def years_ahead(
    shell_survey: Surveyed | None,
    condition: ShipCondition,
    programme: Programme,
    frames: FrameTable | None,
    particulars: Particulars | None,
    each_anode: EachAnode | None,
    anode_duty: AnodeDuty | None,
) -> tuple[After, ...] | Absent:
    """Look five, ten, fifteen and twenty years ahead."""
    if particulars is not None and particulars.hull is not None and not particulars.hull.of_metal:
        return NotAsked("her hull is not of metal")
    if shell_survey is None and each_anode is None and anode_duty is None:
        return Lacking("it needs readings under surveys/, or `anodes` in vessel/condition.yaml")
    if frames is None or not frames.numbers:
        shell_survey = None
    outlook = {name: one.si for name, one in given_outlook(condition, programme, particulars).items()}

    def called(interval: float, *calls: int) -> set[str]:
        if shell_survey is None or frames is None:
            return set()
        ahead = call_plates(shell_survey, frames.distances, **outlook | {"interval": interval})
        return {one.name for one in ahead.calls if one.call in [CALLS[call] for call in calls]}

    now = called(condition.next_docking.si, CALL_NOW, CALL_NEXT)
    found = []
    for years in YEARS:
        later = called(years * _YEAR, CALL_NOW, CALL_NEXT)
        plates = None if shell_survey is None else tuple(sorted(later - now))
        lives = [one.life.whole_life for one in each_anode.anodes] if each_anode is not None else None
        spent = None if lives is None else sum(life is not None and life < years for life in lives)
        coated = [one for one in anode_duty.surfaces if one.a is not None] if anode_duty is not None else []
        bare = tuple((one.name, coating_breakdown(one.a or 0.0, one.b or 0.0, years).final) for one in coated)
        found.append(After(years, plates, spent, bare))
    return tuple(found)
