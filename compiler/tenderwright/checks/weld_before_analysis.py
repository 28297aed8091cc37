"""No weld is planned on wrought iron or early steel before an analysis of it has passed.

Ground: old metal high in sulphur, phosphorus or nitrogen cracks beside the weld, and iron tears along its laminations
(common practice, no source; its carbon equivalent by EN 1011-2, Annex C, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.regimes import unwelded_strakes
from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "weld-before-analysis"


def check(context: Context) -> Iterator[Notice]:
    """Report inserts that are welded on a strake that may not be."""
    condition = context.package.condition
    practice = condition.renewal if condition is not None else None
    unwelded = context.found(unwelded_strakes) if condition is not None and practice is not None else None
    if condition is None or practice is None or unwelded is None or not unwelded.why:
        return
    plan = context.found(shell_renewal)
    own = {one.item.name: one for one in condition.apart if one.ends}
    told = set()
    for one in plan.inserts if plan is not None else ():
        apart = own.get(one.apart)
        ends = apart.ends if apart is not None else practice.ends
        strake = next((name for name in one.strakes if name in unwelded.why), None)
        if (
            strake is None
            or not (ends == "weld" or practice.fastening == "welded edges")
            or (strake, one.apart) in told
        ):
            continue
        told.add((strake, one.apart))
        message = f"inserts of strake {strake} are welded, and {unwelded.why[strake]}"
        hint = "join them by rivets, or write the analysis that passed under `analyses` in vessel/condition.yaml"
        yield Notice(CODE, apart.here if apart is not None else practice.here, message, hints=(hint,))
