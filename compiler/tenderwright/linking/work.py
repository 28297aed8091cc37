"""Resolve the items and lines of the tender that the owner's papers name by number."""

from __future__ import annotations

from collections.abc import Collection

from tenderwright.model.package import Package
from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean


def dead_work(number: str, at: Place, known: Collection[str], package: Package) -> Notice | None:
    """Report an item or a line that the tender does not have; all lines of an item that is not there are one cause."""
    item = number.split(".")[0]
    if number in known or package.broken.may_hold("item", item):
        return None
    whole = item not in package.item_by_name
    what = f"item {item}" if whole or "." not in number else f"line {number}"
    return Notice("dead-reference", at, f"there is no {what}", hints=did_you_mean(number, known), cause=what)
