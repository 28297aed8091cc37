"""The facilities that may be judged, each with what it takes of her."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.facilities import facility_drafts, facility_fits
from tenderwright.calculations.verdict import Limit, Verdict
from tenderwright.checks.facility_limits import CRADLE
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.facility import Facility

KEPT = "say in `kept_because` under owner/facilities/ why it stays in the list"
"""What the owner may do instead, of each facility that is doubted."""
_WATER = ("water over the blocks", "water over the sill")
"""Limits that her drafts are held against."""


def facilities_judged(context: OwnerContext) -> Iterator[tuple[Facility, Verdict, list[Limit]]]:
    """Give each facility with its verdict and those limits that are not its cradle's.

    What cannot be judged for want of a part of the ship is told with all else that rests on that part.
    """
    for facility in context.package.facilities:
        if context.not_judged(facility):
            continue
        found = context.found_for(facility_fits, facility.facility)
        if found is not None:
            yield facility, found, [one for one in found.limits if not one.name.startswith(CRADLE)]


def wanting(context: OwnerContext, facility: Facility, verdict: Verdict) -> list[Limit]:
    """Give the limits that the facility does not state and that would be held against what is known of her."""
    draws = context.found_for(facility_drafts, facility.facility) is not None
    return [one for one in verdict.wanting if draws or one.name not in _WATER]
