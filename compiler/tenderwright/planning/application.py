"""An application for a grant in figures: every cost with its category, and who pays it; all sums agree to the cent."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cached_property

import msgspec

from tenderwright.model.funding import Funding, FundingSource
from tenderwright.model.grant import Grant, GrantAlternative, GrantPhase
from tenderwright.model.profile import Profile, ProfileCategory
from tenderwright.planning.grant_entries import Chosen, Entry, choose, entries
from tenderwright.planning.grant_granted import TakenOff, take_off
from tenderwright.planning.grant_match import Drawn, Matching, in_kind_share, match
from tenderwright.planning.outlook import CostOutlook
from tenderwright.planning.scope import available
from tenderwright.pricing.money import CENT, ZERO, cents, cents_down, in_proportion, total
from tenderwright.pricing.price import Estimate


@dataclass(frozen=True)
class Split:
    """A sum, and who pays it: others who granted it already, funder, match, and other money for what is not eligible.

    The four add up to the sum.
    """

    total: Decimal
    granted: Decimal
    grant: Decimal
    match: Decimal
    not_eligible: Decimal

    @classmethod
    def of(cls, entries: Iterable[Entry]) -> Split:
        """Add entries up."""
        found = list(entries)
        return cls(
            total([one.amount for one in found]),
            total([one.granted for one in found]),
            total([one.grant for one in found]),
            total([one.match for one in found]),
            total([one.not_eligible for one in found]),
        )


@dataclass(frozen=True)
class CategoryRow:
    """What stands in a category of the funder's form."""

    category: ProfileCategory
    split: Split


@dataclass(frozen=True)
class CategoryGroup:
    """Categories that are summed up together."""

    title: str
    rows: tuple[CategoryRow, ...]
    split: Split


@dataclass(frozen=True)
class CostRow:
    """What an item costs in the application, or a service by its part, or something outside the tender."""

    sort: str
    """Work, service, outside or in kind."""
    number: str
    title: str
    likely: Decimal
    contingency: Decimal
    split: Split
    barred: str
    """Why it, or some of it, is not paid for; empty where all of it is eligible."""


@dataclass(frozen=True)
class NotEligible:
    """What is not paid for, for one reason."""

    why: str
    what: tuple[str, ...]
    """Items by number, and other costs by name."""
    amount: Decimal


@dataclass(frozen=True)
class PhaseRow:
    """What a phase comes to, and who pays it; None for what is of no one phase."""

    phase: GrantPhase | None
    split: Split


@dataclass(frozen=True)
class Alternative:
    """One of the things that are asked for either or, worked out by itself."""

    alternative: GrantAlternative
    application: Application


@dataclass(frozen=True)
class Reconciliation:
    """The sums of an application side by side, each added up in its own way."""

    direct: Decimal
    """Own lines of the chosen items, from the estimate."""
    shared: Decimal
    """Their part of the shared services, from the estimate."""
    contingency: Decimal
    outside: Decimal
    in_kind: Decimal
    by_category: Decimal
    by_row: Decimal
    by_payer: Decimal

    @property
    def whole(self) -> Decimal:
        """Give the sum of what it is made of."""
        return total([self.direct, self.shared, self.contingency, self.outside, self.in_kind])

    @property
    def holds(self) -> bool:
        """Tell whether all sums agree to the cent."""
        return self.whole == self.by_category == self.by_row == self.by_payer


@dataclass(frozen=True)
class Application:
    """An application in figures."""

    grant: Grant
    profile: Profile
    source: FundingSource | None
    chosen: Chosen
    entries: tuple[Entry, ...]
    asked: Decimal
    ceiling: Decimal
    """The most that may be asked, by the eligible costs and the match."""
    matching: Matching
    taken_off: tuple[TakenOff, ...]
    alternatives: tuple[Alternative, ...] = ()
    """All that are asked for either or, the first being this one."""

    @cached_property
    def phases(self) -> tuple[PhaseRow, ...]:
        """Give the phases in turn, and last what is of no one phase; they add up to the whole cost."""
        rows = [PhaseRow(one, self._of_phase(one.phase)) for one in self.grant.phases]
        rest = self._of_phase("")
        return (*rows, *([PhaseRow(None, rest)] if rows and rest.total else []))

    def _of_phase(self, name: str) -> Split:
        return Split.of(one for one in self.entries if one.phase == name)

    @property
    def too_much(self) -> Decimal:
        """Give by how much the money asked is above what may be asked; nothing or less where it is not."""
        most = self.ceiling if self.source is None else min(self.ceiling, self.source.amount)
        return self.asked - most

    @property
    def drawn(self) -> tuple[Drawn, ...]:
        """Give who pays the match in money, and how much of it."""
        return self.matching.drawn

    @cached_property
    def whole(self) -> Split:
        """Give the whole cost, and who pays it."""
        return Split.of(self.entries)

    @cached_property
    def groups(self) -> tuple[CategoryGroup, ...]:
        """Give the categories in the order of the form, by group; empty ones too, for the form has them."""
        groups: list[CategoryGroup] = []
        for title in dict.fromkeys(category.group for category in self.profile.categories):
            rows = [self._category(one) for one in self.profile.categories if one.group == title]
            names = {row.category.category for row in rows}
            split = Split.of(one for one in self.entries if one.category in names)
            groups.append(CategoryGroup(title, tuple(rows), split))
        return tuple(groups)

    def _category(self, category: ProfileCategory) -> CategoryRow:
        return CategoryRow(category, Split.of(one for one in self.entries if one.category == category.category))

    @cached_property
    def rows(self) -> tuple[CostRow, ...]:
        """Give items, services by their part, costs outside and gifts in kind, in this order."""
        found: dict[tuple[str, str], list[Entry]] = {}
        for place, entry in enumerate(self.entries):
            key = entry.item.number if entry.item is not None else str(place)
            found.setdefault((entry.sort, key), []).append(entry)
        return tuple(_row(sort, inside) for (sort, _), inside in found.items())

    def of_sort(self, sort: str) -> tuple[CostRow, ...]:
        """Give the rows of a sort."""
        return tuple(row for row in self.rows if row.sort == sort)

    @property
    def not_eligible(self) -> tuple[NotEligible, ...]:
        """Give what is not paid for, by the reason."""
        reasons = dict.fromkeys(one.barred for one in self.entries if one.barred)
        return tuple(_not_eligible(why, [one for one in self.entries if one.barred == why]) for why in reasons)

    @property
    def in_kind(self) -> Decimal:
        """Give the value of what is given in kind."""
        return total([one.amount for one in self.entries if one.sort == "in kind"])

    @property
    def cash_match(self) -> Decimal:
        """Give the match that has to be paid in money."""
        return self.whole.match - self.in_kind

    @property
    def to_be_found(self) -> Decimal:
        """Give the match that no source named so far pays."""
        return self.cash_match - total([one.amount for one in self.drawn])

    @cached_property
    def reconciliation(self) -> Reconciliation:
        """Put the sums side by side: what the estimate says, the categories, the rows, and the payers."""
        whole = self.whole
        return Reconciliation(
            direct=total([one.direct for one in self.chosen.work]),
            shared=self.chosen.shared,
            contingency=total([one.amount for one in self.entries if one.contingency]),
            outside=total([one.amount for one in self.entries if one.sort == "outside"]),
            in_kind=self.in_kind,
            by_category=total([row.split.total for group in self.groups for row in group.rows]),
            by_row=total([row.split.total for row in self.rows]),
            by_payer=total([whole.granted, whole.grant, whole.match, whole.not_eligible]),
        )


def _not_eligible(why: str, inside: Sequence[Entry]) -> NotEligible:
    what = dict.fromkeys(one.item.number if one.item is not None else one.what for one in inside)
    return NotEligible(why, tuple(what), total([one.left for one in inside]))


def _row(sort: str, inside: Sequence[Entry]) -> CostRow:
    first = inside[0]
    item = first.item
    return CostRow(
        sort,
        item.number if item is not None else "",
        item.title if item is not None else first.what,
        total([one.amount for one in inside if not one.contingency]),
        total([one.amount for one in inside if one.contingency]),
        Split.of(inside),
        "; ".join(dict.fromkeys(one.barred for one in inside if one.barred)),
    )


def application(
    grant: Grant, profile: Profile, estimate: Estimate, outlook: CostOutlook, funding: Funding | None
) -> Application:
    """Work out an application; raises KeyError where its source, or a category that it names, is none.

    Of what it asks for either or each is worked out by itself, with the items that all have in common, and the first is
    the application.
    """
    if grant.alternatives:
        each = [
            Alternative(one, application(_with(grant, one), profile, estimate, outlook, funding))
            for one in grant.alternatives
        ]
        return replace(each[0].application, alternatives=tuple(each))
    sources = funding.sources if funding is not None else ()
    source = _source(grant, sources)
    chosen = choose(grant, profile, estimate, source)
    others = [one for one in sources if one is not source]
    found, taken_off = take_off(entries(grant, profile, chosen, outlook, source), chosen, others)
    ceiling = _ceiling(found, source)
    offered = available(source) if source is not None else ZERO
    asked = cents(_asked(grant, min(offered, ceiling)))
    paid = _granted_by_phase(found, grant) if _by_phase(grant) else _granted(found, asked)
    matching = match(paid, others, source, may_be_asked=asked <= ceiling)
    return Application(grant, profile, source, chosen, paid, asked, ceiling, matching, taken_off)


def _with(grant: Grant, one: GrantAlternative) -> Grant:
    return msgspec.structs.replace(grant, items=(*grant.items, *one.items), asked=one.asked, alternatives=())


def _by_phase(grant: Grant) -> bool:
    """Tell whether each phase says what is asked for it."""
    return bool(grant.phases) and all(one.asked is not None for one in grant.phases)


def _asked(grant: Grant, most: Decimal) -> Decimal:
    """Give what is asked: by the phases, or as said, or else as much as may be."""
    if _by_phase(grant):
        return total([one.asked for one in grant.phases if one.asked is not None])
    return most if grant.asked is None else grant.asked


def _granted_by_phase(found: Sequence[Entry], grant: Grant) -> tuple[Entry, ...]:
    """Share what is asked for each phase over its own eligible costs."""
    paid = list(found)
    for phase in grant.phases:
        places = [place for place, one in enumerate(found) if one.phase == phase.phase]
        inside = _granted([found[place] for place in places], cents(phase.asked or ZERO))
        for place, one in zip(places, inside, strict=True):
            paid[place] = one
    return tuple(paid)


def _source(grant: Grant, sources: Sequence[FundingSource]) -> FundingSource | None:
    if grant.source is None:
        return None
    found = next((one for one in sources if one.source == grant.source.name), None)
    if found is None:
        raise KeyError(grant.source.name)
    return found


def _ceiling(found: Sequence[Entry], source: FundingSource | None) -> Decimal:
    """Give the most that may be asked: eligible money, and so much that the match is there.

    g + m g <= E + K, g + (1 - k) m g <= E and g <= E, with E the eligible costs in money, K what is given in kind, m
    the match wanted for each unit of the grant and k the share of it that may be given in kind, which is
    counted in whole cents. Derived.
    """
    cash = total([one.eligible for one in found if one.sort != "in kind"])
    given = total([one.eligible for one in found if one.sort == "in kind"])
    match_ = Decimal(repr(source.match.si)) if source is not None and source.match is not None else ZERO
    share = in_kind_share(source)
    most = [cash, cents_down((cash + given) / (1 + match_))]
    if share is not None:
        part = CENT if 0 < share < 1 else ZERO
        most.append(cents_down((cash - part) / (1 + match_ * (1 - Decimal(share.numerator) / share.denominator))))
    return max(min(most), ZERO)


def _granted(found: Sequence[Entry], asked: Decimal) -> tuple[Entry, ...]:
    """Share the money asked over the eligible costs, each by its amount."""
    eligible = [one.eligible if one.sort != "in kind" else ZERO for one in found]
    if total(eligible) <= 0:
        return tuple(found)
    shares = in_proportion(asked, eligible)
    return tuple(replace(one, grant=share) for one, share in zip(found, shares, strict=True))
