"""Compose what a change does to the owner's estimate and programme, for trustees, before anything is issued."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.desk import CAUTION, Desk, in_its_units
from tenderwright.documents.edition import Block, Column, Edition, Heading, Paragraph, Part, Row, Stamp, Table, inline
from tenderwright.documents.in_print import in_print
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.money import written
from tenderwright.pricing.price import Estimate

_SUMS = (
    Column("", width=4.6),
    Column("Before", "decimal", 1.5),
    Column("Now", "decimal", 1.5),
    Column("More", "decimal", 1.5),
)
_LINES = (
    Column("Line", width=1.0),
    Column("What is priced", width=4.2),
    Column("Before", "decimal", 1.4),
    Column("Now", "decimal", 1.4),
    Column("More", "decimal", 1.4),
)
_ZERO = Decimal(0)
_EACH = "Each side is priced and planned by the owner's papers as they stood at it."
_TODAYS = "Both sides are priced and planned by the owner's papers as they are today."


@dataclass(frozen=True)
class OwnersView:
    """What the owner's papers make of one side; without an estimate, why there is none."""

    estimate: Estimate | None
    schedule: Schedule | None
    why: str = ""


@in_its_units
def owners_diff(
    desk: Desk, stamp: Stamp, names: tuple[str, str], before: OwnersView, after: OwnersView, *, each: bool
) -> Edition:
    """Compose it; `names` are those of the two sides, of which `each` has its own papers or both those of today."""
    tender = desk.tender
    blocks: list[Block] = [
        Paragraph(inline(_EACH if each else _TODAYS, " What changed in the work is in the paper for yards.")),
        *_money(tender.currency, before, after),
        *_days(before.schedule, after.schedule),
        *_lines(tender.currency, before.estimate, after.estimate),
    ]
    part = Part("diff-money", "", "What it does to cost and time", "statement", "For the owner", tuple(blocks))
    edition = Edition(
        name="owner-diff",
        title=tender.tender.title,
        subtitle="What changed, for the owner",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=tender.dates.issued,
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=(part,),
        caution=CAUTION,
        confidential=True,
        facts=(("From", names[0]), ("To", names[1])),
    )
    return in_print(desk, edition)


def _money(currency: str, before: OwnersView, after: OwnersView) -> list[Block]:
    if before.estimate is None or after.estimate is None:
        words = [
            f"{name} cannot be priced: {one.why}."
            for name, one in (("The earlier side", before), ("The later side", after))
            if one.estimate is None
        ]
        return [Heading(f"Money, {currency}"), *(Paragraph(inline(one)) for one in words)]
    old, new = before.estimate, after.estimate
    sums = (
        ("Base: all that is contracted for at award", old.base, new.base),
        ("Evaluated price by the published rule, before days, towing and visits", old.evaluated, new.evaluated),
        ("Contingency held by the owner", old.contingency, new.contingency),
        ("Base with contingency", old.base + old.contingency, new.base + new.contingency),
    )
    note = f"Likely sums, at prices of {new.base_month}, without tax."
    rows = tuple(_row((words,), one, other) for words, one, other in sums)
    return [Heading(f"Money, {currency}"), Table(_SUMS, rows, note=inline(note))]


def _days(before: Schedule | None, after: Schedule | None) -> list[Block]:
    heading = Heading("Days, by the owner's programme")
    if before is None or after is None:
        words = "No days are compared: owner/programme.yaml is needed on both sides."
        return [heading, Paragraph(inline(words))]
    days = (
        ("On the blocks", before.dock_days, after.dock_days),
        ("From arrival to redelivery", before.yard_days, after.yard_days),
    )
    rows = tuple(
        Row(tuple(inline(one) for one in (words, _day(old), _day(new), _signed_day(new - old))))
        for words, old, new in days
    )
    return [heading, Table(_SUMS, rows)]


def _lines(currency: str, before: Estimate | None, after: Estimate | None) -> list[Block]:
    if before is None or after is None:
        return []
    old, new = ({line.number: line for line in one.lines} for one in (before, after))
    amounts: list[Mapping[str, Decimal]] = [{number: line.amount for number, line in one.items()} for one in (old, new)]
    rows = []
    for number in dict.fromkeys((*new, *old)):
        one, other = (found.get(number, _ZERO) for found in amounts)
        if one != other:
            line = new.get(number) or old[number]
            rows.append(_row((number, f"{line.item.title}: {line.line.text}"), one, other))
    if not rows:
        return [Paragraph(inline("No line costs more or less."))]
    return [Heading(f"Lines that cost more or less, {currency}"), Table(_LINES, tuple(rows))]


def _row(words: Sequence[str], old: Decimal, new: Decimal) -> Row:
    more = new - old
    return Row(
        (
            *map(inline, words),
            inline(written(old)),
            inline(written(new)),
            inline(f"{'+' if more > 0 else ''}{written(more)}"),
        )
    )


def _day(days: float) -> str:
    return f"{days:.1f}"


def _signed_day(days: float) -> str:
    return f"{days:+.1f}" if round(days, 1) else "0.0"
