"""What a facility takes of her is known well enough to say that she fits.

Ground: a limit met by less than twice the standard uncertainty of the figure may as well be passed (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.facility_limits import doubted, passed
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.checks.owner.facilities_judged import KEPT, facilities_judged, wanting
from tenderwright.notices import Notice

CODE = "facility-in-doubt"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each facility whose limits are met by less than her figures are known to.

    What estimates alone leave open stands on the page of the facilities.
    """
    for facility, verdict, limits in facilities_judged(context):
        if verdict.met is None and verdict.doubted and not passed(limits) and not wanting(context, facility, verdict):
            message = f"nobody can say whether facility `{facility.facility}` takes her: {doubted(verdict.doubted)}"
            hint = f"measure better what `tenderwright explain condition.docking.draft-aft` names, or {KEPT}"
            yield Notice(CODE, facility.here, message, hints=(hint,))
