"""The payments of a contract come to the contract price.

Rule: the shares of all payments add up to 100 %. Ground: they are shares of one price.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "payments-not-whole"
_EQUAL = 1e-6


def check(context: Context) -> Iterator[Notice]:
    """Report payments whose shares do not add up to the price."""
    contract = context.package.contract
    if contract is None or not contract.payments:
        return
    whole = sum(one.share.si for one in contract.payments)
    if abs(whole - 1.0) > _EQUAL:
        told = " + ".join(f"{100 * one.share.si:.4g}" for one in contract.payments)
        message = f"the payments are {told} = {100 * whole:.4g} % of the contract price, and not the whole of it"
        hint = "let the shares add up to 100 %; what is held back of each payment is written under `retention`"
        yield Notice(CODE, contract.payments[0].share.at, message, hints=(hint,))
