"""Rates of loss of the shell by zone, and what they come to at the next docking."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.calculations.thickness.zone_rate import METHOD as ZONE_RATE
from tenderwright.calculations.value import Given
from tenderwright.model.shell_condition import WastageZone
from tenderwright.model.ship_condition import ShipCondition


@step()
def wastage_zones(condition: ShipCondition) -> dict[str, WastageZone]:
    """Give the zones of the shell by name."""
    return {zone.zone: zone for zone in condition.zones}


@step_of(ZONE_RATE, "shell.zone.{}", each="wastage_zones")
def zone_rates(of: WastageZone, condition: ShipCondition, shell_forecast: ShellCondition) -> Uses | Absent:
    """Find what a zone has lost, how fast it wastes, and what that comes to."""
    rows = shell_forecast.zone == condition.zones.index(of)
    latest = int(np.count_nonzero(rows & shell_forecast.analysis.latest))
    if not latest:
        return Lacking(f"it needs readings of zone `{of.zone}` under surveys/")
    words = f"{np.count_nonzero(rows)} readings of the zone, {latest} of them the latest of their plates"
    inputs = {
        "forecast": Given(shell_forecast, words, "shell.plates.gauged"),
        "zone": Given(of.zone, f"{of.name}: may lose {of.allowable}, {of.source}", of.allowable.at),
    }
    return Uses(of.name, inputs, of.here)
