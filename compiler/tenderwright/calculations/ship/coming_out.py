"""When she should come out of the water: as she is now, and again after the docking planned."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from typing import Any

from tenderwright.calculations.anodes.first_spent import METHOD as FIRST_SPENT
from tenderwright.calculations.anodes.first_spent import FirstSpent
from tenderwright.calculations.care.coming_out import METHOD as COMING_OUT
from tenderwright.calculations.care.coming_out import Ground, after
from tenderwright.calculations.care.trend import Trend
from tenderwright.calculations.ship.anode_life import SeenAnode, SeenAnodes
from tenderwright.calculations.ship.care import Series
from tenderwright.calculations.ship.condition_of_shell import given_confidence, given_uncertainty
from tenderwright.calculations.steps.outcome import Absent, Each, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.forecast import CALL_NEXT, CALL_NOW, CALLS
from tenderwright.calculations.thickness.reaching_limit import METHOD as REACHING_LIMIT
from tenderwright.calculations.thickness.reaching_limit import ReachingLimit
from tenderwright.calculations.thickness.readings import day_of
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.value import Given, given
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.care import CoatingLife
from tenderwright.model.care_readings import CareReading
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.tender import Programme
from tenderwright.model.uncertain import standard_uncertainty
from tenderwright.quantities.position import FrameTable

_YEAR = 365.25 * 86400.0
NO_PLATES = NotAsked("it needs thickness readings under surveys/, with vessel/condition.yaml and vessel/frames.yaml")
NO_ANODES = NotAsked("it needs `anodes` in vessel/condition.yaml, and what was left of those that divers do not renew")
_NEW = 0.99
"""Of an anode: what is read above it, after less was read, is a new one."""


@step()
def last_docked(package: Package) -> date | Absent:
    """Give the day on which she last floated off the blocks."""
    days = [one.undocked for one in package.history]
    return max(days) if days else NotAsked("it needs an earlier docking under history/")


@step_of(REACHING_LIMIT, "care.plates")
def plates_as_she_is(
    shell_survey: Surveyed | None,
    shell_forecast: ShellCondition | None,
    condition: ShipCondition | None,
    frames: FrameTable | None,
    particulars: Particulars | None,
) -> Uses | Absent:
    """Find the plate that first reaches its limit, with nothing done before."""
    if shell_survey is None or condition is None or frames is None:
        return NO_PLATES
    ahead: Any = shell_forecast
    if ahead is None:
        ahead = {
            "survey": shell_survey,
            "frames": list(frames.distances),
            "docking": day_of(float(shell_survey.named.readings.year.max())),
            "interval": condition.next_docking.si,
            "uncertainty": given_uncertainty(condition).si,
            "confidence": given_confidence(condition).si,
        }
        if particulars is not None and particulars.built is not None:
            ahead["built"] = particulars.built
    inputs = {"forecast": Given(ahead, "the readings of the shell with their rates", "shell.survey.readings")}
    return Uses("with nothing renewed", inputs, condition.here)


@step_of(REACHING_LIMIT, "care.plates-after")
def plates_after(shell_forecast: ShellCondition | None, condition: ShipCondition | None) -> Uses | Absent:
    """Find the plate that first reaches its limit of those that the docking does not renew."""
    if shell_forecast is None or condition is None:
        return NO_PLATES
    renewed = [one.name for one in shell_forecast.calls if one.call in (CALLS[CALL_NOW], CALLS[CALL_NEXT])]
    words = ", ".join(renewed) or "none"
    inputs = {
        "forecast": Given(shell_forecast, "the readings of the shell with their rates", "shell.plates.gauged"),
        "renewed": Given(renewed, words, "shell.plates.now"),
    }
    return Uses("of the plates that stay", inputs, condition.here)


@step()
def anodes_seen_since(
    seen_anodes: SeenAnodes | None, care_readings: tuple[CareReading, ...], anode_duty: AnodeDuty | None
) -> tuple[SeenAnode, ...] | Absent:
    """Give the anodes that divers do not renew, as last seen, readings between dockings included."""
    if seen_anodes is None or anode_duty is None:
        return NO_ANODES
    if anode_duty.renewed_between:
        return NotAsked(f"divers renew them between dockings: {anode_duty.renewed_between}")
    welded = [_seen(one, care_readings) for one in seen_anodes.seen if one.anode.fixing != "bolted"]
    return tuple(welded) or NotAsked("all anodes seen are bolted, and divers renew those")


def _seen(one: SeenAnode, readings: tuple[CareReading, ...]) -> SeenAnode:
    for look in readings:
        if look.kind != "anode" or look.place != one.anode.anode or look.si is None or look.day <= one.seen:
            continue
        if look.si >= _NEW and one.left < _NEW:
            one = SeenAnode(one.anode, one.fitted, one.seen, one.left, look.day)
        else:
            fitted = one.renewed or one.fitted
            if fitted < look.day:
                one = SeenAnode(one.anode, fitted, look.day, look.si)
    return one


def _anodes(seen: tuple[SeenAnode, ...], duty: AnodeDuty, anew: str = "") -> dict[str, Given]:
    rows = []
    for one in seen:
        row: dict[str, Any] = {"name": one.anode.anode, "left": one.left}
        row |= {"fitted": str(one.fitted), "seen": str(one.seen)}
        if fitted := anew or (str(one.renewed) if one.renewed is not None else ""):
            row["anew"] = fitted
        rows.append(row)
    words = f"{len(rows)} anodes, each as last seen"
    return {"anodes": Given(rows, words, seen[0].anode.here), "utilisation": given(duty.utilisation)}


@step_of(FIRST_SPENT, "care.anodes")
def anodes_as_they_are(anodes_seen_since: tuple[SeenAnode, ...] | None, anode_duty: AnodeDuty | None) -> Uses | Absent:
    """Find the anode that is first used up."""
    if anodes_seen_since is None or anode_duty is None:
        return NO_ANODES
    return Uses("as last seen", _anodes(anodes_seen_since, anode_duty), anode_duty.here)


@step_of(FIRST_SPENT, "care.anodes-after")
def anodes_after(
    anodes_seen_since: tuple[SeenAnode, ...] | None, anode_duty: AnodeDuty | None, programme: Programme | None
) -> Uses | Absent:
    """Find the anode that is first used up of new ones fitted at the docking planned."""
    if anodes_seen_since is None or anode_duty is None or programme is None:
        return NO_ANODES
    inputs = _anodes(anodes_seen_since, anode_duty, str(programme.undocking))
    return Uses("of new ones in their places", inputs, anode_duty.here)


@step_of(COMING_OUT, "care.as-she-is")
def coming_out_as_she_is(
    package: Package,
    plates_as_she_is: ReachingLimit | None,
    anodes_as_they_are: FirstSpent | None,
    leak_series: dict[str, Series] | None,
    leak_trend: Each[Trend] | None,
    potential_series: dict[str, Series] | None,
    potential_trend: Each[Trend] | None,
    last_docked: date | None,
    condition: ShipCondition | None,
) -> Uses | Absent:
    """Find when she should come out as she is."""
    planned = package.tender.programme.docking if package.tender and package.tender.programme else None
    if planned is not None and last_docked is not None and planned <= last_docked:
        planned = None
    grounds = [*_plate(plates_as_she_is), *_spent(anodes_as_they_are)]
    grounds += _coats(package, coming=planned is not None)
    grounds += _trends("water in {}", leak_series, leak_trend, "the leak found and stopped")
    trends = _trends(
        "potential at {}", potential_series, potential_trend, "anodes renewed by divers, or the cause found"
    )
    grounds += sorted(trends, key=lambda one: one.early)[:1]
    if planned is None and last_docked is not None and condition is not None:
        due = after(str(last_docked), condition.next_docking.si / _YEAR)
        grounds.append(Ground("the owner's interval since she last docked", due, due, "another interval"))
    if not grounds:
        return NotAsked("it needs a ground: thickness readings, a trend of readings under care/, or anodes")
    return _uses("as she is, with nothing done", grounds, str(planned) if planned is not None else "", package)


@step_of(COMING_OUT, "care.after-docking")
def coming_out_again(
    package: Package,
    programme: Programme | None,
    condition: ShipCondition | None,
    plates_after: ReachingLimit | None,
    anodes_after: FirstSpent | None,
) -> Uses | Absent:
    """Find when she should come out again after the docking planned."""
    if programme is None or condition is None:
        return NotAsked(
            "it needs the days under `programme` in package.yaml, and `next_docking` in vessel/condition.yaml"
        )
    due = after(str(programme.docking), condition.next_docking.si / _YEAR)
    grounds = [
        Ground("the owner's interval", due, due, "another interval, with what it asks of her hull and its protection")
    ]
    grounds += [*_plate(plates_after), *_spent(anodes_after)]
    grounds += _coats(package, programme.undocking, coming=True)
    return _uses("after the docking planned", grounds, due, package)


def _uses(about: str, grounds: list[Ground], planned: str, package: Package) -> Uses:
    rows = [one.as_input() for one in grounds]
    names = ", ".join(one.ground for one in grounds)
    inputs = {"grounds": Given(rows, names, "care.plates.early, care.anodes.early, care/, surveys/")}
    if planned:
        inputs["planned"] = Given(planned, planned, "package.yaml")
    at = package.tender.here if package.tender is not None else package.history[0].here
    return Uses(about, inputs, at)


def _plate(found: ReachingLimit | None) -> Iterator[Ground]:
    if found is not None and found.early:
        moves = "another gauging of its frame space, or its renewal"
        yield Ground(f"plate {found.plate} to its renewal thickness", found.early, found.likely, moves)


def _spent(found: FirstSpent | None) -> Iterator[Ground]:
    if found is not None:
        yield Ground(f"anode {found.anode.upper()} used up", found.early, found.likely, "anodes bolted on by divers")


def _coats(package: Package, anew: date | None = None, *, coming: bool) -> Iterator[Ground]:
    """Yield the days on which coatings have lasted their time.

    Where the docking planned coats a zone, its life is that of the coat to come and does not count before.
    """
    for one in package.care.coatings if package.care is not None else ():
        coats_it = coming and any(scheme.zone.name == one.zone.name for scheme in package.schemes)
        applied = [
            docking.undocked
            for docking in package.history
            for coat in docking.coatings
            if coat.zone.name == one.zone.name
        ]
        if coats_it:
            applied = [anew] if anew is not None else []
        if applied:
            yield _coat(package, one, str(max(applied)))


def _coat(package: Package, one: CoatingLife, applied: str) -> Ground:
    years, u = one.lasts.si / _YEAR, standard_uncertainty(one, "lasts") / _YEAR
    name = next((zone.name for zone in package.zones if zone.zone == one.zone.name), one.zone.name)
    moves = f"a diver's look at the coating, and spots made good ({one.source})"
    early, likely = after(applied, max(0.0, years - 2 * u)), after(applied, years)
    return Ground(f"coating of the {name[:1].lower()}{name[1:]}", early, likely, moves)


def _trends(words: str, series: dict[str, Series] | None, trends: Each[Trend] | None, moves: str) -> Iterator[Ground]:
    for name, trend in (trends or {}).items():
        one = (series or {})[name]
        if trend.early is not None and (trend.sure or not trend.early):
            likely = after(one.days[-1], trend.reaches) if trend.reaches is not None else ""
            yield Ground(words.format(one.place), after(one.days[-1], trend.early), likely, moves)
