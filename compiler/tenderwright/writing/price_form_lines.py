"""The sheet of lines to price: one row a line, a status beside every rate, live sub-totals."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.price_form import FormLine, FormSection, PriceForm
from tenderwright.pricing.amount import SHARES
from tenderwright.writing.price_form_sheet import Sheet, put_decimal
from tenderwright.writing.price_form_sums import line_amount, total

TITLE = "Price form"
STATUSES = ("priced", "included", "no bid")
WIDTHS = (8.0, 44.0, 10.0, 10.0, 8.0, 10.0, 16.0, 18.0, 17.0, 7.0, 10.0, 26.0)
_HEADS = (
    "Line",
    "Description",
    "Basis",
    "Quantity",
    "Unit",
    "Status",
    "Rate or price",
    "Amount",
    "Reading",
    "In base",
    "In evaluated",
    "Remarks of the yard",
)
_HEAD_ROW = 4
_CHARGED = {
    "lump": "{rate}",
    "rate": "{quantity}*{rate}",
    "day": "{quantity}*{rate}",
    "hours": "{quantity}*{rate}",
    "credit": "-{quantity}*{rate}",
    "markup": "{quantity}*(1+{rate})",
    "percent": "{quantity}*{rate}",
    "discount": "-{quantity}*{rate}",
}


@dataclass(frozen=True)
class SectionRows:
    """Where a section stands on the sheet."""

    section: FormSection
    first: int
    last: int
    subtotal: int


def widths(form: PriceForm) -> tuple[float, ...]:
    """Give the widths of the columns, that of the numbers wide enough for lines that are priced by row."""
    longest = max((len(line.number) for section in form.sections for line in section.lines), default=0)
    return (max(WIDTHS[0], min(24.0, 1.2 * longest)), *WIDTHS[1:])


def fill_lines(sheet: Sheet, form: PriceForm) -> tuple[SectionRows, ...]:
    """Fill the sheet, and say where each section stands."""
    sheet.heading("A1", f"Price form · {form.title}")
    sheet.run_on("A2", f"Tender {form.tender} · prices in {form.currency} · {form.stamp}")
    sheet.head(_HEAD_ROW, _HEADS, right="DGH")
    sheet.worksheet.row_dimensions[_HEAD_ROW].height = 30
    row, rows = _HEAD_ROW + 1, []
    for section in form.sections:
        placed = _section(sheet, section, row)
        rows.append(placed)
        row = placed.subtotal + 2
    placed_at = {line.number: part.first + n for part in rows for n, line in enumerate(part.section.lines)}
    priced = [line for section in form.sections for line in section.lines if line.kind != "fixed"]
    for line in priced:
        if line.of:
            _what_it_is_of(sheet, line, placed_at)
    sheet.not_negative([f"G{placed_at[line.number]}" for line in priced if line.kind not in SHARES])
    sheet.percentage([f"G{placed_at[line.number]}" for line in priced if line.kind in SHARES])
    sheet.choice([f"F{placed_at[line.number]}" for line in priced], STATUSES)
    sheet.worksheet.freeze_panes = f"C{_HEAD_ROW + 1}"
    sheet.worksheet.print_title_rows = f"{_HEAD_ROW}:{_HEAD_ROW}"
    return tuple(rows)


def _what_it_is_of(sheet: Sheet, line: FormLine, rows: dict[str, int]) -> None:
    """Put what the lines of a percentage come to where others have their quantity."""
    summed = "+".join(f"H{rows[number]}" for number in line.of)
    sheet.money(sheet.formula(f"D{rows[line.number]}", summed, line.quantity))


def _section(sheet: Sheet, section: FormSection, row: int) -> SectionRows:
    sheet.text(f"A{row}", section.code, bold=True, size=11)
    sheet.heading(f"B{row}", section.title, 11)
    if section.note:
        row += 1
        sheet.run_on(f"B{row}", section.note, italic=True)
    first = row + 1
    for index, line in enumerate(section.lines):
        _line(sheet, line, first + index)
    last = first + len(section.lines) - 1
    subtotal = max(last, row) + 1
    sheet.text(f"B{subtotal}", f"Sub-total {section.code}", bold=True)
    summed = f"SUM(H{first}:H{last})" if section.lines else "0"
    sheet.money(sheet.formula(f"H{subtotal}", summed, total(section.lines), bold=True))
    sheet.rule(subtotal, "L", weight="subtotal")
    return SectionRows(section, first, last, subtotal)


def _line(sheet: Sheet, line: FormLine, row: int) -> None:
    sheet.text(f"A{row}", line.number, bold=True)
    sheet.text(f"B{row}", line.description)
    sheet.text(f"C{row}", line.basis)
    if not line.of:
        sheet.number(f"D{row}", line.quantity, "#,##0.###;-#,##0.###" if line.quantity % 1 else "#,##0")
    sheet.label(f"E{row}", line.unit)
    sheet.text(f"J{row}", "yes" if line.in_base else "no")
    sheet.text(f"K{row}", "yes" if line.in_evaluated else "no")
    sheet.rule(row, "L")
    sheet.height(row, line.description, WIDTHS[1])
    if line.kind == "fixed":
        sheet.text(f"F{row}", "fixed")
        sheet.text(f"G{row}", "owner's sum")
        sheet.money(sheet.number(f"H{row}", line_amount(line, None)))
        sheet.label(f"I{row}", "fixed by the owner")
    else:
        _priced_line(sheet, line, row)
    sheet.entry(f"L{row}")


def _priced_line(sheet: Sheet, line: FormLine, row: int) -> None:
    status = sheet.entry(f"F{row}")
    percentage = line.kind in SHARES
    rate = sheet.entry(f"G{row}", "0.00%") if percentage else sheet.money_entry(f"G{row}")
    if line.rate is not None:
        put_decimal(rate, line.rate / 100 if percentage else line.rate)
        status.value = STATUSES[0]
    charged = _CHARGED[line.kind].format(quantity=f"D{row}", rate=f"G{row}")
    counts = f'AND(OR(F{row}="",F{row}="priced"),ISNUMBER(G{row}))'
    sheet.money(sheet.formula(f"H{row}", f"IF({counts},ROUND({charged},2),0)", line_amount(line, line.rate)))
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
