"""Run every calculation that the package has data for, in the order in which they rest on each other."""

from __future__ import annotations

from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.anodes import anode_values
from tenderwright.calculations.ship.coatings import coating_values
from tenderwright.calculations.ship.condition import arrival_condition
from tenderwright.calculations.ship.cradle import cradle_values
from tenderwright.calculations.ship.form import form_of
from tenderwright.calculations.ship.hydrostatics import stated_hydrostatics, table_of_hydrostatics
from tenderwright.calculations.ship.tanks import sounding_tables, tank_values
from tenderwright.calculations.ship.water import water_given
from tenderwright.calculations.ship.zones import zone_values
from tenderwright.calculations.value import Record
from tenderwright.model.package import Package


def calculate(package: Package) -> tuple[Record, Results]:
    """Calculate everything that items may take and trade checks look at."""
    record, results = Record(), Results()
    results.form = form_of(package, record)
    results.form_broken = results.form is None and package.offsets is not None
    water = water_given(package.lightship.water if package.lightship else None, "water.dock", record)
    results.water_density = water.si
    stated_hydrostatics(package, results, record, water)
    tank_values(package, results, record)
    arrival_condition(package, results, record, water)
    cradle_values(package, results, record)
    zone_values(package, results, record)
    coating_values(package, results, record)
    anode_values(package, record)
    return record, results


def calculate_tables(package: Package, results: Results, record: Record) -> None:
    """Add what is only printed: tables of hydrostatics and soundings, and the movements that reach the trim wanted."""
    from tenderwright.calculations.ship.trim import trim_plan  # brings a solver, which `check` does without

    if results.sounding_tables or results.hydrostatics:
        return
    table_of_hydrostatics(package, results)
    sounding_tables(package, results)
    trim_plan(package, results, record)
