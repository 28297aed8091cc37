"""Run every calculation of a ship."""

from __future__ import annotations

from tenderwright.calculations.steps.kept import Kept
from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.package import Package


def calculate(package: Package, kept: Kept | None = None) -> Calculated:
    """Run every step, but for those that wait until a page asks."""
    return Calculated(package, steps(), kept)
