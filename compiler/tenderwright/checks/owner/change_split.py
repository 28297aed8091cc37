"""Work that one office may not sign for as one change is not signed by it in parts.

Ground: a limit of signature protects trustees from what they have not seen, and holds for the work and not for the
sheet of paper (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Note, Notice
from tenderwright.pricing.in_dock.split import splits
from tenderwright.pricing.money import written


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report changes that belong together and pass, as one, the limit of who signed each of them."""
    ledger = context.ledger
    if ledger is None or ledger.last is None:
        return
    award = ledger.contract.award
    for one in splits(ledger, ledger.last):
        *others, last = one.changes
        names = " and ".join([", ".join(change.name for change in others), last.name])
        message = (
            f"changes {names}, of {one.what}, come to {written(one.amount)} together, and {one.who} may sign up to "
            f"{written(one.up_to)}"
        )
        able = [each.who for each in award.authority if each.up_to is None or one.amount <= each.up_to]
        hint = f"have the last of them signed by {' or '.join(able)}, who see it with the others" if able else ""
        notes = tuple(Note(f"change {change.name} is here", change.order.here) for change in others)
        yield Notice("change-split", last.order.here, message, notes, hints=(hint,) if hint else ())
