"""Compose an addendum: what changed, before and after, and the pages that take the place of those issued."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from tenderwright.comparing.compare import Comparison
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Edition, Figure, Paragraph, Part
from tenderwright.documents.edition_side import Issue
from tenderwright.documents.in_print import in_print
from tenderwright.documents.links_within import links_within
from tenderwright.documents.numbering import told
from tenderwright.documents.parts.addendum_changes import changes_part
from tenderwright.documents.parts.addendum_figures import figures_part
from tenderwright.documents.parts.addendum_lines import lines_part, sent_anew
from tenderwright.documents.parts.addendum_summary import summary_part
from tenderwright.documents.parts.addendum_tables import Changed, changed_tables, tables_part
from tenderwright.documents.parts.item import item_part
from tenderwright.documents.parts.questions import questions
from tenderwright.documents.price_form import PriceForm
from tenderwright.documents.replacement import Replacement, drawn, essence, replacements
from tenderwright.documents.revised import not_raised
from tenderwright.model.item import Item
from tenderwright.model.tender import Addendum
from tenderwright.quantities.customs import day, telling_in

PAGES = "Replacement pages"


@dataclass(frozen=True)
class Amendment:
    """An addendum with all that is sent with it."""

    edition: Edition
    form: PriceForm
    drawings: tuple[Figure, ...]
    """The drawings that are new or not what they were."""
    not_raised: tuple[Item, ...]
    """The items that changed and bear the revision that yards have; where there are any, it is not to be sent."""


def amendment(before: Issue, after: Issue, comparison: Comparison, entry: Addendum) -> Amendment:
    """Compose the addendum that makes one yard edition into the other."""
    found = replacements(before.edition, after.edition)
    changed = changed_tables({part.anchor: part for part in before.edition.parts}, found)
    found = tuple(_withdrawn(after.desk, one) for one in found)
    with telling_in(after.desk.units, american=after.desk.package.american):
        parts = _own_parts(before, after, comparison, entry, found, changed)
        pages = [one for one in found if one.does != "removed"]
        own = {one.part.anchor for one in pages}
        parts += [_landing_once(_page(after.desk, one, entry, after.edition.parts), own) for one in pages]
    edition = in_print(after.desk, _edition(before, after, comparison, entry, parts))
    left = not_raised(before.desk, after.desk, before.edition, after.edition)
    return Amendment(edition, after.form, _drawings(before, after), left)


def _own_parts(
    before: Issue,
    after: Issue,
    comparison: Comparison,
    entry: Addendum,
    found: tuple[Replacement, ...],
    changed: Changed,
) -> list[Part]:
    group = f"Addendum {entry.number}"
    parts: list[Part | None] = [
        summary_part(before.desk, after.desk, comparison, entry, found, changed),
        changes_part(before.desk, after.desk, comparison),
        figures_part(before.desk, after.desk, comparison),
        tables_part(found, changed),
        lines_part(after.desk, comparison, sent_anew(after.form.edition_hash)),
    ]
    there = [part for part in parts if part is not None]
    numbered = [replace(part, number=str(n), group=group) for n, part in enumerate(there, start=1)]
    cover = Part("cover", "", after.desk.tender.tender.title, "cover", group, (), audience="yard")
    return [cover, Part("contents", "", "Contents", "contents", group, (), audience="yard"), *numbered]


def _withdrawn(desk: Desk, one: Replacement) -> Replacement:
    """Put in the place of an item that was withdrawn the page that says so."""
    item = desk.package.item_by_name.get(one.part.number) if one.part.kind == "item" and one.does == "removed" else None
    return Replacement(item_part(desk, item), "replaced") if item is not None and item.withdrawn else one


def _page(desk: Desk, one: Replacement, entry: Addendum, parts: tuple[Part, ...]) -> Part:
    part = one.part
    if part.anchor == "questions":
        part = _marked_questions(desk, entry, part, parts)
    number = part.number or part.title
    what = "new" if one.does == "added" else f"replaces every page of {number} issued before"
    words = [part.revision, f"Addendum {entry.number}, {day(entry.date)}: {what}"]
    return replace(part, group=PAGES, revision=" · ".join(word for word in words if word))


def _landing_once(part: Part, own: set[str]) -> Part:
    """Let references land on the page of an item that is withdrawn, and not on the line that names it elsewhere."""
    blocks = (replace(b, anchor="") if isinstance(b, Paragraph) and b.anchor in own else b for b in part.blocks)
    return replace(part, blocks=tuple(blocks))


def _marked_questions(desk: Desk, entry: Addendum, part: Part, parts: tuple[Part, ...]) -> Part:
    marked = questions(replace(desk, numbers_parts=True), entry.number)
    return replace(told(marked, parts), number=part.number) if marked is not None else part


def _edition(before: Issue, after: Issue, comparison: Comparison, entry: Addendum, parts: list[Part]) -> Edition:
    edition, tender = after.edition, after.desk.tender
    forms = _anew(before.edition.forms, edition.forms)
    facts = (
        ("Tender", f"{tender.tender.number}, {tender.tender.title}"),
        ("Ship", tender.ship),
        ("Owner", tender.owner.name),
        ("Addendum", f"{entry.number} of {day(entry.date)}"),
        ("From edition", before.edition.stamp.label),
        ("To edition", edition.stamp.label),
        ("Can affect price", "yes" if comparison.bears_on_price else "no"),
        ("Price form", f"edition {after.form.edition_hash}, in place of {before.form.edition_hash}"),
        *([("Forms to sign", f"sent anew: {', '.join(f'{stem}.docx' for stem in forms)}")] if forms else []),
        ("Bids close", day(tender.dates.closing)),
    )
    return Edition(
        name="addendum",
        title=f"Addendum {entry.number}",
        subtitle=entry.summary,
        tender=edition.tender,
        owner=edition.owner,
        stamp=edition.stamp,
        issued=entry.date,
        page_size=edition.page_size,
        parts=links_within(tuple(parts)),
        caution=edition.caution,
        language=edition.language,
        facts=facts,
        audience="yard",
        files={path: one for path, one in edition.files.items() if before.edition.files.get(path) != one},
        sheets=_anew(before.edition.sheets, edition.sheets),
        forms=forms,
    )


def _anew(before: Mapping[str, Edition], after: Mapping[str, Edition]) -> dict[str, Edition]:
    """Give the papers beside an edition that are new or say anything else than before."""
    old = {stem: essence(paper.parts) for stem, paper in before.items()}
    return {stem: paper for stem, paper in after.items() if essence(paper.parts) != old.get(stem)}


def _drawings(before: Issue, after: Issue) -> tuple[Figure, ...]:
    old = {figure.name: drawn(figure) for figure in _figures(before.edition)}
    return tuple(figure for figure in _figures(after.edition) if old.get(figure.name) != drawn(figure))


def _figures(edition: Edition) -> list[Figure]:
    return [block for part in edition.parts for block in part.blocks if isinstance(block, Figure)]
