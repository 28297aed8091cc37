"""The shell as a plan: its strakes by frame spaces, with their thickness, the girths of the seams, and the butts."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.shell_grid import Flags, Floats, ShellGrid
from tenderwright.calculations.schema import length, listed, record, text

SHELL = record(
    "One side of the shell: strakes from the keel by frame spaces from aft.",
    ("frames", "seams", "strakes"),
    frames=listed(length("Forward of the after perpendicular."), "The frames, from aft.", 2),
    seams=listed(
        listed(length("Girth from the keel."), "In each frame space."),
        "Girths of the seams, the lower edge of the first strake and the upper edge of the last with them.",
        2,
    ),
    strakes=listed(
        record(
            "One strake.",
            ("strake", "thickness", "butts"),
            strake=text("Its name."),
            thickness=listed(length("As built; 0 mm where the strake has no plate."), "In each frame space."),
            butts=listed(length("Forward of the after perpendicular.", "27.0 m"), "Its riveted butts, from aft.", 0),
        ),
        "The strakes from the keel.",
    ),
)


class ShellPlan(Struct, frozen=True, eq=False):
    """The plan of one side of the shell."""

    strakes: tuple[str, ...]
    grid: ShellGrid
    thickness: Floats
    """As built, by strake and frame space, m; 0 where there is no plate."""
    butts: tuple[Floats, ...]
    """Places of the riveted butts, by strake, m."""
    by_form: bool = True
    """Whether the girths follow the hull form along the ship; else they are those amidships everywhere."""

    @property
    def words(self) -> str:
        """Say what it is, and where its girths come from unless that is her form."""
        girths = "" if self.by_form else "; girths of amidships everywhere, for want of her form"
        return f"{len(self.strakes)} strakes by {self.grid.bays} frame spaces{girths}"

    @property
    def exists(self) -> Flags:
        """Tell where each strake has plate, by strake and frame space."""
        return self.thickness > 0.0

    @property
    def mean_space(self) -> Floats:
        """Give the mean area of a frame space, by strake, m2."""
        area = np.where(self.exists, np.diff(self.grid.seams, axis=0) * np.diff(self.grid.frames), 0.0)
        mean: Floats = area.sum(axis=1) / np.maximum(self.exists.sum(axis=1), 1)
        return mean

    def as_input(self) -> dict[str, Any]:
        """Give what it was built from."""
        rows = zip(self.strakes, self.thickness, self.butts, strict=True)
        return {
            "frames": self.grid.frames.tolist(),
            "seams": self.grid.seams.tolist(),
            "strakes": [
                {"strake": name, "thickness": built.tolist(), "butts": butts.tolist()} for name, built, butts in rows
            ],
        }


def shell_from_input(shell: Mapping[str, Any] | ShellPlan) -> ShellPlan:
    """Make the plan of a converted record, or take one that is made. Raises OutOfRange."""
    if isinstance(shell, ShellPlan):
        return shell
    strakes, spaces = shell["strakes"], len(shell["frames"]) - 1
    if len(shell["seams"]) != len(strakes) + 1:
        raise OutOfRange("there must be a seam at either edge of each strake")
    if any(len(row) != spaces for row in [*shell["seams"], *(one["thickness"] for one in strakes)]):
        raise OutOfRange("every seam and every strake needs one figure for each frame space")
    grid = ShellGrid(np.array(shell["frames"], np.float64), np.array(shell["seams"], np.float64))
    return ShellPlan(
        tuple(one["strake"] for one in strakes),
        grid,
        np.array([one["thickness"] for one in strakes], np.float64),
        tuple(np.array(one["butts"], np.float64) for one in strakes),
    )
