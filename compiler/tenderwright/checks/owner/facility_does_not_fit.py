"""Each facility takes her, with the clearances of the docking plan.

Ground: a dock that turns out too short, too shallow or too weak when she lies off it costs the tow and the docking
(UFC 4-213-10, par. 3-2.1, for length, beam and water). Limits of a cradle are told by `cradle-overloaded`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.facility_limits import passed
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.checks.owner.facilities_judged import KEPT, facilities_judged
from tenderwright.notices import Notice

CODE = "facility-does-not-fit"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each facility that does not take her."""
    for facility, _, limits in facilities_judged(context):
        if said := passed(limits):
            hint = f"leave it out, ask its owner for other limits, or {KEPT}"
            message = f"facility `{facility.facility}` does not take her: {said}"
            yield Notice(CODE, facility.here, message, hints=(hint,))
