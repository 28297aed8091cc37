from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading.source import Path
from tenderwright.reading.yaml_file import MAX_DEPTH, read_yaml

from . import emit


@given(emit.documents)
def test_what_is_written_in_lines_reads_back(data: dict[str, Any]) -> None:
    source, notices = read_yaml("f.yaml", emit.block(data))
    assert source.data == data
    assert notices == []


@given(emit.documents)
def test_what_is_written_on_one_line_reads_back(data: dict[str, Any]) -> None:
    source, notices = read_yaml("f.yaml", emit.flow(data))
    assert source.data == data
    assert notices == []


@given(st.text(alphabet=st.characters(codec="utf-8")) | st.text(alphabet="ab:-[]{}&*!|>'\"%#?,@` \t\n\\1.<"))
def test_any_text_is_read_or_gives_a_notice_inside_the_file(text: str) -> None:
    source, notices = read_yaml("f.yaml", text)
    if source.data is None and () not in source.values:
        assert notices
    lines = text.count("\n") + sum(map(text.count, "\r\x85\u2028\u2029")) + 1
    for notice in notices:
        assert notice.place.path == "f.yaml"
        assert 1 <= notice.place.line <= lines
        assert notice.place.column >= 1


@given(emit.documents)
def test_every_key_and_value_has_its_place(data: dict[str, Any]) -> None:
    text = emit.block(data)
    source, _ = read_yaml("f.yaml", text)
    lines = text.split("\n")

    def visit(value: Any, at: Path) -> None:
        place = source.place(at)
        written = lines[place.line - 1][place.column - 1 :]
        if isinstance(value, dict):
            for key, below in value.items():
                where = source.key_place((*at, key))
                assert lines[where.line - 1][where.column - 1 : where.end_column - 1] == key
                visit(below, (*at, key))
        elif isinstance(value, list):
            for index, below in enumerate(value):
                visit(below, (*at, index))
        else:
            assert written == emit.flow(value)
            assert lines[place.line - 1][place.column - 1 : place.end_column - 1] == emit.flow(value)

    visit(data, ())


PLACES = """\
# é before
top:
  - name: é x
    text: |
      see <item:420> and
      <item:42>
    flow: {a: 'q: r', b: [1, 22]}
    empty:
"""


@pytest.mark.parametrize(
    ("at", "line", "column", "end"),
    [
        ((), 2, 1, 1),
        (("top",), 3, 3, 3),
        (("top", 0), 3, 5, 5),
        (("top", 0, "name"), 3, 11, 14),
        (("top", 0, "text"), 4, 11, 12),
        (("top", 0, "flow", "a"), 7, 15, 21),
        (("top", 0, "flow", "b", 1), 7, 30, 32),
        (("top", 0, "empty"), 8, 11, 11),
    ],
)
def test_places_of_values(at: Path, line: int, column: int, end: int) -> None:
    place = read_yaml("f.yaml", PLACES)[0].place(at)
    assert (place.line, place.column, place.end_column) == (line, column, end)


@pytest.mark.parametrize(
    ("at", "line", "column", "end"),
    [
        (("top",), 2, 1, 4),
        (("top", 0, "text"), 4, 5, 9),
        (("top", 0, "flow", "b"), 7, 23, 24),
        (("top", 0), 3, 5, 5),  # an entry of a list has no key
        (("top", 0, "absent"), 3, 5, 5),  # what is not there lies in what would hold it
    ],
)
def test_places_of_keys(at: Path, line: int, column: int, end: int) -> None:
    place = read_yaml("f.yaml", PLACES)[0].key_place(at)
    assert (place.line, place.column, place.end_column) == (line, column, end)


NOTICES = [
    ("yaml-syntax", "a: b: c\n", 1, 5, "put the text in quotes, or on lines"),
    ("yaml-syntax", "a:\n\tb: 1\n", 2, 1, "use spaces"),
    ("yaml-syntax", "a: @x\n", 1, 4, "put the text in quotes"),
    ("yaml-syntax", "a: 1\nb\nc: 2\n", 2, 1, "write a colon and a space"),
    ("yaml-syntax", "a: 1\nb\n", 2, 1, "write a colon and a space"),
    ("yaml-syntax", "é: 'x\n", 1, 4, "close it"),
    ("yaml-syntax", "a: [1, 2\n", 1, 4, "write `]` at its end"),
    ("yaml-syntax", "- 1\n- [\n\n", 2, 4, "close the bracket"),
    ("yaml-syntax", "a: é\x07\n", 1, 5, "delete the character"),
    ("duplicate-key", "é: 1\nb: 2\né: 3\n", 3, 1, "keep one of the two"),
    ("duplicate-key", "x: {a: 1, é: {}, a: 2}\n", 1, 18, "keep one of the two"),
    ("yaml-feature", "a: &x 1\n", 1, 4, "write the value out"),
    ("yaml-feature", "a: *x\n", 1, 4, "write the value out"),
    ("yaml-feature", "*x : 1\n", 1, 1, "write the value out"),
    ("yaml-feature", "a: !!str 3\n", 1, 4, "leave it out"),
    ("yaml-feature", "a: !x {b: 1}\n", 1, 4, "leave it out"),
    ("yaml-feature", "é: {<<: {a: 1}}\n", 1, 5, "write the keys out"),
    ("yaml-feature", "a: 1\n---\nb: 2\n", 2, 1, "delete the line"),
    ("yaml-feature", "? [a, b]\n: 1\n", 1, 3, None),
    ("lost-comment", "a: note #4 of\n", 1, 9, "put the whole text in quotes"),
    ("lost-comment", "é: ü #4\n", 1, 6, "put the whole text in quotes"),
    ("lost-comment", "- {b: c #4\n }\n", 1, 9, "put the whole text in quotes"),
]


@pytest.mark.parametrize(("code", "text", "line", "column", "hint"), NOTICES)
def test_each_mistake_gives_one_notice_at_its_place(
    code: str, text: str, line: int, column: int, hint: str | None
) -> None:
    _, (notice,) = read_yaml("f.yaml", text)
    assert (notice.code, notice.place.line, notice.place.column) == (code, line, column)
    if hint is None:
        assert notice.hints == ()
    else:
        assert notice.hints[0].startswith(hint)


def test_a_duplicate_key_shows_both_lines() -> None:
    source, (notice,) = read_yaml("f.yaml", "a: 1\nb: 2\na: 3\n")
    assert [str(note.place) for note in notice.notes] == ["f.yaml:1:1"]
    assert source.data == {"a": 1, "b": 2}


@pytest.mark.parametrize("text", ["a: b # 4", "a: b # note", "a: 'b #4'", "a: b#4", "a: |\n  b #4\n", "# 4\na: b #"])
def test_a_comment_or_a_number_in_quotes_is_not_a_lost_number(text: str) -> None:
    assert read_yaml("f.yaml", text)[1] == []


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? "])
def test_depth_is_limited_and_the_place_is_where_the_limit_is_passed(opening: str) -> None:
    deep = MAX_DEPTH + 400
    source, notices = read_yaml("f.yaml", opening * deep + "1" + {"[": "]", "{a: ": "}"}.get(opening, "") * deep)
    assert source.data is None
    assert "too-deep" in {notice.code for notice in notices}


def test_as_deep_as_the_limit_is_well() -> None:
    source, notices = read_yaml("f.yaml", "[" * MAX_DEPTH + "]" * MAX_DEPTH)
    assert source.data is not None
    assert notices == []


@pytest.mark.parametrize("text", ["", "\n", "# only a comment\n"])
def test_an_empty_file_holds_nothing_and_is_placed_at_its_beginning(text: str) -> None:
    source, notices = read_yaml("f.yaml", text)
    assert source.data is None
    assert notices == []
    assert source.place(()).line == 1
