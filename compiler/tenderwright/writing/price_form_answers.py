"""The sheets beside the prices: how to fill the form, acknowledgements, exclusions, the yard's own data."""

from __future__ import annotations

from datetime import date

from tenderwright.documents.price_form import PriceForm
from tenderwright.writing.price_form_sheet import Sheet

HELP_TITLE, ACKNOWLEDGEMENTS_TITLE = "How to fill", "Acknowledgements"
EXCLUSIONS_TITLE, YARD_TITLE = "Exclusions", "Yard data"
HELP_WIDTHS, ACKNOWLEDGEMENTS_WIDTHS = (24.0, 100.0), (62.0, 16.0, 22.0, 40.0)
EXCLUSIONS_WIDTHS, YARD_WIDTHS = (6.0, 12.0, 18.0, 70.0, 22.0), (30.0, 48.0, 60.0)
_BLANK_ADDENDA, _BLANK_EXCLUSIONS = 4, 25
_YES_NO = ("yes", "no")

_HELP = (
    (
        "Where to write",
        "Only in the lightly filled, boxed cells. All else is locked without a password, so that totals stay sound.",
    ),
    (
        "Rate or price",
        "A number in the currency named, without tax. Credits are entered as positive amounts and are subtracted.",
    ),
    (
        "Percentages",
        "For a mark-up, and where a line is a percentage of others: write 15 % for fifteen per cent, no sum of money. "
        "What other lines come to stands in place of a quantity, and follows from your prices.",
    ),
    ("Left empty", "The line is not answered. It is read as still to be priced."),
    ("0", "The line is priced at nothing."),
    (
        "included",
        "Set the status to “included”: the work is done, its cost is within other prices, and the rate stays empty.",
    ),
    ("no bid", "Set the status to “no bid”: the work is not offered, and the rate stays empty."),
    (
        "Quantities",
        "Are the owner's and the same for every yard. Do not alter them; say in the remarks where you doubt one.",
    ),
    (
        "Owner's sums",
        "Provisional sums are fixed by the owner, the same for every yard, and stand already in the totals.",
    ),
    ("Line numbers", "Never change after issue. The form is read back by them."),
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
        ("", ""),
        ("Evaluated total", form.evaluated_rule),
    ):
        if label:
            sheet.text(f"A{row}", label, bold=True)
            sheet.text(f"B{row}", words)
            sheet.worksheet.row_dimensions[row].height = (
                sum(14 * (1 + len(x) // 105) for x in words.splitlines() or [""]) + 2
            )
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


def fill_exclusions(sheet: Sheet) -> None:
    """Fill the sheet of exclusions, assumptions and alternatives."""
    sheet.heading("A1", "Exclusions, assumptions and alternatives")
    sheet.run_on("A2", "What is not said here is taken as offered in full. Give the line where one is meant.")
    sheet.head(4, ("No.", "Line", "Kind", "What is excluded, assumed or offered instead", "Effect on the price"))
    rows = range(5, 5 + _BLANK_EXCLUSIONS)
    for row in rows:
        sheet.text(f"A{row}", str(row - 4))
        for letter in "BCD":
            sheet.entry(f"{letter}{row}")
        sheet.money_entry(f"E{row}")
    sheet.choice([f"C{row}" for row in rows], ("exclusion", "assumption", "alternative"))
    sheet.worksheet.freeze_panes = "A5"
    sheet.worksheet.print_title_rows = "4:4"


def fill_yard(sheet: Sheet, form: PriceForm) -> None:
    """Fill the sheet of what the yard tells of itself."""
    sheet.heading("A1", "Yard data")
    sheet.head(3, ("Asked", "What is meant", "Answer of the yard"))
    for row, (label, hint) in enumerate(form.yard_questions, start=4):
        sheet.text(f"A{row}", label, bold=True)
        sheet.text(f"B{row}", hint)
        sheet.entry(f"C{row}")
        sheet.worksheet.row_dimensions[row].height = 30


def _day(day: date | None) -> str:
    return day.isoformat() if day is not None else "to be said"
