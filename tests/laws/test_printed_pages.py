"""The pages that are printed, of every package and every document: nothing overprinted, cut off or next to empty."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tenderwright.cli import main
from tests.once import once
from tests.pipeline.packages import MARRAM

from .printed import Line, Page, Word, beyond, broken_early, hardly_filled, overprinted, printed

pytestmark = pytest.mark.needs("pdftotext")

PACKAGES = {"marram": MARRAM, "kestrel-bank": MARRAM.parent / "tests/packages/kestrel-bank"} | {
    "withy": MARRAM.parent / "tests/packages/withy"
}
LEAST_FILL = 0.3
"""What the last page of a part that has several holds at least: a third, less the space below the last words."""


@pytest.fixture(scope="module", params=PACKAGES)
def documents(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Page]]:
    """Build a package, and read every PDF that is written, by its path."""

    def build(folder: Path) -> dict[str, list[Page]]:
        package = shutil.copytree(PACKAGES[request.param], folder / "package")
        assert main(["build", str(package), "--out", str(folder / "out")]) == 0
        return {str(file.relative_to(folder / "out")): printed(file) for file in (folder / "out").rglob("*.pdf")}

    return once(tmp_path_factory, f"printed-{request.param}", build)


LAWS: dict[str, Callable[[Page], list[str]]] = {
    "no word stands on another": overprinted,
    "no word is cut off by the edge": beyond,
    "no line breaks after one word": broken_early,
}


def broken(law: Callable[[Page], list[str]], pages: list[Page]) -> list[str]:
    return [told for page in pages for told in law(page)]


@pytest.mark.parametrize("law", LAWS)
def test_on_every_page(law: str, documents: dict[str, list[Page]]) -> None:
    assert {name: told for name, pages in documents.items() if (told := broken(LAWS[law], pages))} == {}


def test_no_part_ends_on_a_page_that_is_next_to_empty(documents: dict[str, list[Page]]) -> None:
    fitted = {name: pages for name, pages in documents.items() if name != "owner/record.pdf"}  # small type, as it comes
    assert {name: told for name, pages in fitted.items() if (told := hardly_filled(pages, LEAST_FILL))} == {}


def test_no_page_of_the_yard_names_a_file_of_the_package(documents: dict[str, list[Page]]) -> None:
    yards = [page for name, pages in documents.items() if name.startswith("yard/") for page in pages]
    words = [word.text for page in yards for word in page.words()]
    assert len(words) > 1000
    assert [word for word in words if ".yaml" in word or "surveys/" in word or "`" in word] == []


def test_each_law_finds_what_breaks_it() -> None:
    def word(text: str, left: float, top: float, wide: float = 40.0) -> Word:
        return Word(text, left, top, left + wide, top + 9)

    lines = (
        Line((word("there", 60, 200),)),
        Line((word("is", 60, 212), word("renewed", 110, 212), word("now", 400, 212))),
    )
    twice = (Line((word("one", 60, 300), word("two", 65, 302))),)
    outside = (Line((word("cut", 580, 400),)),)
    foot = (Line((word("410", 60, 800, 12), word("·", 80, 800, 3), word("2", 90, 800, 4), word("of", 100, 800, 8))),)
    foot += (Line((word("2", 112, 800, 4),)),)
    page = Page(1, 595.0, 842.0, (lines, twice, outside, foot))
    assert [len(law(page)) for law in LAWS.values()] == [1, 1, 1]
    assert hardly_filled([page], 0.5) == ["page 1: 410, 0.48"]
    assert hardly_filled([page], 0.4) == []
