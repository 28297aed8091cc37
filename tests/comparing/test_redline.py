"""Prose is compared word by word."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.comparing.redline import editorial, redline

prose = st.lists(st.sampled_from(["wash", "the", "shell", "at", "200", "bar", "\n", "twice,"]), max_size=12).map(
    " ".join
)


def side(old: str, new: str, gone: str) -> list[str]:
    return " ".join(run.text for run in redline(old, new) if run.state != gone).split()


@given(prose, prose)
def test_what_is_kept_and_deleted_is_the_old_text_and_what_is_kept_and_inserted_the_new(old: str, new: str) -> None:
    assert side(old, new, "inserted") == old.split()
    assert side(old, new, "deleted") == new.split()


def test_only_the_words_that_changed_are_marked() -> None:
    runs = redline("Wash the shell at 200 bar and dry it.", "Wash the shell at 250 bar, then dry it.")
    assert [(run.state, run.text) for run in runs] == [
        ("kept", "Wash the shell at"),
        ("deleted", "200 bar and"),
        ("inserted", "250 bar, then"),
        ("kept", "dry it."),
    ]


def test_a_text_written_anew_is_replaced_whole() -> None:
    runs = redline("Blast to Sa 2.", "Wash the shell with fresh water and let it dry for one day.")
    assert [run.state for run in runs] == ["deleted", "inserted"]


@pytest.mark.parametrize(
    ("old", "new", "same"),
    [
        ("Wash, then dry.", "Wash; then  dry", True),
        ("Dry (24 h)", "Dry, 24 h", True),
        ("1.5 m", "15 m", False),
        ("-5 °C", "5 °C", False),
        ("5 m", "5 M", False),
        ("at most 5", "at least 5", False),
        ("< 5 mm", "> 5 mm", False),
        ("re-sign", "resign", False),
    ],
)
def test_spacing_and_punctuation_are_editorial_and_nothing_else_is(old: str, new: str, same: bool) -> None:
    assert editorial(old, new) is same
