"""No payment waits for a day of the calendar alone.

Rule: each payment waits for an event of the programme or for an item. Ground: programmes slip, and what is paid by the
calendar runs ahead of the work (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "paid-by-calendar"


def check(context: Context) -> Iterator[Notice]:
    """Report payments that wait for no work."""
    contract = context.package.contract
    for one in contract.payments if contract is not None else ():
        if not one.event and one.item is None:
            waits = f"only for {one.on}" if one.on is not None else "for nothing"
            message = f"the payment `{one.stage}` waits {waits}, whatever the work has reached"
            hint = "name the `item` that must be done first, or the `event` of the programme"
            yield Notice(CODE, one.here, message, hints=(hint,))
