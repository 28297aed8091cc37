"""Metacentric height as she is towed is no less than is asked, out and home.

Ground: adequate stability in every condition of the voyage (IMO, Recommendations on the safety of towed ships,
MSC/Circ.494); the figure is the tow surveyor's.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.tow import tow_condition, tow_home_condition
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "tow-stability-below-asked"
_HINT = "fill slack tanks to the top or empty them, or take weight off high up; a naval architect judges it"


def check(context: Context) -> Iterator[Notice]:
    """Report each passage on which it is below the least asked for."""
    asked = context.package.tow.limits if context.package.tow is not None else None
    if asked is None or asked.least_gm is None:
        return
    for passage, step in (("to the dock", tow_condition), ("home", tow_home_condition)):
        found = context.found(step)
        for one in found.limits if found is not None else ():
            if one.name == "metacentric height" and one.demand is not None and one.met is False:
                height = show(one.demand, "metacentric height")
                least = asked.least_gm
                message = f"metacentric height on the passage {passage} is {height}, and the least asked for is {least}"
                yield Notice(CODE, asked.least_gm.at, message, hints=(_HINT,))
