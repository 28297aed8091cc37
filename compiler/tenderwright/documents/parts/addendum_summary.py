"""What an addendum does, in one page: what is changed, which pages to put in, and what the bidder has to do."""

from __future__ import annotations

from tenderwright.comparing.change import Change
from tenderwright.comparing.compare import Comparison
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import (
    Block,
    Caution,
    Column,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.parts.addendum_changes import subjects, title_of
from tenderwright.documents.parts.addendum_tables import Changed
from tenderwright.documents.parts.questions import answered
from tenderwright.documents.replacement import Replacement
from tenderwright.model.tender import Addendum
from tenderwright.quantities.customs import day

_SUBJECTS = (Column("What", width=3.6), Column("How", width=4.8), Column("Affects price", width=1.2))
_PAGES = (Column("Pages", width=1.1), Column("Part", width=5), Column("What to do", width=3.2))
_MOST_WORDS = 6
_REVISION = "Revision"
"""What is told of an item whose revision was raised."""
_TO_DO = {
    "replaced": "replace",
    "added": "put in",
    "removed": "take out",
}


_NOTE = (
    "Each part counts its own pages, so that it is replaced as a whole; a bar in the outer margin stands beside what "
    "changed. The contents are not issued again. Drawings that are not among these stay as they are, with the revision "
    "in their title block."
)


def summary_part(
    before: Desk,
    after: Desk,
    comparison: Comparison,
    entry: Addendum,
    found: tuple[Replacement, ...],
    changed: Changed,
) -> Part:
    """Compose the first page of an addendum."""
    blocks: list[Block] = [
        Facts((("Affects price", inline(price_words(comparison))), ("Bids close", _closing(before, after, entry)))),
        Paragraph(inline(_unmentioned(comparison))),
        Caution("Acknowledge this addendum", (inline(_acknowledge(entry)),)),
        *changed_blocks(after, comparison, changed),
        *pages_blocks(found, comparison, changed, "Pages to replace", _NOTE),
    ]
    return Part("addendum-summary", "", "What this addendum does", "front", "", tuple(blocks), audience="yard")


def price_words(comparison: Comparison) -> str:
    """Say whether anything affects price, and how many lines of the price form change."""
    count = len(comparison.lines)
    lines = {0: "no line of the price form changes", 1: "one line of the price form changes"}
    told = lines.get(count, f"{count} lines of the price form change")
    return f"{'Yes' if comparison.bears_on_price else 'No'}; {told}"


def _closing(before: Desk, after: Desk, entry: Addendum) -> Inline:
    old, new = before.tender.dates.closing, after.tender.dates.closing
    left = f", {(new - entry.date).days} days after this addendum" if new is not None else ""
    if old == new:
        return inline(f"{day(new)}, as before{left}")
    return (Span(day(old), deleted=True), Span(" "), Span(day(new), inserted=True), Span(left))


def _unmentioned(comparison: Comparison) -> str:
    proof = comparison.proof
    return (
        f"What this addendum does not mention is unchanged, and this was proved: the {proof.operations} changes listed "
        "here, applied to the data of the edition before, give the data of the edition now, to the last word and "
        f"figure (SHA-256 {proof.before[:12]} and {proof.after[:12]}; the changes stand in addendum.json)."
    )


def _acknowledge(entry: Addendum) -> str:
    return (
        f"On the sheet Acknowledgements of the price form sent with this addendum, enter the day on which addendum "
        f"{entry.number} was received. A bid that does not acknowledge every addendum, or is made on an earlier price "
        "form, may be set aside."
    )


def changed_blocks(desk: Desk, comparison: Comparison, changed: Changed) -> list[Block]:
    """List what is changed, subject by subject, and how."""
    rows = []
    by_figures = _by_figures(comparison, changed) - _told(comparison)
    priced = {line.number.partition(".")[0] for line in comparison.lines if line.price}
    for subject, found in subjects(comparison):
        if subject.group == "item" and subject.name in by_figures:
            continue
        anchor = desk.anchor("item", subject.name) if subject.group == "item" else ""
        price = any(change.price for change in found) or (subject.group == "item" and subject.name in priced)
        how = _asked(desk, subject.name) if subject.group == "question" else _how(found)
        rows.append(Row((inline(Span(title_of(desk, subject), anchor)), inline(how), inline(_yes(price)))))
    for number in sorted(by_figures, key=int):
        item = desk.package.item_by_name[number]
        lines = [line.number for line in comparison.lines if line.number.startswith(f"{number}.")]
        tables = [table.title for table in changed.get(desk.anchor("item", number), ())]
        what = [f"line {', '.join(lines)}"] if lines else []
        what += [f"table {', '.join(dict.fromkeys(tables))}"] if tables else []
        how = "by figures that changed" + (f": {'; '.join(what)}" if what else "")
        words = Span(f"{number} {item.title}", desk.anchor("item", number))
        rows.append(Row((inline(words), inline(how), inline(_yes(bool(lines))))))
    return [Heading("What is changed"), Table(_SUBJECTS, tuple(rows))] if rows else []


def _yes(price: bool) -> str:
    return "yes" if price else "no"


def _told(comparison: Comparison) -> set[str]:
    """Give the items of which something is told beside a revision that was raised."""
    items = [change for change in comparison.changes if change.subject.group == "item"]
    return {change.subject.name for change in items if change.what != _REVISION}


def _by_figures(comparison: Comparison, changed: Changed) -> set[str]:
    """Give the items that changed by a figure, line or table of theirs, and are still there."""
    there = comparison.after.package.item_by_name
    figures = {name for value in comparison.values for kind, name in value.used_by if kind == "item"}
    lines = {line.number.partition(".")[0] for line in comparison.lines}
    tables = {number for number in there if f"item-{number}" in changed}
    return tables | {number for number in figures | lines if number in there}


def _asked(desk: Desk, number: str) -> str:
    if answered(desk, number):
        return "answered"
    known = any(one.number == number for one in desk.package.questions)
    return "asked; an answer is to follow" if known else "taken back"


def _how(found: list[Change]) -> str:
    words = []
    for change in [one for one in found if one.what != _REVISION] or found:
        if not change.what:
            words.append({"added": "new", "removed": "no longer in the tender"}.get(change.manner, change.manner))
            continue
        word = {"added": " (new)", "removed": " (deleted)", "withdrawn": " (withdrawn)"}.get(change.manner, "")
        words.append(f"{change.what[:1].lower()}{change.what[1:]}{word}")
    more = len(words) - _MOST_WORDS
    return "; ".join(words[:_MOST_WORDS]) + (f"; and {more} more" if more > 0 else "")


def pages_blocks(
    found: tuple[Replacement, ...], comparison: Comparison, changed: Changed, heading: str, note: str
) -> list[Block]:
    """List the parts that are replaced, put in or taken out."""
    own = {f"item-{number}" for number in _told(comparison) | _by_figures(comparison, changed)}
    rows = []
    for one in found:
        title = Span(one.part.title, "" if one.does == "removed" else one.part.anchor)
        words = _TO_DO[one.does]
        if one.does == "replaced" and one.part.kind == "item" and one.part.anchor not in own:
            words += "; only what it names changed"
        rows.append(Row((inline(one.part.number or "–"), inline(title), inline(words))))
    return [Heading(heading), Table(_PAGES, tuple(rows), note=inline(note))] if rows else []
