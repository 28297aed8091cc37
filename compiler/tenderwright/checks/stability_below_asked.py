"""Metacentric height stays at what is asked as she comes to lie on all the blocks, and as she floats off them.

Ground: while one end bears, the upthrust takes off stability (Derrett, Ship Stability for Masters and Mates, pp.
246-249), landing and lifting off alike; the least is the owner's and the naval architect's.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.stability import stability
from tenderwright.calculations.ship.wanted import least_gm
from tenderwright.checks import unstable_before_settling
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import plus_minus, show

CODE = "stability-below-asked"
_HINT = "press up or empty slack tanks, land weight from high up, or change the trim; a naval architect judges it"
_MEASURE = "measure better what `tenderwright explain docking.landing.gm` names, or raise it; a naval architect judges"


def check(context: Context) -> Iterator[Notice]:
    """Report each of these heights that is below the least asked for, or may be, where she does not capsize before."""
    found = context.found(stability)
    least = least_gm(context.package.docking_plan, context.package.lightship)
    if found is None or least is None or next(unstable_before_settling.check(context), None) is not None:
        return
    for one in found.limits:
        assert one.demand is not None
        if one.met is False:
            message = (
                f"metacentric height {one.name} is {show(one.demand, 'centre')}, and the least asked for is {least}"
            )
            yield Notice(CODE, least.at, message, hints=(_HINT,))
        elif one.doubted:
            gm = plus_minus(one.demand, one.uncertainty, "metacentric height")
            message = f"metacentric height {one.name} is {gm}: whether it is the {least} asked for is not known"
            yield Notice(CODE, least.at, message, hints=(_MEASURE,))
