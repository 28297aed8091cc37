"""Resolve what owner/evaluation.yaml names: bids by their files, exclusions by their words, criteria by number."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.model.bid import Bid
from tenderwright.model.evaluation import (
    Adder,
    ConfirmedRate,
    Evaluation,
    Finding,
    JudgedCriterion,
    SettledDoubt,
    SettledRemark,
)
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Note, Notice, Place
from tenderwright.notices.suggest import did_you_mean


def bid_path(name: str) -> str:
    """Give the path of the bid of a name."""
    return f"owner/bids/{name}.yaml"


def bid_name(path: str) -> str:
    """Give the name of a bid from its path: the file without its ending."""
    return path.rsplit("/", 1)[-1].removesuffix(".yaml")


def dead_in_evaluation(papers: OwnerPapers, package: Package) -> list[Notice]:
    """Report what the evaluation names that is not there, or twice; lines are looked at with those of the bids."""
    evaluation = papers.evaluation
    if evaluation is None:
        return []
    return [
        *_dead_bids(evaluation, papers),
        *_dead_exclusions(evaluation, papers),
        *_dead_doubts(evaluation, papers),
        *_dead_remarks(evaluation, papers),
        *_dead_criteria(evaluation, package),
        *_judged_twice(evaluation),
    ]


def lines_of_evaluation(evaluation: Evaluation) -> Iterator[tuple[str, Place]]:
    """Yield the lines of the tender that the evaluation names."""
    for adder in evaluation.adders:
        for number in adder.lines:
            yield number, adder.here
    for correction in evaluation.corrections:
        yield correction.line, correction.here
    for remark in evaluation.remarks:
        for number in remark.lines:
            yield number, remark.here
    for settled in evaluation.doubts:
        if settled.line is not None:
            yield settled.line, settled.here


def _bids_named(evaluation: Evaluation) -> Iterator[tuple[str, Place]]:
    for name, costs in evaluation.bids.items():
        yield name, costs.here
    entries: tuple[Adder | ConfirmedRate | Finding | JudgedCriterion | SettledDoubt | SettledRemark, ...]
    entries = (
        *evaluation.adders,
        *evaluation.corrections,
        *evaluation.remarks,
        *evaluation.responsive,
        *evaluation.criteria,
        *evaluation.doubts,
    )
    for entry in entries:
        yield entry.bid, entry.here


def _dead_bids(evaluation: Evaluation, papers: OwnerPapers) -> Iterator[Notice]:
    known = [bid_name(path) for path in papers.bids]
    for name, place in _bids_named(evaluation):
        if name not in known and bid_path(name) not in papers.broken.files:
            hints = did_you_mean(name, known) or ("name it by its file in owner/bids/, without `.yaml`",)
            yield Notice("dead-reference", place, f"there is no bid `{name}`", hints=hints, cause=f"bid {name}")


def _dead_exclusions(evaluation: Evaluation, papers: OwnerPapers) -> Iterator[Notice]:
    for adder in evaluation.adders:
        bid = papers.bids.get(bid_path(adder.bid))
        if bid is None or not adder.exclusion or answers(adder, bid):
            continue
        hints = did_you_mean(adder.exclusion, [one.text for one in bid.exclusions])
        message = f"bid `{adder.bid}` states no exclusion `{adder.exclusion}`"
        yield Notice("dead-reference", adder.here, message, hints=hints)


def _dead_doubts(evaluation: Evaluation, papers: OwnerPapers) -> Iterator[Notice]:
    for one in evaluation.doubts:
        bid = papers.bids.get(bid_path(one.bid))
        if bid is not None and not settles(one, bid):
            hints = did_you_mean(one.doubt, bid.doubts)
            yield Notice(
                "dead-reference", one.here, f"bid `{one.bid}` has no doubt that begins so: {one.doubt}", hints=hints
            )


def settles(settled: SettledDoubt, bid: Bid) -> tuple[str, ...]:
    """Give the doubts of a bid that are settled by one entry: those that begin as it says."""
    words = _folded(settled.doubt)
    return tuple(doubt for doubt in bid.doubts if words and _folded(doubt).startswith(words))


def _dead_remarks(evaluation: Evaluation, papers: OwnerPapers) -> Iterator[Notice]:
    for one in evaluation.remarks:
        bid = papers.bids.get(bid_path(one.bid))
        if bid is None:
            continue
        beside = [said.text for said in bid.exclusions if said.kind != "exclusion"]
        notes = {number: bid.lines[number].note for number in one.lines if number in bid.lines}
        for number in one.lines:
            if number in notes and not (notes[number] and begins(notes[number], one.remark)):
                message = f"bid `{one.bid}` has no such remark at line {number}"
                yield Notice("dead-reference", one.here, message)
        if not one.lines and not (one.remark and any(begins(text, one.remark) for text in beside)):
            message = f"bid `{one.bid}` states no assumption or alternative `{one.remark}`"
            yield Notice("dead-reference", one.here, message, hints=did_you_mean(one.remark, beside))


def answers(adder: Adder, bid: Bid) -> tuple[int, ...]:
    """Give the places in the list of a bid's exclusions of those that an adder names by how they begin."""
    words = _folded(adder.exclusion)
    if not words:
        return ()
    return tuple(place for place, one in enumerate(bid.exclusions) if begins(one.text, words))


def begins(text: str, words: str) -> bool:
    """Tell whether a text begins with some words, however they are spaced; no words begin any."""
    return _folded(text).startswith(_folded(words))


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold()


def _dead_criteria(evaluation: Evaluation, package: Package) -> Iterator[Notice]:
    count = len(package.tender.award.criteria) if package.tender is not None else None
    entries: tuple[Finding | JudgedCriterion, ...] = (*evaluation.responsive, *evaluation.criteria)
    for one in entries:
        if one.criterion is not None and count is not None and one.criterion > count:
            message = f"there is no criterion {one.criterion}; the tender has {count}"
            yield Notice("dead-reference", one.here, message)


def _judged_twice(evaluation: Evaluation) -> Iterator[Notice]:
    first: dict[tuple[str, int], Place] = {}
    for one in evaluation.criteria:
        before = first.setdefault((one.bid, one.criterion), one.here)
        if before is not one.here:
            message = f"criterion {one.criterion} of bid `{one.bid}` is judged twice"
            yield Notice("duplicate-name", one.here, message, (Note("it is judged first here", before),))
