"""Metacentric height stays at what is asked as she comes to lie on all the blocks, and as she floats off them.

Ground: while one end bears, the upthrust takes off stability (Derrett, Ship Stability for Masters and Mates, pp.
246-249), landing and lifting off alike; the least is the owner's and the naval architect's.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.landing import landing
from tenderwright.calculations.ship.undocking import undocking
from tenderwright.calculations.verdict import within
from tenderwright.checks import unstable_before_settling
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "stability-below-asked"
_HINT = "press up or empty slack tanks, land weight from high up, or change the trim; a naval architect judges it"


def check(context: Context) -> Iterator[Notice]:
    """Report each of these heights that is below the least asked for, where `unstable-before-settling` is silent."""
    plan, lightship = context.package.docking_plan, context.package.lightship
    landed, floated = context.found(landing), context.found(undocking)
    if plan is None:
        return
    least = plan.least_gm or (lightship.docking.least_gm if lightship is not None and lightship.docking else None)
    if least is None:
        context.lacks("it needs `least_gm` in vessel/docking-plan.yaml, or in vessel/lightship.yaml under `docking`")
        return
    if next(unstable_before_settling.check(context), None) is not None:
        return
    found: dict[str, float | None] = {}
    if landed is not None:
        found["as she comes to lie on all the blocks"] = landed.exact.settling.stability.gm
    if floated is not None:
        found |= {"afloat when she leaves": floated.position.gm_fluid, "as the last block leaves her": floated.least_gm}
    for when, gm in found.items():
        if gm is not None and not within(gm, least.si, at_least=True):
            message = f"metacentric height {when} is {gm:.2f} m, and the least asked for is {least}"
            yield Notice(CODE, least.at, message, hints=(_HINT,))
