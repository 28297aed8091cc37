"""Word documents of whole editions, read back: styles only, links with their bookmarks, nothing lost."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from docx.document import Document
from docx.oxml.ns import qn
from docx.oxml.parser import parse_xml

from tenderwright.documents.edition import Edition, Heading, Paragraph, Part, Span, Table, inline, plain
from tenderwright.writing.errors import WritingError
from tenderwright.writing.word.document import word_document

from ..every_block import every_block
from ..sample import draft_edition, prose, sample_edition
from ..starter_edition import starter_edition
from .opened import TIMESTAMP, opened, parts_of, small, written


def _one_part(*blocks: object) -> Edition:
    part = Part("a", "1", "Title", "front", "Group", tuple(blocks))  # type: ignore[arg-type]
    return replace(sample_edition(0), parts=(part,))


def test_paragraphs_stand_in_the_styles_that_word_knows() -> None:
    found = written(small())
    for paragraph in (
        ("Title", "Docking of the lighthouse tender Marram"),
        ("Subtitle", "Specification for docking, survey and repair of the underwater hull, 2026"),
        ("TOC Heading", "Contents"),
        ("toc 1", "D-12 Tank plan"),
        ("Heading 1", "420 Tanks"),
        ("Part Line", "Work items · Revision B"),
        ("Heading 2", "Requirements"),
        ("Heading 3", "Hot work"),
        ("Heading 3", "Of the shell"),
        ("Body Text", "Read item 420, line a."),
        ("List Bullet", "another list"),
        ("Step", "420.1\tOpen the tank. See plan and clause."),
        ("Step", "420.2\tHOLD H1 Wash:"),
        ("List Bullet 3", "at 200 bar;"),
        ("List Number", "Measure:"),
        ("List Bullet 2", "at frames,"),
        ("List Continue 2", "and write it down."),
        ("Intense Quote", "Before entry"),
        ("Quote", "Quoted words of the surveyor."),
        ("Code Block", "fr  31  9.5"),
        ("Caption", "Tank plan. Scale 1:250."),
        ("Figure Text", "Plan of the double bottom tanks. The drawing itself is in the PDF."),
        ("Table Heading", "Quantity"),
        ("Table Group", "Measured | lines"),
        ("Table Total", "1,252.875"),
        ("Table Text Small", "Fr 3"),
        ("Table Note", "Remeasured; see requirements."),
    ):
        assert paragraph in found


def test_prose_keeps_its_lines_its_pictures_words_and_its_rules() -> None:
    found = written(small())
    words = "She was built with riveted laps and butts; see the tank plan, nothing and the society.\n"
    assert ("Body Text", f"{words}A second line with code and the stern (stern.png).") in found
    assert ("Rule", "") in found


@pytest.mark.parametrize(
    "edition", [every_block(), draft_edition(), starter_edition()], ids=["blocks", "draft", "starter"]
)
def test_looks_come_from_styles_alone(edition: Edition) -> None:
    """No run says more of its look than a style, and every style named is there."""
    made = parts_of(word_document(edition, TIMESTAMP))
    styles = {style.get(qn("w:styleId")) for style in parse_xml(made["word/styles.xml"]).iter(qn("w:style"))}
    for name, content in made.items():
        if name.startswith(("word/document", "word/header", "word/footer")):
            root = parse_xml(content)
            for look in root.iter(qn("w:rPr")):
                assert [child.tag for child in look] == [qn("w:rStyle")]
            for kind in ("w:pStyle", "w:rStyle", "w:tblStyle"):
                assert {found.get(qn("w:val")) for found in root.iter(qn(kind))} <= styles


def test_every_style_is_built_on_one_that_is_there() -> None:
    document = small()
    identities = {style.style_id for style in document.styles}
    for style in document.styles:
        for kind in ("w:basedOn", "w:next"):
            named = style.element.find(qn(kind))
            assert named is None or named.get(qn("w:val")) in identities
    for level in document.part.numbering_part.element.iter(qn("w:pStyle")):
        assert level.get(qn("w:val")) in identities


def _links(document: Document) -> list[tuple[str, str]]:
    return [
        (str(link.get(qn("w:anchor"))), "".join(text.text or "" for text in link.iter(qn("w:t"))))
        for link in document.element.body.iter(qn("w:hyperlink"))
        if link.get(qn("w:anchor"))
    ]


@pytest.mark.parametrize(
    "edition", [every_block(), sample_edition(), starter_edition()], ids=["blocks", "sample", "starter"]
)
def test_every_link_leads_to_a_bookmark(edition: Edition) -> None:
    document = opened(edition)
    starts = list(document.element.body.iter(qn("w:bookmarkStart")))
    names = [start.get(qn("w:name")) for start in starts]
    numbers = [start.get(qn("w:id")) for start in starts]
    assert len({name.lower() for name in names}) == len(names)
    assert all(len(name) <= 40 and name.replace("_", "").isalnum() and name[0].isalpha() for name in names)
    assert sorted(numbers) == sorted(end.get(qn("w:id")) for end in document.element.body.iter(qn("w:bookmarkEnd")))
    assert len(set(numbers)) == len(numbers)
    assert _links(document)
    assert {anchor for anchor, _ in _links(document)} <= set(names)


def test_links_to_rows_steps_and_drawings_are_kept_and_others_are_words() -> None:
    document = small()
    assert {("line_420_a", "line a"), ("plan", "the tank plan"), ("quantities", "8.1")} <= set(_links(document))
    assert not [words for _, words in _links(document) if words in ("gone", "nothing")]
    assert ("List Bullet", "gone") in written(document)
    outside = [rel.target_ref for rel in document.part.rels.values() if rel.is_external]
    assert outside == ["https://example.org/a_(b)?c=1&d=2"]


def test_bookmark_names_are_kept_apart() -> None:
    long = "a-very-long-anchor-indeed-that-word-would-not-take-as-a-name"
    anchors = (f"{long}-1", f"{long}-2", "item-1", "item_1", "ITEM-1", "7")
    headings = [Heading("H", 2, anchor) for anchor in anchors]
    links = [Paragraph(inline(Span("to", target=anchor))) for anchor in anchors]
    assert len({anchor for anchor, _ in _links(opened(_one_part(*headings, *links)))}) == len(anchors)


def test_an_anchor_given_twice_is_refused() -> None:
    with pytest.raises(WritingError, match="twice: same"):
        word_document(_one_part(Heading("A", 2, "same"), Heading("B", 2, "same")), TIMESTAMP)


def test_a_reference_left_unresolved_is_refused() -> None:
    with pytest.raises(WritingError, match="item:420"):
        word_document(_one_part(prose("See <item:420>.")), TIMESTAMP)


def test_an_edition_without_parts_is_refused() -> None:
    with pytest.raises(WritingError, match="without parts"):
        word_document(replace(every_block(), parts=()), TIMESTAMP)


def test_no_words_of_tables_are_lost() -> None:
    edition = starter_edition()
    found = {text for _, text in written(opened(edition))}
    tables = [block for part in edition.parts for block in part.blocks if isinstance(block, Table)]
    assert tables
    for table in tables:
        texts = [plain(cell) for row in table.rows for cell in row.cells]
        assert {" ".join(text.split()) for text in texts} - {" ".join(text.split()) for text in found} == set()


def test_every_numbered_list_begins_again() -> None:
    document = opened(_one_part(prose("1. a\n2. b"), prose("4. c\n5. d")))
    numbers = [found.get(qn("w:val")) for found in document.element.body.iter(qn("w:numId"))]
    assert len(numbers) == 4
    assert numbers[0] == numbers[1] != numbers[2] == numbers[3]
    lists = {num.get(qn("w:numId")): num for num in document.part.numbering_part.element.iter(qn("w:num"))}
    starts = [next(lists[number].iter(qn("w:startOverride"))).get(qn("w:val")) for number in (numbers[0], numbers[2])]
    assert starts == ["1", "4"]


def test_what_the_file_says_of_itself() -> None:
    document = small()
    properties = document.core_properties
    assert properties.title == "Docking of the lighthouse tender Marram (HP-2026-01)"
    assert properties.author == properties.last_modified_by == "Harrow Point Lighthouse Tender Trust"
    assert (properties.language, properties.revision) == ("en-GB", 1)
    assert properties.created is not None
    assert properties.created == properties.modified
    assert properties.created.isoformat()[:19] == "2026-02-02T02:40:00"
    language = next(document.styles.element.iter(qn("w:lang")))
    assert language.get(qn("w:val")) == "en-GB"


def test_nothing_of_a_template_is_left() -> None:
    made = parts_of(word_document(every_block(), TIMESTAMP))
    assert not [name for name in made if "thumbnail" in name or "app.xml" in name or "customXml" in name]
    assert b"python-docx" not in b"".join(made.values()).lower()


def test_members_stand_in_order_at_a_fixed_time() -> None:
    with zipfile.ZipFile(BytesIO(word_document(every_block(), TIMESTAMP))) as packed:
        names = packed.namelist()
        assert names[0] == "[Content_Types].xml"
        assert names[1:] == sorted(names[1:])
        assert {member.date_time for member in packed.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_two_processes_write_the_same_bytes(tmp_path: Path) -> None:
    program = (
        "import sys\n"
        "from tests.writing.every_block import every_block\n"
        "from tenderwright.writing.markdown.document import markdown_document\n"
        "from tenderwright.writing.word.document import word_document\n"
        f"sys.stdout.buffer.write(markdown_document(every_block()) + word_document(every_block(), {TIMESTAMP}))\n"
    )
    root = Path(__file__).parents[3]
    made = [
        subprocess.run(
            [sys.executable, "-c", program],
            cwd=root,
            env={**os.environ, "PYTHONPATH": f"{root}{os.pathsep}{root / 'compiler'}", **unlike},
            capture_output=True,
            check=True,
        ).stdout
        for unlike in ({"PYTHONHASHSEED": "1", "TZ": "UTC"}, {"PYTHONHASHSEED": "77", "TZ": "Pacific/Auckland"})
    ]
    assert made[0] == made[1]
    assert made[0].endswith(word_document(every_block(), TIMESTAMP))
