"""Hostile and clumsy forms: each a small change of the form filled in whole, with what may not be lost of it."""

from __future__ import annotations

import datetime
import io
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import openpyxl
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.comments import Comment
from openpyxl.formatting.rule import FormulaRule
from openpyxl.packaging.custom import StringProperty
from openpyxl.styles import Font, PatternFill
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.scenario import InputCells, Scenario, ScenarioList

from tests.reading.workbook import hostile

from .filled import PRICES, REMARKS, SIGNED, TOTALS, filled, put, put_at, remarked, row_of, rows, whole

Change = Callable[[Any], None]
LINE = "305.a"
"""The line that is spoilt; the form filled in whole prices it at 100, its quantity being 612.5 m2."""
SECRET = "only if the launch is ours"


@dataclass(frozen=True)
class Hostile:
    """A form, what its price may be read as, and words that must stand in the bid or its doubts."""

    name: str
    data: Callable[[], bytes]
    read_as: tuple[str | None, ...] = ("100",)
    """What the rate may be; None where it may not be read at all."""
    kept: tuple[str, ...] = (SECRET,)


def _price(book: Any) -> Any:
    return book[PRICES].cell(rows(book)[LINE], 7)


def _cell(**attributes: object) -> Change:
    def change(book: Any) -> None:
        for name, value in attributes.items():
            setattr(_price(book), name, value)

    return change


def _at(sheet: str, address: str, value: object, **attributes: object) -> Change:
    def change(book: Any) -> None:
        book[sheet][address] = value
        for name, one in attributes.items():
            setattr(book[sheet][address], name, one)

    return change


def _rich(*pieces: tuple[str, dict[str, Any]]) -> Change:
    return _cell(value=CellRichText(*(TextBlock(InlineFont(**font), words) for words, font in pieces)))


def _by_xml(part: str, old: str, new: str, *changes: Change) -> Callable[[], bytes]:
    """Change the text of one part, with every place where it may stand told by a pattern."""

    def make() -> bytes:
        data = filled(whole, *changes)
        members = hostile.members(data)
        text, count = re.subn(old, new, members[part].decode(), count=1, flags=re.S)
        assert count == 1, f"{old} is not in {part}"
        return hostile.pack({**members, part: text.encode()})

    return make


SHEET2 = "xl/worksheets/sheet2.xml"


def _result(formula: str, result: str) -> Callable[[], bytes]:
    """Give a formula for the price with a result stored beside it."""
    kind = "" if re.fullmatch(r"[\d.]+", result) else ' t="str"'
    cell = rf'<c r="(G\d+)"([^>]*)><f>{re.escape(formula)}</f><v ?/?>(?:</v>)?</c>'
    return _by_xml(SHEET2, cell, rf'<c r="\1"\2{kind}><f>{formula}</f><v>{result}</v></c>', _cell(value=f"={formula}"))


def _comment(book: Any) -> None:
    _price(book).comment = Comment(SECRET, "Yard")


def _threaded() -> bytes:
    data = filled(whole)
    words = f'<threadedComments xmlns="urn:x"><threadedComment ref="G16"><text>{SECRET}</text></threadedComment>'
    data = hostile.with_member("xl/threadedComments/threadedComment1.xml", f"{words}</threadedComments>".encode(), data)
    return data


_DRAWN = '<xdr:wsDr xmlns:xdr="urn:d" xmlns:a="urn:a"><xdr:from><xdr:col>6</xdr:col></xdr:from>{}</xdr:wsDr>'


def _part(name: str, content: str | bytes) -> Callable[[], bytes]:
    data = content.encode() if isinstance(content, str) else content
    return lambda: hostile.with_member(name, data, filled(whole))


def _name(book: Any) -> None:
    book.defined_names["Condition"] = DefinedName("Condition", attr_text=f'"{SECRET}"')


def _property(book: Any) -> None:
    vars(book)["custom_doc_props"].append(StringProperty(name="Condition", value=SECRET))


def _core(book: Any) -> None:
    book.properties.description = SECRET


def _new_sheet(state: str) -> Change:
    def change(book: Any) -> None:
        sheet = book.create_sheet("Conditions")
        sheet["B7"], sheet.sheet_state = SECRET, state

    return change


def _sheet_name(book: Any) -> None:
    book.create_sheet(SECRET)


def _head(book: Any) -> None:
    book[PRICES].oddHeader.center.text = SECRET


def _even_foot(book: Any) -> None:
    book[TOTALS].evenFooter.left.text = SECRET


def _rule(book: Any) -> None:
    rule = DataValidation(type="whole", prompt=SECRET, showInputMessage=True)
    rule.add("B30")
    book[REMARKS].add_data_validation(rule)


def _conditional(book: Any) -> None:
    rule = FormulaRule(formula=[f'"{SECRET}"=""'], fill=PatternFill("solid", bgColor="FFFFFF"))
    book[PRICES].conditional_formatting.add("G5:G40", rule)


def _scenario(book: Any) -> None:
    cells = [InputCells(r="G16", val="250")]
    book[PRICES].scenarios = ScenarioList([Scenario(name="Other", comment=SECRET, inputCells=cells)])


def _link(book: Any) -> None:
    book[PRICES]["K3"].hyperlink = f"https://example.invalid/{SECRET.replace(' ', '-')}"


def _hidden_row(book: Any) -> None:
    sheet = book[PRICES]
    sheet.cell(sheet.max_row + 3, 2).value = SECRET
    sheet.row_dimensions[sheet.max_row].hidden = True


def _hidden_column(book: Any) -> None:
    book[PRICES]["K8"] = SECRET
    book[PRICES].column_dimensions["K"].hidden = True


def _hide_the_line(book: Any) -> None:
    book[PRICES].row_dimensions[rows(book)[LINE]].hidden = True


def _sorted(book: Any) -> None:
    """Turn the order of the rows of the lines about, each with all that stands in it."""
    sheet, places = book[PRICES], list(rows(book).values())
    kept = [[sheet.cell(row, column).value for column in range(1, 10)] for row in places]
    shapes = [sheet.cell(row, 7).number_format for row in places]
    for row, shape in zip(places, reversed(shapes), strict=True):
        sheet.cell(row, 7).number_format = shape
    for row, values in zip(places, reversed(kept), strict=True):
        for column, value in enumerate(values, start=1):
            sheet.cell(row, column).value = value


def _insert(book: Any) -> None:
    sheet, row = book[PRICES], rows(book)[LINE]
    sheet.insert_rows(row)
    sheet.cell(row, 2).value = SECRET


def _exchange(column: int) -> Change:
    def change(book: Any) -> None:
        sheet, place = book[PRICES], rows(book)
        one, other = sheet.cell(place[LINE], column), sheet.cell(place["420.a"], column)
        one.value, other.value = other.value, one.value

    return change


def _another_column(book: Any) -> None:
    cell = _price(book)
    book[PRICES].cell(cell.row, 11).value, cell.value = 777, None
    book[PRICES].cell(cell.row, 6).value = None


def _merge(book: Any) -> None:
    row = rows(book)[LINE]
    book[PRICES].merge_cells(start_row=row, end_row=row + 1, start_column=7, end_column=7)
    book[PRICES].cell(row, 7).value = 250


def _twice(book: Any) -> None:
    sheet, row = book[PRICES], rows(book)[LINE]
    last = sheet.max_row + 2
    for column in range(1, 6):
        sheet.cell(last, column).value = sheet.cell(row, column).value
    sheet.cell(last, 7).value = 55


def _duplicate() -> bytes:
    made = _by_xml(SHEET2, r'(<c r="G16"[^>]*>.*?</c>)', r'\1<c r="G16"><v>55</v></c>')
    return made()


def _struck_terms(book: Any) -> None:
    cell = book[SIGNED].cell(row_of(book[SIGNED], "The terms of the tender"), 1)
    cell.font = Font(strike=True)


def _phonetic(book: Any) -> None:
    _at(PRICES, "K9", "base")(book)


def _tables(**change: object) -> Change:
    def alter(book: Any) -> None:
        for address, value in change.items():
            book[SIGNED][address] = value

    return alter


_UNREAD: tuple[None] = (None,)
_PRICE_TEXTS: tuple[tuple[str, str, str | None], ...] = (
    ("one thousand in German", "1.234,50", "1234.50"),
    ("parted by a hard blank", "1\u00a0234,50", "1234.50"),
    ("parted by a narrow blank", "1\u202f234.50", "1234.50"),
    ("parted by apostrophes", "1'234.50", "1234.50"),
    ("full-width figures", "１２３.５０", "123.50"),
    ("Arabic figures", "\u0661\u0662\u0663", "123"),
    ("an Arabic decimal sign", "\u0661\u0662\u066b\u0665", None),
    ("to be asked for", "POA", None),
    ("to be agreed", "tba", None),
    ("a range", "100-120", None),
    ("one or the other", "100 or 120", None),
    ("two on two lines", "100\n200", None),
    ("two far apart", "100    200", None),
    ("a price and a condition", "100 if blasted by others", None),
    ("a raised figure", "95¹", None),
    ("a note by an asterisk", "100*", None),
    ("about", "approx. 100", None),
    ("plus", "100 + tax", None),
    ("by the unit", "100/m2", None),
    ("a half", "12½", None),
    ("in brackets", "(100)", None),
    ("below nothing", "-100", None),
    ("in powers of ten", "1e3", None),
    ("a share of hundred", "12 %", None),
    ("another currency", "USD 100", None),
    ("two currencies", "GBP 100 EUR", None),
    ("as a formula in words", "'=100*2", None),
    ("included, but for something", "included, but not the staging", None),
    ("included with a sum", "incl. 250 for staging", None),
)

CORPUS: tuple[Hostile, ...] = (
    *(
        Hostile(f"price: {name}", lambda text=text: filled(whole, put(LINE, text)), (rate,), (" ".join(text.split()),))  # type: ignore[misc]
        for name, text, rate in _PRICE_TEXTS
    ),
    Hostile(
        "a run of the price is struck out",
        lambda: filled(whole, _rich(("14.20", {"strike": True}), ("13.80", {}))),
        _UNREAD,
        ("14.2013.80", "`14.20` of it is struck out"),
    ),
    Hostile(
        "the price is struck out", lambda: filled(whole, _cell(font=Font(strike=True))), _UNREAD, ("100", "struck out")
    ),
    Hostile(
        "a figure of the price is raised",
        lambda: filled(whole, _rich(("13", {}), ("80", {"vertAlign": "superscript"}))),
        _UNREAD,
        ("1380", "raised"),
    ),
    Hostile(
        "the whole price is lowered",
        lambda: filled(whole, _cell(font=Font(vertAlign="subscript"))),
        _UNREAD,
        ("raised or lowered",),
    ),
    Hostile("a price in two pieces", lambda: filled(whole, _rich(("13", {"b": True}), ("80", {}))), _UNREAD, ("1380",)),
    Hostile(
        "white on white", lambda: filled(whole, _cell(font=Font(color="FFFFFFFF"))), _UNREAD, ("colour of its ground",)
    ),
    Hostile(
        "scaled by its format",
        lambda: filled(whole, _cell(value=1250000, number_format="#,##0.00,,")),
        _UNREAD,
        ("`1.25`", "1250000"),
    ),
    Hostile(
        "hidden by its format",
        lambda: filled(whole, _cell(number_format=";;;")),
        _UNREAD,
        ("shows nothing", "holds `100`"),
    ),
    Hostile("a format with words", lambda: filled(whole, _cell(number_format=f'0.00" {SECRET}"')), _UNREAD),
    Hostile("a format of words alone", lambda: filled(whole, _cell(number_format=f'"{SECRET}"')), _UNREAD),
    Hostile(
        "a format with a condition",
        lambda: filled(whole, _cell(number_format='[>50]"incl.";0.00')),
        _UNREAD,
        ("incl.",),
    ),
    Hostile("decimals hidden", lambda: filled(whole, _cell(value=99.6, number_format="0")), _UNREAD, ("`100`", "99.6")),
    Hostile("shown as a share", lambda: filled(whole, _cell(value=12.5, number_format="0%")), _UNREAD, ("12.5",)),
    Hostile("shown as a day", lambda: filled(whole, _cell(number_format="yyyy-mm-dd")), _UNREAD, ("1900-04-09",)),
    Hostile("a day", lambda: filled(whole, put(LINE, datetime.date(2026, 5, 1))), _UNREAD, ("2026-05-01",)),
    Hostile("yes or no", lambda: filled(whole, put(LINE, True)), _UNREAD, ("True",)),
    Hostile("an error", lambda: filled(whole, put(LINE, "#REF!")), _UNREAD, ("#REF!",)),
    Hostile(
        "shown in another currency", lambda: filled(whole, _cell(number_format='"USD" #,##0.00')), _UNREAD, ("USD",)
    ),
    Hostile("below the smallest coin", lambda: filled(whole, put(LINE, 0.004)), ("0.0040",), ("0.004",)),
    Hostile("a formula without a result", lambda: filled(whole, put(LINE, "=4*25")), _UNREAD, ("=4*25",)),
    Hostile("a formula with a result", _result("4*25", "100"), ("100",), ("=4*25", "shows `100`")),
    Hostile("a formula with words as its result", _result("T(1)", SECRET), _UNREAD),
    Hostile("a comment", lambda: filled(whole, _comment)),
    Hostile("a threaded comment", _threaded),
    Hostile("a text box", _part("xl/drawings/drawing9.xml", _DRAWN.format(f"<a:t>{SECRET}</a:t>"))),
    Hostile(
        "what a shape is described by",
        _part("xl/drawings/drawing9.xml", _DRAWN.format(f'<xdr:cNvPr descr="{SECRET}"/>')),
    ),
    Hostile("a shape without words", _part("xl/drawings/drawing9.xml", _DRAWN.format("")), kept=("drawing9.xml",)),
    Hostile(
        "an older text box",
        _part("xl/drawings/vml9.vml", f"<xml><v:shape><v:textbox>{SECRET}</v:textbox></v:shape></xml>"),
    ),
    Hostile("a picture", _part("xl/media/image1.png", b"\x89PNG"), kept=("image1.png",)),
    Hostile("a chart", _part("xl/charts/chart1.xml", f'<c:chart xmlns:c="urn:c"><c:t>{SECRET}</c:t></c:chart>')),
    Hostile("data of its own", _part("customXml/item1.xml", f"<a><b>{SECRET}</b></a>")),
    Hostile("the head of a page", lambda: filled(whole, _head)),
    Hostile("the foot of even pages", lambda: filled(whole, _even_foot)),
    Hostile("a name of the workbook", lambda: filled(whole, _name)),
    Hostile("a property of the file", lambda: filled(whole, _property)),
    Hostile("the description of the file", lambda: filled(whole, _core)),
    Hostile("another sheet", lambda: filled(whole, _new_sheet("visible"))),
    Hostile("a hidden sheet", lambda: filled(whole, _new_sheet("hidden")), kept=(SECRET, "Conditions is hidden")),
    Hostile(
        "a very hidden sheet", lambda: filled(whole, _new_sheet("veryHidden")), kept=(SECRET, "Conditions is hidden")
    ),
    Hostile("the name of a sheet", lambda: filled(whole, _sheet_name)),
    Hostile("a rule for input", lambda: filled(whole, _rule)),
    Hostile("a conditional format", lambda: filled(whole, _conditional)),
    Hostile("a scenario", lambda: filled(whole, _scenario), kept=(SECRET, "250")),
    Hostile("a link", lambda: filled(whole, _link), kept=("only-if-the-launch-is-ours",)),
    Hostile("a hidden row", lambda: filled(whole, _hidden_row)),
    Hostile("a hidden column", lambda: filled(whole, _hidden_column), kept=(SECRET, "column K is hidden")),
    Hostile("the line is hidden", lambda: filled(whole, _hide_the_line), kept=("is hidden",)),
    Hostile(
        "a reading aid",
        _by_xml(SHEET2, r"<t>base</t>", f'<t>base</t><rPh sb="0" eb="1"><t>{SECRET}</t></rPh>', _phonetic),
    ),
    Hostile("a note beside the row", lambda: filled(whole, _at(PRICES, "J16", SECRET))),
    Hostile("a note far away", lambda: filled(whole, _at(TOTALS, "M90", SECRET))),
    Hostile("a note in white", lambda: filled(whole, _at(PRICES, "K20", SECRET, font=Font(color="FFFFFFFF")))),
    Hostile("a note among the help", lambda: filled(whole, _at("How to fill", "C5", SECRET))),
    Hostile("a note between the lines", lambda: filled(whole, _insert)),
    Hostile("a note in the column of sums", lambda: filled(whole, put_at(TOTALS, "The owner's cost", 3, SECRET))),
    Hostile("a condition in the status", lambda: filled(whole, put(LINE, 100, f"priced, {SECRET}"))),
    Hostile("included but for something", lambda: filled(whole, put(LINE, None, f"included, {SECRET}")), _UNREAD),
    Hostile("a price and included", lambda: filled(whole, put(LINE, 100, "included")), _UNREAD, ("100", "included")),
    Hostile("words for the amount", lambda: filled(whole, _at(PRICES, "H16", SECRET))),
    Hostile(
        "a formula of another row",
        lambda: filled(whole, _at(PRICES, "H16", "=ROUND(D16*G17,2)")),
        kept=("=ROUND(D16*G17,2)",),
    ),
    Hostile("a sum of its own", lambda: filled(whole, put_at(TOTALS, "Total", 3, 12345)), kept=("12345",)),
    Hostile(
        "another cost of a day",
        lambda: filled(whole, put_at(TOTALS, "The owner's cost", 2, "The owner's cost of those days, at GBP 1 a day")),
        kept=("at GBP 1 a day",),
    ),
    Hostile("another quantity", lambda: filled(whole, put_at(PRICES, LINE, 4, 700)), kept=("700",)),
    Hostile(
        "the quantity scaled",
        lambda: filled(whole, lambda book: setattr(book[PRICES].cell(rows(book)[LINE], 4), "number_format", "0,")),
        kept=("612.5",),
    ),
    Hostile("another unit", lambda: filled(whole, put_at(PRICES, LINE, 5, "ft2")), kept=("ft2",)),
    Hostile("other words for the line", lambda: filled(whole, put_at(PRICES, LINE, 2, f"Blast, {SECRET}"))),
    Hostile(
        "an asterisk at the line",
        lambda: filled(
            whole, lambda book: put_at(PRICES, LINE, 2, f"{book[PRICES].cell(rows(book)[LINE], 2).value} *")(book)
        ),
        kept=(" *`",),
    ),
    Hostile(
        "the terms struck out",
        lambda: filled(whole, _struck_terms),
        kept=("The terms of the tender are accepted as they stand` is not plain: it is struck out",),
    ),
    Hostile(
        "a reservation beside the terms", lambda: filled(whole, put_at(SIGNED, "The terms of the tender", 4, SECRET))
    ),
    Hostile(
        "a reservation for the answer",
        lambda: filled(whole, put_at(SIGNED, "The terms of the tender", 2, f"yes, {SECRET}")),
    ),
    Hostile("a reservation beside an addendum", lambda: filled(whole, put_at(SIGNED, "Addendum 2", 5, SECRET))),
    Hostile("an addendum of its own", lambda: filled(whole, _tables(A6=f"Addendum 3, {SECRET}")), kept=(SECRET,)),
    Hostile(
        "a remark with a kind of its own",
        lambda: filled(whole, lambda book: remarked(book, LINE, SECRET, "No Sundays")),
        kept=(SECRET, "No Sundays"),
    ),
    Hostile(
        "a remark on a line and more",
        lambda: filled(whole, lambda book: remarked(book, f"{LINE} {SECRET}", "remark", "No Sundays")),
        kept=(SECRET, "No Sundays"),
    ),
    Hostile("a remark in a column of its own", lambda: filled(whole, _at(REMARKS, "G9", SECRET))),
    Hostile(
        "days shown otherwise",
        lambda: filled(
            whole,
            lambda book: setattr(
                book[TOTALS].cell(row_of(book[TOTALS], "Days from"), 5), "number_format", f'0" {SECRET}"'
            ),
        ),
    ),
    Hostile("rows in another order", lambda: filled(whole, put(LINE, 123), _sorted), ("123",), ()),
    Hostile(
        "numbers exchanged",
        lambda: filled(whole, _exchange(1)),
        _UNREAD,
        ("has the words of line 305.a", "has the words of line 420.a"),
    ),
    Hostile("a price in another column", lambda: filled(whole, _another_column), _UNREAD, ("777",)),
    Hostile("a price merged over the row below", lambda: filled(whole, _merge), ("250",), ()),
    Hostile("the line stands twice", lambda: filled(whole, _twice), _UNREAD, ("55", "100")),
    Hostile(
        "the line is gone",
        lambda: filled(whole, lambda book: book[PRICES].delete_rows(rows(book)[LINE])),
        _UNREAD,
        (LINE,),
    ),
    Hostile(
        "the caution is gone",
        lambda: filled(whole, lambda book: setattr(book["How to fill"]["B20"], "value", None)),
        kept=("texts of the form as issued are gone",),
    ),
)
"""Every form of the corpus."""


def saved(data: bytes) -> Any:
    """Open a form again."""
    return openpyxl.load_workbook(io.BytesIO(data))
