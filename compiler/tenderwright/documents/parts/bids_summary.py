"""The first page of the comparison, for trustees: who ranks where, what could change it, and what is to be settled."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Bullets, Caution, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.numbering import mark
from tenderwright.documents.parts.bids_words import (
    DASH,
    GROUP,
    break_even_sentence,
    line_words,
    money,
    percent,
    running,
)
from tenderwright.documents.parts.bids_words import quantity as shown
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.corrected import Correction
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.unbalance import Doubt
from tenderwright.pricing.money import in_currency, written

MOST_SENTENCES = 3
_NUMBERS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 7: "seven", 8: "eight", 9: "nine"}
_CASE_WORDS = {"p50": "with all quantities at their P50", "p80": "with all quantities at their P80"}


def bids_summary(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the summary."""
    blocks: list[Block] = [
        Paragraph(inline(_first(comparison))),
        _ranking(comparison),
        *_read_from(comparison),
        *_ranking_rests_on(comparison),
        Heading("To settle before the award"),
        _bullets(_to_settle(comparison)),
        Caution(
            "The owner decides",
            (
                inline(
                    "This comparison applies the published rule to what was returned. It sets no bid aside and accepts "
                    "none. Facility fit and the other points are for the owner, with its naval architect and adviser; "
                    "figures that are corrected stand only once the bidder has confirmed them."
                ),
            ),
        ),
    ]
    return Part("bids-summary", "", "Summary", "front", GROUP, tuple(blocks))


def _ranking_rests_on(comparison: BidComparison) -> list[Block]:
    """Say what could change the ranking; where there is none, what is wanted for one."""
    if not comparison.whole:
        wanted = [f"{label}: {words}." for label, words in comparison.wanted]
        return [Heading("What is needed before the bids are ranked"), _bullets(wanted)]
    return [Heading("What could change the ranking"), _bullets(_changes(comparison))]


def _bullets(sentences: Sequence[str]) -> Bullets:
    return Bullets(tuple(inline(words) for words in sentences))


def _first(comparison: BidComparison) -> str:
    count = len(comparison.bids)
    lowest = comparison.bids[0]
    if not comparison.whole:
        returned = "One bid was" if count == 1 else f"{capital(_NUMBERS.get(count, str(count)))} bids were"
        return (
            f"{returned} returned. The comparison is not whole: something that the tender counts has no figure yet, or "
            "something that a bidder wrote is not settled. So no bid is ranked; the sums below are of what is known."
        )
    if count == 1:
        return (
            f"One bid was returned, {lowest.label}; its evaluated price is {comparison.currency} "
            f"{written(lowest.total)}. There is nothing to compare it with but the owner's estimate."
        )
    level = [bid.label for bid in comparison.bids if bid.total == lowest.total]
    returned = capital(_NUMBERS.get(count, str(count)))
    words = f"{returned} bids were returned. By the published rule the lowest evaluated price is "
    if len(level) > 1:
        return f"{words}{in_currency(comparison.currency, lowest.total)}, of {joined(level)} alike."
    following = comparison.bids[1]
    apart = following.total - lowest.total
    share = percent(apart / lowest.total).replace("<", "less than") if lowest.total > 0 else DASH
    return (
        f"{words}that of {lowest.label}, {in_currency(comparison.currency, lowest.total)}; {following.label} follows "
        f"{in_currency(comparison.currency, apart)} behind, {share} of it."
    )


def _ranking(comparison: BidComparison) -> Table:
    rows = []
    for bid in comparison.bids:
        fit = comparison.fits[bid.name]
        cells = [
            str(comparison.ranks.get(bid.name, DASH)),
            bid.label,
            money(bid.corrected.total_read),
            money(bid.corrected.total),
            money(bid.total),
            f"{fit.state}: {fit.deciding}" if fit.deciding else fit.state,
            "; ".join(remarks(bid, comparison)) or "none",
        ]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Rank", "right", 0.7),
        Column("Bid", width=2.2),
        Column("As read", "decimal", 1.8),
        Column("Corrected", "decimal", 1.8),
        Column("Evaluated", "decimal", 1.8),
        Column("Dock", width=1.4),
        Column("Remarks", width=2.7),
    )
    note = inline(
        f"{comparison.currency}. As read is the total as it stood on the form; corrected, by the rule that "
        f"{_rule(comparison)}; evaluated, with what is left out priced, and what else the rule counts. "
        "Dock says whether the dock offered takes her, by the facility calculations."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _read_from(comparison: BidComparison) -> list[Block]:
    """Name the workbook that each bid was read from, so that anyone can tell whether it is still the one returned."""
    told = [
        f"{one.label}: read from {one.bid.file}" + (f", SHA-256 {one.bid.sha256}" if one.bid.sha256 else "")
        for one in comparison.bids
        if one.bid.file
    ]
    return [Bullets(tuple(inline(f"{words}.") for words in told))] if told else []


def _rule(comparison: BidComparison) -> str:
    return "the unit price governs" if comparison.rule.startswith("unit") else "the total is absolute"


def remarks(bid: EvaluatedBid, comparison: BidComparison) -> list[str]:
    """List in a few words each what stands beside the price of a bid."""
    corrected = bid.corrected
    ask = sum(1 for one in corrected.corrections if one.asks)
    slips = sum(1 for one in corrected.corrections if one.kind == "decimal slip")
    lines = [number for adder in bid.adders if adder.kind == "line" for number in adder.lines]
    excluded = [adder for adder in bid.adders if adder.kind == "exclusion"]
    missed = [one.name for one in comparison.points[bid.name] if one.state == "missed"]
    found = [
        _wrong(sum(1 for one in corrected.disqualifying if one.own)),
        _count(ask, "figure", "to confirm"),
        "perhaps a decimal slip" if slips == 1 else f"{slips} perhaps decimal slips" if slips else "",
        _count(len(lines), "line", "not answered and priced"),
        _count(len(excluded), "exclusion", "priced"),
        _count(len(bid.unsettled), "exclusion", "without a price"),
        _count(sum(not one.why for one in bid.remarks), "remark", "to settle"),
        "" if corrected.total_written else "no total on the form",
        f"missed: {', '.join(missed)}" if missed else "",
        _balance(bid, comparison),
    ]
    return [words for words in found if words]


def _wrong(number: int) -> str:
    if not number:
        return ""
    return "1 wrong sum, which disqualifies" if number == 1 else f"{number} wrong sums, which disqualify"


def _count(number: int, one: str, what: str) -> str:
    return f"{number} {one}{'' if number == 1 else 's'} {what}" if number else ""


def _balance(bid: EvaluatedBid, comparison: BidComparison) -> str:
    found = comparison.unbalance[bid.name]
    if found.materially:
        return "unbalanced, and it may matter"
    return "unbalanced by the screens" if found.mathematically else ""


def _changes(comparison: BidComparison) -> list[str]:
    words = []
    lowest = comparison.bids[0]
    for entry in comparison.cases[1:]:
        first = [bid.label for bid in comparison.bids if entry.ranks[bid.name] == 1]
        if lowest.label not in first:
            words.append(f"{_case(entry.case.name, entry.case.title)} {joined(first)} would rank first.")
    sentences = [
        break_even_sentence(one, comparison) for one in comparison.break_evens if one.ahead == lowest.name
    ] or [break_even_sentence(one, comparison) for one in comparison.break_evens]
    words += sentences[:MOST_SENTENCES]
    if len(comparison.break_evens) > MOST_SENTENCES:
        words.append(f"{len(comparison.break_evens)} such quantities in all stand in {mark('bids-break-even')}.")
    if not words:
        words.append(
            "No quantity within its possible range changes the ranking by itself, "
            f"and it is the same in every case of {mark('bids-evaluated')}."
        )
    return words


def _case(name: str, title: str) -> str:
    named = {"base": "By the base price alone", "base with options": "By the base price with options"}
    return named.get(name) or capital(_CASE_WORDS.get(name, title))


def _to_settle(comparison: BidComparison) -> list[str]:
    words = []
    for bid in comparison.bids:
        ask = [running(one.what) for one in bid.corrected.corrections if one.asks]
        if ask:
            named = f"{joined(ask[:6])}{_more(len(ask) - 6)}"
            words.append(f"{bid.label}: ask for confirmation of {named} ({mark('bids-corrections')}).")
        words += [_if_meant(bid, one, comparison) for one in bid.corrected.corrections if one.kind == "decimal slip"]
        words += doubt_sentences(bid, comparison)
        missed = [one.name for one in comparison.points[bid.name] if one.state == "missed"]
        unknown = [one.name for one in comparison.points[bid.name] if one.state == "not known"]
        if missed:
            words.append(
                f"{bid.label}: {joined(missed)} missed; waive with a reason, or not ({mark('bids-responsive')})."
            )
        if unknown:
            words.append(f"{bid.label}: {joined(unknown)} not known ({mark('bids-responsive')}).")
    judge = any(
        one.criterion and one.state == "to be judged" for bid in comparison.bids for one in comparison.points[bid.name]
    )
    still = f"; the criteria of the tender are still to be judged ({mark('bids-responsive')})" if judge else ""
    return words or [f"Nothing was found{still}."]


def _if_meant(bid: EvaluatedBid, one: Correction, comparison: BidComparison) -> str:
    total, rank = comparison.if_meant(bid, one)
    would = f"would be {in_currency(comparison.currency, total)}"
    now = comparison.ranks.get(bid.name)
    if now is not None:
        would += f", and the bid would {f'rank {rank} in place of {now}' if rank != now else 'rank as now'}"
    return (
        f"{bid.label}: {running(one.what)} counts as written; were its rate meant as it stands, the evaluated price "
        f"{would}."
    )


def _more(number: int) -> str:
    return f" and {number} more" if number > 0 else ""


def doubt_sentences(bid: EvaluatedBid, comparison: BidComparison) -> list[str]:
    """Say where an unbalanced bid would not be the lower of two in the end."""
    found = comparison.unbalance[bid.name]
    if not found.materially:
        return []
    doubts = found.doubts[:2]
    others = [f"{_when(one, comparison)} it falls behind {comparison.bid(one.other).label}" for one in doubts]
    return [
        f"{bid.label} is unbalanced, and {' and '.join(others)}: "
        f"a reasonable doubt that it would be the lowest in the end ({mark('bids-unbalanced')})."
    ]


def _when(doubt: Doubt, comparison: BidComparison) -> str:
    if doubt.case:
        return _CASE_WORDS.get(doubt.case, doubt.case)
    line = next(one for one in comparison.lines if one.number == doubt.line)
    return f"with {shown(doubt.quantity or 0, line.unit)} under {line_words(line)}"
