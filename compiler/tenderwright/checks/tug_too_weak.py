"""The tug has the bollard pull that the worst of the weathers asks, under way or hove to.

Ground: a tow that the tug cannot hold drifts with her (MSC/Circ.884, Guidelines for safe ocean towing; its survival
case is from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.tow_pull import tow_pull, tow_tug
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "tug-too-weak"
_HINT = "take a stronger tug or a second one, or sail in less wind; the tow surveyor judges it"


def check(context: Context) -> Iterator[Notice]:
    """Report a tug whose bollard pull is less than is asked."""
    plan = context.package.tow
    tug = plan.tugs[0] if plan is not None and plan.tugs else None
    if tug is None or tug.bollard_pull is None:
        return
    found, asked = context.found(tow_tug), context.found(tow_pull)
    if found is not None and found.met is False and asked is not None:
        weather = asked["governs"]
        needed = show(asked["bollard"], "weight")
        message = f"the tug pulls {tug.bollard_pull}, and {needed} is asked of her ({weather})"
        yield Notice(CODE, tug.bollard_pull.at, message, hints=(_HINT,))
