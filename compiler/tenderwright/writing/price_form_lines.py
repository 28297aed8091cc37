"""The sheet of lines to price: the title of each item once, below it one row a line, and live sub-totals."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.price_form import FormLine, FormSection, PriceForm
from tenderwright.pricing.amount import SHARES
from tenderwright.quantities.display import shown_unit
from tenderwright.writing.price_form_sheet import Sheet, put_decimal
from tenderwright.writing.price_form_sums import line_amount, priced_amount, total

TITLE = "Price form"
STATUSES = ("priced", "included", "no bid")
WIDTHS = (9.0, 62.0, 14.0, 13.0, 13.0, 11.0, 17.0, 19.0, 21.0)
_HEADS = (
    "Line",
    "Work",
    "Quantity from",
    "Quantity",
    "Unit",
    "Status",
    "Rate or price",
    "Amount",
    "How the row is read",
)
_LAST = "I"
_HEAD_ROW = 4
_OWNERS_SUM = "the owner's sum"
_CHARGED = {
    "lump": "{rate}",
    "rate": "{quantity}*{rate}",
    "day": "{quantity}*{rate}",
    "hours": "{quantity}*{rate}",
    "credit": "-{quantity}*{rate}",
    "markup": "{quantity}*(1+{rate})",
    "percent": "N({quantity})*{rate}",
    "discount": "-N({quantity})*{rate}",
}


@dataclass(frozen=True)
class SectionRows:
    """Where a section stands on the sheet."""

    section: FormSection
    lines: Mapping[str, int]
    """The row of each line."""
    subtotal: int


def widths(form: PriceForm) -> tuple[float, ...]:
    """Give the widths of the columns, that of the numbers wide enough for lines that are priced by row."""
    longest = max((len(line.number) for section in form.sections for line in section.lines), default=0)
    return (max(WIDTHS[0], min(24.0, 1.2 * longest)), *WIDTHS[1:])


def fill_lines(sheet: Sheet, form: PriceForm) -> tuple[SectionRows, ...]:
    """Fill the sheet, and say where each section stands."""
    sheet.heading("A1", f"Price form · {form.title}")
    sheet.run_on("A2", f"Tender {form.tender} · prices in {form.currency}, without tax · {form.stamp}")
    sheet.head(_HEAD_ROW, _HEADS, right="DGH", indented="EI")
    row, rows = _HEAD_ROW + 1, []
    for section in form.sections:
        placed = _section(sheet, section, row)
        rows.append(placed)
        row = placed.subtotal + 2
    for place, words in enumerate(form.withdrawn, start=row):
        sheet.run_on(f"B{place}", f"Withdrawn, nothing to price: {words}", over="E", italic=True)
    placed_at = {number: row for part in rows for number, row in part.lines.items()}
    priced = [line for section in form.sections for line in section.lines if line.kind != "fixed"]
    for line in priced:
        if line.of:
            _what_it_is_of(sheet, line, placed_at)
    sheet.not_negative([f"G{placed_at[line.number]}" for line in priced if line.kind not in SHARES])
    sheet.percentage([f"G{placed_at[line.number]}" for line in priced if line.kind in SHARES])
    sheet.choice([f"F{placed_at[line.number]}" for line in priced], STATUSES)
    _open_between(sheet, {placed_at[line.number] for line in priced}, row)
    sheet.worksheet.freeze_panes = f"C{_HEAD_ROW + 1}"
    sheet.worksheet.print_title_rows = f"{_HEAD_ROW}:{_HEAD_ROW}"
    return tuple(rows)


def _open_between(sheet: Sheet, priced: Iterable[int], end: int) -> None:
    """Unlock status and rate in the rows between the lines too, so that both columns can be pasted as one block."""
    between = [row for row in range(_HEAD_ROW + 1, end - 1) if row not in priced]
    for row in between:
        sheet.unlock(f"F{row}")
        sheet.unlock(f"G{row}")
    sheet.nothing([f"F{row}:G{row}" for row in between])


def _what_it_is_of(sheet: Sheet, line: FormLine, rows: dict[str, int]) -> None:
    """Put what the lines of a percentage come to where others have their quantity."""
    cells = ",".join(areas("H", (rows[number] for number in line.of)))
    result = line.quantity if line.quantity else ""
    sheet.money(sheet.formula(f"D{rows[line.number]}", f'IF(SUM({cells})=0,"",SUM({cells}))', result))


def areas(column: str, rows: Iterable[int]) -> list[str]:
    """Give the cells of a column in some rows as a formula names them, those that follow each other as one area."""
    found: list[list[int]] = []
    for row in sorted(rows):
        if found and found[-1][1] == row - 1:
            found[-1][1] = row
        else:
            found.append([row, row])
    return [f"{column}{first}" if first == last else f"{column}{first}:{column}{last}" for first, last in found]


def _section(sheet: Sheet, section: FormSection, row: int) -> SectionRows:
    sheet.text(f"A{row}", section.code, bold=True, size=12)
    sheet.heading(f"B{row}", section.title, 12, over="E")
    row += 1
    sheet.run_on(f"B{row}", " ".join(filter(None, (section.note, _counts(section)))), over="E", italic=True)
    rows: dict[str, int] = {}
    item = ""
    for line in section.lines:
        if line.item != item:
            row, item = row + 1, line.item
            sheet.text(f"A{row}", item, bold=True)
            sheet.heading(f"B{row}", line.title, 10, over="E")
        row += 1
        _line(sheet, line, row)
        rows[line.number] = row
    row += 1
    sheet.text(f"B{row}", f"Sub-total {section.code}", bold=True)
    amounts = f"SUM(H{min(rows.values())}:H{row - 1})"
    sheet.money(sheet.formula(f"H{row}", amounts, total(section.lines), bold=True))
    sheet.rule(row, _LAST, weight="subtotal")
    return SectionRows(section, rows, row)


def _counts(section: FormSection) -> str:
    if section.in_base and section.in_evaluated:
        return "In the base price and in the evaluated total."
    if section.in_evaluated:
        return "Not in the base price; in the evaluated total."
    return "Neither in the base price nor in the evaluated total by itself."


def _line(sheet: Sheet, line: FormLine, row: int) -> None:
    sheet.text(f"A{row}", line.number)
    sheet.text(f"B{row}", line.text)
    sheet.text(f"C{row}", line.basis)
    if not line.of:
        sheet.number(f"D{row}", line.quantity, "#,##0.###;-#,##0.###" if line.quantity % 1 else "#,##0")
    sheet.label(f"E{row}", shown_unit(line.unit))
    sheet.rule(row, _LAST)
    if line.kind == "fixed":
        sheet.money(sheet.number(f"H{row}", line_amount(line, None)))
        sheet.label(f"I{row}", _OWNERS_SUM)
    else:
        _priced_line(sheet, line, row)


def _priced_line(sheet: Sheet, line: FormLine, row: int) -> None:
    status = sheet.entry(f"F{row}")
    percentage = line.kind in SHARES
    rate = sheet.entry(f"G{row}", "0.00%") if percentage else sheet.money_entry(f"G{row}")
    if line.rate is not None:
        put_decimal(rate, line.rate / 100 if percentage else line.rate)
        status.value = STATUSES[0]
    charged = _CHARGED[line.kind].format(quantity=f"D{row}", rate=f"G{row}")
    counts = f'AND(OR(F{row}="",F{row}="priced"),ISNUMBER(G{row}))'
    sheet.money(sheet.formula(f"H{row}", f'IF({counts},ROUND({charged},2),"")', priced_amount(line)))
    reading = sheet.formula(f"I{row}", _reading_formula(row), _reading(line.rate))
    sheet.indent(reading)


def _reading_formula(row: int) -> str:
    """Say in words how a row is read, so that empty, 0, included and no bid stay four different things."""
    status, rate = f"F{row}", f"G{row}"
    return (
        f'IF(OR({status}="included",{status}="no bid"),IF({rate}="",{status},"CLEAR THE RATE"),'
        f'IF({rate}="",IF({status}="priced","RATE MISSING","to price"),'
        f'IF(ISNUMBER({rate}),IF({rate}=0,"priced at 0","priced"),"NOT A NUMBER")))'
    )


def _reading(rate: Decimal | None) -> str:
    if rate is None:
        return "to price"
    return "priced at 0" if rate == 0 else "priced"
