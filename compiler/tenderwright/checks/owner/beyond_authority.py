"""Whoever signs a change may sign for so much.

Ground: at the overhaul of an Army vessel changes stood still, and the yard went on at its own cost, since it was not
settled who could agree them and up to what; write who may sign, and for how much (FAR 43.102 lets contracting officers
alone sign changes, within their authority; from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.pricing.money import written


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each change above the greatest amount that who signed it may sign for."""
    if context.ledger is None:
        return
    award = context.ledger.contract.award
    for change in context.ledger.changes:
        who = change.order.by
        authority = award.may_sign(who.name) if who is not None and change.order.signed is not None else None
        if authority is None or authority.up_to is None or change.amount <= authority.up_to:
            continue
        message = (
            f"change {change.name} comes to {written(change.amount)}, and {authority.who} may sign up to "
            f"{written(authority.up_to)}"
        )
        able = [one.who for one in award.authority if one.up_to is None or change.amount <= one.up_to]
        hint = f"have it signed by {' or '.join(able)}" if able else "nobody named in the award may sign it"
        yield Notice("beyond-authority", change.order.here, message, hints=(hint,))
