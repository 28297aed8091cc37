"""The shell as a plan: its plates between butts, and its strakes by frame spaces with the girths of the seams."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.renewal.shell_grid import ShellGrid
from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.outcome import Absent, Lacking, without_file
from tenderwright.calculations.steps.step import step
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.named_plates import NamedPlates
from tenderwright.calculations.thickness.plates import PlateGrid
from tenderwright.model.package import Package
from tenderwright.model.vessel import Strake
from tenderwright.quantities.position import FrameTable

BY_FRAMES = "it needs vessel/frames.yaml: plate is counted by frame spaces"
_ABSENT = 1e-3
"""Girth given to a strake where it has no plate, m: seams must rise, and nothing is renewed there."""
_NEAR = 1e-6


@step()
def shell_plates(package: Package, strakes: tuple[Strake, ...], frames: FrameTable) -> NamedPlates | Absent:
    """Give the plates of the shell between butts, and where the thickness changes."""
    if not strakes:
        return without_file(package, "vessel/strakes.yaml")
    return NamedPlates(tuple(strake.strake for strake in strakes), PlateGrid(tuple(_ends(one) for one in strakes)))


@step()
def shell_plan(
    strakes: tuple[Strake, ...], frames: FrameTable, shell_plates: NamedPlates, hull: Hull | None
) -> ShellPlan | Absent:
    """Lay out the shell by frame spaces."""
    if not frames.numbers:
        return Lacking(BY_FRAMES)
    return plan_of(strakes, frames, shell_plates, hull.form if hull else None)


def plan_of(strakes: tuple[Strake, ...], frames: FrameTable, plates: NamedPlates, form: HullForm | None) -> ShellPlan:
    """Lay out the shell.

    Girths amidships are as given, seams in the middle of the laps; elsewhere the strakes that are there share the
    half girth of the hull in the proportion that they have amidships. Without a form girths are those amidships.
    """
    x = np.array(frames.distances)
    middle = 0.5 * (x[:-1] + x[1:])
    thickness = np.zeros((len(strakes), middle.size))
    for row, strake in zip(thickness, strakes, strict=True):
        for run in strake.plates:
            row[(middle > run.from_.x) & (middle < run.to.x)] = run.thickness.si
    grid = ShellGrid(x, _seams(strakes, thickness > 0.0, middle, form))
    butts = tuple(ends[1:-1] for ends in plates.grid.edges)
    return ShellPlan(plates.strakes, grid, thickness, butts, by_form=form is not None)


def _ends(strake: Strake) -> Floats:
    ends = [end for run in strake.plates for end in (run.from_.x, run.to.x)]
    ordered = np.sort(np.array(ends + [butt.x for butt in strake.butts]))
    distinct: Floats = ordered[np.append(True, np.diff(ordered) > _NEAR)]
    return distinct


def _seams(strakes: tuple[Strake, ...], exists: Flags, middle: Floats, form: HullForm | None) -> Floats:
    lower = np.array([strake.from_girth.si for strake in strakes])
    upper = np.array([strake.to_girth.si for strake in strakes])
    seams = np.concatenate([lower[:1], 0.5 * (upper[:-1] + lower[1:]), upper[-1:]])
    widths = np.where(exists, np.diff(seams)[:, None], 0.0)
    if form is not None:
        girths = form.curves.half_girth(form.deck_heights)
        there = np.interp(middle, form.stations, girths) - seams[0]
        total = widths.sum(axis=0)
        widths = widths * np.where(total > 0.0, there / np.maximum(total, _ABSENT), 1.0)
    widths = np.maximum(widths, _ABSENT)
    girths_at: Floats = seams[0] + np.concatenate([np.zeros((1, middle.size)), np.cumsum(widths, axis=0)])
    return girths_at
