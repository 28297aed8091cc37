"""Each facility takes her, with the clearances of the docking plan, and every limit that it takes to say so is known.

Ground: a dock that turns out too short, too shallow or too weak when she lies off it costs the tow and the docking
(UFC 4-213-10, par. 3-2.1, for length, beam and water). Limits of a cradle are told by `cradle-overloaded`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.facilities import facility_drafts, facility_fits
from tenderwright.calculations.verdict import Verdict
from tenderwright.checks.facility_limits import CRADLE, doubted, lacking, passed
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.facility import Facility
from tenderwright.notices import Notice

CODE = "facility-does-not-fit"
WATER = ("water over the blocks", "water over the sill")
"""Limits that her drafts are held against."""
_KEPT = "say in `kept_because` under owner/facilities/ why it stays in the list"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each facility that does not take her, or that cannot be judged for want of a limit.

    What cannot be judged for want of a part of the ship is told with all else that rests on that part.
    """
    for facility in context.package.facilities:
        if context.not_judged(facility):
            continue
        found = context.found_for(facility_fits, facility.facility)
        if found is not None:
            drafts = context.found_for(facility_drafts, facility.facility)
            yield from _judged(facility, found, drafts is not None)


def _judged(facility: Facility, verdict: Verdict, draws: bool) -> Iterator[Notice]:
    limits = [one for one in verdict.limits if not one.name.startswith(CRADLE)]
    if said := passed(limits):
        hint = f"leave it out, ask its owner for other limits, or {_KEPT}"
        yield Notice(CODE, facility.here, f"facility `{facility.facility}` does not take her: {said}", hints=(hint,))
    elif verdict.met is None:
        message = f"whether facility `{facility.facility}` takes her is not known"
        wanting = [one for one in verdict.wanting if draws or one.name not in WATER]
        if wanting:
            names = ", ".join(one.name for one in wanting)
            hint = f"give {lacking(wanting)}, or {_KEPT}"
            yield Notice(CODE, facility.here, f"{message}, for want of: {names}", hints=(hint,))
        elif verdict.doubted:  # what estimates alone leave open stands on the page of the facilities
            hint = f"measure better what `tenderwright explain condition.docking.draft-aft` names, or {_KEPT}"
            yield Notice(CODE, facility.here, f"{message}: {doubted(verdict.doubted)}", hints=(hint,))
