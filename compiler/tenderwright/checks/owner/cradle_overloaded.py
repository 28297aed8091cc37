"""The cradle of each facility with cars reaches under her keel, and no car, axle or rail carries more than it may.

Ground: loads of a rigid hull on coupled cars (derived); a keel left unsupported for more than one frame bay bends over
the last car (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.cradle import cradles
from tenderwright.checks.facility_limits import passed
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.checks.owner.facilities_judged import KEPT
from tenderwright.notices import Notice

CODE = "cradle-overloaded"
_HINT = f"ask for more or stronger cars, or dock her lighter; or {KEPT}"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each cradle that passes one of its limits, with all that it passes."""
    for facility in context.package.facilities:
        if facility.cars is None or context.not_judged(facility):
            continue
        found = context.found_for(cradles, facility.facility)
        if found is not None and (said := passed(found.verdict.limits)):
            message = f"the cradle of facility `{facility.facility}` does not carry her: {said}"
            yield Notice(CODE, facility.cars.here, message, hints=(_HINT,))
