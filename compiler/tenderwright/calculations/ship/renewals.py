"""Renewal of shell plate: inserts for what is beyond its limit at the docking, and what a denser survey would add."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.renewal.contingent import Gauged, gauged_by_strake
from tenderwright.calculations.renewal.found_later import METHOD as FOUND_LATER
from tenderwright.calculations.renewal.outlines import LEAST_SIZE, LEAST_SIZE_SOURCE
from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.renewal.shell_renewal import METHOD as RENEWAL
from tenderwright.calculations.renewal.shell_renewal import RenewalPlan
from tenderwright.calculations.ship.condition_of_shell import within
from tenderwright.calculations.ship.shell_plan import frame_spaces
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.named_plates import NamedPlates
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.calculations.value import Given, given
from tenderwright.model.ship_condition import RenewalPractice, ShipCondition
from tenderwright.model.vessel import Strake
from tenderwright.quantities.position import FrameTable


class ThinPlate(Struct, frozen=True, eq=False):
    """The latest readings that are below their limit at the docking."""

    bad: Flags
    apart: Mapping[str, Flags]
    """The readings, bad or not, in plate that items of their own renew, by item."""

    @property
    def others(self) -> Flags:
        """Mark the readings in plate of items of their own."""
        marked = np.zeros_like(self.bad)
        for rows in self.apart.values():
            marked |= rows
        return marked


@step()
def thin_plate(condition: ShipCondition, shell_forecast: ShellCondition) -> ThinPlate:
    """Mark the readings round which plate is renewed."""
    readings = shell_forecast.readings
    limit = renewal_thickness(readings.as_built, shell_forecast.allowable)
    bad: Flags = shell_forecast.at_docking < limit - 1e-12
    apart: dict[str, Flags] = {}
    for one in condition.apart:
        rows = within(readings, shell_forecast.strakes, one.strake.name, one.side, one.from_.x, one.to.x)
        apart[one.item.name] = apart.get(one.item.name, np.zeros_like(rows)) | rows
    return ThinPlate(bad, apart)


@step_of(RENEWAL, "shell.renewal")
def shell_renewal(
    shell_forecast: ShellCondition,
    condition: ShipCondition,
    strakes: tuple[Strake, ...],
    shell_plan: ShellPlan,
    thin_plate: ThinPlate,
) -> Uses | Absent:
    """Lay out the inserts of both sides."""
    practice = condition.renewal
    if practice is None:
        return Lacking("it needs `renewal` in vessel/condition.yaml")
    bad = _spaces(shell_plan, shell_forecast, thin_plate.bad & ~thin_plate.others, "")
    for item, rows in thin_plate.apart.items():
        bad += _spaces(shell_plan, shell_forecast, thin_plate.bad & rows, item)
    inputs = {
        "shell": Given(shell_plan, f"{len(strakes)} strakes by {shell_plan.grid.bays} frame spaces", strakes[0].here),
        "bad": Given(bad, f"{len(bad)} frame spaces below their limit at the docking", "shell.plates.now"),
        "rivet": Given(practice.rivet.si, f"{practice.rivet}, {practice.source}", practice.rivet.at),
        "seam_rows": Given(practice.seam_rows, str(practice.seam_rows), practice.here),
        "butt_rows": Given(practice.butt_rows, str(practice.butt_rows), practice.here),
        "fastening": Given(practice.fastening, practice.fastening, practice.here),
        "least_bays": Given(practice.least_bays, str(practice.least_bays), practice.here),
        "least_size": given(practice.least_size)
        if practice.least_size
        else Given(LEAST_SIZE, "300 mm", str(LEAST_SIZE_SOURCE)),
        **_optional(practice),
    }
    return Uses("plate named for renewal, items of their own left out", inputs, practice.here)


def _optional(practice: RenewalPractice) -> dict[str, Given]:
    """Give what the practice may say besides, as inputs."""
    inputs = {
        name: given(quantity)
        for name, quantity in (
            ("seam_pitch", practice.seam_pitch),
            ("frame_pitch", practice.frame_pitch),
            ("mill_tolerance", practice.mill_tolerance),
        )
        if quantity is not None
    }
    for name, figure in (("corner", practice.corner), ("hours_rate", practice.hours_rate)):
        if figure is not None:
            inputs[name] = given(figure, origin=practice.here)
    if practice.work:
        work = [
            {"strakes": [strake.name for strake in one.strakes], "place": one.place, "curvature": one.curvature}
            for one in practice.work
        ]
        words = (f"strakes {', '.join(map(str, w.strakes))}: {w.place}, curvature {w.curvature}" for w in practice.work)
        inputs["work"] = Given(work, "; ".join(words), practice.work[0].here)
    return inputs


def _spaces(plan: ShellPlan, shell: ShellCondition, rows: Flags, item: str) -> list[dict[str, Any]]:
    """Give the frame spaces of some readings, each by its middle, with the item that renews them."""
    readings, frames = shell.readings, plan.grid.frames
    own = {"item": item} if item else {}
    spaces = []
    for code, side in enumerate(SIDES):
        of_side = rows & (readings.side == code)
        for strake, bay in np.argwhere(plan.grid.cells(readings.strake[of_side], readings.x[of_side])).tolist():
            middle = 0.5 * float(frames[bay] + frames[bay + 1])
            spaces.append({"strake": plan.strakes[strake], "side": side, "at": middle, **own})
    return spaces


@step_of(FOUND_LATER, "shell.contingent", kept=True)
def shell_contingent(
    shell_renewal: RenewalPlan,
    condition: ShipCondition,
    frames: FrameTable,
    shell_plates: NamedPlates,
    shell_plan: ShellPlan,
    shell_forecast: ShellCondition,
    thin_plate: ThinPlate,
) -> Uses:
    """Expect what a denser survey would add to the plate named."""
    total = shell_renewal.total
    found = _gauged(frames, shell_plates, shell_plan, shell_forecast, thin_plate, total.area)
    counts = zip(
        shell_plates.strakes,
        found.sampled.tolist(),
        found.bad.tolist(),
        found.unsampled.tolist(),
        found.area.tolist(),
        strict=True,
    )
    strakes = [
        {"strake": name, "sampled": sampled, "bad": bad, "unsampled": unsampled, "area": area}
        for name, sampled, bad, unsampled, area in counts
    ]
    words = "; ".join(f"{s['strake']}: {s['bad']} of {s['sampled']} bad, {s['unsampled']} not gauged" for s in strakes)
    thickness = float(shell_plan.thickness[shell_plan.exists].mean())
    joint = total.seam + total.butt
    inputs = {
        "strakes": Given(strakes, words, "shell.survey.latest, shell.renewal.area"),
        "thickness": Given(thickness, f"{1e3 * thickness:.2f} mm", "vessel/strakes.yaml"),
        "renewed_area": Given(total.area, f"{total.area:.2f} m2", "shell.renewal.area"),
        "renewed_mass": Given(total.mass, f"{total.mass:.1f} kg", "shell.renewal.mass"),
        "renewed_joint": Given(joint, f"{joint:.2f} m", "shell.renewal.joint"),
    }
    at = condition.renewal.here if condition.renewal else condition.here
    return Uses("plate not gauged, both sides", inputs, at)


def _gauged(
    frames: FrameTable,
    plates: NamedPlates,
    plan: ShellPlan,
    shell: ShellCondition,
    thin: ThinPlate,
    renewed: float,
) -> Gauged:
    """Count frame spaces gauged, bad and not gauged, by strake; plate of items of their own left out.

    The plate renewed for one bad space is that of a mean space, with the growth that the inserts had.
    """
    readings, spaces = shell.readings, frame_spaces(frames, plates)
    kept = np.flatnonzero(shell.analysis.latest & ~thin.others)
    space = spaces.plate_of(readings.strake[kept], readings.side[kept], readings.x[kept])
    on_plate = space >= 0
    known = np.flatnonzero(np.bincount(space[on_plate], minlength=spaces.count))
    bad = np.bincount(space[on_plate & thin.bad[kept]], minlength=spaces.count)[known] > 0
    area, strake = _areas(plan), spaces.place_of(known)[0]
    grown = renewed / float(area[strake[bad]].sum()) if bad.any() else 1.0
    return gauged_by_strake(spaces, known, bad, area * grown)


def _areas(plan: ShellPlan) -> Floats:
    """Give the mean area of a frame space, by strake, m2."""
    grid = plan.grid
    area = np.where(plan.exists, np.diff(grid.seams, axis=0) * np.diff(grid.frames), 0.0)
    mean: Floats = area.sum(axis=1) / np.maximum(plan.exists.sum(axis=1), 1)
    return mean
