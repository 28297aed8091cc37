"""All the drawings of the yard edition, in the order in which they are printed."""

from __future__ import annotations

from tenderwright.calculations.results import Results
from tenderwright.calculations.value import Record
from tenderwright.documents.drawings.anode_plan import anode_plan
from tenderwright.documents.drawings.coating_zones import zones
from tenderwright.documents.drawings.cradle_plan import cradle
from tenderwright.documents.drawings.docking_bottom import docking_bottom
from tenderwright.documents.drawings.docking_profile import docking_profile
from tenderwright.documents.drawings.general_arrangement import tanks
from tenderwright.documents.drawings.lines import body_plan
from tenderwright.documents.drawings.loss_plot import loss_plot
from tenderwright.documents.drawings.shell_expansion import shell_expansion
from tenderwright.documents.drawings.side_block_sections import side_block_sections
from tenderwright.documents.drawings.tank_interiors import tank_interiors
from tenderwright.documents.drawings.tank_states import tank_states
from tenderwright.documents.drawings.water_levels import water_levels
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package


def drawings(package: Package, record: Record, results: Results) -> list[Figure]:
    """Make every drawing that the package has data for."""
    made = [
        docking_profile(package, results),
        *docking_bottom(package, results),
        *side_block_sections(package, results),
        water_levels(package, results),
        tank_states(package, results),
        tanks(package, results),
        zones(package, record, results),
        shell_expansion(package, results),
        loss_plot(package, results),
        tank_interiors(package, results),
        anode_plan(package, results),
    ]
    made += [
        cradle(package, facility, results.cradles.get(facility.facility), results) for facility in package.facilities
    ]
    made.append(body_plan(package, results))
    return [figure for figure in made if figure is not None]
