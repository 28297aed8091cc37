from __future__ import annotations

from tenderwright.calculations.calculate import calculate
from tenderwright.documents.edition import Paragraph, Table, plain
from tenderwright.documents.parts.coating_conditions import coating_conditions
from tenderwright.model.package import Package
from tests.replacing import replace

from .parts import desk, part, tables, text


def test_the_month_of_docking_is_marked_and_shows_the_value() -> None:
    month = next(row for row in tables("coating-conditions")[0].rows if row.weight == "subtotal")
    share = desk().record.values["climate.workable-share"].si
    cells = ["".join(span.text for span in cell) for cell in month.cells]
    assert (cells[0], cells[7]) == ("May", f"{100 * share:.0f} %")


def test_times_between_coats_stand_here_only_where_no_item_applies_the_scheme() -> None:
    assert [one for one in tables("coating-conditions") if one.columns[-1].title == "Not after"] == []
    assert "in the item that applies it" in text("coating-conditions")
    package = desk().package
    first, *others = package.schemes
    alone = replace(first, scheme="alone", item=None)
    made = coating_conditions(replace(desk(), package=replace(package, schemes=(alone, *others))))
    assert made is not None
    (table,) = [one for one in made.blocks if isinstance(one, Table) and one.columns[-1].title == "Not after"]
    assert len(table.rows) == len([coat for coat in alone.coats if coat.overcoat_least])


def test_the_rules_and_what_has_no_source_are_named() -> None:
    said = text("coating-conditions")
    assert "3 K or more above the dew point (ISO 8502-4" in said
    assert "common practice, no source" in said
    assert part("coating-conditions").caution


def _said(package: Package) -> list[str]:
    calculated = calculate(package)
    made = coating_conditions(replace(desk(), package=package, calculated=calculated))
    assert made is not None
    return [plain(block.text) for block in made.blocks if isinstance(block, Paragraph)][:2]


def test_what_a_month_allows_says_what_it_needs_where_there_is_no_climate() -> None:
    package = desk().package
    assert _said(replace(package, condition=None))[1:] == [
        "Not calculated: it needs the climate at the dock in the account of her condition."
    ]
    assert package.condition is not None
    assert package.condition.climate is not None
    climate = replace(package.condition.climate, months=package.condition.climate.months[2:])
    assert _said(replace(package, condition=replace(package.condition, climate=climate)))[1:] == [
        "Not calculated: the account of her condition has no climate of month 5."
    ]


def test_nothing_is_composed_where_nothing_is_coated_and_no_climate_given() -> None:
    bare = replace(desk().package, condition=None, schemes=())
    calculated = calculate(bare)
    assert coating_conditions(replace(desk(), package=bare, calculated=calculated)) is None
