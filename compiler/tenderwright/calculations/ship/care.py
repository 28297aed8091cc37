"""What was read between dockings: potentials, what the spaces make of water, air that is too damp, and alarms."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, timedelta

from msgspec import Struct

from tenderwright.calculations.care.potentials import METHOD as POTENTIALS
from tenderwright.calculations.care.potentials import PROTECTED
from tenderwright.calculations.care.reference_cell import USUAL_TEMPERATURE, on_silver
from tenderwright.calculations.care.trend import LEAST
from tenderwright.calculations.care.trend import METHOD as TREND
from tenderwright.calculations.ship.timber import of_wood
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given
from tenderwright.model.care import CarePlan
from tenderwright.model.care_readings import CareReading
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.quantities.display import show

NO_READINGS = "there are no readings under care/"
DAMP = 0.50
"""Relative humidity that dry spaces are kept under (common practice, no source)."""
DAMP_DAYS = 14
ALARM_DAYS = 100
"""A test every quarter of a year, and a week's grace: MIL-HDBK-1130, 3.3.16.3 asks for a quarterly test."""
_HOUR = 3600.0


class Series(Struct, frozen=True):
    """Readings of one place, since something was last done there, in order of time."""

    place: str
    readings: tuple[CareReading, ...]
    values: tuple[float, ...]
    limit: float
    limit_source: str

    @property
    def here(self) -> Place:
        """Give the place of the last reading."""
        return self.readings[-1].here

    @property
    def days(self) -> list[str]:
        """Give the days of the readings."""
        return [str(one.day) for one in self.readings]


def identifier(place: str) -> str:
    """Give the name of a place as part of the name of a value."""
    return "-".join(re.findall("[a-z0-9]+", place.lower())) or "place"


def since_action(readings: Iterable[CareReading], kinds: tuple[str, ...]) -> dict[str, list[CareReading]]:
    """Give the readings of some kinds by place, each since the last action recorded there, in order of time."""
    found: dict[str, list[CareReading]] = {}
    for one in readings:
        if one.kind == "action":
            found.pop(one.place, None)
        elif one.kind in kinds:
            found.setdefault(one.place, []).append(one)
    return found


@step()
def last_recorded(care_readings: tuple[CareReading, ...]) -> date | Absent:
    """Give the last day recorded: readings are judged as of it, whatever day it is."""
    return care_readings[-1].day if care_readings else NotAsked(NO_READINGS)


@step_of(POTENTIALS, "care.potentials")
def hull_potentials(package: Package) -> Uses | Absent:
    """Judge the potentials as last read."""
    read = [one for one in package.care_readings if one.kind == "potential"]
    if not read:
        return NotAsked("care/ has no readings of kind `potential`")
    rows = [
        {"day": str(one.day), "place": one.place, "reading": one.si, "cell": one.method}
        | ({"salinity": one.salinity} if one.salinity is not None else {})
        | ({"temperature": one.temperature} if one.temperature is not None else {})
        for one in read
    ]
    wooden = of_wood(package.particulars)
    inputs = {
        "readings": Given(rows, f"{len(rows)} readings of potentials", read[-1].here.path),
        "metal": Given("wood" if wooden else "steel", "wood" if wooden else "steel or iron", "vessel/particulars.yaml"),
    }
    return Uses("the hull as last read", inputs, read[-1].here)


@step()
def potential_series(package: Package) -> dict[str, Series] | Absent:
    """Give the potentials of each place against silver in sea water; nothing for a hull of wood."""
    found = since_action(package.care_readings, ("potential",))
    if not found:
        return NotAsked("care/ has no readings of kind `potential`")
    if of_wood(package.particulars):
        return {}
    return {identifier(place): _potentials(place, of) for place, of in found.items()}


def _potentials(place: str, readings: list[CareReading]) -> Series:
    values = tuple(
        on_silver(
            one.si or 0.0,
            one.method,
            one.salinity,
            USUAL_TEMPERATURE if one.temperature is None else one.temperature,
        ).potential
        for one in readings
    )
    return Series(place, tuple(readings), values, PROTECTED, "EN 16222 (from memory)")


@step_of(TREND, "care.potential.{}", each="potential_series")
def potential_trend(series: Series) -> Uses | Absent:
    """Draw the trend of the potential at a place."""
    if len(series.values) < LEAST or len(set(series.days)) < 2:
        return NotAsked(f"a trend needs {LEAST} readings")
    return _trend(series, "potential", growth=False)


@step()
def leak_series(package: Package) -> dict[str, Series] | Absent:
    """Give what each space makes of water in a day, in m3, by leaks and by the hours of its pump."""
    plan = package.care
    rates = {one.place: one.in_an_hour.si for one in plan.pumps} if plan is not None else {}
    found = {}
    for place, readings in since_action(package.care_readings, ("leak", "pump")).items():
        used = [(one, _made(one, rates.get(place))) for one in readings]
        known = [(one, made) for one, made in used if made is not None]
        if known:
            values = tuple(made for _, made in known)
            limit, source = _limit(plan, place, values)
            found[identifier(place)] = Series(place, tuple(one for one, _ in known), values, limit, source)
    return found or NotAsked("care/ has no readings of kind `leak`, nor `pump` with `pumps` in care/plan.yaml")


def _made(one: CareReading, rate: float | None) -> float | None:
    if one.kind == "leak" or one.si is None:
        return one.si
    return None if rate is None else one.si / _HOUR * rate


def _limit(plan: CarePlan | None, place: str, values: tuple[float, ...]) -> tuple[float, str]:
    given = next((one for one in plan.leaks if one.place == place), None) if plan is not None else None
    if given is not None:
        return given.in_a_day.si, given.source
    first = values[:3]
    return 2.0 * sum(first) / len(first), "twice what it was at first (common practice, no source)"


@step_of(TREND, "care.leak.{}", each="leak_series")
def leak_trend(series: Series) -> Uses | Absent:
    """Draw the trend of what a space makes of water."""
    if len(series.values) < LEAST or len(set(series.days)) < 2:
        return NotAsked(f"a trend needs {LEAST} readings since something was last done there")
    if series.limit <= 0:
        return NotAsked("it has made no water yet")
    return _trend(series, "paint", growth=min(series.values) > 0)


def _trend(series: Series, purpose: str, *, growth: bool) -> Uses:
    shown = ", ".join(show(value, purpose, digits=2) for value in series.values[-3:])
    file = series.here.path
    inputs = {
        "days": Given(series.days, f"{len(series.values)} days, the last {series.days[-1]}", file),
        "values": Given(list(series.values), f"the last {shown}", file),
        "limit": Given(series.limit, show(series.limit, purpose, digits=2), series.limit_source),
    }
    if growth:
        inputs["growth"] = Given(True, "growing in proportion", "derived")
    return Uses(series.place, inputs, series.here, series.place)


class TooDamp(Struct, frozen=True):
    """Air over the limit from one day to another, with nothing done about it since."""

    place: str
    first: date
    last: date
    highest: float
    here: Place

    @property
    def days(self) -> int:
        """Give how long it lasted."""
        return (self.last - self.first).days


@step()
def damp_spaces(package: Package) -> tuple[TooDamp, ...] | Absent:
    """Give the spaces whose air was over the limit for two weeks and still is."""
    found = since_action(package.care_readings, ("humidity",))
    if not any(one.kind == "humidity" for one in package.care_readings):
        return NotAsked("care/ has no readings of kind `humidity`")
    damp = []
    for place, readings in found.items():
        run = []
        for one in reversed(readings):
            if one.si is None or one.si <= DAMP:
                break
            run.append(one)
        if run and run[0].day - run[-1].day >= timedelta(days=DAMP_DAYS):
            highest = max(one.si or 0.0 for one in run)
            damp.append(TooDamp(place, run[-1].day, run[0].day, highest, run[0].here))
    return tuple(damp)


class AlarmTested(Struct, frozen=True):
    """An alarm with its last test."""

    place: str
    last: date
    fault: bool
    age: int
    """Days from it to the last day recorded."""
    here: Place

    @property
    def good(self) -> bool:
        """Tell whether it worked, and lately enough."""
        return not self.fault and self.age <= ALARM_DAYS


@step()
def alarms_tested(package: Package, last_recorded: date) -> tuple[AlarmTested, ...] | Absent:
    """Give each alarm with its last test."""
    last = {one.place: one for one in package.care_readings if one.kind == "alarm"}
    if not last:
        return NotAsked("care/ has no readings of kind `alarm`")
    return tuple(
        AlarmTested(place, one.day, one.fault, (last_recorded - one.day).days, one.here) for place, one in last.items()
    )
