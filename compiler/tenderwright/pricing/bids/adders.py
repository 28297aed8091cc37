"""Price what a bid leaves out, so that all bids are compared on the same work: at the highest figure of one other.

An exclusion, and the lines of one item that are left empty or not bid, are priced at the figure of the one bid that
asks the most for all of that work together; where no other bid prices all of it, at the owner's estimate (multilateral
development banks' evaluation guides; common practice). What the owner states in owner/evaluation.yaml goes before both.
A credit that is not offered stands at nothing.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
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
        """Give what it adds for a quantity; less than nothing where the bid's own amount is the higher."""
        line = self.own.line
        lifted = cents(line.amount(self.rate) + line.slope(self.rate) * (quantity - line.quantity))
        return lifted - self.own.at(quantity)


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
    """Lines that neither one other bid nor the estimate prices together with the rest: nothing is added for them."""
    exclusion: Exclusion | None = None

    def amount(self, quantities: Mapping[str, Decimal], sections: frozenset[str]) -> Decimal:
        """Give what it adds at some quantities, for the lines of some sections."""
        if self.stated is not None:
            return cents(self.stated) if not self.sections or self.sections & sections else ZERO
        more = [
            lift.at(quantities.get(lift.own.line.number, lift.own.line.quantity))
            for lift in self.lifts
            if lift.own.line.section.code in sections
        ]
        return max(ZERO, total(more))

    def slope(self, number: str, sections: frozenset[str]) -> Decimal:
        """Give what one more unit of a line adds; nothing where the bid's own amounts are the higher."""
        if self.amount({}, sections) <= 0:
            return Decimal(0)
        slopes = [
            lift.slope
            for lift in self.lifts
            if lift.own.line.number == number and lift.own.line.section.code in sections
        ]
        return sum(slopes, Decimal(0))


class Others(Struct, frozen=True):
    """What the other bids and the estimate give for the lines of one bid."""

    corrected: Mapping[str, CorrectedBid]
    """By name, without the bid itself."""

    def highest(self, owns: Sequence[CorrectedLine]) -> list[Lift]:
        """Give lines at the rates of the one bid that asks the most for all of them, else at the owner's.

        The first by name of equal bids. A bid that leaves one of the lines open, or has it in another, is not held
        to price the same work.
        """
        found: list[Lift] = []
        for name, bid in sorted(self.corrected.items()):
            theirs = [bid.lines[own.line.number] for own in owns]
            lifts = [
                Lift(own, one.rate, "other bid", name)
                for own, one in zip(owns, theirs, strict=True)
                if one.status in ("priced", "zero") and one.rate is not None
            ]
            if len(lifts) == len(owns) and (not found or _asked(lifts) > _asked(found)):
                found = lifts
        return found or self.estimate(owns)

    def estimate(self, owns: Sequence[CorrectedLine]) -> list[Lift]:
        """Give lines at the owner's rates, as far as there are any."""
        return [Lift(own, own.line.estimate, "estimate") for own in owns if own.line.estimate is not None]


def _asked(lifts: Sequence[Lift]) -> Decimal:
    return total([lift.own.line.amount(lift.rate) for lift in lifts])


def priced_adders(
    bid: Bid, corrected: CorrectedBid, others: Others, adders: Sequence[Adder], *, estimate: bool = False
) -> tuple[PricedAdder, ...]:
    """Price all that a bid leaves out: first as the owner says, then exclusions, then lines that are not answered.

    `estimate` where the tender prices it at the owner's estimate.
    """
    made = [_as_stated(adder, bid, corrected, others, estimate=estimate) for adder in adders]
    told = {number for one in made for number in one.lines}
    settled = {place for adder in adders for place in answers(adder, bid)}
    for place, exclusion in enumerate(bid.exclusions):
        lines = [number for number in unpaid(exclusion, corrected) if number not in told]
        if place not in settled and lines:
            made.append(
                _lifted(exclusion.text, "exclusion", lines, corrected, others, exclusion=exclusion, estimate=estimate)
            )
            told |= set(lines)
    for numbers in _open(corrected, told):
        words = "; ".join(f"{number}, {corrected.lines[number].status}" for number in numbers)
        what = f"{'Line' if len(numbers) == 1 else 'Lines'} {words}"
        made.append(_lifted(what, "line", numbers, corrected, others, estimate=estimate))
    return tuple(made)


def _open(corrected: CorrectedBid, told: Collection[str]) -> list[list[str]]:
    """Give item by item the lines that are not answered."""
    found: dict[str, list[str]] = {}
    for number, line in corrected.lines.items():
        if not line.answered and number not in told and line.line.form != "credit":
            found.setdefault(number.partition(".")[0], []).append(number)
    return list(found.values())


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


def _as_stated(adder: Adder, bid: Bid, corrected: CorrectedBid, others: Others, *, estimate: bool) -> PricedAdder:
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
        estimate=adder.take == "estimate" or (estimate and not adder.take),
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
    owns = [corrected.lines[number] for number in lines if corrected.lines[number].line.form != "credit"]
    lifts = others.estimate(owns) if estimate else others.highest(owns)
    lifted = {lift.own.line.number for lift in lifts}
    nobody = [own.line.number for own in owns if own.line.number not in lifted]
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
