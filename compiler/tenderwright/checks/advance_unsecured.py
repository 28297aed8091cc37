"""What is paid before any work is done is covered by a refund guarantee.

Rule: the payments due at the award or at her arrival come to no more than the refund guarantees. Ground: a yard that
fails has then nothing of the ship's to show for the money (derived; refund guarantees are common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.contract import REFUND
from tenderwright.notices import Notice

CODE = "advance-unsecured"
_EQUAL = 1e-9


def check(context: Context) -> Iterator[Notice]:
    """Report payments before work that no refund guarantee covers."""
    contract = context.package.contract
    if contract is None:
        return
    ahead = [one for one in contract.payments if one.ahead]
    paid = sum(one.share.si for one in ahead)
    secured = sum(one.share.si for one in contract.securities_of(REFUND))
    if paid > secured + _EQUAL:
        covers = f"refund guarantees cover {100 * secured:.4g} %" if secured else "no refund guarantee covers it"
        message = f"{100 * paid:.4g} % of the price is paid before any work is done, and {covers}"
        hint = "ask for a `refund guarantee` of the same share under `securities`, or let the payment wait for work"
        yield Notice(CODE, ahead[-1].share.at, message, hints=(hint,))
