"""The costs of an application one by one: lines of the chosen items, their part of the services, and what is added."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from tenderwright.model.funding import FundingSource
from tenderwright.model.grant import Grant
from tenderwright.model.item import Item
from tenderwright.model.profile import Profile
from tenderwright.planning.outlook import CostOutlook
from tenderwright.pricing.money import ZERO, cents, in_proportion, total
from tenderwright.pricing.price import Estimate, PricedItem, PricedLine
from tenderwright.pricing.sections import UNCOUNTED

LEVELS = {"P50": 0.50, "P80": 0.80}


@dataclass(frozen=True)
class Entry:
    """One cost of an application, with its category and the funder's share of it."""

    sort: str
    """Work, service, outside or in kind."""
    number: str
    """Of its line; empty where it has none."""
    item: Item | None
    what: str
    kind: str
    category: str
    amount: Decimal
    barred: str = ""
    """Why the funder does not pay for it; empty where it does."""
    contingency: bool = False
    phase: str = ""
    """Of the application; empty where it is of no one phase."""
    granted: Decimal = ZERO
    """What others have granted for it already; it is taken off before anything is asked."""
    grant: Decimal = ZERO

    @property
    def left(self) -> Decimal:
        """Give what nobody has granted yet."""
        return self.amount - self.granted

    @property
    def eligible(self) -> Decimal:
        """Give what is left of the amount where it is eligible, else nothing."""
        return ZERO if self.barred else self.left

    @property
    def not_eligible(self) -> Decimal:
        """Give what is left of the amount where it is not eligible, else nothing."""
        return self.left if self.barred else ZERO

    @property
    def match(self) -> Decimal:
        """Give what others pay or give of it."""
        return self.eligible - self.grant


@dataclass(frozen=True)
class Chosen:
    """The items of an application, and the shared services of which they carry a part."""

    work: tuple[PricedItem, ...]
    lines: tuple[PricedLine, ...]
    """Of the work."""
    services: tuple[PricedItem, ...]
    service_lines: tuple[tuple[PricedLine, Decimal], ...]
    """Lines of the shared services, and of each the part that the work carries."""

    @property
    def shared(self) -> Decimal:
        """Give the part of the shared services that the work carries."""
        return total([part for _, part in self.service_lines])

    def part_of(self, service: PricedItem) -> Decimal:
        """Give the part of one service that the work carries."""
        return total([part for line, part in self.service_lines if line.item is service.item])


def choose(grant: Grant, profile: Profile, estimate: Estimate, source: FundingSource | None) -> Chosen:
    """Choose the items: those named, else those the source may pay for, else all.

    What the items carry of the shared services is shared out over the lines of the services by their amounts.
    """
    own = (*grant.items, *(reference for phase in grant.phases for reference in phase.items))
    named = {reference.name for reference in own or (source.only if source is not None else ())}
    whole = profile.shared == "whole"
    inside = [one for one in estimate.items if not named or one.item.number in named]
    work = [one for one in inside if not one.is_shared or (whole and named)]
    numbers = {one.item.number for one in work}
    services = [one for one in estimate.items if one.is_shared and one.item.number not in numbers]
    carried = total([one.shared for one in work])
    pool = [line for line in estimate.lines if any(one.is_shared and one.item is line.item for one in estimate.items)]
    parts = in_proportion(carried, [line.amount for line in pool])
    return Chosen(
        tuple(work),
        tuple(line for line in estimate.lines if line.item.number in numbers),
        tuple(services),
        tuple(pair for pair in zip(pool, parts, strict=True) if pair[0].item.number not in numbers),
    )


def entries(
    grant: Grant, profile: Profile, chosen: Chosen, outlook: CostOutlook, source: FundingSource | None
) -> list[Entry]:
    """List every cost of an application, by phase where it has any; raises KeyError where a category is none."""
    made = _Entries(grant, profile, chosen, outlook, source)
    found = [*made.work(), *made.services(), *made.outside(), *made.in_kind()]
    return by_phase(found, grant, chosen) if grant.phases else found


def by_phase(found: Sequence[Entry], grant: Grant, chosen: Chosen) -> list[Entry]:
    """Put the work into its phases, and split each part of a shared service as the items of the phases carry it."""
    of = {reference.name: phase.phase for phase in grant.phases for reference in phase.items}
    carried: dict[str, Decimal] = {}
    for one in chosen.work:
        phase = of.get(one.item.number, "")
        carried[phase] = carried.get(phase, ZERO) + one.shared
    split: list[Entry] = []
    for entry in found:
        if entry.sort == "work" and entry.item is not None:
            split.append(replace(entry, phase=of.get(entry.item.number, "")))
        elif entry.sort == "service" and total(list(carried.values())):
            parts = in_proportion(entry.amount, list(carried.values()))
            split += [
                replace(entry, phase=phase, amount=part) for phase, part in zip(carried, parts, strict=True) if part
            ]
        else:
            split.append(entry)
    return split


@dataclass(frozen=True)
class _Entries:
    grant: Grant
    profile: Profile
    chosen: Chosen
    outlook: CostOutlook
    source: FundingSource | None

    def work(self) -> Iterator[Entry]:
        for item in self.chosen.work:
            lines = [line for line in self.chosen.lines if line.item is item.item]
            made = [self._line("work", line, line.amount) for line in lines]
            yield from made
            yield from self._contingency("work", item, made, Decimal(1))

    def services(self) -> Iterator[Entry]:
        for service in self.chosen.services:
            pairs = [pair for pair in self.chosen.service_lines if pair[0].item is service.item and pair[1]]
            made = [self._line("service", line, part) for line, part in pairs]
            yield from made
            if made and service.direct:
                yield from self._contingency("service", service, made, self.chosen.part_of(service) / service.direct)

    def outside(self) -> Iterator[Entry]:
        for cost in self.grant.costs:
            barred = "" if cost.eligible else "not eligible, by the owner's reading"
            category = self._named(cost.category.name)
            phase = cost.phase.name if cost.phase is not None else ""
            yield Entry("outside", "", None, cost.what, "", category, cents(cost.amount), barred, phase=phase)

    def in_kind(self) -> Iterator[Entry]:
        for gift in self.grant.in_kind:
            value = cents(Decimal(repr(round(gift.hours.si / 3600, 6))) * gift.rate)
            phase = gift.phase.name if gift.phase is not None else ""
            yield Entry("in kind", "", None, gift.what, "", self._named(gift.category.name), value, phase=phase)

    def _line(self, sort: str, line: PricedLine, amount: Decimal) -> Entry:
        kind = line.item.kind_of(line.line)
        category, barred = self._category(sort, line, kind), self._barred(sort, line.item, kind)
        return Entry(sort, line.number, line.item, line.line.text, kind, category, amount, barred)

    def _category(self, sort: str, line: PricedLine, kind: str) -> str:
        chosen = self.grant.categories.get(line.number) or self.grant.categories.get(line.item.number)
        if chosen is not None:
            return self._named(chosen.name)
        words = [kind, line.item.system] + (["shared services"] if sort == "service" else [])
        return (self.profile.category_taking(*words) or self.profile.default).category

    def _named(self, name: str) -> str:
        found = self.profile.category_named(name)
        if found is None:
            raise KeyError(name)
        return found.category

    def _barred(self, sort: str, item: Item, kind: str) -> str:
        source = self.source
        if source is not None and source.only and item.number not in {one.name for one in source.only}:
            return "the source pays for other items"
        if source is not None and source.eligible and kind not in source.eligible:
            return f"the source does not pay for {kind} work"
        if sort == "service" and self.profile.shared == "not eligible":
            return "the form does not take shared services"
        return ""

    def _contingency(self, sort: str, item: PricedItem, made: Sequence[Entry], share: Decimal) -> Iterator[Entry]:
        """Yield what an item has to be given beyond its likely price, to be sure at the confidence wanted."""
        sure = self.outlook.by_item.get(item.item.number)
        if sure is None or not made:
            return
        likely = total([line.amount for line in self._counted(item)])
        amount = cents((sure[LEVELS[self.grant.confidence]] - likely) * share)
        if not amount:
            return
        largest = max(made, key=lambda one: abs(one.amount))
        barred = "" if any(not one.barred for one in made) else made[0].barred
        if not barred and self.profile.contingency == "refused":
            barred = "the form does not take contingency"
        own = self.profile.category_taking("contingency") or self.profile.default
        category = largest.category if self.profile.contingency == "allowed" else own.category
        what = f"Contingency to {self.grant.confidence}"
        yield Entry(sort, "", item.item, what, "", category, amount, barred, contingency=True)

    def _counted(self, item: PricedItem) -> list[PricedLine]:
        """Give the lines of an item that the trials count in the whole: all but options."""
        lines = [*self.chosen.lines, *(line for line, _ in self.chosen.service_lines)]
        return [line for line in lines if line.item is item.item and line.section.code not in UNCOUNTED]
