"""All bids of a tender, each corrected by the rule of the tender."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from statistics import median

from tenderwright.model.bid import Bid
from tenderwright.model.evaluation import ConfirmedRate, Evaluation
from tenderwright.model.tender import Tender
from tenderwright.pricing.bids.arithmetic import ABSOLUTE, correct, makes
from tenderwright.pricing.bids.corrected import CorrectedBid
from tenderwright.pricing.bids.tendered import TenderLine


def corrected_bids(
    bids: Mapping[str, Bid], lines: Sequence[TenderLine], tender: Tender, evaluation: Evaluation | None
) -> dict[str, CorrectedBid]:
    """Correct every bid by the rule of the tender, with what its bidder has confirmed."""
    award = tender.award
    return {
        name: correct(
            bid,
            lines,
            award.arithmetic,
            _confirmed(evaluation, name) if award.arithmetic != ABSOLUTE else {},
            usual_amounts(lines, [one for other, one in bids.items() if other != name]),
            components=award.components,
        )
        for name, bid in sorted(bids.items())
    }


def usual_amounts(lines: Sequence[TenderLine], others: Sequence[Bid]) -> dict[str, tuple[Decimal, ...]]:
    """Give by line the amounts that tell a slip: the estimate's, and the median of what the other bids' rates make."""
    found = {}
    for line in lines:
        amounts = [line.amount(line.estimate)] if line.estimate is not None else []
        made = [makes(line, bid.lines[line.number]) for bid in others if line.number in bid.lines]
        known = [amount for amount in made if amount is not None]
        found[line.number] = (*amounts, *([median(known)] if known else []))
    return found


def _confirmed(evaluation: Evaluation | None, name: str) -> dict[str, ConfirmedRate]:
    return {one.line: one for one in (evaluation.corrections if evaluation else ()) if one.bid == name}
