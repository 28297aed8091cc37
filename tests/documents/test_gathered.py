"""Short chapters are gathered into one part, each a section that can still be referred to."""

from __future__ import annotations

from tenderwright.documents.edition import Beside, Block, Column, Heading, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.numbering import mark, numbered
from tenderwright.documents.parts.abreast import abreast, folded
from tenderwright.documents.parts.gathered import gathered, without_nearly_empty
from tenderwright.documents.replacement import barred

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


def _of(anchor: str, *blocks: Block, group: str = "The ship") -> Part:
    return Part(anchor, "", anchor.capitalize(), "data", group, blocks, audience="yard")


LONG = Paragraph(inline("She was built for the rocks of the outer coast. " * 80))
ROW = Table((Column("A"),), (Row((inline("a"),)),))


def test_a_chapter_of_a_few_lines_is_a_section_of_the_one_before_it_in_its_group() -> None:
    long, short, other = _of("history", LONG), _of("fittings", ROW), _of("tanks", ROW, group="Docking data")
    made = without_nearly_empty([long, short, None, other, long])
    assert [one.anchor for one in made] == ["history", "tanks", "history"]
    assert made[0].blocks == (LONG, Heading("Fittings", 2, "fittings"), ROW)


def test_what_is_not_in_the_data_stands_in_a_line_each_under_one_heading() -> None:
    bare = Paragraph(inline("No tank is listed."))
    (made,) = without_nearly_empty([_of("history", LONG), _of("tanks", bare, group="Docking data")])
    assert [getattr(block, "text", "") for block in made.blocks[1:2]] == ["Not in the data"]
    assert made.blocks[-1] == Paragraph(inline(Span("Tanks. ", strong=True), "No tank is listed."), "tanks")


def test_a_row_that_wraps_counts_more_lines_so_that_no_run_is_longer_than_a_page() -> None:
    columns = (Column("Pit", width=1), Column("Left", width=3))
    wide, narrow = (
        Table(columns, tuple(Row((inline(text), inline("1"))) for _ in range(80))) for text in ("a" * 40, "a")
    )
    assert [_high(one) for one in folded(narrow)] == [[20, 20], [20, 20]]
    assert [_high(one) for one in folded(wide)] == [[8, 8]] * 5


def _high(beside: Block) -> list[int]:
    assert isinstance(beside, Beside)
    return [len(one.rows) for stack in beside.stacks for one in stack if isinstance(one, Table)]


def test_replacement_pages_mark_what_changed_in_what_stands_side_by_side() -> None:
    other = Table((Column("A"),), (Row((inline("b"),)),))
    before, after = (_of("tanks", Beside(((ROW,), (one,)))) for one in (ROW, other))
    marked = barred(before, after)
    assert marked.changed == ()
    (beside,) = marked.blocks
    assert isinstance(beside, Beside)
    assert beside.stacks[0] == (ROW,)
    assert [row.changed for one in beside.stacks[1] if isinstance(one, Table) for row in one.rows] == [True]
    fewer = barred(_of("tanks", Beside(((ROW,),))), after)
    assert fewer.changed == (0,)


def test_stacks_too_long_for_half_the_width_stand_below_each_other() -> None:
    assert abreast([(ROW,), (LONG, LONG)]) == [ROW, LONG, LONG]
    assert abreast([(ROW,), (ROW,)]) == [Beside(((ROW,), (ROW,)))]
