"""The checks of coherence of the owner's papers, by the subject of each."""

from __future__ import annotations

from tenderwright.checks.coherence.owner import (
    bids,
    earlier_prices,
    in_dock,
    money,
    order_of_days,
    prices,
    programme,
    shares,
    worth,
)
from tenderwright.checks.owner.context import OwnerCheck

OWNER_COHERENCE: tuple[OwnerCheck, ...] = (
    order_of_days.check,
    shares.check,
    prices.check,
    earlier_prices.check,
    money.check,
    worth.check,
    programme.check,
    bids.check,
    in_dock.check,
)
