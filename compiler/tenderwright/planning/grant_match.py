"""Who pays the match of an application: the other sources, surest first, by the rules that each has on match."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from tenderwright.model.funding import FundingSource
from tenderwright.planning.grant_entries import Entry
from tenderwright.planning.match_programme import Giver, Programme
from tenderwright.planning.scope import available
from tenderwright.pricing.money import CENT, ZERO, cents, total

SURENESS = ("in hand", "promised", "applied for", "hoped for", "")
"""Statuses of money from the surest down."""


@dataclass(frozen=True)
class Drawn:
    """What a source pays towards the match."""

    source: FundingSource
    amount: Decimal

    @property
    def secured(self) -> bool:
        """Tell whether the money is in hand or promised."""
        return self.source.status in ("in hand", "promised")


@dataclass(frozen=True)
class Rule:
    """What the rule of one giver on match comes to here."""

    source: FundingSource
    gives: Decimal
    wanted: Decimal
    """The match that it wants for what it gives."""
    counts: Decimal
    """What others pay or give of the same work that counts towards it."""
    not_counted: Decimal
    """What others pay or give of the same work that does not."""


@dataclass(frozen=True)
class More:
    """What a source could give beyond what is drawn, and how much of others' money on the same work it would take."""

    source: FundingSource
    amount: Decimal
    takes: Decimal


@dataclass(frozen=True)
class Matching:
    """Who pays the match, whose rules it keeps, and what could still be had."""

    drawn: tuple[Drawn, ...] = ()
    rules: tuple[Rule, ...] = ()
    more: tuple[More, ...] = ()


def match(
    entries: Sequence[Entry], sources: Sequence[FundingSource], asked_of: FundingSource | None, *, may_be_asked: bool
) -> Matching:
    """Draw the match in money from the sources: as much as their rules let be covered, and of that the surest first.

    Each source pays only for items that it is given for and kinds of work that it takes. One that wants match itself
    pays no more than others pay for the same work, as far as its rule counts them; what is asked for here is one of
    these others where its rule counts it. What is not covered is money that has to be found, which the source that is
    asked counts, and no other does.
    """
    others = sorted(sources, key=_order)
    groups: dict[frozenset[int], tuple[Decimal, Decimal]] = {}
    for one in entries:
        if one.sort != "in kind" and not one.barred:
            payers = frozenset(place for place, source in enumerate(others) if _may_pay(source, one))
            open_, granted = groups.get(payers, (ZERO, ZERO))
            groups[payers] = (open_ + one.match, granted + one.grant)
    given = total([one.match for one in entries if one.sort == "in kind"])
    asked = total([one.grant for one in entries])
    programme = Programme(
        givers=tuple(_giver(one, others, asked_of) for one in others),
        open_cents=tuple(
            (payers, _in_cents(max(left, ZERO)), _in_cents(grant)) for payers, (left, grant) in groups.items()
        ),
        most=_in_cents(max(total([left for left, _ in groups.values()]), ZERO)),
        in_kind=_in_cents(given),
        asked_of=_giver(asked_of, others, asked_of) if asked_of is not None and may_be_asked else None,
        asked=_in_cents(asked),
    )
    paid = programme.solve()
    drawn = tuple(Drawn(one, CENT * sum(row)) for one, row in zip(others, paid, strict=True) if sum(row))
    return Matching(drawn, _rules(programme, paid, others, asked_of), _more(programme, paid, others))


def free(source: FundingSource) -> Decimal:
    """Give what a source brings and has not granted for certain work."""
    return max(available(source) - total([one.amount for one in source.granted]), ZERO)


def in_kind_share(source: FundingSource | None) -> Fraction | None:
    """Give how much of its match a source lets be given in kind; None where its rule does not limit it."""
    rule = source.match_rule if source is not None else None
    return _exact(rule.in_kind.si) if rule is not None and rule.in_kind is not None else None


def _in_cents(amount: Decimal) -> int:
    return int(amount / CENT)


def _exact(share: float) -> Fraction:
    return Fraction(share).limit_denominator(10_000)


def _giver(source: FundingSource, others: Sequence[FundingSource], asked_of: FundingSource | None) -> Giver:
    """Put a source and its rule on match into figures; places of `others` name the givers, the next the one asked."""
    named = [*others, *([asked_of] if asked_of is not None else [])]
    rule, limits = source.match_rule, []
    counts = {place for place, one in enumerate(named) if one is not source}
    if rule is not None:
        barred = {one.name for one in rule.excludes}
        counts = {place for place in counts if named[place].source not in barred}
        if rule.statuses:
            counts = {place for place in counts if named[place].status in rule.statuses}
        for limit in rule.limits:
            inside = {one.name for one in limit.sources}
            limits.append((frozenset(p for p in counts if named[p].source in inside), _exact(limit.share.si)))
    matched = _exact(source.match.si) if source.match is not None else Fraction(0)
    return Giver(
        _in_cents(free(source)), matched, frozenset(counts), tuple(limits), in_kind_share(source), not source.only
    )


def _rules(
    programme: Programme, paid: Sequence[Sequence[int]], others: Sequence[FundingSource], asked_of: FundingSource | None
) -> tuple[Rule, ...]:
    found = []
    if asked_of is not None and asked_of.match is not None and programme.asked_of is not None:
        found.append(_rule(asked_of, programme.asked, programme.of_the_asked(paid)))
    for place, source in enumerate(others):
        if source.match is not None and sum(paid[place]) > 0:
            found.append(_rule(source, sum(paid[place]), programme.of_a_giver(place, paid)))
    return tuple(found)


def _rule(source: FundingSource, gives: int, told: tuple[Fraction, int, int]) -> Rule:
    wanted, counts, beside = told
    exact = Decimal(wanted.numerator) / Decimal(wanted.denominator)
    return Rule(source, CENT * gives, cents(CENT * exact), CENT * counts, CENT * (beside - counts))


def _more(programme: Programme, paid: Sequence[Sequence[int]], others: Sequence[FundingSource]) -> tuple[More, ...]:
    """Give what each source that wants match could add, if others were found for the rest of the same work."""
    found = []
    for place, source in enumerate(others):
        giver = programme.givers[place]
        left = sum(programme.left(paid, group) for group, one in enumerate(programme.open_cents) if place in one[0])
        more = min(giver.free - sum(paid[place]), int(left / (1 + giver.match)))
        if giver.match and more > 0:
            found.append(More(source, CENT * more, CENT * -(-giver.match.numerator * more // giver.match.denominator)))
    return tuple(found)


def _order(source: FundingSource) -> tuple[int, int]:
    return SURENESS.index(source.status), len(source.only) or 10_000


def _may_pay(source: FundingSource, entry: Entry) -> bool:
    number = entry.item.number if entry.item is not None else ""
    if source.only and number not in {one.name for one in source.only}:
        return False
    return not source.eligible or not entry.kind or entry.kind in source.eligible
