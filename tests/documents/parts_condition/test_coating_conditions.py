from __future__ import annotations

from .parts import desk, part, rows, tables, text


def test_the_month_of_docking_is_marked_and_shows_the_value() -> None:
    month = next(row for row in tables("coating-conditions")[0].rows if row.weight == "subtotal")
    share = desk().record.values["climate.workable-share"].si
    cells = ["".join(span.text for span in cell) for cell in month.cells]
    assert (cells[0], cells[7]) == ("May", f"{100 * share:.0f} %")


def test_every_scheme_stands_with_grade_salts_and_dust() -> None:
    package = desk().package
    listed = rows("coating-conditions", "Dust, at most")
    assert [cells[0] for cells in listed] == [scheme.name for scheme in package.schemes]


def test_the_rules_and_what_has_no_source_are_named() -> None:
    said = text("coating-conditions")
    assert "3 K or more above the dew point (ISO 8502-4" in said
    assert "common practice, no source" in said
    assert part("coating-conditions").caution
