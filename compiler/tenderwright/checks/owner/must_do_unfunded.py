"""What has to be done whatever the money is not dearer than the money in hand.

Ground: a ship in dock whose owner cannot pay stays there (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.planning.scope import money_in_hand, must_do
from tenderwright.pricing.money import total, written


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report must-do items whose likely cost is above the money in hand that may pay for them."""
    scope, funding, estimate = context.papers.scope, context.papers.funding, context.estimate
    if scope is None or funding is None or estimate is None:
        return
    must = must_do(scope)
    cost = total([one.direct for one in estimate.items if one.item.number in must])
    money = money_in_hand(funding, must)
    if cost > money:
        message = (
            f"the must-do items come to {written(cost)} as likely, and the money in hand for them to {written(money)}"
        )
        hint = "take items off the must-do list, or dock only once more money is in hand"
        yield Notice("must-do-unfunded", scope.here, message, hints=(hint,))
