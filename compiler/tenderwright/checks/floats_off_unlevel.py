"""She floats off the blocks level: with no more list than asked, and within 0.1 m of the trim wanted for docking.

Ground: a ship that leaves the blocks at one end first slides or swings on those that still bear; 0.1 m of trim, and
0.5 degrees of list where none is stated, are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.undocking import undocking
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "floats-off-unlevel"
_HINT = "move or add liquid under `tanks_at_undocking`, or correct the weights under `moved_while_dry`"


def check(context: Context) -> Iterator[Notice]:
    """Report a condition in which she would not float off level."""
    found, plan = context.found(undocking), context.package.docking_plan
    if found is None or plan is None or found.level:
        return
    places = [one.here for one in plan.moved_while_dry] + [one.here for one in plan.tanks_at_undocking] + [plan.here]
    yield Notice(CODE, places[0], f"she would not float off level: {'; '.join(found.unlevel)}", hints=(_HINT,))
