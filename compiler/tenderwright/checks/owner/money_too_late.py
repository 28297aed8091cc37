"""Money that has to be spent by a day is spent by then: the work is done before it.

Ground: grants pay for work within their period (common practice; check the funder's current notice).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each source whose last day of spending comes before redelivery."""
    tender = context.package.tender
    redelivery = tender.events.get("redelivery") if tender is not None else None
    if redelivery is None or context.papers.funding is None:
        return
    for source in context.papers.funding.sources:
        if source.spend_by is not None and source.spend_by < redelivery:
            message = f"`{source.source}` has to be spent by {source.spend_by}, and she is delivered on {redelivery}"
            hint = "ask the funder for more time, and write the new day when its letter has come"
            yield Notice("money-too-late", source.here, message, hints=(hint, "or leave the money out"))
