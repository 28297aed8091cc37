"""The shell as a plan: its plates between butts, and its strakes by frame spaces with the girths of the seams."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.renewal.shell_grid import ShellGrid
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.plates import PlateGrid
from tenderwright.model.vessel import Strake
from tenderwright.quantities.position import FrameTable

_ABSENT = 1e-3
"""Girth given to a strake where it has no plate, m: seams must rise, and nothing is renewed there."""
_NEAR = 1e-6


@dataclass(frozen=True, eq=False)
class ShellPlan:
    """The plan of the shell."""

    plates: PlateGrid
    bays: PlateGrid
    """Every frame space of every strake as a plate of its own."""
    grid: ShellGrid
    exists: Flags
    """By strake and frame space."""
    thickness: Floats
    """As built, by strake and frame space, m; 0 where there is no plate."""
    butts: tuple[Floats, ...]
    """Places of the riveted butts, by strake, m."""


def shell_plan(strakes: tuple[Strake, ...], frames: FrameTable, form: HullForm | None) -> ShellPlan:
    """Lay out the shell.

    Girths amidships are as given, seams in the middle of the laps; elsewhere the strakes that are there share the
    half girth of the hull in the proportion that they have amidships. Without offsets girths are those amidships.
    """
    x = np.array(frames.distances)
    middle = 0.5 * (x[:-1] + x[1:])
    runs = [[(run.from_.x, run.to.x, run.thickness.si) for run in strake.plates] for strake in strakes]
    thickness = np.zeros((len(strakes), middle.size))
    for row, of_strake in zip(thickness, runs, strict=True):
        for aft, forward, built in of_strake:
            row[(middle > aft) & (middle < forward)] = built
    exists = thickness > 0.0
    edges = tuple(
        _distinct([end for run in of_strake for end in run[:2]] + [butt.x for butt in strake.butts])
        for of_strake, strake in zip(runs, strakes, strict=True)
    )
    bays = tuple(_bays(x, ends) for ends in edges)
    grid = ShellGrid(x, _seams(strakes, exists, middle, form))
    return ShellPlan(PlateGrid(edges), PlateGrid(bays), grid, exists, thickness, tuple(ends[1:-1] for ends in edges))


def _distinct(places: list[float]) -> Floats:
    ordered = np.sort(np.array(places))
    distinct: Floats = ordered[np.append(True, np.diff(ordered) > _NEAR)]
    return distinct


def _bays(x: Floats, ends: Floats) -> Floats:
    inside = x[(x > ends[0] + _NEAR) & (x < ends[-1] - _NEAR)]
    return np.concatenate([ends[:1], inside, ends[-1:]])


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
