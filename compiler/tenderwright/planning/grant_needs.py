"""What has to be funded with the items of an application: the items that they need, near and far."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.model.funding import Scope
from tenderwright.planning.grant_entries import Chosen
from tenderwright.pricing.price import Estimate, PricedItem


@dataclass(frozen=True)
class Needed:
    """An item that others of the application need and that is not among them."""

    item: PricedItem
    by: tuple[str, ...]
    """The items that name it, by number; items needed only by another needed one stand with that one."""
    inside: Decimal | None
    """The part of it that is in the application, for a shared service; None for an item that is funded elsewhere."""


def needed(chosen: Chosen, estimate: Estimate, scope: Scope | None) -> tuple[Needed, ...]:
    """List what the chosen items need beyond themselves: every service of which they carry a part, and other items.

    An item needs what the owner's scope says, and every shared service that it depends on.
    """
    priced = {one.item.number: one for one in estimate.items}
    needs = {number: _needs(one, priced, scope) for number, one in priced.items()}
    named: dict[str, dict[str, None]] = {}
    waiting = [one.item.number for one in chosen.work]
    seen = set(waiting)
    while waiting:
        number = waiting.pop(0)
        for other in needs[number]:
            named.setdefault(other, {})[number] = None
            if other not in seen:
                seen.add(other)
                waiting.append(other)
    parts = {one.item.number: chosen.part_of(one) for one in chosen.services}
    own = {one.item.number for one in chosen.work}
    carried = {number for number, part in parts.items() if part}
    found = [number for number in priced if number not in own and (number in named or number in carried)]
    return tuple(Needed(priced[one], tuple(sorted(named.get(one, ()), key=int)), parts.get(one)) for one in found)


def _needs(one: PricedItem, priced: Mapping[str, PricedItem], scope: Scope | None) -> tuple[str, ...]:
    worth = scope.items.get(one.item.number) if scope is not None else None
    wanted = [reference.name for reference in worth.needs] if worth is not None else []
    rests_on = (reference.name for reference in one.item.depends_on)
    services = [name for name in rests_on if name in priced and priced[name].is_shared]
    return tuple(name for name in dict.fromkeys([*wanted, *services]) if name in priced)
