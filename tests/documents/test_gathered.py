"""Short chapters are gathered into one part, each a section that can still be referred to."""

from __future__ import annotations

from tenderwright.documents.edition import Beside, Heading, Paragraph, Part, inline
from tenderwright.documents.numbering import mark, numbered
from tenderwright.documents.parts.gathered import gathered

HEAD = Part("condition", "", "Condition of the ship", "data", "The ship", (Heading("Shell"),))
ANODES = Part(
    "anodes",
    "",
    "Anodes",
    "data",
    "The ship",
    (Heading("Left"), Beside(((Heading("Pairs"),),))),
    caution=True,
)


def test_each_chapter_is_a_section_with_its_headings_below_it() -> None:
    made = gathered(HEAD, None, ANODES)
    assert made.blocks == (
        Heading("Shell", 2),
        Heading("Anodes", 2, "anodes"),
        Heading("Left", 3),
        Beside(((Heading("Pairs", 3),),)),
    )
    assert made.caution
    assert not gathered(HEAD, None).caution


def test_a_section_is_referred_to_by_the_number_of_its_part_and_its_own_title() -> None:
    words = Paragraph(inline(f"See {mark('anodes', titled=True)}."))
    front = Part("rules", "", "Rules", "front", "Rules and prices", (words,))
    told, _ = numbered((front, gathered(HEAD, ANODES)))
    assert told.blocks == (Paragraph(inline("See part 3.1 (Anodes).")),)
