"""Whether metacentric height is what is asked as she lands and floats off is known well enough to say.

Ground: a height above the least by less than twice its standard uncertainty may as well be below it (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.gm_held import gm_held
from tenderwright.notices import Notice
from tenderwright.quantities.display import plus_minus

CODE = "stability-in-doubt"
_HINT = (
    "measure better what `tenderwright explain docking.landing.gm` names, and ask a naval architect whether to dock her"
)


def check(context: Context) -> Iterator[Notice]:
    """Report each of these heights of which nobody can say whether it is the least asked for."""
    held = gm_held(context)
    if held is None:
        return
    least, limits = held
    for one in limits:
        if one.met is not False and one.doubted:
            assert one.demand is not None
            gm = plus_minus(one.demand, one.uncertainty, "metacentric height")
            message = f"metacentric height {one.name} is {gm}, so nobody can say whether it is the {least} asked for"
            yield Notice(CODE, least.at, message, hints=(_HINT,))
