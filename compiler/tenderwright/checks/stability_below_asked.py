"""Metacentric height stays at what is asked as she comes to lie on all the blocks, and as she floats off them.

Ground: while one end bears, the upthrust takes off stability (Derrett, Ship Stability for Masters and Mates, pp.
246-249), landing and lifting off alike; the least is the owner's and the naval architect's.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.gm_held import gm_held
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "stability-below-asked"
_HINT = (
    "fill slack tanks to the top or empty them, take weight off high up, or change the trim; "
    "a naval architect judges it"
)


def check(context: Context) -> Iterator[Notice]:
    """Report each of these heights that is below the least asked for."""
    held = gm_held(context)
    if held is None:
        return
    least, limits = held
    for one in limits:
        if one.met is False:
            assert one.demand is not None
            message = (
                f"metacentric height {one.name} is {show(one.demand, 'centre')}, and the least asked for is {least}"
            )
            yield Notice(CODE, least.at, message, hints=(_HINT,))
