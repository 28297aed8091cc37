"""Either this or that, where no choice is stated: the dearer of the two counts."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from tenderwright.pricing.money import ZERO, total

Instead = Mapping[str, tuple[str, ...]]
"""By each line that stands instead of others, those others."""


def groups(instead: Instead) -> dict[tuple[str, ...], list[str]]:
    """Give by the lines that count otherwise those that together stand in their place."""
    found: dict[tuple[str, ...], list[str]] = {}
    for number, others in instead.items():
        found.setdefault(others, []).append(number)
    return found


def dearer_by(amounts: Mapping[str, Decimal], instead: Instead) -> Decimal:
    """Give what the alternatives add where they are the dearer: the sum over all of max(0, this - that)."""
    return total(
        [
            max(ZERO, total([amounts[one] for one in these]) - total([amounts[one] for one in others]))
            for others, these in groups(instead).items()
        ]
    )
