"""Which items apply a coating scheme."""

from __future__ import annotations

from tenderwright.model.coating import Scheme
from tenderwright.model.item import Item
from tenderwright.model.package import Package


def appliers(package: Package, scheme: Scheme) -> list[Item]:
    """Give the items that list a scheme, and the one that the scheme itself names, in order of number."""
    named = scheme.item.name if scheme.item is not None else None
    return [
        item
        for item in package.items
        if not item.withdrawn
        and (item.number == named or any(reference.name == scheme.scheme for reference in item.schemes))
    ]
