"""Words inside a text value are found where they stand in the file."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading.source import Source, whole_words
from tenderwright.reading.yaml_file import read_yaml

TEXT = """\
plain: before <item:420>
block: |
  é see <item:420>, <item:42> and

    <item:420>; `<tank:x>`
folded: >-
  one
  two <item:420>
flow: [<item:42>, "é <item:420>", 'it''s <item:420>']
last: <item:420>
"""


@pytest.fixture(scope="module")
def source() -> Source:
    read, notices = read_yaml("f.yaml", TEXT)
    assert notices == []
    return read


@pytest.mark.parametrize(
    ("at", "words", "nth", "line", "column"),
    [
        (("plain",), "item:420", 0, 1, 16),
        (("block",), "item:420", 0, 3, 10),
        (("block",), "item:42", 0, 3, 22),  # not the beginning of item:420
        (("block",), "item:420", 1, 5, 6),
        (("folded",), "item:420", 0, 8, 8),
        (("flow", 0), "item:42", 0, 9, 9),
        (("flow", 1), "item:420", 0, 9, 23),
        (("flow", 2), "item:420", 0, 9, 43),
        (("last",), "item:420", 0, 10, 8),
    ],
)
def test_words_are_found_inside_their_own_value(
    source: Source, at: tuple[str | int, ...], words: str, nth: int, line: int, column: int
) -> None:
    place = source.find_in(at, words, nth)
    assert (place.line, place.column, place.end_column) == (line, column, column + len(words))


@pytest.mark.parametrize("words", ["item:9", "tank:xy"])
def test_what_is_not_there_is_placed_at_the_value(source: Source, words: str) -> None:
    assert source.find_in(("block",), words) == source.place(("block",))
    assert source.find_in(("block",), "item:420", 7) == source.place(("block",))


def test_a_name_that_goes_on_after_a_point_is_another_name() -> None:
    text = "t: <value:zone.a.area>, <value:zone.a>. Then value:zone.a.\n"
    source, _ = read_yaml("f.yaml", text)
    assert [source.find_in(("t",), "value:zone.a", n).column for n in range(2)] == [26, 46]


@given(st.text(alphabet=st.characters(codec="utf-8", exclude_characters="\r"), max_size=60), st.data())
def test_an_offset_becomes_a_line_and_a_column(text: str, data: st.DataObject) -> None:
    offset = data.draw(st.integers(0, len(text)))
    place = Source("f", text).place_of(offset, 3)
    before = text[:offset].split("\n")
    assert (place.line, place.column, place.end_column) == (len(before), len(before[-1]) + 1, len(before[-1]) + 4)


@given(
    st.lists(
        st.sampled_from(["item:4", "item:42", "item:42.a", "item:42-b", "<item:42>", "x", ".", " ", "`"]), max_size=9
    )
)
def test_whole_words_are_those_that_a_pattern_finds(pieces: list[str]) -> None:
    text = "".join(pieces)
    pattern = r"(?<![\w-])item:42(?![\w-]|\.[\w-])"
    assert list(whole_words(text, "item:42")) == [match.start() for match in re.finditer(pattern, text)]
