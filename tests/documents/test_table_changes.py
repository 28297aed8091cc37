"""What changed in tables is found row by row, whatever else moved on the page."""

from __future__ import annotations

from tenderwright.documents.edition import Column, Facts, Heading, Part, Row, Table, inline
from tenderwright.documents.table_changes import Cell, RowChange, TableChange, table_changes

COLUMNS = (Column("Draft"), Column("Displacement"), Column("Trim"))


def table(*rows: tuple[str, ...], anchor: str = "") -> Table:
    return Table(COLUMNS, tuple(Row(tuple(map(inline, row))) for row in rows), anchor=anchor)


def page(*blocks: Heading | Table | Facts) -> Part:
    return Part("condition", "C", "Condition", "data", "", blocks)


def test_only_the_cells_that_differ_are_told() -> None:
    old = page(Heading("Curves"), table(("2 m", "100 t", "0"), ("3 m", "150 t", "0")))
    new = page(
        Heading("New"), Heading("Curves"), table(("1 m", "50 t", "0"), ("2 m", "100 t", "0"), ("3 m", "151 t", "0"))
    )
    (found,) = table_changes(old, new)
    assert found == TableChange(
        "Curves",
        (
            RowChange("1 m", (Cell("Displacement", "", "50 t"), Cell("Trim", "", "0"))),
            RowChange("3 m", (Cell("Displacement", "150 t", "151 t"),)),
        ),
        3,
    )
    assert table_changes(new, new) == ()


def test_rows_that_are_gone_and_facts_are_told() -> None:
    old = page(Heading("Curves"), table(("2 m", "100 t", "0")), Facts((("Weight", inline("98 t")),)))
    new = page(Heading("Curves"), table(), Facts((("Weight", inline("99 t")),)))
    assert [
        (row.label, [(cell.old, cell.new) for cell in row.cells]) for one in table_changes(old, new) for row in one.rows
    ] == [
        ("2 m", [("100 t", ""), ("0", "")]),
        ("Weight", [("98 t", "99 t")]),
    ]


def test_priced_lines_are_told_elsewhere() -> None:
    assert (
        table_changes(page(table(("a", "1", ""), anchor="lines-320")), page(table(("a", "2", ""), anchor="lines-320")))
        == ()
    )
