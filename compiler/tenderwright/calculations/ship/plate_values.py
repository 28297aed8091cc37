"""Each plate that is called for renewal, with the working of its forecast."""

from __future__ import annotations

import math

from msgspec import Struct

from tenderwright.calculations.ship.condition_of_shell import given_confidence, given_uncertainty
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.forecast import CALL_NEXT, CALL_NOW, CALLS
from tenderwright.calculations.thickness.plate_forecast import METHOD as PLATE
from tenderwright.calculations.thickness.shell_forecast import PlateCall, ShellCondition
from tenderwright.calculations.value import Given, given
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.quantities.display import show
from tenderwright.quantities.position import FrameTable

_CALLED = (CALLS[CALL_NOW], CALLS[CALL_NEXT])
_YEAR = 365.25 * 86400.0


class CalledPlate(Struct, frozen=True, eq=False):
    """A plate that is called for renewal, with the reading that decides it."""

    call: PlateCall
    place: int
    """Of the reading, among the places of the forecast."""
    row: int
    """Of the reading, among all."""


@step()
def called_plates(shell_forecast: ShellCondition) -> dict[str, CalledPlate]:
    """Give the plates called for renewal."""
    found, plates = shell_forecast.analysis, {}
    for call in shell_forecast.calls:
        if call.call in _CALLED:
            place = int(found.governing[call.row])
            plates[call.name.lower().replace(" ", "-")] = CalledPlate(call, place, int(found.places.row[place]))
    return plates


@step_of(PLATE, "plate.{}", each="called_plates")
def plate_forecasts(
    of: CalledPlate, condition: ShipCondition, frames: FrameTable, shell_forecast: ShellCondition
) -> Uses:
    """Carry the reading that decides about a plate on to the dockings ahead."""
    readings, places, outlook = shell_forecast.readings, shell_forecast.analysis.places, shell_forecast.outlook
    zone = int(shell_forecast.zone[of.row])
    years = outlook.docking - float(readings.year[of.row])
    allowable = float(shell_forecast.allowable[of.row])
    as_built, least = float(readings.as_built[of.row]), float(readings.measured[of.row])
    inputs = {
        "as_built": Given(as_built, show(as_built, "thickness"), "from the surveys"),
        "least": Given(least, show(least, "thickness"), "shell.survey.latest"),
        "allowable": Given(allowable, f"{allowable:.0%}", condition.zones[zone].allowable.at),
        "to_docking": Given(years * _YEAR, f"{years:.2f} yr", "shell.plates.gauged"),
        "interval": given(condition.next_docking),
        "uncertainty": given_uncertainty(condition),
        "confidence": given_confidence(condition),
    }
    name = condition.zones[zone].zone
    common = shell_forecast.analysis.zones[zone]
    if not math.isnan(own := float(places.own[of.place])):
        about = float(places.own_uncertainty[of.place])
        inputs["own"] = Given(own / _YEAR, show(own / _YEAR, "rate of loss"), "from the surveys, least squares")
        inputs["own_uncertainty"] = Given(
            about / _YEAR, show(about / _YEAR, "rate of loss"), "from the surveys, scatter"
        )
    if common.neighbours.places:
        mean = common.neighbours
        inputs["neighbours"] = Given(
            {
                "rate": mean.rate / _YEAR,
                "uncertainty": mean.uncertainty / _YEAR,
                "spread": mean.spread / _YEAR,
                "places": mean.places,
            },
            f"{mean.places} frame spaces: {show(mean.rate / _YEAR, 'rate of loss')}, spread "
            f"{show(mean.spread / _YEAR, 'rate of loss')}",
            f"shell.zone.{name}.rate",
        )
        inputs["shared"] = Given(
            common.shared / _YEAR, show(common.shared / _YEAR, "rate of loss"), "gauge_uncertainty"
        )
    elif places.since_built[of.place]:
        rate, about = float(places.rate[of.place]), float(places.uncertainty[of.place])
        inputs["own"] = Given(
            rate / _YEAR, f"{show(rate / _YEAR, 'rate of loss')} since she was built", "vessel/particulars.yaml"
        )
        inputs["own_uncertainty"] = Given(about / _YEAR, show(about / _YEAR, "rate of loss"), "gauge_uncertainty")
    return Uses(f"plate {of.call.name}, {frames.label(float(readings.x[of.row]))}", inputs, condition.here)
