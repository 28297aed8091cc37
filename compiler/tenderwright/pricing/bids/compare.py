"""Compare the returned bids: corrected, evaluated, ranked, and what could change the ranking."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.steps.runner import Calculated
from tenderwright.linking.evaluation import bid_name
from tenderwright.model.bid import Bid
from tenderwright.model.evaluation import Evaluation
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package, sound
from tenderwright.model.tender import Tender
from tenderwright.pricing.bids.break_even import BreakEven, break_evens, deciding_line
from tenderwright.pricing.bids.cases import PUBLISHED, Case, cases, ranks
from tenderwright.pricing.bids.corrected import CorrectedBid, Correction
from tenderwright.pricing.bids.corrected_bids import corrected_bids
from tenderwright.pricing.bids.docks_offered import dock_fits
from tenderwright.pricing.bids.evaluate import EvaluatedBid, evaluate
from tenderwright.pricing.bids.responsive import Fit, Point, points
from tenderwright.pricing.bids.settled import as_settled
from tenderwright.pricing.bids.tendered import TenderLine, tender_lines
from tenderwright.pricing.bids.unbalance import (
    EARLY_SECTION,
    LineRatio,
    Unbalance,
    early_share,
    medians,
    own_estimate_off,
    unbalance,
)
from tenderwright.pricing.price import Estimate


class CaseRanks(Struct, frozen=True):
    """What every bid comes to in one case, and its rank, where bids are ranked."""

    case: Case
    totals: Mapping[str, Decimal]
    ranks: Mapping[str, int]


class BidComparison(Struct, frozen=True):
    """Everything that the comparison of bids finds; its documents reckon nothing more."""

    currency: str
    rule: str
    """What governs in arithmetic."""
    lines: tuple[TenderLine, ...]
    bids: tuple[EvaluatedBid, ...]
    """In order of rank as published, then of name; where none is ranked, of name."""
    cases: tuple[CaseRanks, ...]
    """As published first."""
    medians: Mapping[str, Decimal]
    unbalance: Mapping[str, Unbalance]
    estimate_off: tuple[LineRatio, ...]
    """Lines where the bids together lie far from the estimate."""
    break_evens: tuple[BreakEven, ...]
    deciding: TenderLine | None
    """The line whose quantity decides most."""
    points: Mapping[str, tuple[Point, ...]]
    fits: Mapping[str, Fit]
    estimated: bool
    """Whether the owner has an estimate."""
    early_of_estimate: Decimal | None = None

    @property
    def wanted(self) -> tuple[tuple[str, str], ...]:
        """List by bid what is wanted before the bids can be ranked."""
        return tuple((bid.label, words) for bid in self.bids for words in bid.wanted)

    @property
    def whole(self) -> bool:
        """Tell whether all that the tender counts has a figure for every bid, so that the bids are ranked."""
        return not self.wanted

    @property
    def ranks(self) -> Mapping[str, int]:
        """Give the ranks as published; none where the comparison is not whole."""
        return self.cases[0].ranks

    def if_meant(self, bid: EvaluatedBid, one: Correction) -> tuple[Decimal, int]:
        """Give what a bid would be evaluated at, and its rank, were the rate of a decimal slip meant as it stands."""
        line = bid.corrected.lines[one.line].line
        counts = line.section.code in self.cases[0].case.sections
        total = bid.total + one.difference if counts else bid.total
        return total, 1 + sum(other.total < total for other in self.bids if other.name != bid.name)

    def bid(self, name: str) -> EvaluatedBid:
        """Give a bid by name; raises KeyError."""
        for one in self.bids:
            if one.name == name:
                return one
        raise KeyError(name)


def compare(
    papers: OwnerPapers,
    package: Package,
    calculated: Calculated,
    estimate: Estimate | None,
    edition_hash: str,
) -> BidComparison:
    """Compare the bids of a sound package; the facilities must have been calculated with the tables."""
    tender = sound(package.tender)
    lines = tender_lines(package, calculated, estimate)
    ranked_in = cases(lines, tender.award.components)
    named = {bid_name(path): bid for path, bid in papers.bids.items()}
    bids = {name: as_settled(name, bid, papers.evaluation) for name, bid in named.items()}
    corrected = corrected_bids(bids, lines, tender, papers.evaluation)
    evaluated = _evaluated(bids, corrected, tender, papers.evaluation, ranked_in[0])
    early = early_share(estimate.section_totals.get(EARLY_SECTION), estimate.base) if estimate is not None else None
    usual = medians(corrected, lines)
    whole = not any(one.wanted for one in evaluated)
    found = break_evens(evaluated, lines) if whole else ()
    balance = {one.name: unbalance(one, evaluated, usual, early, ranked_in) for one in evaluated}
    fits = dock_fits(bids, package, calculated)
    findings = papers.evaluation.responsive if papers.evaluation is not None else ()
    judged = papers.evaluation.criteria if papers.evaluation is not None else ()
    return BidComparison(
        currency=tender.currency,
        rule=tender.award.arithmetic,
        lines=lines,
        bids=evaluated,
        cases=tuple(_ranked(case, evaluated, whole=whole) for case in ranked_in),
        medians=usual,
        unbalance={name: one if whole else replace(one, doubts=()) for name, one in balance.items()},
        estimate_off=tuple(own_estimate_off(lines, usual)),
        break_evens=found,
        deciding=deciding_line(found, evaluated, lines) if whole else None,
        points={
            one.name: points(
                one,
                tender,
                edition_hash,
                fits[one.name],
                [said for said in findings if said.bid == one.name],
                [said for said in judged if said.bid == one.name],
                package.contract.to_sign if package.contract is not None else (),
            )
            for one in evaluated
        },
        fits=fits,
        estimated=estimate is not None,
        early_of_estimate=early,
    )


def _evaluated(
    bids: Mapping[str, Bid],
    corrected: Mapping[str, CorrectedBid],
    tender: Tender,
    evaluation: Evaluation | None,
    published: Case,
) -> tuple[EvaluatedBid, ...]:
    yards = [bid.yard for bid in bids.values()]
    made = [
        evaluate(
            name,
            bid.yard if yards.count(bid.yard) == 1 else f"{bid.yard} ({name})",
            bid,
            corrected,
            tender,
            evaluation,
            published,
        )
        for name, bid in bids.items()
    ]
    whole = not any(one.wanted for one in made)
    return tuple(sorted(made, key=lambda one: (one.total if whole else 0, one.name)))


def _ranked(case: Case, bids: Sequence[EvaluatedBid], *, whole: bool) -> CaseRanks:
    totals = {one.name: one.total if case.name == PUBLISHED else one.in_case(case) for one in bids}
    return CaseRanks(case, totals, ranks(totals) if whole else {})
