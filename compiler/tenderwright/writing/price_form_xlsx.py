"""Writes the price form as a workbook that a yard fills in and that opens with its totals standing."""

from __future__ import annotations

from datetime import datetime, time
from functools import lru_cache
from typing import Any

from openpyxl import Workbook
from openpyxl.packaging.custom import CustomPropertyList, StringProperty
from openpyxl.workbook.defined_name import DefinedName

from tenderwright.documents.edition import UNDATED
from tenderwright.documents.price_form import PriceForm
from tenderwright.writing import price_form_answers as answers
from tenderwright.writing import price_form_lines as lines
from tenderwright.writing import price_form_tables as tables
from tenderwright.writing import price_form_total as totals
from tenderwright.writing.price_form_sheet import Sheet
from tenderwright.writing.price_form_sums import with_percents
from tenderwright.writing.xlsx_package import workbook_bytes


@lru_cache(maxsize=4)
def price_form_workbook(form: PriceForm) -> bytes:
    """Write the price form as XLSX: the same form always gives the same bytes.

    Formulas carry their results. Only cells to fill in are unlocked. Text of the package never becomes a
    formula. Where lines have a rate, as among the owner's papers, it is filled in.
    """
    form = with_percents(form)
    workbook = Workbook()
    workbook.remove(workbook.worksheets[0])
    sheets: dict[str, Sheet] = {}

    def add(title: str, widths: tuple[float, ...]) -> Sheet:
        sheets[title] = Sheet(workbook.create_sheet(title), form, widths)
        return sheets[title]

    named = {answers.HELP_TITLE: answers.fill_help(add(answers.HELP_TITLE, answers.HELP_WIDTHS), form)}
    rows = lines.fill_lines(add(lines.TITLE, lines.widths(form)), form)
    named[lines.TITLE] = {f"Section_{placed.section.code}_total": f"$H${placed.subtotal}" for placed in rows}
    named[totals.TITLE] = totals.fill_total(add(totals.TITLE, totals.WIDTHS), form, rows)
    if form.tables:
        tables.fill_tables(add(tables.TITLE, tables.WIDTHS), form)
    answers.fill_dock(add(answers.DOCK_TITLE, answers.DOCK_WIDTHS), form)
    numbers = f"'{lines.TITLE}'!$A$5:$A${rows[-1].subtotal if rows else 5}"
    answers.fill_remarks(add(answers.REMARKS_TITLE, answers.REMARKS_WIDTHS), numbers)
    answers.fill_acknowledgements(add(answers.ACKNOWLEDGEMENTS_TITLE, answers.ACKNOWLEDGEMENTS_WIDTHS), form)
    for sheet in sheets.values():
        sheet.fit()
    for title, names in named.items():
        for name, address in names.items():
            workbook.defined_names[name] = DefinedName(name, attr_text=f"'{title}'!{address}")
    _describe(workbook, form)
    return workbook_bytes(workbook, {title: sheet.results for title, sheet in sheets.items()}, form.issued or UNDATED)


def _describe(workbook: Workbook, form: PriceForm) -> None:
    properties = workbook.properties
    properties.creator = form.owner
    properties.title = f"Price form, {form.title}"
    properties.created = datetime.combine(form.issued or UNDATED, time())
    custom: CustomPropertyList[Any] = vars(workbook)["custom_doc_props"]
    for name, value in (("Tender", form.tender), ("Edition hash", form.edition_hash), ("Stamp", form.stamp)):
        custom.append(StringProperty(name=name, value=value))
    workbook.calculation.fullCalcOnLoad = True
    workbook.active = 0
