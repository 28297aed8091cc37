"""Page numbers of the yard edition's PDF: in the contents, and of each page within its part."""

from __future__ import annotations

import re
from typing import Any

import pypdf
import pytest

from .two import Two

PART = re.compile(r"(\d+|[134]\.\d+|[AD]\d+) ")
"""A part that is laid out by itself; the clauses, 2.1 and on, stand within theirs."""


@pytest.fixture(scope="module")
def reader(two_starters: Two) -> Any:
    return pypdf.PdfReader(two_starters.plain / "specification.pdf")


@pytest.fixture(scope="module")
def starts(reader: Any) -> dict[str, int]:
    """Give the page on which each part begins, the first page being 1, by what the outline calls it."""
    found: dict[str, int] = {}
    waiting = list(reader.outline)
    while waiting:
        entry = waiting.pop(0)
        if isinstance(entry, list):
            waiting = entry + waiting
        else:
            found.setdefault(entry.title, reader.get_destination_page_number(entry) + 1)
    return found


def _words(reader: Any, page: int) -> str:
    return " ".join(reader.pages[page - 1].extract_text().split())


def test_the_contents_name_the_page_on_which_a_part_begins(reader: Any, starts: dict[str, int]) -> None:
    parts = {title: page for title, page in starts.items() if PART.match(title)}
    assert len(parts) >= 17
    contents = " ".join(_words(reader, page) for page in range(2, min(parts.values())))
    for title, page in parts.items():
        number, _, name = title.partition(" ")
        assert re.search(rf"\b{number} {re.escape(name)} {page}\b", contents), title


def test_links_of_the_contents_lead_to_the_page_they_name(reader: Any, starts: dict[str, int]) -> None:
    links = [note.get_object() for note in reader.pages[starts["Contents"] - 1]["/Annots"]]
    targets = [str(link["/Dest"]) for link in links if "/Dest" in link]
    pages = [reader.get_page_number(reader.named_destinations[name].page.get_object()) + 1 for name in targets]
    assert len(pages) > 30
    assert pages == sorted(pages)


def test_every_page_counts_itself_within_its_part(reader: Any, starts: dict[str, int]) -> None:
    firsts = sorted({page for title, page in starts.items() if PART.match(title)})
    for first, after in zip(firsts, [*firsts[1:], len(reader.pages) + 1], strict=True):
        for page in range(first, after):
            assert f"{page - first + 1} of {after - first}" in _words(reader, page), page


def test_every_page_names_the_commit(reader: Any, two_starters: Two) -> None:
    for page in reader.pages:
        assert f"Commit {two_starters.commit[:12]}" in " ".join(page.extract_text().split())


def test_an_item_begins_a_page_of_its_own(reader: Any, starts: dict[str, int]) -> None:
    items = [title for title in starts if re.match(r"\d{3} ", title)]
    assert [title[:3] for title in items] == ["110", "130", "140", "210", "320", "420"]
    assert len({starts[title] for title in items}) == len(items)
