"""Who may read what: an edition refuses whatever is not for its reader, and nothing is the yard's unless it says so."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tenderwright.calculations.value import Record
from tenderwright.documents.audience import Audience, NotForItsReader
from tenderwright.documents.edition import Beside, Block, Column, DataTable, Edition, Figure, Part, Table
from tenderwright.pricing.money import written

from .composed import composed, part, words

TABLE = Table((Column("a"),), ())
FIGURE = Figure("f", "<svg/>", "", "")


def edition(reader: Audience, *parts: Part) -> Edition:
    return replace(composed("starter").edition("yard"), audience=reader, parts=parts, sheets={}, tables={}, record=None)


def one(audience: Audience | None, *blocks: Block) -> Part:
    bare = Part("a", "1", "A", "data", "", blocks)
    return bare if audience is None else replace(bare, audience=audience)


@pytest.mark.parametrize(
    ("reader", "audience"),
    [("yard", None), ("yard", "owner"), ("public", None), ("public", "owner"), ("public", "yard")],
)
def test_an_edition_refuses_a_part_that_is_not_for_its_reader(reader: Audience, audience: Audience | None) -> None:
    with pytest.raises(NotForItsReader, match="the part `a` is for the"):
        edition(reader, one(audience))


@pytest.mark.parametrize("block", [TABLE, FIGURE])
def test_a_table_or_figure_that_is_not_for_the_reader_is_refused_in_a_part_that_is(block: Table | Figure) -> None:
    assert edition("yard", one("yard", block)).parts
    assert edition("yard", one("yard", replace(block, audience="public"))).parts
    with pytest.raises(NotForItsReader, match="something in the part `a` is for the owner"):
        edition("yard", one("yard", replace(block, audience="owner")))
    with pytest.raises(NotForItsReader, match="something in the part `a` is for the owner"):
        edition("yard", one("yard", Beside(((replace(block, audience="owner"),),))))


def test_sheets_figures_and_record_beside_an_edition_are_held_alike() -> None:
    bare = edition("yard", one("yard"))
    for changes in ({"sheets": {"s": edition("owner")}}, {"tables": {"t": DataTable((), ())}}, {"record": Record()}):
        with pytest.raises(NotForItsReader):
            replace(bare, **changes)  # type: ignore[arg-type]
        assert replace(bare, audience="owner", **changes)  # type: ignore[arg-type]
    assert replace(bare, tables={"t": DataTable((), (), "yard")})


@pytest.mark.parametrize("package", ["starter", "marram"])
def test_each_document_is_for_the_reader_that_it_names(package: str) -> None:
    made = composed(package)  # type: ignore[arg-type]
    assert made.edition("yard").audience == "yard"
    assert {sheet.audience for sheet in made.edition("yard").sheets.values()} <= {"yard"}
    assert made.edition("owner").audience == "owner"


def test_the_donors_page_is_public() -> None:
    assert composed("marram").edition("owner").sheets["donors"].audience == "public"


@pytest.mark.parametrize("package", ["starter", "marram"])
def test_what_is_known_of_facilities_is_the_owners_alone(package: str) -> None:
    made = composed(package)  # type: ignore[arg-type]
    yard = words(made.edition("yard"))
    for facility in made.compiled.package.facilities:
        assert facility.name not in yard
        assert facility.facility not in yard
        assert facility.name in words(part(made.edition("owner"), "facility-fit"))
        assert facility.name in words(part(made.edition("owner"), "facilities"))


@pytest.mark.parametrize("package", ["starter", "marram"])
def test_no_yard_reads_the_name_of_another_or_what_was_paid(package: str) -> None:
    made = composed(package)  # type: ignore[arg-type]
    papers, yard = made.owner.papers, words(made.edition("yard"))
    names = {one.yard for one in made.compiled.package.history} | {one.yard for one in papers.bids.values()}
    paid = {written(one.amount) for closing in papers.closings.values() for one in closing.paid if one.amount > 1000}
    assert names
    assert paid
    assert [one for one in names | paid if one in yard] == []
    owner = words(part(made.edition("owner"), "former-prices"))
    assert all(one.yard in owner for one in made.compiled.package.history)
    assert all(one in owner for one in paid)
