"""Each plate that is called for renewal, with the working of its forecast."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from tenderwright.calculations.ship.condition_of_shell import given_docking, given_outlook
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.named_readings import NamedReadings
from tenderwright.calculations.thickness.plate_forecast import METHOD as PLATE
from tenderwright.calculations.thickness.shell_forecast import PlateCall, ShellCondition
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.value import Given
from tenderwright.model.particulars import Particulars
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.tender import Tender
from tenderwright.quantities.position import FrameTable

_CALLED = ("renew now", "renew at the next docking")


class CalledPlate(Struct, frozen=True, eq=False):
    """A plate that is called for renewal, with its readings by all surveys."""

    call: PlateCall
    named: NamedReadings
    allowable: float
    """The strictest of the limits that hold on it."""
    latest: int
    """Readings of the latest survey."""


@step()
def called_plates(shell_survey: Surveyed, shell_forecast: ShellCondition) -> dict[str, CalledPlate]:
    """Give the plates called for renewal now or at the next docking."""
    found, named = shell_forecast.analysis, shell_survey.named
    order = np.argsort(found.plate, kind="stable")
    ordered = found.plate[order]
    plates = {}
    for call in shell_forecast.calls:
        if call.call in _CALLED:
            plate, row = found.plates.plate[call.row], call.row
            rows = order[slice(*np.searchsorted(ordered, [plate, plate + 1]))]
            name = call.name.lower().replace(" ", "-")
            allowable = float(found.plates.allowable[row])
            plates[name] = CalledPlate(call, named.only(rows), allowable, int(found.plates.count[row]))
    return plates


@step_of(PLATE, "plate.{}", each="called_plates")
def plate_forecasts(
    of: CalledPlate,
    condition: ShipCondition,
    tender: Tender,
    particulars: Particulars | None,
    frames: FrameTable,
    shell_forecast: ShellCondition,
) -> Uses:
    """Carry a plate on to the dockings ahead."""
    call = of.call
    words = f"{len(of.named.readings)} readings, {of.latest} of the latest survey"
    inputs = {
        "readings": Given(of.named, words, "shell.survey.latest"),
        "allowable": Given(of.allowable, f"{of.allowable:.0%}", "zones of vessel/condition.yaml"),
        **given_outlook(condition, tender, particulars),
        "docking": given_docking(shell_forecast.outlook, tender),
    }
    about = f"plate {call.name}, {frames.label(call.aft)} to {frames.label(call.forward)}"
    return Uses(about, inputs, condition.here)
