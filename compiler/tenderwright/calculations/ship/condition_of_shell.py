"""The condition of the shell: what the surveys found plate by plate, and what lies ahead."""

from __future__ import annotations

from collections.abc import Collection
from itertools import count
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.shell_plan import BY_FRAMES
from tenderwright.calculations.ship.survey_readings import SurveyReadings
from tenderwright.calculations.steel.regime import Regime
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, Resting
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.analysis import CONFIDENCE
from tenderwright.calculations.thickness.columns import Flags
from tenderwright.calculations.thickness.named_plates import NamedPlates
from tenderwright.calculations.thickness.named_readings import SIDES, NamedReadings
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY
from tenderwright.calculations.thickness.readings import Readings, year_of
from tenderwright.calculations.thickness.shell_forecast import METHOD as CALLED
from tenderwright.calculations.thickness.shell_survey import METHOD as SURVEYED
from tenderwright.calculations.thickness.shell_survey import Surveyed, zone_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.found import SteelRenewed
from tenderwright.model.history import EarlierDocking
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.tender import Programme
from tenderwright.quantities.display import plainly
from tenderwright.quantities.position import FrameTable

PLATE = ("plate", "insert")
"""What takes the place of the plate that was gauged; a doubler lies over it."""
_AS_FITTED = 0.0001
"""How far the thickness that a reading counts from may be from that of the steel fitted, m."""


class ShellReadings(Struct, frozen=True, eq=False):
    """Readings of the plate that she has now: those of plate renewed since are left out."""

    plate: NamedReadings
    pits: NamedReadings


@step()
def shell_readings(
    survey_readings: SurveyReadings,
    shell_plates: NamedPlates,
    frames: FrameTable,
    condition: ShipCondition,
    history: tuple[EarlierDocking, ...],
) -> ShellReadings | Absent:
    """Give the readings of the shell as she is, each in a zone."""
    if not condition.zones:
        return Lacking("it needs `zones` in vessel/condition.yaml")
    names = shell_plates.strakes
    plate, pits = (
        NamedReadings(_standing(readings, names, condition, history), names)
        for readings in (survey_readings.plate, survey_readings.pits)
    )
    if not len(survey_readings.plate):
        if survey_readings.notices:
            return Resting("no reading of shell plate can be used")
        return Lacking("it needs readings of shell plate under surveys/")
    outside = np.flatnonzero(zone_of(plate, given_zones(condition).si) < 0)
    if outside.size:
        row = int(outside[0])
        where = f"strake {names[int(plate.readings.strake[row])]}, {frames.label(float(plate.readings.x[row]))}"
        raise OutOfRange(f"a reading at {where} lies in no zone of vessel/condition.yaml")
    return ShellReadings(plate, pits)


def _standing(
    readings: Readings, strakes: tuple[str, ...], condition: ShipCondition, history: tuple[EarlierDocking, ...]
) -> Readings:
    """Leave out the readings of plate that was renewed since, by the condition or at an earlier docking."""
    gone = np.zeros(len(readings), np.bool_)
    for old in condition.renewed:
        where = within(readings, strakes, old.strake.name, old.side, old.from_.x, old.to.x)
        gone |= where & (readings.year < year_of(str(old.on)))
    for docking in history:
        for new in docking.renewed:
            if new.strake is not None and new.from_ is not None and new.to is not None and new.what in PLATE:
                where = within(readings, strakes, new.strake.name, new.side, new.from_.x, new.to.x)
                gone |= where & before_renewal(readings, docking, new)
    return readings.only(~gone) if gone.any() else readings


def before_renewal(readings: Readings, docking: EarlierDocking, new: SteelRenewed) -> Flags:
    """Mark the readings of steel that a docking took out: older ones, and those in dock that count from other steel."""
    older: Flags = readings.year < year_of(str(docking.docked))
    in_dock: Flags = ~older & (readings.year <= year_of(str(docking.undocked)))
    if new.thickness is not None:
        in_dock &= np.abs(readings.as_built - new.thickness.si) > _AS_FITTED
    return older | in_dock


def within(readings: Readings, strakes: tuple[str, ...], strake: str, side: str, aft: float, forward: float) -> Flags:
    """Mark the readings of a stretch of a strake; of both sides where the side is neither."""
    index = strakes.index(strake) if strake in strakes else -1
    on: Flags = (readings.strake == index) & (readings.x >= aft) & (readings.x <= forward)
    if side in SIDES:
        on &= readings.side == SIDES.index(side)
    return on


def given_zones(condition: ShipCondition) -> Given:
    """Give the zones with their limits as an input."""
    zones = []
    for zone in condition.zones:
        one: dict[str, Any] = {"zone": zone.zone, "strakes": [strake.name for strake in zone.strakes]}
        if zone.from_ is not None:
            one["from"] = zone.from_.x
        if zone.to is not None:
            one["to"] = zone.to.x
        zones.append({**one, "allowable": zone.allowable.si})
    words = f"{len(zones)} zone{'s' if len(zones) > 1 else ''} with their limits"
    return Given(zones, words, condition.zones[0].here)


@step_of(SURVEYED, "shell.survey")
def shell_survey(
    package: Package,
    shell_readings: ShellReadings,
    shell_plates: NamedPlates,
    condition: ShipCondition,
    strake_regimes: Each[Regime],
) -> Uses:
    """Set the readings of the shell against the limits of their zones."""
    plate = shell_readings.plate
    files = ", ".join(survey.here.path for survey in package.surveys)
    strakes = package.strakes
    inputs = {
        "readings": Given(plate, f"{len(plate.readings)} readings by strake, frame and side", files),
        "plates": Given(shell_plates, f"plates of {len(strakes)} strakes between butts", strakes[0].here),
        "zones": given_zones(condition),
    }
    if limits := [(name.upper(), one.allowable) for name, one in strake_regimes.items() if one.allowable is not None]:
        materials = [{"strake": name, "allowable": allowable} for name, allowable in limits]
        words = ", ".join(f"{name}: {allowable:.0%}" for name, allowable in limits)
        origin = ", ".join(f"shell.material.{name.lower()}.allowable" for name, _ in limits)
        inputs["materials"] = Given(materials, words, origin)
    return Uses("the shell as last gauged", inputs, condition.here)


@step_of(CALLED, "shell.plates")
def shell_forecast(
    shell_survey: Surveyed,
    condition: ShipCondition,
    programme: Programme,
    frames: FrameTable,
    particulars: Particulars | None,
) -> Uses | Absent:
    """Call the plates of the shell by what lies ahead of them."""
    if not frames.numbers:
        return Lacking(BY_FRAMES)
    inputs = {
        "survey": Given(shell_survey, f"{len(shell_survey.named.readings)} readings", "shell.survey.readings"),
        "frames": Given(list(frames.distances), f"{len(frames.distances)} frames", "vessel/frames.yaml"),
        **given_outlook(condition, programme, particulars),
    }
    return Uses("plates between butts, both sides", inputs, condition.here)


def given_outlook(condition: ShipCondition, programme: Programme, particulars: Particulars | None) -> dict[str, Given]:
    """Give the dockings ahead, what a survey is sure to, and when she was built, as inputs."""
    inputs = {
        "docking": Given(str(programme.docking), str(programme.docking), programme.here),
        "interval": given(condition.next_docking),
        "uncertainty": given_uncertainty(condition),
        "confidence": given_confidence(condition),
    }
    if particulars is not None and particulars.built is not None:
        inputs["built"] = Given(particulars.built, str(particulars.built), particulars.here)
    return inputs


def unused_name(name: str, taken: Collection[str]) -> str:
    """Give the name, with a number after it where another thing has it."""
    names = (f"{name}-{number}" for number in count(2))
    return name if name not in taken else next(one for one in names if one not in taken)


def given_uncertainty(condition: ShipCondition) -> Given:
    """Give the uncertainty of a survey's mean thickness as an input."""
    if condition.gauge_uncertainty is not None:
        return given(condition.gauge_uncertainty)
    return Given(READING_UNCERTAINTY, plainly(READING_UNCERTAINTY, "thickness"), "common practice, no source")


def given_confidence(condition: ShipCondition) -> Given:
    """Give the confidence of what is forecast as an input."""
    if condition.confidence is not None:
        return given(condition.confidence)
    return Given(CONFIDENCE, f"{CONFIDENCE:.0%}", "common practice, no source")
