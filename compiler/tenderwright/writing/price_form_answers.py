"""The sheets beside the prices: how to fill the form, remarks, acknowledgements, what the yard tells of itself."""

from __future__ import annotations

from datetime import date

from tenderwright.documents.price_form import PriceForm
from tenderwright.quantities.display import shown_unit
from tenderwright.writing.price_form_sheet import Sheet

HELP_TITLE, ACKNOWLEDGEMENTS_TITLE = "How to fill", "Acknowledgements"
REMARKS_TITLE, DOCK_TITLE = "Remarks", "Dock and yard"
HELP_WIDTHS, ACKNOWLEDGEMENTS_WIDTHS = (20.0, 110.0), (62.0, 14.0, 16.0, 48.0)
REMARKS_WIDTHS, DOCK_WIDTHS = (6.0, 18.0, 16.0, 80.0, 26.0), (46.0, 60.0, 15.0, 40.0)
_BLANK_ADDENDA, _BLANK_REMARKS = 4, 40
_REMARK_KINDS = ("remark", "exclusion", "assumption", "alternative")
_YES_NO = ("yes", "no")

_HELP = (
    ("Where to write", "In the yellow cells. All else is locked without a password, so that the totals stay sound."),
    (
        "Rate or price",
        "A number in the currency named, without tax. A credit is written as a positive amount and is subtracted.",
    ),
    (
        "Percentages",
        "Where a percentage is asked, write 15 % for fifteen per cent. What it is of stands as the quantity.",
    ),
    (
        "Four answers",
        "Left empty: not answered. 0: at no charge. Status “included”: done, and its cost is in other prices. "
        "Status “no bid”: not offered. With the last two the rate stays empty.",
    ),
    (
        "Quantities, sums",
        "Are the owner's, the same for every yard. Where you doubt a quantity, say so on the sheet Remarks.",
    ),
    (
        "Remarks",
        "What you remark, leave out, assume or offer instead goes on the sheet Remarks, with the number of its line.",
    ),
    (
        "An older form",
        "Prices written into an older form of this tender are carried over by `tenderwright carry OLD NEW --out FILE`. "
        "Where no line has come or gone, copy the columns Status and Rate or price of the old form as one block and "
        "paste their values here.",
    ),
)


def fill_help(sheet: Sheet, form: PriceForm) -> dict[str, str]:
    """Fill the first sheet, and give the cells that tie a returned form to its tender, by name."""
    sheet.heading("A1", form.title, 16)
    facts = (
        ("Tender", form.tender),
        ("Ship", form.ship),
        ("Owner", form.owner),
        ("Issued", _day(form.issued)),
        ("Tenders close", _day(form.closing)),
        ("Currency", form.currency),
        ("Stamp", form.stamp),
        ("Edition hash", form.edition_hash),
    )
    row = 3
    for label, words in (
        *facts,
        ("", ""),
        *_HELP,
        ("", ""),
        ("Caution", form.caution),
    ):
        if label:
            sheet.text(f"A{row}", label, bold=True)
            sheet.text(f"B{row}", words)
        row += 1
    return {"Tender_number": "$B$3", "Edition_hash": f"$B${2 + len(facts)}"}


def fill_acknowledgements(sheet: Sheet, form: PriceForm) -> None:
    """Fill the sheet of addenda, site visit, validity and signature."""
    sheet.heading("A1", "Acknowledgements")
    sheet.head(3, ("Addendum", "Received", "Date received"))
    row, asked = 4, []
    for name in (*form.addenda, *[""] * _BLANK_ADDENDA):
        if name:
            sheet.text(f"A{row}", name)
        else:
            sheet.entry(f"A{row}")
        sheet.entry(f"B{row}")
        sheet.entry(f"C{row}", "yyyy-mm-dd")
        asked.append(f"B{row}")
        row += 1
    row += 1
    sheet.head(row, ("Offer", "Answer", "Date", "Remarks"))
    questions = (
        ("The ship was visited before tendering", True),
        ("The terms of the tender are accepted as they stand", True),
        ("The dates of the tender are accepted as they stand", True),
        ("Earliest date in dock, if another", False),
        ("The offer stands for this many days after closing", False),
        ("Days in dock, by the yard's own plan", False),
    )
    numbers = []
    for question, closed in questions:
        row += 1
        sheet.text(f"A{row}", question)
        sheet.entry(f"B{row}", "@" if closed else "General")
        sheet.entry(f"C{row}", "yyyy-mm-dd")
        sheet.entry(f"D{row}")
        if closed:
            asked.append(f"B{row}")
        elif "days" in question.lower():
            numbers.append(f"B{row}")
    sheet.choice(asked, _YES_NO)
    sheet.not_negative(numbers)
    row += 2
    sheet.head(row, ("Signed for the yard", "", "", ""))
    for index, label in enumerate(("Yard", "Name", "Position", "Date", "Signature"), start=row + 1):
        sheet.text(f"A{index}", label)
        sheet.entry(f"D{index}")


def fill_remarks(sheet: Sheet, numbers: str) -> None:
    """Fill the sheet of remarks, exclusions and the like; lines are picked from the cells `numbers`."""
    sheet.heading("A1", "Remarks, exclusions, assumptions and alternatives")
    sheet.run_on(
        "A2",
        "What is not said here is taken as offered in full. Pick the line, or write several, such as 420.a, 425.b; "
        "a row without a kind is read as an exclusion.",
    )
    sheet.head(
        4, ("No.", "Line", "Kind", "What is remarked, excluded, assumed or offered instead", "Effect on the price")
    )
    rows = range(5, 5 + _BLANK_REMARKS)
    for row in rows:
        sheet.text(f"A{row}", str(row - 4))
        for letter in "BCD":
            sheet.entry(f"{letter}{row}")
        sheet.money_entry(f"E{row}")
    sheet.pick([f"B{row}" for row in rows], numbers)
    sheet.choice([f"C{row}" for row in rows], _REMARK_KINDS)
    sheet.worksheet.freeze_panes = "A5"
    sheet.worksheet.print_title_rows = "4:4"


def fill_dock(sheet: Sheet, form: PriceForm) -> None:
    """Fill the sheet of the dock's figures, and of what else the yard tells of itself."""
    sheet.heading("A1", "The dock offered, and what the yard tells of itself")
    sheet.run_on(
        "A2",
        "From these figures it is calculated whether the dock takes her; leave empty what it does not have. "
        f"{form.caution}",
    )
    sheet.head(4, ("Of the dock", "What is meant", "Unit", "Figure of the yard"))
    row = 5
    for group, figures in form.dock:
        sheet.text(f"A{row}", group, bold=True)
        for figure in figures:
            row += 1
            sheet.text(f"A{row}", figure.label)
            sheet.text(f"B{row}", figure.hint)
            sheet.text(f"C{row}", shown_unit(figure.unit))
            sheet.entry(f"D{row}", {"number": "General", "day": "yyyy-mm-dd"}.get(figure.form, "@"))
            if figure.choices:
                sheet.choice([f"D{row}"], figure.choices)
        row += 1
    sheet.new_page(row)
    row += 1
    sheet.head(row, ("Asked", "What is meant", "", "Answer of the yard"))
    for number, (label, hint) in enumerate(form.yard_questions, start=row + 1):
        sheet.text(f"A{number}", label)
        sheet.text(f"B{number}", hint)
        sheet.entry(f"D{number}")


def _day(day: date | None) -> str:
    return day.isoformat() if day is not None else "to be said"
