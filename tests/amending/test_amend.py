"""An addendum between two packages: all that changed, proved, told, and put on pages."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path

import pypdf
import pytest

from tenderwright.amending import amend, write_addendum
from tenderwright.comparing.apply import apply
from tenderwright.comparing.compare import compare
from tenderwright.comparing.data import package_data, same
from tenderwright.comparing.operation import from_json
from tenderwright.comparing.side import Side
from tenderwright.documents.edition import Edition, Facts, Paragraph, Span, Steps, Table, inline, plain
from tenderwright.writing.edition_files import Written
from tenderwright.writing.pdf import Typesetter
from tests.documents.composed import anchors, part, rows, tables, targets, walk, words
from tests.pipeline.packages import edit

from .conftest import AFTER, LISTED, Pair, amended


@pytest.fixture(scope="module")
def edition(pair: Pair) -> Edition:
    return pair.amended.amendment.edition


@pytest.fixture(scope="module")
def written(pair: Pair) -> Written:
    return write_addendum(pair.amended, Typesetter(), AFTER)


def side(pair: Pair) -> Side:
    compiled = pair.before.compiled
    return Side(compiled.files, compiled.package, compiled.links, compiled.record)


def cells(edition: Edition, anchor: str) -> list[list[str]]:
    return [row for table in tables(part(edition, anchor)) for row in rows(table)]


def test_nothing_changed_is_an_empty_addendum(pair: Pair) -> None:
    comparison = compare(side(pair), side(pair))
    assert (comparison.operations, comparison.changes, comparison.values, comparison.lines) == ((), (), (), ())
    assert not comparison.bears_on_price
    assert comparison.proof.before == comparison.proof.after


def test_questions_are_listed_by_number(tmp_path: Path) -> None:
    def ask(root: Path) -> None:
        edit(root, "package.yaml", "owner:", LISTED)
        (root / "questions").mkdir()
        for number in (7, 10, 9):
            asked = f"question: {number}\nasked: 2027-11-20\nask: Who?\nanswer: The yard.\nanswered: 2027-11-22\n"
            (root / f"questions/{number:02}-who.yaml").write_text(f"{asked}addendum: 1\n", "utf-8")

    edition = amended(tmp_path, ask).amended.amendment.edition
    listed = [row[0] for row in cells(edition, "addendum-summary") if row[0].startswith("Question ")]
    assert listed == ["Question 7", "Question 9", "Question 10"]


def test_the_json_that_is_sent_makes_the_one_package_into_the_other(pair: Pair, written: Written) -> None:
    sent = json.loads(written.files["addendum.json"])
    before, after = (package_data(one.compiled.files) for one in (pair.before, pair.after))
    made = apply(before, from_json(sent["operations"]))
    assert made.keys() == after.keys()
    assert all(same(made[path], after[path]) for path in after)
    assert sent["proof"]["from_and_operations_sha256"] == sent["proof"]["to_data_sha256"]
    assert (sent["from"]["commit"], sent["to"]["commit"]) == ("1" * 40, "2" * 40)
    assert sent["can_affect_price"] is True


def test_the_figure_that_changed_is_told_with_its_cause_and_no_other(pair: Pair) -> None:
    (value,) = pair.amended.comparison.values
    assert value.name == "coating.underwater-spot.area"
    assert value.files == ("vessel/zones.yaml",)
    assert [pair.amended.comparison.operations[number].new for number in value.causes] == ["45 %"]
    assert value.lines == ("420.a",)


def test_the_lines_of_the_price_form_are_told(pair: Pair) -> None:
    found = [(line.number, line.manner, line.differs) for line in pair.amended.comparison.lines]
    assert found == [
        ("320.a", "changed", ("quantity",)),
        ("420.a", "changed", ("quantity",)),
        ("430.a", "added", ()),
    ]
    old, new = pair.amended.comparison.lines[0].old, pair.amended.comparison.lines[0].new
    assert old is not None
    assert new is not None
    assert [str(old.quantity), str(new.quantity)] == ["40", "55"]


def test_the_summary_says_what_is_changed_and_that_the_rest_is_not(edition: Edition) -> None:
    summary = part(edition, "addendum-summary")
    assert "What this addendum does not mention is unchanged, and this was proved" in words(summary)
    assert "Acknowledge this addendum" in words(summary)
    told = {row[0]: row[1:] for row in rows(tables(summary)[0])}
    assert told["The tender"] == ["dates, closing day; addenda (new)", "yes"]
    assert told["320 Rivets, renew"][0] == "requirement 2 (now 3); requirement 1 (new); line a, quantity"
    assert told["430 Topside, wash"] == ["new", "yes"]
    assert told["Question 1"] == ["answered", "no"]
    assert told["Question 2"] == ["asked; an answer is to follow", "no"]
    (coating,) = [row for what, row in told.items() if what.startswith("420 ")]
    assert coating == ["by figures that changed: line 420.a; table Coating", "yes"]


def test_prose_is_told_as_one_text_with_words_marked(edition: Edition) -> None:
    spans = [thing for thing in walk(part(edition, "addendum-changes")) if isinstance(thing, Span)]
    assert "0.3" in [span.text for span in spans if span.deleted]
    assert "0.5" in [span.text for span in spans if span.inserted]
    assert "Mark the rivets with the owner." in [span.text for span in spans if span.inserted]


def test_only_pages_that_changed_are_put_in_and_bars_stand_beside_what_changed(edition: Edition) -> None:
    pages = {one.anchor: one for one in edition.parts if one.group == "Replacement pages"}
    assert {"item-320", "item-420", "item-430", "general-requirements", "questions", "revision-record"} <= set(pages)
    assert "item-110" not in pages
    assert pages["item-430"].changed == ()
    assert pages["item-430"].revision.endswith("new")
    (steps,) = [block for block in pages["item-320"].blocks if isinstance(block, Steps)]
    assert [step.changed for step in steps.steps] == [True, False, True, False]
    (lines,) = [block for block in pages["item-320"].blocks if isinstance(block, Table) and _priced(block)]
    assert [row.changed for row in lines.rows] == [True]
    assert pages["item-320"].changed == ()
    assert "question 1" in words(pages["item-320"].on_screen)


def _priced(table: Table) -> bool:
    return table.columns[0].title == "Line"


def test_answers_are_given_to_all_and_questions_without_one_are_not_printed(edition: Edition) -> None:
    answers = part(edition, "questions")
    assert "Question 1 (new in this addendum)" in words(answers)
    assert "Who supplies the rivets of" in words(answers)
    assert "Is item 420 needed" not in words(edition)
    assert len(answers.changed) == len(answers.blocks) - 1
    assert "question 2" not in words(part(edition, "item-420"))


def test_links_lead_only_to_what_is_there(edition: Edition) -> None:
    there = set(anchors(edition.parts))
    assert set(targets(edition.parts)) <= there
    assert "item-320" in targets(edition.parts)


def test_every_file_is_listed_and_packed(written: Written) -> None:
    names = set(written.files)
    assert {"addendum.pdf", "addendum.html", "addendum.json", "price-form.xlsx", "manifest.json"} <= names
    assert "BWT-2028-01-addendum-1.zip" in names
    assert [name for name in sorted(names) if name.startswith("drawings/")] == ["drawings/coating-zones.svg"]
    listed = {entry["path"] for entry in json.loads(written.files["manifest.json"])["files"]}
    assert listed == names - {"manifest.json", "BWT-2028-01-addendum-1.zip"}


def test_the_pages_can_be_read_without_colour(written: Written, tmp_path: Path) -> None:
    page = written.files["addendum.html"].decode()
    assert "<del>" in page
    assert "<ins>" in page
    assert '<li id="item-320-1" class="changed">' in page
    file = tmp_path / "addendum.pdf"
    file.write_bytes(written.files["addendum.pdf"])
    assert len(pypdf.PdfReader(file).pages) == written.pages


def test_the_same_two_packages_give_the_same_bytes(pair: Pair, written: Written) -> None:
    again = write_addendum(amend(pair.before, pair.after, pair.amended.entry), Typesetter(), AFTER)
    assert [name for name in again.files if again.files[name] != written.files[name]] == []


def test_punctuation_alone_cannot_affect_price(tmp_path: Path) -> None:
    def punctuate(root: Path) -> None:
        edit(root, "package.yaml", "owner:", LISTED)
        edit(root, "items/210-hull-wash.yaml", "underwater shell, and test", "underwater shell and test")

    pair = amended(tmp_path, punctuate)
    assert not pair.amended.comparison.bears_on_price
    facts = dict(pair.amended.amendment.edition.facts)
    assert facts["Can affect price"] == "no"
    first = part(pair.amended.amendment.edition, "addendum-summary").blocks[0]
    assert isinstance(first, Facts)
    assert plain(first.pairs[0][1]).startswith("No;")


def test_a_page_that_says_so_takes_the_place_of_an_item_that_is_withdrawn(tmp_path: Path) -> None:
    def withdraw(root: Path) -> None:
        edit(root, "package.yaml", "owner:", LISTED)
        edit(root, "items/320-rivets-renew.yaml", "phase: dry", "phase: dry\nwithdrawn: true\nrevision: 1")
        held = (root / "package.yaml").read_text("utf-8")
        (root / "package.yaml").write_text(held.replace('item: "320"', 'item: "420"'), "utf-8")

    edition = amended(tmp_path, withdraw).amended.amendment.edition
    assert [anchor for anchor, times in Counter(anchors(edition.parts)).items() if times > 1] == []
    assert "Withdrawn: 320 Rivets, renew." in words(part(edition, "revision-record"))
    page = part(edition, "item-320")
    assert page.blocks == (Paragraph(inline("This item is withdrawn. Its number stays taken.")),)
    assert "replaces every page of 320" in page.revision


def test_a_figure_that_stands_in_a_table_alone_is_told_and_is_a_revision_of_its_item(tmp_path: Path) -> None:
    def bore(root: Path) -> None:
        edit(root, "package.yaml", "owner:", LISTED)
        edit(root, "vessel/particulars.yaml", "beam: 5.44 m", "beam: 5.54 m")

    pair = amended(tmp_path, bore)
    told = [row for table in tables(part(pair.amended.amendment.edition, "addendum-tables")) for row in rows(table)]
    assert any("5.44 m 5.54 m" in row[-1] for row in told)
    raised = [item.number for item in pair.amended.amendment.not_raised]
    summary = {row[0].split()[0] for row in cells(pair.amended.amendment.edition, "addendum-summary")}
    assert set(raised) <= summary
