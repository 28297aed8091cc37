"""The evaluated price of a bid: each part of it to the cent, adding up to the whole."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from decimal import Decimal

from msgspec import Struct

from tenderwright.model.bid import Bid, Exclusion
from tenderwright.model.evaluation import Evaluation, OwnersCosts
from tenderwright.model.tender import DAYS, ESTIMATE, TOWING, TRAVEL, Tender
from tenderwright.pricing.bids.adders import Others, PricedAdder, priced_adders, unsettled
from tenderwright.pricing.bids.cases import Case
from tenderwright.pricing.bids.corrected import CorrectedBid
from tenderwright.pricing.bids.remarks import Remark, remarks
from tenderwright.pricing.choices import dearer_by, groups
from tenderwright.pricing.money import ZERO, cents, total
from tenderwright.pricing.sections import SECTIONS


class Component(Struct, frozen=True):
    """One part of an evaluated price."""

    name: str
    title: str
    amount: Decimal
    note: str = ""


class OwnersDays(Struct, frozen=True):
    """What the owner's days at a yard come to."""

    amount: Decimal
    days: int | None
    rate: Decimal | None
    note: str


class EvaluatedBid(Struct, frozen=True):
    """A bid with its evaluated price."""

    name: str
    """Its file in owner/bids/, without the ending."""
    label: str
    """The yard, told apart from another bid of the same yard."""
    bid: Bid
    corrected: CorrectedBid
    adders: tuple[PricedAdder, ...]
    days: OwnersDays | None
    place: tuple[Component, ...]
    """Towing and travel."""
    components: tuple[Component, ...]
    total: Decimal
    """The sum of the components."""
    sections: frozenset[str]
    """Sections of the price form that count in it."""
    unsettled: tuple[Exclusion, ...] = ()
    """Exclusions that nothing prices, left to the owner."""
    remarks: tuple[Remark, ...] = ()
    """Remarks, assumptions and alternatives, each settled or not."""
    lacking: tuple[str, ...] = ()
    """Parts that the tender counts and that have no figure for this bid, with where each is written."""

    @property
    def wanted(self) -> tuple[str, ...]:
        """List all that is wanted before the bid can be ranked."""
        adders = "`adders` in owner/evaluation.yaml"
        nobody = [number for one in self.adders for number in one.nobody]
        return (
            *self.lacking,
            *(f"a price for the exclusion “{one.text}”, under {adders}" for one in self.unsettled),
            *(f"a price for line {number}, which nobody else prices, under {adders}" for number in nobody),
            *(f"{one.name} settled, under `remarks` in owner/evaluation.yaml" for one in self.remarks if not one.why),
        )

    @property
    def added(self) -> Decimal:
        """Give all that was added for what the bid leaves out, as it counts in the total."""
        return total([one.amount for one in self.components if one.name in ("lines", "exclusions")])

    def slope(self, number: str) -> Decimal:
        """Give what one more unit of a line adds to the evaluated price, with the percentages that are of it."""
        own = self.corrected.lines[number].slope if self._counts(number) else Decimal(0)
        of_it = [one.slope for one in self.corrected.lines.values() if number in one.line.of]
        lifted = [adder.slope(number, self.sections) for adder in self.adders]
        return own * (1 + sum(of_it, Decimal(0))) + sum(lifted, Decimal(0))

    def _counts(self, number: str) -> bool:
        """Tell whether a line counts: by its section, or where it is one of two by which is the dearer."""
        lines = self.corrected.lines
        for others, these in groups(_instead(self.corrected)).items():
            if number in (*these, *others):
                this, that = (total([lines[one].amount for one in side]) for side in (these, others))
                return (number in these) == (this > that)
        return lines[number].line.section.code in self.sections

    def in_case(self, case: Case) -> Decimal:
        """Give what it comes to in one case of sections, quantities and costs of the place."""
        lines = self.corrected.lines
        quantities = {number: case.quantity(line.line) for number, line in lines.items() if not line.line.of}
        amounts = {number: lines[number].at(quantity) for number, quantity in quantities.items()}
        for number, line in lines.items():
            if line.line.of:
                quantities[number] = total([amounts[one] for one in line.line.of])
        parts = [
            lines[n].at(quantity) for n, quantity in quantities.items() if lines[n].line.section.code in case.sections
        ]
        if case.whole:
            parts.append(
                dearer_by({n: lines[n].at(quantity) for n, quantity in quantities.items()}, _instead(self.corrected))
            )
        parts += [adder.amount(quantities, case.sections) for adder in self.adders]
        if case.whole:
            parts += [self.corrected.beyond_lines, *(one.amount for one in self.place)]
            parts.append(self.days.amount if self.days is not None else ZERO)
        return total(parts)


def evaluate(
    name: str,
    label: str,
    bid: Bid,
    corrected: Mapping[str, CorrectedBid],
    tender: Tender,
    evaluation: Evaluation | None,
    published: Case,
) -> EvaluatedBid:
    """Give the evaluated price of a bid by the published formula.

    sum of the lines of the sections counted, each quantity times rate; + lines not answered and exclusions, priced; +
    days times day cost; + towing; + travel. Counted are the base price (docking, definite, measured, less credits,
    provisional sums the same for all), and of the rest what `award` in package.yaml names.
    """
    own = corrected[name]
    others = Others({other: one for other, one in corrected.items() if other != name})
    stated = [adder for adder in (evaluation.adders if evaluation else ()) if adder.bid == name]
    costs = evaluation.bids.get(name) if evaluation is not None else None
    counted = tender.award.components
    adders = priced_adders(bid, own, others, stated, estimate=tender.award.exclusions == ESTIMATE)
    days = owners_days(bid, tender, costs) if DAYS in counted else None
    place = _place(costs, counted)
    components = [*_sections(own, published), *_added(adders, published)]
    instead = _instead(own)
    if instead:
        amounts = {number: line.amount for number, line in own.lines.items()}
        components.append(Component("choices", "Alternatives, where dearer", dearer_by(amounts, instead)))
    if own.beyond_lines:
        components.append(Component("beyond", "The total as written, beyond its lines", own.beyond_lines))
    if days is not None:
        components.append(Component("days", "The owner's days", days.amount, days.note))
    components += place
    return EvaluatedBid(
        name=name,
        label=label,
        bid=bid,
        corrected=own,
        adders=adders,
        days=days,
        place=place,
        components=tuple(components),
        total=total([one.amount for one in components]),
        sections=published.sections,
        unsettled=tuple(unsettled(bid, own, stated)),
        remarks=remarks(name, bid, stated, evaluation.remarks if evaluation is not None else ()),
        lacking=tuple(_lacking(bid, tender, costs, days, {one.name for one in place})),
    )


def _instead(own: CorrectedBid) -> dict[str, tuple[str, ...]]:
    return {number: one.line.instead_of for number, one in own.lines.items() if one.line.instead_of}


def _sections(own: CorrectedBid, published: Case) -> list[Component]:
    return [
        Component(section.code, section.title, own.sections[section.code])
        for section in SECTIONS
        if section.code in published.sections
    ]


def _added(adders: Sequence[PricedAdder], published: Case) -> list[Component]:
    found = []
    for kind, name, title in (
        ("line", "lines", "Lines not answered, priced"),
        ("exclusion", "exclusions", "Exclusions, priced"),
    ):
        amounts = [adder.amount({}, published.sections) for adder in adders if adder.kind == kind]
        found.append(Component(name, title, total(amounts)))
    return found


def owners_days(bid: Bid, tender: Tender, costs: OwnersCosts | None) -> OwnersDays | None:
    """Give the owner's days at a yard; None where no cost of a day is published nor stated.

    None where neither the yard nor the owner gives the days.
    """
    if costs is not None and costs.owner_days is not None:
        return OwnersDays(cents(costs.owner_days.amount), None, None, costs.owner_days.basis)
    stated = costs.day_cost if costs is not None else None
    rate = stated if stated is not None else tender.award.day_cost
    days = costs.days if costs is not None and costs.days is not None else bid.days
    if rate is None or days is None:
        return None
    source = "by the yard's programme"
    if costs is not None and costs.days is not None:
        source = costs.days_basis or "as the owner states"
    return OwnersDays(cents(rate * days), days, rate, f"{days} d {source}")


def _lacking(
    bid: Bid, tender: Tender, costs: OwnersCosts | None, days: OwnersDays | None, place: Collection[str]
) -> Iterator[str]:
    """Say which parts that the tender counts have no figure, and where each is to be written."""
    counted, under = tender.award.components, "under `bids` in owner/evaluation.yaml"
    if DAYS in counted and days is None:
        if tender.award.day_cost is None and (costs is None or costs.day_cost is None):
            yield f"the owner's cost of a day: `day_cost` or `owner_days` {under}"
        if bid.days is None and (costs is None or costs.days is None):
            yield f"the days from arrival to redelivery: ask the yard, and write `days` {under}"
    for name in (TOWING, TRAVEL):
        if name in counted and name not in place:
            yield f"the owner's cost of {name}: `{name}` {under}, 0 where there is none"


def _place(costs: OwnersCosts | None, counted: Collection[str]) -> tuple[Component, ...]:
    if costs is None:
        return ()
    found = []
    for name, title, cost in ((TOWING, "Towing", costs.towing), (TRAVEL, "Travel", costs.travel)):
        if cost is not None and name in counted:
            found.append(Component(name, title, cents(cost.amount), cost.basis))
    return tuple(found)
