"""What others have granted for the costs of an application, which is taken off so that nothing is paid twice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from tenderwright.model.funding import FundingSource, Granted
from tenderwright.planning.grant_entries import Chosen, Entry
from tenderwright.pricing.money import ZERO, cents, in_proportion, total


@dataclass(frozen=True)
class TakenOff:
    """What a source has granted for an item or line, and how much of that is taken off an application."""

    source: FundingSource
    granted: Granted
    amount: Decimal

    @property
    def beyond(self) -> Decimal:
        """Give what is granted beyond all that the application counts for it."""
        return self.granted.amount - self.amount


def take_off(
    entries: Sequence[Entry], chosen: Chosen, others: Sequence[FundingSource]
) -> tuple[tuple[Entry, ...], tuple[TakenOff, ...]]:
    """Take what others have granted off the costs that they granted it for, lines first, then items.

    What is granted for an item comes off its own lines, each by what is left of it, where that is not enough off its
    contingency, and then off the shared services that the work carries. Of what is granted for a shared service the
    part is taken off that the application carries of it.
    """
    open_ = list(entries)
    taken: list[TakenOff] = []
    for source, granted in sorted(_grants(others), key=lambda pair: "." not in pair[1].work.name):
        left = cents(granted.amount * _carried(granted, chosen))
        before = left
        for places in _places(granted, open_):
            room = [max(open_[place].left, ZERO) for place in places]
            parts = in_proportion(min(left, total(room)), room)
            for place, part in zip(places, parts, strict=True):
                open_[place] = replace(open_[place], granted=open_[place].granted + part)
            left -= total(parts)
        if before - left:
            taken.append(TakenOff(source, granted, before - left))
    return tuple(open_), tuple(taken)


def _grants(others: Sequence[FundingSource]) -> Iterator[tuple[FundingSource, Granted]]:
    for source in others:
        for granted in source.granted:
            yield source, granted


def _carried(granted: Granted, chosen: Chosen) -> Decimal:
    """Give how much of what a grant is for the application carries: all, unless it is for a shared service."""
    number = granted.work.name.split(".")[0]
    service = next((one for one in chosen.services if one.item.number == number), None)
    if service is None or not service.direct:
        return Decimal(1)
    return chosen.part_of(service) / service.direct


def _places(granted: Granted, entries: Sequence[Entry]) -> Iterator[list[int]]:
    """Yield which costs a grant comes off, in turn."""
    number, dot, _ = granted.work.name.partition(".")
    its = [place for place, one in enumerate(entries) if one.item is not None and one.item.number == number]
    if dot:
        yield [place for place in its if entries[place].number == granted.work.name]
    elif its:
        yield [place for place in its if not entries[place].contingency]
        yield [place for place in its if entries[place].contingency]
        if all(entries[place].sort == "work" for place in its):
            yield [place for place, one in enumerate(entries) if one.sort == "service"]
