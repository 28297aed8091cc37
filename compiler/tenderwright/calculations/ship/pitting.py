"""Pits of the shell, judged stretch by stretch by rules of their own."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from tenderwright.calculations.ship.condition_of_shell import ShellReadings, unused_name, within
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.pitting import METHOD as PITTING
from tenderwright.calculations.thickness.pitting import PITS_TO_GAUGE
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.value import Given
from tenderwright.model.ship_condition import Pitted, ShipCondition
from tenderwright.notices import Place
from tenderwright.quantities.position import FrameTable


class PitStretch(Struct, frozen=True):
    """A pitted stretch of one side, with its pits as last gauged; lengths in m."""

    pitted: Pitted
    side: str
    as_built: float
    """Mean of the readings of the pits; nothing where there are none."""
    thickness: float
    """Mean of the plate between the pits, or as built where none of it was gauged."""
    pits: int
    depths: tuple[float, ...]
    """Of the deepest pits, the deepest first."""

    @property
    def here(self) -> Place:
        """Give where the stretch stands."""
        return self.pitted.here


@step()
def pit_stretches(
    condition: ShipCondition, frames: FrameTable, shell_readings: ShellReadings, shell_survey: Surveyed
) -> dict[str, PitStretch]:
    """Give every pitted stretch, each side by itself."""
    found: dict[str, PitStretch] = {}
    for pitted in condition.pitted:
        for side in SIDES if pitted.side not in SIDES else (pitted.side,):
            place = frames.label(pitted.from_.x).replace(" ", "").replace("+", "-").replace("mm", "").lower()
            name = f"{pitted.strake.name.lower()}-{side}-{place}"
            found[unused_name(name, found)] = _stretch(pitted, side, shell_readings, shell_survey)
    return found


def _stretch(pitted: Pitted, side: str, shell: ShellReadings, survey: Surveyed) -> PitStretch:
    place = (pitted.strake.name, side, pitted.from_.x, pitted.to.x)
    pits = shell.pits.readings.only(within(shell.pits.readings, shell.pits.strakes, *place))
    if not len(pits):
        return PitStretch(pitted, side, 0.0, 0.0, 0, ())
    pits = pits.only(pits.survey == pits.survey.max())
    readings = survey.named.readings
    plate = within(readings, survey.named.strakes, *place) & survey.assessed.latest
    built = float(pits.as_built.mean())
    thickness = float(readings.measured[plate].mean()) if plate.any() else built
    depths = np.sort(np.maximum(thickness - pits.measured, 0.0))[::-1][:PITS_TO_GAUGE]
    return PitStretch(pitted, side, built, thickness, len(pits), tuple(depths.tolist()))


@step_of(
    PITTING,
    "shell.pits.{}",
    names={"remaining": "remaining", "share_left": "share-left", "treatment": "treatment"},
    each="pit_stretches",
)
def pits_judged(of: PitStretch) -> Uses | Absent:
    """Judge the pits of a stretch."""
    pitted = of.pitted
    where = f"strake {pitted.strake.name}, {of.side}, {pitted.from_} to {pitted.to}"
    if not of.depths:
        return Lacking(f"it needs pits gauged on {where}, under surveys/")
    deepest = f"{of.pits} gauged, the deepest {1e3 * of.depths[0]:.1f} mm"
    inputs = {
        "as_built": Given(of.as_built, f"{1e3 * of.as_built:.1f} mm", "from the surveys"),
        "thickness": Given(of.thickness, f"{1e3 * of.thickness:.1f} mm between pits", "from the surveys"),
        "intensity": Given(pitted.share.si, f"{pitted.share}: {pitted.source}", pitted.share.at),
        "depths": Given(list(of.depths), deepest, "from the surveys"),
    }
    return Uses(f"pits of {where}", inputs, pitted.here)
