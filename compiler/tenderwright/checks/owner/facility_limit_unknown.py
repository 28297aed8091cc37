"""Each facility states every limit that it takes to say whether it takes her.

Ground: a limit that nobody asked for is met with the ship lying off the dock (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.facility_limits import lacking, passed
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.checks.owner.facilities_judged import KEPT, facilities_judged, wanting
from tenderwright.notices import Notice

CODE = "facility-limit-unknown"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each facility that cannot be judged for want of a limit."""
    for facility, verdict, limits in facilities_judged(context):
        unknown = wanting(context, facility, verdict)
        if verdict.met is None and not passed(limits) and unknown:
            names = ", ".join(one.name for one in unknown)
            message = f"nobody can say whether facility `{facility.facility}` takes her: it does not state its {names}"
            hint = f"ask its owner, and write {lacking(unknown)}; or {KEPT}"
            yield Notice(CODE, facility.here, message, hints=(hint,))
