"""Random well-formed bids: what a yard may answer, and how it may treat the workbook meanwhile."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import openpyxl
from hypothesis import strategies as st

from .filled import EXPECTED, PERCENTAGE, PRICED, PRICES, filled, put, rows, whole

NUMBERS = st.decimals(1, 10**6, places=2)
FINE = st.decimals(Decimal("0.01"), 10**4, places=4).filter(lambda rate: rate % Decimal("0.01") != 0)
TEXTS = ("{:,.2f}", "GBP {:,.2f}", "£ {:.2f}", "{:.2f} GBP", "de {:,.2f}", "fr {:,.2f}", "ch {:,.2f}")
NOTES = st.sampled_from([None, "see letter", "=not a formula", "-3 days", 'says "so": {yes}', "ü € 漢\nsecond line"])


@dataclass(frozen=True)
class Answer:
    """What is put into the cells of a line, and what it must be read as."""

    price: object
    status: object
    rate: Decimal | None
    read_as: str


@dataclass(frozen=True)
class Treatment:
    """What becomes of the workbook besides."""

    titles: tuple[str, ...]
    order: tuple[int, ...]
    """The order in which the rows of the lines stand then."""
    rows_before: int
    columns_before: int
    typed: str
    """How line numbers are typed."""
    second_sheet: bool
    """Whether the lines below the middle are moved to a sheet of their own."""


def _as_text(number: Decimal, how: str) -> str:
    style, _, pattern = how.rpartition(" {") if how[:3] in ("de ", "fr ", "ch ") else ("", "", "")
    if not style:
        return how.format(number)
    text = f"{{{pattern}".format(number)
    thousands, sign = {"de": (".", ","), "fr": ("\u00a0", ","), "ch": ("'", ".")}[style]
    return text.replace(",", "T").replace(".", sign).replace("T", thousands)


def _priced(numbers: st.SearchStrategy[Decimal]) -> st.SearchStrategy[Answer]:
    return st.one_of(
        st.builds(lambda n, s: Answer(float(n), s, n, "priced"), numbers, st.sampled_from(["priced", None])),
        st.builds(lambda n, how: Answer(_as_text(n, how), None, n, "priced"), NUMBERS, st.sampled_from(TEXTS)),
    )


OTHER_ANSWERS = st.sampled_from(
    [
        Answer(None, None, None, "empty"),
        Answer(0, "priced", Decimal(0), "zero"),
        Answer("0.00", None, Decimal(0), "zero"),
        Answer("nil", None, Decimal(0), "zero"),
        Answer(None, "included", None, "included"),
        Answer("Incl.", None, None, "included"),
        Answer("incl. in 105.a", "included", None, "included"),
        Answer(None, "no bid", None, "no bid"),
        Answer("n/a", None, None, "no bid"),
        Answer("not offered", "no bid", None, "no bid"),
    ]
)
HUNDREDTHS = st.decimals(1, 100, places=2)
PERCENTAGES = st.one_of(
    st.builds(lambda n, s: Answer(float(n), s, n, "priced"), HUNDREDTHS, st.sampled_from(["priced", None])),
    st.builds(
        lambda n, how: Answer(how.format(n), None, n, "priced"), HUNDREDTHS, st.sampled_from(["{} %", "{}%", "{}"])
    ),
)
ANSWERS = st.fixed_dictionaries(
    {n: st.tuples((PERCENTAGES if n == PERCENTAGE else _priced(NUMBERS | FINE)) | OTHER_ANSWERS, NOTES) for n in PRICED}
)
TREATMENTS = st.builds(
    Treatment,
    st.lists(
        st.text("abcdefgh 12é", min_size=1, max_size=12).filter(str.strip), min_size=6, max_size=6, unique_by=str.lower
    ),
    st.permutations(range(len(EXPECTED.lines))),
    st.integers(0, 5),
    st.integers(0, 3),
    st.sampled_from(["{}.{}", " {}.{} ", "{} {}", "{}{}", "Item {}.{}", "0{}.{}"]),
    st.booleans(),
).map(lambda made: Treatment(tuple(made.titles), tuple(made.order), *list(vars(made).values())[2:]))


def returned(answers: dict[str, tuple[Answer, str | None]], treatment: Treatment) -> bytes:
    """Make a returned workbook: a filled form, its rows moved, its sheets renamed, written by another hand."""
    data = filled(whole, *(put(n, a.price, a.status, note) for n, (a, note) in answers.items()))
    book = openpyxl.load_workbook(io.BytesIO(data))
    _move_rows(book[PRICES], list(rows(book).values()), treatment)
    made = openpyxl.Workbook()
    made.remove(made.worksheets[0])
    for index, (sheet, title) in enumerate(zip(book.worksheets, treatment.titles, strict=True)):
        _copy(sheet, made.create_sheet(f"{index} {title}".strip()), treatment)
    if treatment.second_sheet:
        _divide(made, 1, treatment)
    output = io.BytesIO()
    made.save(output)
    return output.getvalue()


def _move_rows(sheet: Any, places: Sequence[int], treatment: Treatment) -> None:
    kept = [[sheet.cell(row, column).value for column in range(1, 13)] for row in places]
    for row, source in zip(places, treatment.order, strict=True):
        for column, value in enumerate(kept[source], start=1):
            cell = sheet.cell(row, column)
            cell.value = value
            if isinstance(value, str) and not (value.startswith("=") and column in (8, 9)):
                cell.data_type = "s"
        item, _, letter = str(kept[source][0]).partition(".")
        sheet.cell(row, 1).value = treatment.typed.format(item, letter)


def _copy(source: Any, target: Any, treatment: Treatment) -> None:
    """Copy the values of a sheet to another place, formulas as the zero that an unwary program leaves of them."""
    for row in source.iter_rows():
        for cell in row:
            if cell.value is None:
                continue
            made = target.cell(cell.row + treatment.rows_before, cell.column + treatment.columns_before)
            made.value = 0 if cell.data_type == "f" and "ISNUMBER" in str(cell.value) else cell.value
            if cell.data_type == "s":
                made.data_type = "s"


def _divide(book: Any, index: int, treatment: Treatment) -> None:
    """Move the rows below the middle of the prices to a new sheet, under a copy of the headings."""
    sheet = book.worksheets[index]
    more = book.create_sheet("overleaf")
    head, middle, last = 4 + treatment.rows_before, sheet.max_row // 2, sheet.max_row
    for target, row in enumerate([head, *range(middle, last + 1)], start=2):
        for column in range(1, sheet.max_column + 1):
            cell = sheet.cell(row, column)
            made = more.cell(target, column)
            made.value = cell.value
            made.data_type = cell.data_type
            if row != head:
                cell.value = None
