"""Price what a bid leaves out, so that all bids are compared on the same work: at the highest figure of the others.

A line left empty or not bid, and an exclusion, is priced at the highest rate that another bid gives for the same
line, failing that at the owner's estimate (multilateral development banks' evaluation guides; common practice). What
the owner states in owner/evaluation.yaml goes before both. A credit that is not offered stands at nothing.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Literal

from msgspec import Struct

from tenderwright.linking.evaluation import answers
from tenderwright.model.bid import Bid, Exclusion
from tenderwright.model.evaluation import Adder
from tenderwright.pricing.bids.corrected import CorrectedBid, CorrectedLine
from tenderwright.pricing.money import ZERO, cents, total

Source = Literal["other bid", "estimate", "stated", "nobody"]


class Lift(Struct, frozen=True):
    """One line brought to a rate that the bid itself does not give."""

    own: CorrectedLine
    rate: Decimal
    source: Source
    of: str = ""
    """The bid that the rate is of."""

    @property
    def slope(self) -> Decimal:
        """Give what one more unit adds beyond the bid's own rate."""
        return self.own.line.slope(self.rate) - self.own.slope

    def at(self, quantity: Decimal) -> Decimal:
        """Give what it adds for a quantity; nothing where the bid's own amount is the higher."""
        line = self.own.line
        lifted = cents(line.amount(self.rate) + line.slope(self.rate) * (quantity - line.quantity))
        return max(ZERO, lifted - self.own.at(quantity))


class PricedAdder(Struct, frozen=True):
    """What is added to a bid for something that it leaves out."""

    what: str
    kind: Literal["line", "exclusion"]
    lifts: tuple[Lift, ...] = ()
    stated: Decimal | None = None
    lines: tuple[str, ...] = ()
    sections: frozenset[str] = frozenset()
    """Sections of its lines; where it has none, it counts wherever prices do."""
    why: str = ""
    nobody: tuple[str, ...] = ()
    """Lines that neither another bid nor the estimate prices: nothing is added for them."""
    exclusion: Exclusion | None = None

    def amount(self, quantities: Mapping[str, Decimal], sections: frozenset[str]) -> Decimal:
        """Give what it adds at some quantities, for the lines of some sections."""
        if self.stated is not None:
            return cents(self.stated) if not self.sections or self.sections & sections else ZERO
        return total(
            [
                lift.at(quantities.get(lift.own.line.number, lift.own.line.quantity))
                for lift in self.lifts
                if lift.own.line.section.code in sections
            ]
        )


class Others(Struct, frozen=True):
    """What the other bids and the estimate give for the lines of one bid."""

    corrected: Mapping[str, CorrectedBid]
    """By name, without the bid itself."""

    def highest(self, own: CorrectedLine) -> Lift | None:
        """Give the line at the highest rate of the other bids, else the owner's; the first by name of equal rates."""
        priced = [
            (one.rate, name)
            for name, bid in sorted(self.corrected.items())
            if (one := bid.lines[own.line.number]).status in ("priced", "zero") and one.rate is not None
        ]
        if priced:
            rate, name = max(priced, key=lambda pair: pair[0])
            return Lift(own, rate, "other bid", name)
        return self.estimate(own)

    def estimate(self, own: CorrectedLine) -> Lift | None:
        """Give the line at the owner's rate; None without one."""
        return Lift(own, own.line.estimate, "estimate") if own.line.estimate is not None else None


def priced_adders(
    bid: Bid, corrected: CorrectedBid, others: Others, adders: Sequence[Adder]
) -> tuple[PricedAdder, ...]:
    """Price all that a bid leaves out: first as the owner says, then exclusions, then lines that are not answered."""
    made = [_as_stated(adder, bid, corrected, others) for adder in adders]
    told = {number for one in made for number in one.lines}
    settled = {place for adder in adders for place in answers(adder, bid)}
    for place, exclusion in enumerate(bid.exclusions):
        lines = [number for number in unpaid(exclusion, corrected) if number not in told]
        if place not in settled and lines:
            made.append(_lifted(exclusion.text, "exclusion", lines, corrected, others, exclusion=exclusion))
            told |= set(lines)
    for number, line in corrected.lines.items():
        if not line.answered and number not in told and line.line.form != "credit":
            made.append(_lifted(f"Line {number}, {line.status}", "line", [number], corrected, others))
    return tuple(made)


def unpaid(exclusion: Exclusion, corrected: CorrectedBid) -> list[str]:
    """List the lines of an exclusion for which the bid asks no money, so that they can be priced without a doubt."""
    if exclusion.kind != "exclusion":
        return []
    known = [number for number in exclusion.lines if number in corrected.lines]
    return [number for number in known if corrected.lines[number].status in ("zero", "included", "empty", "no bid")]


def unsettled(bid: Bid, corrected: CorrectedBid, adders: Sequence[Adder]) -> list[Exclusion]:
    """List the exclusions that nothing prices: the owner has not, and they name no line that asks no money."""
    settled = {place for adder in adders for place in answers(adder, bid)}
    return [
        one
        for place, one in enumerate(bid.exclusions)
        if one.kind == "exclusion" and place not in settled and not unpaid(one, corrected)
    ]


def _as_stated(adder: Adder, bid: Bid, corrected: CorrectedBid, others: Others) -> PricedAdder:
    answered = [bid.exclusions[place] for place in answers(adder, bid)]
    lines = adder.lines or tuple(dict.fromkeys(number for one in answered for number in one.lines))
    lines = tuple(number for number in lines if number in corrected.lines)
    what = answered[0].text if answered else f"Line {', '.join(lines)}"
    exclusion = answered[0] if answered else None
    if adder.amount is not None:
        sections = frozenset(corrected.lines[number].line.section.code for number in lines)
        kind: Literal["line", "exclusion"] = "exclusion" if answered else "line"
        return PricedAdder(
            what, kind, stated=adder.amount, lines=lines, sections=sections, why=adder.why, exclusion=exclusion
        )
    return _lifted(
        what,
        "exclusion" if answered else "line",
        lines,
        corrected,
        others,
        why=adder.why,
        exclusion=exclusion,
        estimate=adder.take == "estimate",
    )


def _lifted(
    what: str,
    kind: Literal["line", "exclusion"],
    lines: Sequence[str],
    corrected: CorrectedBid,
    others: Others,
    *,
    why: str = "",
    exclusion: Exclusion | None = None,
    estimate: bool = False,
) -> PricedAdder:
    lifts, nobody = [], []
    for number in lines:
        own = corrected.lines[number]
        lift = others.estimate(own) if estimate else others.highest(own)
        if own.line.form == "credit":
            continue
        if lift is None:
            nobody.append(number)
        else:
            lifts.append(lift)
    sections = frozenset(corrected.lines[number].line.section.code for number in lines)
    return PricedAdder(
        what,
        kind,
        tuple(lifts),
        lines=tuple(lines),
        sections=sections,
        why=why,
        nobody=tuple(nobody),
        exclusion=exclusion,
    )
