"""Bids with their doubts settled: what the owner wrote of each in owner/evaluation.yaml."""

from __future__ import annotations

from msgspec.structs import replace

from tenderwright.linking.evaluation import settles
from tenderwright.model.bid import Bid, BidLine
from tenderwright.model.evaluation import Evaluation, SettledDoubt


def unsettled(name: str, bid: Bid, evaluation: Evaluation | None) -> tuple[str, ...]:
    """Give the doubts of a bid that nobody has settled."""
    done = {doubt for one in _of(name, evaluation) for doubt in settles(one, bid)}
    return tuple(doubt for doubt in bid.doubts if doubt not in done)


def as_settled(name: str, bid: Bid, evaluation: Evaluation | None) -> Bid:
    """Give a bid with the lines that were settled answered so; its file stays as received."""
    lines = dict(bid.lines)
    for one in _of(name, evaluation):
        if one.line is not None:
            lines[one.line] = _line(lines.get(one.line, BidLine()), one)
    return replace(bid, lines=lines, doubts=unsettled(name, bid, evaluation))


def _of(name: str, evaluation: Evaluation | None) -> list[SettledDoubt]:
    return [one for one in (evaluation.doubts if evaluation is not None else ()) if one.bid == name]


def _line(line: BidLine, settled: SettledDoubt) -> BidLine:
    status = settled.status or ("priced" if settled.rate else "zero")
    note = "; ".join(filter(None, (line.note, f"settled by {settled.by}: {settled.why}")))
    return replace(line, rate=settled.rate, status=status, extension=None, note=note)
