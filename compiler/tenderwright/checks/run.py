"""Run every trade check over a package."""

from __future__ import annotations

from tenderwright.checks.coherence.registry import COHERENCE
from tenderwright.checks.context import Context, Unjudged
from tenderwright.checks.registry import CHECKS
from tenderwright.notices import Notice, sort_notices


def run_checks(context: Context) -> tuple[list[Notice], tuple[Unjudged, ...]]:
    """Run the trade checks in turn; give their notices, sorted by place, and what could not be judged."""
    notices: list[Notice] = []
    unjudged: list[Unjudged] = []
    for code, check in CHECKS.items():
        context.reasons.clear()
        notices += check(context)
        unjudged += [Unjudged(code, why) for why in context.reasons]
    for coherent in COHERENCE:
        notices += coherent(context)
    return sort_notices(notices), tuple(unjudged)
