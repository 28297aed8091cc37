"""Joins the functions that are not steps yet to the steps; it goes with the last of them."""

from __future__ import annotations

from tenderwright.calculations.condition.loading import Weight
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.condition import fixed_weights
from tenderwright.calculations.ship.docking_condition import moved_weights
from tenderwright.calculations.ship.keel import underside
from tenderwright.calculations.ship.water import facility_water
from tenderwright.calculations.value import Given
from tenderwright.model.package import Package


def given_form(package: Package) -> Given:
    """Give the table of offsets as an input of a calculation."""
    offsets = package.offsets
    assert offsets is not None
    text = f"{len(offsets.stations)} stations by {len(offsets.waterlines)} waterlines ({offsets.source})"
    return Given(None, text, offsets.here)


def water_given(results: Results, facility: str) -> Given:
    """Give the density of a facility's water."""
    found = results.found(facility_water)
    assert found is not None
    return found[facility]


def docking_weights(package: Package) -> list[Weight]:
    """Give the lightship and the weights aboard when she is docked."""
    assert package.lightship is not None
    return [*fixed_weights(package.lightship), *moved_weights(package.docking_plan, package.items, before_docking=True)]


def keel_underside(package: Package) -> float:
    """Give the height above the keel line of what stands on the blocks, m."""
    return underside(package.particulars) if package.particulars else 0.0
