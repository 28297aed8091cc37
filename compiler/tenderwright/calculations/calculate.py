"""Run every calculation that the package has data for, in the order in which they rest on each other."""

from __future__ import annotations

from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.block_places import keel_blocks, side_blocks
from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.ship.cradle import cradles
from tenderwright.calculations.ship.docking_condition import docking, docking_tank_states
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.footprints import (
    bare_bottom,
    block_clearances,
    covered_strips,
    earlier_footprints,
    plan_footprints,
)
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.keel_loads import elastic_keel_loads, loaded_keel_blocks
from tenderwright.calculations.ship.landing import entry_trim, landing, landing_estimate, landing_stages
from tenderwright.calculations.ship.shift import last_shift, plan_shift
from tenderwright.calculations.ship.side_loads import loaded_side_blocks, side_block_standing
from tenderwright.calculations.ship.tanks import tank_contents, tank_shape
from tenderwright.calculations.ship.trim import trim_plan
from tenderwright.calculations.ship.undocking import undocking, undocking_tank_states
from tenderwright.calculations.ship.water import SEA_WATER, dock_water
from tenderwright.calculations.ship.works import blocks_over_work
from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Record
from tenderwright.model.package import Package


def calculate(package: Package) -> tuple[Record, Results]:
    """Calculate everything that items may take and trade checks look at."""
    calculated = Calculated(package, steps())
    record = calculated.record
    results = _bag(calculated, package.offsets is not None)
    return record, results


def _bag(calculated: Calculated, has_offsets: bool) -> Results:
    """Give what the steps found as the functions take it that are not steps yet."""
    results = Results(calculated)
    hull_found = calculated.found(hull)
    results.form = hull_found.form if hull_found else None
    results.form_broken = hull_found is None and has_offsets
    water = calculated.found(dock_water)
    results.water_density = (water or SEA_WATER).si
    results.tanks = dict(calculated.found(tank_shape) or {})
    results.contents = {name: one.liquid for name, one in (calculated.found(tank_contents) or {}).items()}
    results.arrival = calculated.found(arrival)
    results.trim_plan = calculated.found(trim_plan)
    found = results.docking
    results.cradles = dict(calculated.found(cradles) or {})
    found.keel_blocks = calculated.found(loaded_keel_blocks) or calculated.found(keel_blocks) or ()
    found.side_blocks = calculated.found(loaded_side_blocks) or calculated.found(side_blocks) or ()
    found.footprints = calculated.found(plan_footprints) or ()
    found.earlier = calculated.found(earlier_footprints) or {}
    clear = calculated.found(block_clearances)
    found.conflicts, found.nearest = (clear.conflicts, clear.nearest) if clear else ((), ())
    found.strips = calculated.found(covered_strips) or ()
    found.works = calculated.found(blocks_over_work) or ()
    bare = calculated.found(bare_bottom)
    found.bare_area = bare.area if bare else None
    standing = calculated.found(elastic_keel_loads)
    found.slenderness = standing.slenderness if standing else None
    found.rigid_justified = standing.rigid_justified if standing else None
    found.side = calculated.found(side_block_standing)
    found.shift, found.shift_of_last = calculated.found(plan_shift), calculated.found(last_shift)
    found.facilities = dict(calculated.found(facility_fits) or {})
    found.estimate = calculated.found(landing_estimate)
    found.position = calculated.found(docking)
    found.tanks = calculated.found(docking_tank_states) or {}
    both = calculated.found(landing)
    if both is not None:
        found.exact, found.held, found.curve, found.held_curve = both.exact, both.held, both.curve, both.held_curve
    entry = calculated.found(entry_trim)
    found.greatest_trim = float(entry["trim"]) if entry else None
    found.stages = calculated.found(landing_stages) or ()
    found.undocking = calculated.found(undocking)
    found.tanks_undocking = calculated.found(undocking_tank_states) or {}
    return results
