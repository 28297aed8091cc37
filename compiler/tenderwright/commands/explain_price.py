"""What `explain` says of a price: every step to it, and what the item carries of shared services."""

from __future__ import annotations

from tenderwright.pricing.amount import SHARES
from tenderwright.pricing.money import written
from tenderwright.pricing.price import Estimate, PricedLine


def line_price(line: PricedLine) -> list[str]:
    """Say how the price of a line is come by."""
    price = line.unit_price
    at = f"{price.likely.normalize():f} %" if line.form in SHARES else written(price.likely)
    of = f" of {written(line.quantity.number)}, the sum of {', '.join(line.of)}," if line.of else ""
    told = [f"at {at}{of} = {written(line.amount)}   [{line.basis or 'no basis given'}]"]
    if len(price.steps) > 1:
        told += [f"  {step.what} -> {written(step.gives)}" for step in price.steps]
    told.append(f"  class {price.estimate_class}; from {written(line.low)} to {written(line.high)}" + _range(line))
    return told


def _range(line: PricedLine) -> str:
    if line.least == line.most:
        return ""
    return f", of {line.least.normalize():f} to {line.most.normalize():f} {line.quantity.unit}"


def item_price(number: str, estimate: Estimate) -> list[str]:
    """Say what an item comes to, with its part of the shared services."""
    found = next((one for one in estimate.items if one.item.number == number), None)
    if found is None:
        return []
    if found.is_shared:
        return [f"price {written(found.direct)}, a shared service, spread over the others {estimate.shared_rule}"]
    shared = f" + {written(found.shared)} of shared services, {estimate.shared_rule}" if found.shared else ""
    return [f"price {written(found.direct)}{shared} = {written(found.loaded)}"]
