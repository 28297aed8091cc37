"""All the drawings of the yard edition, in the order in which they are printed."""

from __future__ import annotations

from tenderwright.calculations.results import Results
from tenderwright.calculations.value import Record
from tenderwright.documents.drawings.coating_zones import zones
from tenderwright.documents.drawings.cradle_plan import cradle
from tenderwright.documents.drawings.general_arrangement import tanks
from tenderwright.documents.drawings.lines import body_plan
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package


def drawings(package: Package, record: Record, results: Results) -> list[Figure]:
    """Make every drawing that the package has data for."""
    made = [tanks(package, results), zones(package, record, results)]
    made += [
        cradle(package, facility, results.cradles.get(facility.facility), results) for facility in package.facilities
    ]
    made.append(body_plan(package, results))
    return [figure for figure in made if figure is not None]
