"""What the comparison of bids has to tell of papers under owner/, each at its line."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.linking.evaluation import answers, bid_name, bid_path
from tenderwright.model.evaluation import Adder
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.tender import Tender
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.notices.suggest import did_you_mean
from tenderwright.pricing.bids.arithmetic import ABSOLUTE
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.corrected import Correction
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.settled import unsettled
from tenderwright.pricing.money import written


def mistakes(papers: OwnerPapers, tender: Tender) -> list[Notice]:
    """Report what keeps the bids from being compared: a currency, an unclear adder, a correction, an open doubt."""
    return sort_notices(
        [*_currencies(papers, tender), *_adders(papers), *_corrections(papers, tender), *_unsettled(papers)]
    )


def doubts(comparison: BidComparison) -> list[Notice]:
    """Report what the owner has to settle with the bidders before the award, as warnings."""
    return sort_notices(
        notice for bid in comparison.bids for notice in (*_arithmetic(bid), *_exclusions(bid), *_nobody(bid))
    )


def _currencies(papers: OwnerPapers, tender: Tender) -> Iterator[Notice]:
    for bid in papers.bids.values():
        if bid.currency and bid.currency != tender.currency:
            message = f"the bid of {bid.yard} is in {bid.currency}, and the tender in {tender.currency}"
            hint = "ask the yard for its prices in the currency of the tender; nothing is converted here"
            yield Notice(
                "bid-currency", bid.here, message, hints=(hint, *did_you_mean(bid.currency, [tender.currency]))
            )


def _adders(papers: OwnerPapers) -> Iterator[Notice]:
    for adder in papers.evaluation.adders if papers.evaluation is not None else ():
        message = _unclear(adder, papers)
        if message:
            yield Notice("addition-unclear", adder.here, f"the addition to bid `{adder.bid}` {message}")


def _unclear(adder: Adder, papers: OwnerPapers) -> str:
    if not adder.exclusion and not adder.lines:
        return "names neither an exclusion nor lines"
    if adder.amount is not None and adder.take:
        return f"gives an amount and takes the {adder.take} as well"
    if adder.amount is None and not adder.lines:
        bid = papers.bids.get(bid_path(adder.bid))
        lines = [bid.exclusions[place].lines for place in answers(adder, bid)] if bid is not None else []
        if bid is not None and not any(lines):
            return "has no amount, and its exclusion names no line to take a rate of"
    return ""


def _corrections(papers: OwnerPapers, tender: Tender) -> Iterator[Notice]:
    for one in papers.evaluation.corrections if papers.evaluation is not None else ():
        if tender.award.arithmetic == ABSOLUTE:
            message = f"line {one.line} of bid `{one.bid}` is corrected, and the total is absolute in this tender"
            yield Notice("correction-not-allowed", one.here, message)


def _unsettled(papers: OwnerPapers) -> Iterator[Notice]:
    for path, bid in papers.bids.items():
        name = bid_name(path)
        for doubt in unsettled(name, bid, papers.evaluation):
            hint = f"settle it under `doubts` in owner/evaluation.yaml, with `bid: {name}`, by whom and why"
            yield Notice(
                "doubt-unsettled", bid.here, f"a doubt of the bid of {bid.yard} is open: {doubt}", hints=(hint,)
            )
    for one in papers.evaluation.doubts if papers.evaluation is not None else ():
        if (one.line is None) != (one.rate is None and not one.status) or (one.rate is not None and one.status):
            message = (
                f"the doubt of bid `{one.bid}` is settled by a line with either its rate or its status, or by neither"
            )
            yield Notice("doubt-unsettled", one.here, message)


def _arithmetic(bid: EvaluatedBid) -> Iterator[Notice]:
    for one in (*bid.corrected.corrections, *bid.corrected.disqualifying):
        if one.asks:
            yield Notice("bid-arithmetic", _place(bid, one.line), _words(one), hints=(_hint(bid, one),))


def _words(one: Correction) -> str:
    before, after = written(one.before), written(one.after)
    name = f"{one.what[0].lower()}{one.what[1:]}"
    if one.kind == "decimal slip":
        return f"{name} looks like a slip of the decimal point: {one.note}; it stands as written, {before}"
    if one.kind == "amount alone":
        return f"{name} has an amount, {before}, and no rate"
    return f"{name} stands as {before}, and its parts make {after}"


def _hint(bid: EvaluatedBid, one: Correction) -> str:
    if bid.corrected.disqualifying:
        return "in this tender the total is absolute, and a wrong sum disqualifies; nothing is corrected"
    if one.line:
        return "ask the bidder to confirm, and write the answer under `corrections` in owner/evaluation.yaml"
    return "ask the bidder to confirm"


def _exclusions(bid: EvaluatedBid) -> Iterator[Notice]:
    for one in bid.unsettled:
        message = f"nothing prices the exclusion `{_short(one.text)}`"
        hint = f"price it under `adders` in owner/evaluation.yaml, with `bid: {bid.name}`"
        yield Notice("exclusion-unpriced", one.here, message, hints=(hint,))


def _nobody(bid: EvaluatedBid) -> Iterator[Notice]:
    for adder in bid.adders:
        for number in adder.nobody:
            message = f"line {number} is not answered, and no other bid nor the estimate prices it"
            hint = f"price it under `adders` in owner/evaluation.yaml, with `bid: {bid.name}`"
            yield Notice("exclusion-unpriced", _place(bid, number), message, hints=(hint,))


def _place(bid: EvaluatedBid, number: str) -> Place:
    line = bid.bid.lines.get(number)
    return line.here if line is not None and line.here.path else bid.bid.here


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:59]}…"
