"""The drawings of each facility, which only the owner sees: the levels of the water there, and the cradle under her."""

from __future__ import annotations

from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import cradle_plan, water_levels
from tenderwright.documents.drawings.all import Made, in_one_system
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package


def at_facilities(
    package: Package, calculated: Calculated, aside: frozenset[str] = frozenset()
) -> dict[str, list[Figure] | Absent]:
    """Make the drawings of all facilities, by title; of one that could not be made, say why.

    Those put aside, for a reason that the owner told, are not gauged where it is not known whether she fits.
    """
    made: dict[str, Made] = {}
    if package.facilities:
        made[water_levels.AT_FACILITIES] = in_one_system(water_levels.water_levels_there, package, calculated, aside)
    for facility in package.facilities:
        made[cradle_plan.title_of(facility)] = in_one_system(cradle_plan.cradle, package, facility, calculated)
    return {title: [one] if isinstance(one, Figure) else one for title, one in made.items()}
