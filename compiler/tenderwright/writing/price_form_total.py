"""The sheet of the evaluated total: every section's share of it, live, with the published rule in words."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.price_form import FormLine, PriceForm
from tenderwright.pricing.choices import dearer_by
from tenderwright.writing.price_form_lines import TITLE as LINES_TITLE
from tenderwright.writing.price_form_lines import SectionRows, areas
from tenderwright.writing.price_form_sheet import Sheet
from tenderwright.writing.price_form_sums import line_amount, total

TITLE = "Evaluated total"
WIDTHS = (10.0, 50.0, 22.0, 22.0, 22.0)
_ERRORS = ("CLEAR THE RATE", "RATE MISSING", "NOT A NUMBER")


def fill_total(sheet: Sheet, form: PriceForm, rows: tuple[SectionRows, ...]) -> dict[str, str]:
    """Fill the sheet, and give the cells of the totals by the names they are to have."""
    sheet.heading("A1", f"Evaluated total · {form.title}")
    sheet.run_on("A2", f"Tender {form.tender} · in {form.currency} · follows from the price form" + _fill(form))
    sheet.head(
        4,
        ("Section", "", "Sub-total of all lines", "In the base price", "In the evaluated total"),
        right="CDE",
    )
    row = 5
    for placed in rows:
        _section(sheet, placed, row)
        row += 1
    for these, others in form.dearer:
        _dearer(sheet, rows, these, others, row)
        row += 1
    named = _totals(sheet, form, row)
    if form.day_cost is not None:
        named["Evaluated_total"] = _days(sheet, form, form.day_cost, row)
        row += 3
    _state(sheet, rows, row + 2)
    sheet.text(f"B{row + 8}", "How the evaluated total is made up", bold=True)
    for number, line in enumerate(form.evaluated_rule.splitlines(), start=row + 9):
        sheet.run_on(f"B{number}", line)
    sheet.worksheet.freeze_panes = "A5"
    sheet.worksheet.page_setup.fitToHeight = 1
    return named


def _fill(form: PriceForm) -> str:
    return "; nothing to fill in" if form.day_cost is None else "; only the days are filled in"


def _section(sheet: Sheet, placed: SectionRows, row: int) -> None:
    section = placed.section
    sheet.text(f"A{row}", section.code, bold=True)
    sheet.text(f"B{row}", section.title)
    amount = total(section.lines)
    lines = f"SUM('{LINES_TITLE}'!H{min(placed.lines.values())}:H{placed.subtotal - 1})"
    sheet.money(sheet.formula(f"C{row}", f"'{LINES_TITLE}'!H{placed.subtotal}", amount))
    for letter, counts in (("D", section.in_base), ("E", section.in_evaluated)):
        if counts:
            sheet.money(sheet.formula(f"{letter}{row}", lines, amount))
    sheet.rule(row, "E")


def _dearer(
    sheet: Sheet, rows: tuple[SectionRows, ...], these: tuple[str, ...], others: tuple[str, ...], row: int
) -> None:
    """Add what an alternative is dearer than the lines that it stands instead of; nothing where it is not."""
    placed = {line.number: (line, part.lines[line.number]) for part in rows for line in part.section.lines}
    this, that = (
        ",".join(f"'{LINES_TITLE}'!{area}" for area in areas("H", (placed[one][1] for one in side)))
        for side in (these, others)
    )
    sums = [total(placed[one][0] for one in side) for side in (these, others)]
    sheet.text(f"B{row}", f"{', '.join(these)}, where dearer than {', '.join(others)}")
    sheet.money(sheet.formula(f"E{row}", f"MAX(0,SUM({this})-SUM({that}))", max(Decimal(0), sums[0] - sums[1])))
    sheet.rule(row, "E")


def _totals(sheet: Sheet, form: PriceForm, row: int) -> dict[str, str]:
    lines = [line for section in form.sections for line in section.lines]
    sheet.text(f"B{row}", "Total", bold=True, size=11)
    chosen: dict[str, list[FormLine]] = {
        "C": lines,
        "D": [line for section in form.sections if section.in_base for line in section.lines],
        "E": _evaluated(form),
    }
    for letter, summed in chosen.items():
        formula = f"SUM({letter}5:{letter}{row - 1})" if form.sections else "0"
        more = _dearer_in(form) if letter == "E" else Decimal(0)
        sheet.money(sheet.formula(f"{letter}{row}", formula, total(summed) + more, bold=True))
    sheet.rule(row, "E", weight="total")
    return {"Base_total": f"$D${row}", "Evaluated_total": f"$E${row}"}


def _evaluated(form: PriceForm) -> list[FormLine]:
    return [line for section in form.sections if section.in_evaluated for line in section.lines]


def _dearer_in(form: PriceForm) -> Decimal:
    """Give what the alternatives of a form are dearer at the rates it carries."""
    amounts = {line.number: line_amount(line, line.rate) for section in form.sections for line in section.lines}
    return dearer_by(amounts, {one: others for these, others in form.dearer for one in these})


def _days(sheet: Sheet, form: PriceForm, day_cost: Decimal, row: int) -> str:
    """Add the owner's cost of the days that the yard's programme takes, and give the cell of the whole."""
    sheet.text(f"B{row + 1}", "Days from arrival to redelivery, by the yard's programme")
    sheet.entry(f"E{row + 1}", "0")
    sheet.text(f"B{row + 2}", f"The owner's cost of those days, at {form.currency} {day_cost:,.2f} a day")
    cost = f"IF(ISNUMBER(E{row + 1}),ROUND(E{row + 1}*{day_cost},2),0)"
    sheet.money(sheet.formula(f"E{row + 2}", cost, Decimal(0)))
    sheet.text(f"B{row + 3}", "Evaluated total with the owner's days", bold=True, size=11)
    whole = total(_evaluated(form)) + _dearer_in(form)
    sheet.money(sheet.formula(f"E{row + 3}", f"E{row}+E{row + 2}", whole, bold=True))
    sheet.rule(row + 3, "E", weight="total")
    return f"$E${row + 3}"


def _state(sheet: Sheet, rows: tuple[SectionRows, ...], row: int) -> None:
    """Count the lines that keep the total from being whole."""
    last = rows[-1].subtotal if rows else 5
    readings = f"'{LINES_TITLE}'!I5:I{last}"
    priced = [line for placed in rows for line in placed.section.lines if line.kind != "fixed"]
    unpriced = sum(1 for line in priced if line.rate is None)
    counts = (
        ("Lines still to price", f'COUNTIF({readings},"to price")', unpriced),
        ("Lines not bid", f'COUNTIF({readings},"no bid")', 0),
        ("Lines to put right", "+".join(f'COUNTIF({readings},"{word}")' for word in _ERRORS), 0),
    )
    sheet.text(f"B{row}", "Is the total whole?", bold=True)
    for index, (label, formula, result) in enumerate(counts, start=row + 1):
        sheet.text(f"B{index}", label)
        sheet.formula(f"C{index}", formula, Decimal(result)).number_format = "0"
    sheet.text(f"B{row + 4}", "State", bold=True)
    unfinished = f"C{row + 1}+C{row + 2}+C{row + 3}"
    words = ("NOT WHOLE: see the readings of the lines", "whole")
    sheet.formula(
        f"C{row + 4}",
        f'IF({unfinished}>0,"{words[0]}","{words[1]}")',
        words[0] if unpriced else words[1],
        bold=True,
    )
