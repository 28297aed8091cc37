"""Editions as wholes: their parts and order, links, cautions, and what the yard must not see."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tenderwright.documents.desk import CAUTION, CAUTION_LINE
from tenderwright.documents.edition import Bullets, Heading, Paragraph, inline, plain
from tenderwright.documents.numbering import GROUPS
from tenderwright.linking.parts import PARTS
from tenderwright.pricing.money import written
from tenderwright.writing.html import screen_page
from tests.pipeline.packages import edit

from .composed import Composed, Name, anchors, changed, composed, part, rows, tables, targets, words

EDITIONS = [(package, name) for package in ("starter", "marram") for name in ("yard", "owner", "priced")]
each_edition = pytest.mark.parametrize(("package", "name"), EDITIONS)
each_specification = pytest.mark.parametrize(("package", "name"), [one for one in EDITIONS if one[1] != "owner"])
each_package = pytest.mark.parametrize("package", ["starter", "marram"])


@each_edition
def test_every_anchor_that_is_linked_to_exists_once(package: Name, name: str) -> None:
    edition = composed(package).edition(name)
    known = anchors(edition)
    assert len(known) == len(set(known))
    linked = targets(edition)
    assert len(linked) > (5 if name == "owner" else 50)
    assert set(linked) - set(known) == set()


@each_edition
def test_the_page_for_the_screen_holds_every_anchor(package: Name, name: str) -> None:
    edition = composed(package).edition(name)
    page = screen_page(edition)
    missing = [anchor for anchor in anchors(edition) if f'id="{anchor}"' not in page]
    assert missing == []


@each_edition
def test_sheets_beside_an_edition_link_only_within_themselves(package: Name, name: str) -> None:
    for stem, sheet in composed(package).edition(name).sheets.items():
        assert set(targets(sheet)) - set(anchors(sheet)) == set()
        cautioned = all(part.caution for part in sheet.parts if part.kind not in ("cover", "contents"))
        assert cautioned is (stem not in ("donors", "index", "contract-checklist"))


def owners_parts(package: Name) -> list[str]:
    """List the parts that say what the docking costs, takes, is paid from and leaves, where the papers tell it."""
    owner = composed(package).owner
    programme = ["owner-programme"] if owner.schedule is not None else []
    funding = ["funding"] if owner.papers.funding is not None and owner.papers.scope is not None else []
    ahead = ["years-ahead"] if composed(package).compiled.package.condition is not None else []
    return ["prices", "estimate", "price-basis", "cost-risk", *programme, *funding, *ahead]


def test_after_the_drawings_stands_which_could_not_be_made_and_why() -> None:
    *drawn, last = (part for part in composed("starter").edition("yard").parts if part.kind == "drawing")
    assert (last.anchor, last.number) == ("sheets-not-made-yard", f"D{len(drawn) + 1}")
    (listed,) = last.blocks
    assert isinstance(listed, Bullets)
    said = [plain(entry) for entry in listed.entries]
    assert "Docking plan: profile and keel blocks. Not calculated: it needs the docking plan." in said
    assert "Shell expansion: readings and renewals. Not calculated: it needs thickness readings in the surveys." in said
    assert not any(part.anchor == last.anchor for part in composed("marram").edition("yard").parts)


@each_specification
def test_parts_are_numbered_in_their_groups_as_they_stand_and_no_number_is_left_open(package: Name, name: str) -> None:
    edition = composed(package).edition(name)
    for group in ("The ship", "Docking data", "Annexes"):
        numbers = [part.number for part in edition.parts if part.group == group]
        assert numbers == [f"{GROUPS[group]}{n}" for n in range(1, len(numbers) + 1)]
    assert len({part.number for part in edition.parts if part.number}) == sum(bool(p.number) for p in edition.parts)
    assert "\ue000" not in words(edition)


@each_package
def test_prose_can_refer_to_every_part_of_a_specification(package: Name) -> None:
    parts = composed(package).edition("yard").parts
    own = {part.anchor for part in parts if part.kind not in ("cover", "contents", "item", "drawing")}
    assert own <= PARTS.keys()


@each_specification
def test_the_parts_stand_in_the_order_that_yards_expect(package: Name, name: str) -> None:
    edition = composed(package).edition(name)
    asked = ["questions"] if composed(package).compiled.package.questions else []
    front = ["cover", "asked", "contents", "revision-record", "schedule"]
    data = ["general-requirements", "particulars", "fittings", "history", "coating-zones", "docking-data", "tanks"]
    sheets = [part.anchor for part in edition.parts if part.kind == "drawing" and part.audience == "yard"]
    items = [f"item-{item.number}" for item in composed(package).compiled.package.items if not item.withdrawn]
    gauged = ["gauging"] if composed(package).compiled.package.surveys else []
    back = ["sounding-tables", *gauged, "lists", *asked]
    assert sheets
    wanted = [*front, *items, *data, *sheets, *back]
    found = [part.anchor for part in edition.parts]
    sections = {block.anchor for part in edition.parts for block in part.blocks if isinstance(block, Heading)}
    assert [anchor for anchor in found if anchor in wanted] == [one for one in wanted if one not in sections]
    assert found[: len(front) + len(items)] == [*front, *items]
    assert found[-len(back) :] == back


@each_specification
def test_items_stand_in_number_order_each_a_part_of_its_own(package: Name, name: str) -> None:
    parts = [part for part in composed(package).edition(name).parts if part.kind == "item"]
    numbers = [int(part.number) for part in parts]
    assert numbers == sorted(set(numbers))
    live = [item for item in composed(package).compiled.package.items if not item.withdrawn]
    assert {str(number) for number in numbers} == {item.number for item in live}
    for item in parts:
        steps = [anchor for anchor in anchors(item) if re.fullmatch(r"item-\d+-\d+", anchor)]
        assert steps == [f"item-{item.number}-{n}" for n in range(1, len(steps) + 1)]


@each_edition
def test_numbered_parts_count_up_without_a_number_twice(package: Name, name: str) -> None:
    numbers = [part.number for part in composed(package).edition(name).parts if part.number]
    assert len(numbers) == len(set(numbers))


@each_package
def test_the_revision_record_is_first_and_lists_the_first_issue_and_addenda(package: Name) -> None:
    edition = composed(package).edition("yard")
    first = next(part for part in edition.parts if part.number)
    tender = composed(package).compiled.package.tender
    assert tender is not None
    assert (first.anchor, first.number) == ("revision-record", "1.1")
    assert [row[0] for row in rows(tables(first)[0])] == ["0", *(str(a.number) for a in tender.addenda)]


NO_SAFETY = {"cover", "contents", "revision-record", "lists", "coating-zones", "schedule", "prices"} | {
    "estimate",
    "price-basis",
    "cost-risk",
    "former-prices",
    "funding",
}
"""The cover gives the caution in words of its own."""


@each_edition
def test_every_part_that_touches_safety_has_the_caution(package: Name, name: str) -> None:
    edition = composed(package).edition(name)
    bare = {part.anchor for part in edition.parts if not part.caution}
    items = composed(package).compiled.package.items
    calm = {f"item-{i.number}" for i in items if not (i.hazards or i.precautions or i.safety or i.phase == "dry")}
    assert edition.caution == CAUTION
    assert bare <= NO_SAFETY | calm


@each_specification
def test_the_caution_stands_in_full_where_she_is_docked_and_drawn_and_in_a_line_elsewhere(
    package: Name, name: str
) -> None:
    edition = composed(package).edition(name)
    cautioned = [one for one in edition.parts if one.caution]
    full = [one for one in cautioned if one.cautioned(edition.caution) == CAUTION]
    assert {one.kind if one.kind == "drawing" else one.group for one in full} == {"drawing", "Docking data"}
    assert {one.cautioned(edition.caution) for one in cautioned} == {CAUTION, CAUTION_LINE}
    sheets = [one for sheet in edition.sheets.values() for one in sheet.parts if one.kind != "cover"]
    assert all(one.cautioned(edition.caution) == CAUTION for one in sheets)


def test_the_caution_defers_to_those_who_decide() -> None:
    for office in ("certifies nothing", "naval architect", "dockmaster", "competent person", "marine chemist", "law"):
        assert office in CAUTION


@each_package
def test_the_yard_sees_nothing_of_the_owners(package: Name) -> None:
    found = composed(package)
    edition, form = found.yard
    text = words(edition)
    assert not edition.confidential
    assert [line.rate for section in form.sections for line in section.lines if line.rate is not None] == []
    assert not [anchor for anchor in anchors(edition) if anchor.startswith("value-")]
    assert not {"prices", "record", "trade-checks"} & {part.anchor for part in edition.parts}
    for word in ("Owner's papers", "Contingency held", "Rate, EUR", "Amount, EUR", "Low, likely"):
        assert word not in text
    estimate = found.owner.estimate
    assert estimate is not None
    shown = {
        written(row.amount) for row in estimate.lines if row.line.price not in ("fixed",) and abs(row.amount) >= 10_000
    }
    shown |= {written(paid.amount) for one in found.owner.papers.closings.values() for paid in one.paid}
    assert [amount for amount in shown if re.search(rf"(?<![\d ]){re.escape(amount)}", text)] == []


@each_package
def test_the_owners_book_stands_beside_the_specification_and_repeats_none_of_it(package: Name) -> None:
    yard, book = composed(package).edition("yard"), composed(package).edition("owner")
    assert book.confidential
    papers = [part for part in book.parts if part.kind != "drawing"]
    docks = ["facility-fit", "facilities", "former-prices"]
    assert [part.anchor for part in papers] == [
        "cover",
        "contents",
        "schedule",
        *owners_parts(package),
        *docks,
        "trade-checks",
    ]
    assert [part.number for part in papers[2:]] == [str(number + 1) for number in range(len(papers) - 2)]
    theirs = {part.anchor for part in yard.parts if part.kind not in ("cover", "contents")}
    assert theirs & {part.anchor for part in book.parts} == {"schedule"}, "which is priced"


@each_package
def test_the_priced_specification_is_of_the_yards_very_parts_but_for_its_prices(package: Name) -> None:
    yard, priced = composed(package).edition("yard"), composed(package).edition("priced")
    assert priced.confidential
    same = [one is other for one, other in zip(yard.parts, priced.parts, strict=True)]
    lines = [any(getattr(b, "anchor", "").startswith("lines-") for b in part.blocks) for part in yard.parts]
    assert same == [not one for one in lines]


@each_package
def test_the_record_holds_every_value_with_its_source(package: Name) -> None:
    found = composed(package)
    record = found.edition("owner").sheets["record"]
    values = found.compiled.record.values
    assert {f"value-{name}".replace(".", "-") for name in values} == {
        anchor for anchor in anchors(record) if anchor.startswith("value-")
    }
    text = words(record)
    for value in values.values():
        assert str(value.working.method.source) in text


def _withdraw(root: Path) -> None:
    edit(root, "items/320-rivets-renew.yaml", "phase: dry", "phase: dry\nwithdrawn: true\nrevision: 1")
    edit(root, "items/320-rivets-renew.yaml", "  - Prime both", "  - Wash again as in <item:210>.\n  - Prime both")
    text = (root / "package.yaml").read_text("utf-8")
    (root / "package.yaml").write_text(text.replace('item: "320"', 'item: "420"'), "utf-8")


@pytest.fixture(scope="module")
def withdrawn() -> Composed:
    return changed(_withdraw)


@pytest.mark.parametrize("name", ["yard", "priced"])
def test_a_withdrawn_item_keeps_its_number_and_has_no_page(name: str, withdrawn: Composed) -> None:
    edition = withdrawn.edition(name)
    assert "320.a" not in words(edition.parts)
    assert [part.number for part in edition.parts if part.kind == "item"] == ["110", "130", "140", "210", "420"]
    record = part(edition, "revision-record")
    assert Paragraph(inline("Withdrawn: 320 Rivets, renew."), anchor="item-320") in record.blocks
    assert "Withdrawn, nothing to price: 320 Rivets, renew." in words(part(edition, "schedule"))
    assert set(targets(edition)) <= set(anchors(edition))


def test_a_withdrawn_item_is_not_priced(withdrawn: Composed) -> None:
    numbers = [line.number for section in withdrawn.yard[1].sections for line in section.lines]
    assert "320.a" not in numbers
    assert len(numbers) == 9
    assert withdrawn.owner.estimate is not None
    assert [line.number for line in withdrawn.owner.estimate.lines if line.item.item == 320] == []


def test_a_part_says_which_items_lead_to_it() -> None:
    item = part(composed("starter").edition("yard"), "item-140")
    assert "Referred to by" in words(item)
    assert "item-320" in targets(item)
