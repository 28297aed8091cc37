"""What is known of a tender that is over: its docking, its days, and what became of each item."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from datetime import date

from msgspec import Struct

from tenderwright.model.history import EarlierDocking
from tenderwright.model.item import Item
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package

_DAY = re.compile(r"(?<!\d)(\d{4})-(\d\d)(?:-(\d\d))?(?!\d)")
_YEAR = re.compile(r"(?<![\w-])(20\d\d|19\d\d)(?![\w-])")
_OF_EVERY_DOCKING = ("services", "administration")
_PRICED_AS_IT_COMES = ("information", "owner", "provisional", "credit")


class Closed(Struct, frozen=True):
    """A tender that is over."""

    number: str
    docking: EarlierDocking | None
    """The docking that it led to; None where it led to none."""
    issued: date | None
    left_out: Mapping[str, str]
    """By item, what of it was not ordered or was taken out again."""

    def is_of_its_time(self, text: str) -> bool:
        """Tell whether a text names the tender, a day since its issue, or the year of its docking or a later one."""
        if self.number in text:
            return True
        if self.issued is None:
            return False
        days = (f"{year}-{month}-{day or '31'}" for year, month, day in _DAY.findall(text))
        if any(day >= self.issued.isoformat() for day in days):
            return True
        year = self.docking.docked.year if self.docking is not None else self.issued.year + 1
        return any(int(named) >= year for named in _YEAR.findall(_DAY.sub("", text)))

    def became_of(self, item: Item) -> str:
        """Say what became of an item and is to be asked of it; empty where it goes along as it is."""
        if self.docking is None:
            return ""
        put_off = [
            ", ".join(part for part in (one.what, one.where) if part)
            + (f" ({one.condition})" if one.condition else "")
            + (f". Why it was put off: {one.why}" if one.why else "")
            + (f". To be done: {one.by}" if one.by else "")
            for one in self.docking.deferred
            if one.item is not None and one.item.name == item.number
        ]
        if put_off:
            listed = "\n".join(f"- {one}" for one in put_off)
            return f"put off in the docking of {self.number}; say how it is done now:\n\n{listed}\n\nThe item said"
        if item.number in self.left_out:
            return f"in {self.number}: {self.left_out[item.number]}; say what is wanted now. The item said"
        if item.system in _OF_EVERY_DOCKING or item.kind in _PRICED_AS_IT_COMES:
            return ""
        return f"done in {self.number}; say what is wanted this time, or delete this file. The item said"


def closed_tender(package: Package, papers: OwnerPapers, number: str) -> Closed:
    """Find what a package knows of its tender, now over."""
    tender = package.tender
    issued = tender.dates.issued if tender is not None else None
    since = [one for one in package.history if issued is not None and one.docked > issued]
    docking = max(since, key=lambda one: one.docked, default=None)
    return Closed(number, docking, issued, _left_out(package.items, papers))


def _left_out(items: Iterable[Item], papers: OwnerPapers) -> dict[str, str]:
    """Say of each item what of it was not ordered, or was taken out again."""
    award = papers.award
    if award is None:
        return {}
    taken = {one.name for one in award.options}
    left = {one.number: "an option that was not taken up" for one in items if one.kind == "option"}
    left = {number: words for number, words in left.items() if number not in taken}
    left |= {one.name: "not awarded" for one in award.dropped}
    for _, paper in sorted(papers.in_dock.items()):
        left |= {one.work.name: f"taken out in dock ({one.why})" for one in paper.deleted}
        left |= {one.work.name: f"put off in dock ({one.why})" for one in paper.deferred}
        for back in paper.restored:
            left.pop(back.work.name, None)
    by_item: dict[str, list[str]] = {}
    for work, words in left.items():
        item = work.partition(".")[0]
        by_item.setdefault(item, []).append(words if work == item else f"line {work} {words}")
    return {item: "; ".join(words) for item, words in by_item.items()}
