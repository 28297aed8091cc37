"""Run every calculation that the package has data for, in the order in which they rest on each other."""

from __future__ import annotations

from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.anode_life import anode_duty
from tenderwright.calculations.ship.anodes import anode_values
from tenderwright.calculations.ship.block_places import block_places
from tenderwright.calculations.ship.climate import climate_values
from tenderwright.calculations.ship.coatings import coating_values
from tenderwright.calculations.ship.condition import arrival_condition
from tenderwright.calculations.ship.condition_of_shell import shell_condition
from tenderwright.calculations.ship.cradle import cradle_values
from tenderwright.calculations.ship.footprints import footprint_values
from tenderwright.calculations.ship.form import form_of
from tenderwright.calculations.ship.gauging import gauging_values
from tenderwright.calculations.ship.hydrostatics import stated_hydrostatics, table_of_hydrostatics
from tenderwright.calculations.ship.landing import landing, landing_estimate
from tenderwright.calculations.ship.renewals import renewal_values
from tenderwright.calculations.ship.tanks import sounding_tables, tank_values
from tenderwright.calculations.ship.tightness import tightness_values
from tenderwright.calculations.ship.water import water_given
from tenderwright.calculations.ship.works import blocks_over_work
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
    block_places(package, results, record)
    footprint_values(package, results, record)
    blocks_over_work(package, results)
    landing_estimate(package, results, record)
    zone_values(package, results, record)
    coating_values(package, results, record)
    anode_values(package, record)
    shell_condition(package, results, record)
    renewal_values(package, results, record)
    gauging_values(package, results, record)
    anode_duty(package, results, record)
    climate_values(package, results, record)
    tightness_values(package, results, record)
    return record, results


def calculate_tables(package: Package, results: Results, record: Record) -> None:
    """Add what is only printed: tables of hydrostatics and soundings, and the movements that reach the trim wanted."""
    # Imported here, for `check` does without them and starts the sooner.
    from tenderwright.calculations.ship.facilities import facility_fits
    from tenderwright.calculations.ship.keel_loads import keel_loads
    from tenderwright.calculations.ship.plate_values import plate_values
    from tenderwright.calculations.ship.shift import least_move
    from tenderwright.calculations.ship.side_loads import side_loads
    from tenderwright.calculations.ship.trim import trim_plan
    from tenderwright.calculations.ship.undocking import undocking

    if results.sounding_tables or results.hydrostatics:
        return
    table_of_hydrostatics(package, results)
    sounding_tables(package, results)
    trim_plan(package, results, record)
    landing(package, results, record)
    keel_loads(package, results, record)
    side_loads(package, results, record)
    least_move(package, results, record)
    undocking(package, results, record)
    plate_values(package, results, record)
    facility_fits(package, results, record)
