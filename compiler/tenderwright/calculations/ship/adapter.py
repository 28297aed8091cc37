"""Joins the functions that are not steps yet to the steps; it goes with the last of them."""

from __future__ import annotations

from tenderwright.calculations.condition.floating import FloatingPosition, outputs_of
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.condition import arrival_tanks
from tenderwright.calculations.ship.condition import fixed_weights as weights_of
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
    assert results.calculated is not None
    found = results.calculated.found(facility_water)
    assert found is not None
    return found[facility]


def tank_loads(package: Package, results: Results) -> list[TankLoad]:
    """Give the tanks with what is in them on arrival."""
    assert results.calculated is not None
    return list(results.calculated.found(arrival_tanks) or ())


def condition_outputs(found: FloatingPosition) -> dict[str, float]:
    """Give a floating position as the outputs of the method."""
    return outputs_of(found)


def fixed_weights(package: Package) -> list[Weight]:
    """Give the lightship and the weights aboard."""
    assert package.lightship is not None
    return weights_of(package.lightship)
