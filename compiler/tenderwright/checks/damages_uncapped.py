"""Damages for lateness have a most.

Rule: where `damages` are asked, `most` says how far they go. Ground: no yard's insurer bears what has no end, so it is
priced into the bid or argued about; 5 to 10 % of the price is usual (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "damages-uncapped"


def check(context: Context) -> Iterator[Notice]:
    """Report damages that go on without end."""
    tender = context.package.tender
    damages = tender.damages if tender is not None else None
    if damages is None or damages.most is not None:
        return
    if any(todo.at == ("damages", "most") for todo in context.package.todos):
        return
    message = f"the damages of {damages.a_day} for each day of lateness have no end"
    hint = "say under `most` how far they go, as a share of the contract price, such as `10 %`"
    yield Notice(CODE, damages.here, message, hints=(hint,))
