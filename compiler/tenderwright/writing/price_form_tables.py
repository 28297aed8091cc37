"""The sheet of the tables that the yard fills with the tender: one below the other, each row with its name."""

from __future__ import annotations

from tenderwright.documents.price_form import FormTable, PriceForm
from tenderwright.writing.price_form_sheet import Sheet

TITLE = "Tables"
ROW_HEADING = "Row of the table"
WIDTHS = (30.0, *[22.0] * 15)
_LETTERS = "BCDEFGHIJKLMNOP"


def fill_tables(sheet: Sheet, form: PriceForm) -> None:
    """Fill the sheet; only the cells that the yard fills are open."""
    sheet.heading("A1", "Tables to fill with the tender", over="H")
    row = 3
    for table in form.tables:
        row = _table(sheet, table, row)


def _table(sheet: Sheet, table: FormTable, row: int) -> int:
    """Fill one table from a row on, and give the row after it."""
    sheet.heading(f"A{row}", table.title, 11, over="H")
    head = row + 1
    sheet.head(head, (ROW_HEADING, *(heading for heading, _, _ in table.columns)))
    for number, (name, cells) in enumerate(table.rows, start=head + 1):
        sheet.text(f"A{number}", name, bold=True)
        for letter, (_, filled, _), text in zip(_LETTERS, table.columns, cells, strict=False):
            if filled:
                sheet.entry(f"{letter}{number}", "General")
            else:
                sheet.text(f"{letter}{number}", text)
        sheet.rule(number, _LETTERS[len(table.columns) - 1])
    return head + len(table.rows) + 2
