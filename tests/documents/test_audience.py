"""Who may read what: an edition refuses whatever is not for its reader, and nothing is the yard's unless it says so."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from tenderwright.calculations.value import Record
from tenderwright.documents.audience import Audience, NotForItsReader
from tenderwright.documents.edition import Beside, Block, Column, DataTable, Edition, Figure, Part, Table
from tenderwright.pricing.money import written
from tenderwright.writing.edition_files import quantities_csv
from tenderwright.writing.html import screen_page
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.pipeline.contents import texts_in

from .composed import Composed, compiled, composed, part, walk, words

PACKAGES = Path(__file__).parents[1] / "packages"

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


@cache
def made_of(package: str) -> Composed:
    """Compile one of the four packages that the tests know."""
    if package in ("starter", "marram"):
        return composed(package)  # type: ignore[arg-type]
    return compiled(PACKAGES / package)


@cache
def read_by_yards(package: str) -> str:
    """Give all that stands in the pages, drawings, sheets, form and tables that go to a yard."""
    edition, form = made_of(package).yard
    files = {"page.html": screen_page(edition).encode(), "form.xlsx": price_form_workbook(form)}
    files["quantities.csv"] = quantities_csv(form)
    drawn = [one.svg for one in walk(edition) if isinstance(one, Figure)]
    sheets = [words(sheet.parts) for sheet in edition.sheets.values()]
    return "\n".join([words(edition), *drawn, *sheets, *(text for _, text in texts_in(files))])


each_package = pytest.mark.parametrize("package", ["starter", "marram", "kestrel-bank", "withy"])


@each_package
def test_what_is_known_of_facilities_is_the_owners_alone(package: str) -> None:
    made = made_of(package)
    yard = read_by_yards(package)
    for facility in made.compiled.package.facilities:
        assert facility.name not in yard
        assert facility.facility not in yard
        assert facility.name in words(part(made.edition("owner"), "facility-fit"))
        assert facility.name in words(part(made.edition("owner"), "facilities"))


@each_package
def test_no_yard_reads_the_name_of_another_or_what_was_paid(package: str) -> None:
    made = made_of(package)
    papers, yard = made.owner.papers, read_by_yards(package)
    names = {one.yard for one in made.compiled.package.history} | {one.yard for one in papers.bids.values()}
    paid = {written(one.amount) for closing in papers.closings.values() for one in closing.paid if one.amount > 1000}
    assert names
    assert [one for one in names | paid if one in yard] == []
    owner = words(part(made.edition("owner"), "former-prices"))
    assert all(one.yard in owner for one in made.compiled.package.history)
    assert all(one in owner for one in paid)
