"""What LibreOffice makes of the price forms of three ships: no cell clipped, none printed over another."""

from __future__ import annotations

import re
import subprocess
from collections import Counter
from html import unescape
from itertools import combinations
from pathlib import Path
from typing import NamedTuple

import openpyxl
import pytest

from tenderwright.documents.desk import Desk
from tenderwright.documents.form import price_form
from tenderwright.pipeline import compile_package, read
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.programs import convert

ROOT = Path(__file__).parents[2]
SHIPS = (ROOT / "package_src", ROOT / "tests/packages/kestrel-bank", ROOT / "tests/packages/withy")
_WORD = re.compile(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>')
_PART = re.compile(r"\w+")
_SIZE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">')


class Word(NamedTuple):
    """A word on a printed page, in points from its upper left corner."""

    left: float
    top: float
    right: float
    bottom: float
    text: str


class Printed(NamedTuple):
    """A price form as written, and the pages that LibreOffice prints of it."""

    book: Path
    pages: list[tuple[float, float, list[Word]]]


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> list[Printed]:
    folder = tmp_path_factory.mktemp("printed")
    for root in SHIPS:
        compiled = compile_package(read(root))
        form = price_form(Desk(compiled.package, compiled.links, compiled.calculated), "Commit 1a2b3c4")
        (folder / f"{root.name}.xlsx").write_bytes(price_form_workbook(form))
    books = [folder / f"{root.name}.xlsx" for root in SHIPS]
    made = convert(books, "pdf", folder, folder / "profile")
    return [Printed(book, _pages(pdf)) for book, pdf in zip(books, made, strict=True)]


def _pages(pdf: Path) -> list[tuple[float, float, list[Word]]]:
    command = ["pdftotext", "-bbox", str(pdf), "-"]
    told = subprocess.run(command, check=True, capture_output=True, text=True).stdout
    found = []
    for page in told.split("</page>")[:-1]:
        size = _SIZE.search(page)
        assert size is not None
        words = [Word(*map(float, match[:4]), unescape(match[4])) for match in _WORD.findall(page)]
        found.append((float(size[1]), float(size[2]), words))
    return found


def over_each_other(words: list[Word]) -> list[tuple[str, str]]:
    """Give the words that are printed over each other."""
    return [
        (one.text, other.text)
        for one, other in combinations(words, 2)
        if min(one.right, other.right) - max(one.left, other.left) > 0.8
        and min(one.bottom, other.bottom) - max(one.top, other.top) > 2.0
    ]


def across_rows(words: list[Word]) -> list[str]:
    """Give the words that reach from one row into the next; a row begins where its first column does."""
    left = min(word.left for word in words)
    tops = [word.top for word in words if word.left < left + 2]
    return [word.text for word in words if any(word.top < top - 2 and word.bottom > top + 3 for top in tops)]


@pytest.mark.needs("soffice")
@pytest.mark.needs("pdftotext")
def test_no_cell_is_clipped_or_printed_over_another(printed: list[Printed]) -> None:
    for form in printed:
        for number, (width, height, words) in enumerate(form.pages, start=1):
            assert over_each_other(words) == [], (form.book.name, number)
            assert across_rows(words) == [], (form.book.name, number)
            assert not [word for word in words if "##" in word.text], (form.book.name, number)
            beyond = [word for word in words if word.left < 18 or word.right > width - 18 or word.bottom > height - 18]
            assert beyond == [], (form.book.name, number)


@pytest.mark.needs("soffice")
@pytest.mark.needs("pdftotext")
def test_all_that_stands_in_a_cell_is_printed(printed: list[Printed]) -> None:
    for form in printed:
        shown = Counter(part for _, _, words in form.pages for word in words for part in _PART.findall(word.text))
        book = openpyxl.load_workbook(form.book, data_only=True)
        cells = [
            cell.value for sheet in book for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)
        ]
        asked = Counter(part for text in cells for part in _PART.findall(text))
        assert len(asked) > 200
        assert asked - shown == Counter(), form.book.name


def test_the_law_finds_what_is_clipped_or_printed_over() -> None:
    row = [Word(36, 100, 60, 112, "420.a"), Word(80, 100, 140, 112, "Bottom"), Word(36, 114, 60, 126, "420.b")]
    assert over_each_other(row) == across_rows(row) == []
    assert across_rows([*row, Word(80, 110.5, 140, 122.5, "clipped")]) == ["clipped"]
    assert over_each_other([*row, Word(130, 101, 170, 113, "beside")]) == [("Bottom", "beside")]
