"""The numbers of parts, and how text refers to a part: by number where it stands, in words where it does not."""

from __future__ import annotations

import re
from dataclasses import replace

from tenderwright.documents.edition import Figure, Paragraph, Part, Span, inline
from tenderwright.documents.numbering import numbered
from tests.documents.composed import changed, composed, part, targets, words
from tests.pipeline.packages import edit

SCOPE = "items/210-hull-wash.yaml"


def of(anchor: str, group: str, number: str = "") -> Part:
    return Part(anchor, number, f"Of {anchor}", "data", group, ())


def test_numbers_count_within_each_group_and_skip_what_has_one_or_needs_none() -> None:
    parts = (
        of("cover", "Front matter"),
        of("schedule", "Rules and prices"),
        of("item-110", "Work items", "110"),
        of("general-requirements", "General requirements"),
        of("particulars", "The ship"),
        of("condition", "The ship"),
        of("lists", "Annexes"),
    )
    assert [one.number for one in numbered(parts)] == ["", "1.1", "110", "2", "3.1", "3.2", "A1"]
    assert [one.number for one in numbered((*parts[:4], parts[5]))][-1] == "3.1"


def test_a_reference_is_told_in_text_notes_and_drawings() -> None:
    desk = replace(composed("starter").desk(), numbers_parts=True)
    span, short = desk.part("tanks"), desk.part("tanks", titled=False)
    figure = Figure("f", "<svg/>", f"see {short.text}", "")
    (first, _) = numbered((replace(of("a", "The ship"), blocks=(Paragraph((span,)), figure)), of("tanks", "The ship")))
    assert first.blocks == (
        Paragraph((Span("part 3.2 (Of tanks)", "tanks"),)),
        replace(figure, caption="see part 3.2"),
    )


def test_a_part_that_is_not_there_is_told_in_words_without_a_link() -> None:
    desk = replace(composed("starter").desk(), numbers_parts=True)
    (one,) = numbered((replace(of("a", "The ship"), blocks=(Paragraph((desk.part("blocks"),)),)),))
    assert one.blocks == (Paragraph(inline("the part “Blocks and their loads”, which this tender does not have")),)


def test_another_document_names_the_part_and_does_not_link_to_it() -> None:
    span = composed("starter").desk().part("blocks")
    assert span == Span("the part “Blocks and their loads” of the specification")


def test_prose_of_the_package_refers_to_parts() -> None:
    written = "By <part:tanks>, [her sizes](part:particulars), <part:blocks> and [the blocks](part:blocks)."
    found = part(
        changed(lambda root: edit(root, SCOPE, "scope: Wash", f"scope: {written} Wash")).edition("yard"), "item-210"
    )
    said = words(found)
    assert re.search(r"part 4\.\d \(Tanks and their contents\)", said)
    assert "the part “Blocks and their loads”, which this tender does not have" in said
    assert {"tanks", "particulars"} <= set(targets(found))
    assert "blocks" not in targets(found)
