"""Rates of loss of the shell by zone, and what they come to at the next docking."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.ship.condition_of_shell import given_confidence, given_docking, given_uncertainty
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.named_readings import NamedReadings
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.thickness.zone_rate import METHOD as ZONE_RATE
from tenderwright.calculations.value import Given, given
from tenderwright.model.ship_condition import ShipCondition, WastageZone
from tenderwright.model.tender import Tender
from tenderwright.notices import Place
from tenderwright.quantities.position import FrameTable


class ZoneReadings(Struct, frozen=True, eq=False):
    """The readings of one zone."""

    zone: WastageZone
    named: NamedReadings

    @property
    def here(self) -> Place:
        """Give where the zone stands."""
        return self.zone.here


@step()
def zone_readings(condition: ShipCondition, shell_survey: Surveyed) -> dict[str, ZoneReadings]:
    """Part the readings of the shell by zone, each told whether it is of the latest survey of its plate."""
    named, latest = shell_survey.named, shell_survey.assessed.latest
    every = NamedReadings(named.readings, named.strakes, latest)
    return {
        zone.zone: ZoneReadings(zone, every.only(shell_survey.zone == index))
        for index, zone in enumerate(condition.zones)
    }


@step_of(ZONE_RATE, "shell.zone.{}", each="zone_readings", kept=True)
def zone_rates(
    of: ZoneReadings, condition: ShipCondition, tender: Tender, frames: FrameTable, shell_forecast: ShellCondition
) -> Uses | Absent:
    """Find what a zone has lost, how fast it wastes, and what that comes to."""
    zone, named = of.zone, of.named
    assert named.latest is not None
    if not named.latest.any():
        return Lacking(f"it needs readings of zone `{zone.zone}` under surveys/")
    words = f"{len(named.readings)} readings, {int(named.latest.sum())} of them the latest of their plates"
    inputs = {
        "readings": Given(named, words, "shell.survey.readings"),
        "strakes": Given(list(named.strakes), f"{len(named.strakes)} strakes from the keel", "vessel/strakes.yaml"),
        "frames": Given(list(frames.distances), f"{len(frames.distances)} frames", "vessel/frames.yaml"),
        "limit": Given(zone.allowable.si, f"{zone.allowable}: {zone.source}", zone.allowable.at),
        "docking": given_docking(shell_forecast.outlook, tender),
        "interval": given(condition.next_docking),
        "uncertainty": given_uncertainty(condition),
        "confidence": given_confidence(condition),
    }
    return Uses(zone.name, inputs, zone.here)
