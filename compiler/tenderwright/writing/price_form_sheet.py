"""A worksheet of the price form: text that stays text, formulas with their results, cells to fill in."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import TYPE_CHECKING

from openpyxl.cell.cell import Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Protection, Side
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.pagebreak import Break

from tenderwright.writing.price_form_heights import FACE, LINE, lines_of

if TYPE_CHECKING:
    from openpyxl.worksheet.cell_range import CellRange
    from openpyxl.worksheet.worksheet import Worksheet

    from tenderwright.documents.price_form import PriceForm

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")
_THIN, _HAIR, _THICK = (
    Side("thin", color="000000"),
    Side("hair", color="808080"),
    Side("medium", color="000000"),
)
_INPUT_FILL = PatternFill("solid", fgColor="FFF6D6")
_HEAD_FILL = PatternFill("solid", fgColor="DDE3E8")
_TOTAL_FILL = PatternFill("solid", fgColor="EEF1F3")
_LETTERS = "ABCDEFGHIJKLMNOP"
SIZE = 10
_MOST = 409.0
"""The highest that a row may be, pt."""


class Sheet:
    """One worksheet, and the results of the formulas put into it."""

    def __init__(self, worksheet: Worksheet, form: PriceForm, widths: tuple[float, ...]) -> None:
        self.worksheet = worksheet
        self.results: dict[str, Decimal | str] = {}
        self._money = (
            '"' + form.currency.replace('"', "") + '" #,##0.00;[Red]-"' + form.currency.replace('"', "") + '" #,##0.00'
        )
        self.widths = dict(zip(_LETTERS, widths, strict=False))
        for letter, width in self.widths.items():
            worksheet.column_dimensions[letter].width = width
        _set_up_page(worksheet, form)

    def cell(self, address: str) -> Cell:
        """Give a cell that is not hidden under a merged one."""
        found = self.worksheet[address]
        assert isinstance(found, Cell)
        return found

    def text(self, address: str, text: str, *, bold: bool = False, size: float = 10, italic: bool = False) -> Cell:
        """Put text, which stays text whatever it begins with."""
        cell = self.cell(address)
        cell.value = text
        cell.data_type = "s"
        if text.startswith(_FORMULA_STARTS):
            cell.quotePrefix = True
        cell.font = Font(FACE, sz=size, b=bold, i=italic)
        cell.alignment = Alignment(wrap_text=True, vertical="top")
        return cell

    def heading(self, address: str, text: str, size: float = 14, *, over: str = "") -> None:
        """Put a title that runs over the cells beside it, up to a column."""
        self._across(self.text(address, text, bold=True, size=size), over)

    def run_on(self, address: str, text: str, *, over: str = "", italic: bool = False, bold: bool = False) -> None:
        """Put text that runs over the cells beside it, up to a column."""
        self._across(self.text(address, text, italic=italic, bold=bold), over)

    def _across(self, cell: Cell, over: str) -> None:
        last = over or list(self.widths)[-1]
        if last != cell.column_letter:
            self.worksheet.merge_cells(f"{cell.coordinate}:{last}{cell.row}")

    def label(self, address: str, text: str) -> None:
        """Put short text that stands clear of the figures before it."""
        self.indent(self.text(address, text))

    def indent(self, cell: Cell) -> None:
        """Move the text of a cell clear of the figures before it."""
        cell.alignment = Alignment(vertical="top", wrap_text=True, horizontal="left", indent=1)

    def number(self, address: str, value: Decimal, number_format: str = "General") -> Cell:
        """Put a number that no one fills in."""
        cell = self.cell(address)
        put_decimal(cell, value)
        cell.number_format = number_format
        cell.font = Font(FACE, sz=SIZE)
        cell.alignment = Alignment(vertical="top", horizontal="right")
        return cell

    def formula(self, address: str, formula: str, result: Decimal | str, *, bold: bool = False) -> Cell:
        """Put a formula together with the result it has now."""
        cell = self.cell(address)
        cell.value = f"={formula}"
        cell.font = Font(FACE, sz=SIZE, b=bold)
        cell.alignment = Alignment(vertical="top", wrap_text=isinstance(result, str))
        if isinstance(result, Decimal) or not result:
            cell.alignment = Alignment(vertical="top", horizontal="right")
        self.results[address] = result
        return cell

    def money(self, cell: Cell) -> Cell:
        """Show a cell as an amount in the form's currency."""
        cell.number_format = self._money
        return cell

    def entry(self, address: str, number_format: str = "@") -> Cell:
        """Make a cell one that the yard fills in: unlocked, filled lightly, boxed."""
        cell = self.cell(address)
        cell.protection = Protection(locked=False)
        cell.fill = _INPUT_FILL
        cell.border = Border(left=_THIN, right=_THIN, top=_THIN, bottom=_THIN)
        cell.font = Font(FACE, sz=SIZE)
        cell.number_format = number_format
        cell.alignment = Alignment(vertical="top", wrap_text=number_format == "@")
        return cell

    def unlock(self, address: str) -> None:
        """Let a cell be pasted over in which nothing is asked."""
        self.cell(address).protection = Protection(locked=False)

    def nothing(self, areas: list[str]) -> None:
        """Let nobody type into cells that are open only so that a block can be pasted over them."""
        rule = DataValidation(type="custom", formula1="FALSE", allow_blank=True)
        rule.errorTitle, rule.error, rule.showErrorMessage = "No line", "No price is asked in this row.", True
        self._validate(rule, areas)

    def money_entry(self, address: str) -> Cell:
        """Make a cell for an amount."""
        return self.entry(address, self._money)

    def percentage(self, addresses: list[str]) -> None:
        """Let cells hold a percentage from 0 % to 100 % only."""
        rule = DataValidation(type="decimal", operator="between", formula1="0", formula2="1", allow_blank=True)
        rule.errorTitle, rule.showErrorMessage = "Not a percentage", True
        rule.error = "Enter a percentage from 0 % to 100 %, such as 15 %; no sum of money."
        self._validate(rule, addresses)

    def choice(self, addresses: list[str], choices: tuple[str, ...]) -> None:
        """Let cells hold one of a few words only."""
        rule = DataValidation(type="list", formula1='"' + ",".join(choices) + '"', allow_blank=True)
        rule.errorTitle, rule.error, rule.showErrorMessage = (
            "Not one of the choices",
            "Choose: " + ", ".join(choices),
            True,
        )
        self._validate(rule, addresses)

    def pick(self, addresses: list[str], cells: str) -> None:
        """Offer what stands in some cells as choices, and let other text be written too."""
        rule = DataValidation(type="list", formula1=cells, allow_blank=True, showErrorMessage=False)
        self._validate(rule, addresses)

    def not_negative(self, addresses: list[str]) -> None:
        """Let cells hold a number of zero or more only."""
        rule = DataValidation(type="decimal", operator="greaterThanOrEqual", formula1="0", allow_blank=True)
        rule.errorTitle, rule.showErrorMessage = "Not an amount", True
        rule.error = "Enter a number of 0 or more. Use the status column for work that is included or not bid."
        self._validate(rule, addresses)

    def _validate(self, rule: DataValidation, addresses: list[str]) -> None:
        if addresses:
            for address in addresses:
                rule.add(address)
            self.worksheet.add_data_validation(rule)

    def head(self, row: int, titles: tuple[str, ...], right: str = "", indented: str = "") -> None:
        """Put a row of column heads, those of the columns lettered in `right` set right."""
        for letter, title in zip(_LETTERS, titles, strict=False):
            cell = self.text(f"{letter}{row}", title, bold=True)
            cell.fill = _HEAD_FILL
            cell.border = Border(top=_THICK, bottom=_THICK)
            side = "right" if letter in right else "left"
            indent = 1 if letter in indented else 0
            cell.alignment = Alignment(wrap_text=True, vertical="bottom", horizontal=side, indent=indent)

    def fit(self) -> None:
        """Make every row as high as the text in it."""
        merged = {str(area).partition(":")[0]: area for area in self.worksheet.merged_cells.ranges}
        for number, row in enumerate(self.worksheet.iter_rows(), start=1):
            heights = [self._height(cell, merged) for cell in row if isinstance(cell, Cell)]
            self.worksheet.row_dimensions[number].height = min(_MOST, max(heights, default=0) or SIZE * LINE + 3)

    def _height(self, cell: Cell, merged: Mapping[str, CellRange]) -> float:
        text = self.results.get(cell.coordinate, "") if cell.data_type == "f" else cell.value
        if not isinstance(text, str) or cell.data_type == "n":
            return SIZE * LINE + 3 if cell.value is not None else 0.0
        area, style, font = merged.get(cell.coordinate), cell.alignment, cell.font
        columns = _LETTERS[cell.column - 1 : area.max_col if area is not None else cell.column]
        width = sum(self.widths[letter] for letter in columns)
        size = float(font.sz)
        lines = lines_of(text, width, size, bold=bool(font.b), indent=int(style.indent)) if style.wrap_text else 1
        return lines * size * LINE + 3

    def new_page(self, row: int) -> None:
        """Begin a new page after a row when the sheet is printed."""
        self.worksheet.row_breaks.append(Break(id=row))

    def rule(self, row: int, last: str, *, weight: str = "line") -> None:
        """Rule a row off: a hair line, or the heavier lines of sub-totals and totals."""
        for letter in _LETTERS[: _LETTERS.index(last) + 1]:
            cell = self.worksheet[f"{letter}{row}"]
            if weight == "line":
                if cell.protection.locked:
                    cell.border = Border(bottom=_HAIR)
            else:
                cell.border = Border(top=_THIN, bottom=_THICK if weight == "total" else _THIN)
                cell.fill = _TOTAL_FILL


def _set_up_page(worksheet: Worksheet, form: PriceForm) -> None:
    setup = worksheet.page_setup
    setup.orientation, setup.fitToWidth, setup.fitToHeight = "landscape", 1, 0
    setup.paperSize = 1 if form.page_size == "Letter" else 9
    assert worksheet.sheet_properties.pageSetUpPr is not None
    worksheet.sheet_properties.pageSetUpPr.fitToPage = True
    margins = worksheet.page_margins
    margins.left = margins.right = 0.5
    margins.top = margins.bottom = 0.75
    header, footer = worksheet.oddHeader, worksheet.oddFooter
    assert header is not None
    assert footer is not None
    header.left.text, header.right.text = _header_text(f"{form.tender} · {form.title}"), "&A"
    footer.left.text, footer.right.text = _header_text(form.stamp), "Page &P of &N"
    worksheet.sheet_view.showGridLines = False
    worksheet.protection.sheet = True
    worksheet.protection.formatColumns = False
    worksheet.protection.formatRows = False


def _header_text(text: str) -> str:
    return text.replace("&", "&&")


def put_decimal(cell: Cell, value: Decimal) -> None:
    """Put a number in a cell digit for digit; the library itself writes 9.95 as 9.949999999999999."""
    cell.value = format(value, "f")
    cell.data_type = "n"
