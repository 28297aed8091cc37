"""She still has stability when she comes to lie on all the blocks: the draft at instability is below that at settling.

Ground: while one end alone bears, the upthrust takes off stability; what is lost before she is down over her length
cannot be made good by side blocks, which do not bear yet (Derrett, Ship Stability for Masters and Mates, pp. 246-249).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.landing import landing_estimate
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "unstable-before-settling"
_HINT = (
    "trim her closer to level, fill slack tanks to the top or take weight off high up, "
    "and have a naval architect judge the docking"
)


def check(context: Context) -> Iterator[Notice]:
    """Report a landing, by the hand method, that loses stability before settling or keeps less than is wanted."""
    found, plan = context.found(landing_estimate), context.package.docking_plan
    if found is None or plan is None:
        return
    at, zero = found.settling, found.instability
    lightship = context.package.lightship
    wanted = lightship.docking if lightship is not None else None
    place = wanted.trim.at if wanted is not None else plan.here
    if zero.margin < 0:
        message = (
            f"stability is lost at a draft of {show(zero.true_mean_draft, 'draft')}, before she lies on "
            f"all the blocks at {show(at.true_mean_draft, 'draft')}"
        )
        yield Notice(CODE, place, message, hints=(_HINT,))
    elif plan.least_gm is not None and not within(at.stability.gm, plan.least_gm.si, at_least=True):
        message = (
            "metacentric height as she comes to lie on all the blocks is "
            f"{show(at.stability.gm, 'metacentric height')}, and the least is {plan.least_gm}"
        )
        yield Notice(CODE, plan.least_gm.at, message, hints=(_HINT,))
