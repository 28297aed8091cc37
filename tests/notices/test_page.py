"""The page of all notices is the one that the registry and the explanations give."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.notices import page
from tenderwright.notices.codes import CODES


def test_the_page_in_the_tree_is_up_to_date() -> None:
    assert page.PAGE.read_text("utf-8") == page.page(), "run `python -m tenderwright.notices.page`"


def test_every_code_has_a_row_and_a_heading() -> None:
    lines = page.page().splitlines()
    for code in CODES.values():
        assert f"## {code.name}" in lines
        assert f"| [{code.name}](#{code.name}) | {code.severity} | {code.title} |" in lines


def test_the_page_is_written_where_it_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(page, "PAGE", tmp_path / "page.md")
    page.main()
    assert (tmp_path / "page.md").read_text("utf-8") == page.page()
