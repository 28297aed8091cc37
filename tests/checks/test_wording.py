"""Notices of the trade checks are worded alike: lowercase, no full stop, the cure in the hint."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tenderwright.notices import Notice
from tests.fixtures.overlay import cases, lay_over_starter, notices_of


@cache
def _notices() -> tuple[Notice, ...]:
    found: list[Notice] = []
    for case in cases("checks", "negative"):
        with TemporaryDirectory() as folder:
            found += notices_of(lay_over_starter(case, Path(folder)))
    return tuple(found)


def test_every_notice_keeps_the_house_style() -> None:
    notices = _notices()
    assert len(notices) > 40
    for notice in notices:
        assert not notice.message.endswith("."), notice
        assert notice.message[0].islower() or notice.message[0] in "`0123456789", notice
        assert "illegal" not in notice.message, notice
        assert "please" not in " ".join(notice.hints).lower(), notice


def test_every_notice_has_a_cure() -> None:
    for notice in _notices():
        assert notice.hints, notice
        assert all(hint[0].islower() or hint[0] == "`" for hint in notice.hints), notice


@pytest.mark.parametrize("word", ["add ", "let it depend", "make it"])
def test_the_cure_stands_only_in_the_hint(word: str) -> None:
    assert not [notice for notice in _notices() if word in notice.message]
