"""What the docking will come to stays within the contract and its contingency.

Ground: the contingency is what the trustees agreed to spend beyond the contract; who sees it run out in time can still
leave work out (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.pricing.money import written


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report a forecast beyond the contract and its contingency on the last day that is told of."""
    made = context.account
    if made is None or made.ledger.contract.award.contingency is None or made.contingency_left >= 0:
        return
    message = (
        f"the forecast of {made.on} is {written(made.forecast)}, {written(-made.contingency_left)} more than the "
        "contract and its contingency"
    )
    hint = "`tenderwright statement` lists what can still be put off, and what that saves"
    yield Notice("contingency-spent", made.ledger.contract.award.here, message, hints=(hint,))
