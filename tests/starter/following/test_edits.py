"""A file is changed in its text: what is asked again is `todo` to the reader, and all else stays as written."""

from __future__ import annotations

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading.source import Path, Source
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.starter.following.edits import Edits
from tenderwright.writing.yaml_file import yaml_text

TEXT = """\
# of the tender
tender:
  number: T-1 # the owner's
  title: "Docking, 2027: the hull"
scope: |
  Two lines,
  kept as they are.

# told in words
words: >-
  One line
  in two.
lines:
- { line: a, where: "here, in 2027", quantity: 12 m }
- line: b
  where: there
addenda:
- number: 1
  summary: |
    One.

dates: {closing: 2027-02-22}
"""


def edits(text: str = TEXT) -> Edits:
    return Edits(read_yaml("one.yaml", text)[0], "T-1")


def again(text: str) -> Source:
    source, notices = read_yaml("one.yaml", text)
    assert notices == []
    return source


@pytest.mark.parametrize(
    ("at", "written"),
    [
        (("tender", "number"), "  number: todo (T-1 had T-1) # the owner's\n"),
        (("tender", "title"), "  title: |-\n    todo, T-1 had:\n\n    Docking, 2027: the hull\n"),
        (("scope",), "scope: |-\n  todo, T-1 had:\n\n  Two lines,\n  kept as they are.\n\n# told"),
        (("words",), "words: todo (T-1 had One line in two.)\nlines:\n"),
        (("lines", 0, "where"), "- { line: a, where: todo, quantity: 12 m }\n"),
        (("lines", 0, "quantity"), "quantity: todo (T-1 had 12 m) }\n"),
        (("lines", 1, "where"), "  where: todo (T-1 had there)\naddenda:\n"),
        (("dates", "closing"), "{closing: todo (T-1 had 2027-02-22)}\n"),
    ],
)
def test_what_is_asked_is_todo_and_tells_what_stood_there(at: Path, written: str) -> None:
    changed = edits()
    changed.ask(at)
    assert written in changed.text
    assert again(changed.text).todos == (at,)


def test_a_reason_stands_before_what_stood_there() -> None:
    changed = edits()
    changed.ask(("scope",), "done before; say what is wanted.\nIt said")
    assert "  todo, done before; say what is wanted.\n  It said:\n\n  Two lines,\n" in changed.text
    assert again(changed.text).todos == (("scope",),)


def test_a_key_goes_with_all_below_it() -> None:
    changed = edits()
    changed.drop(("addenda",))
    assert "  where: there\ndates:" in changed.text
    assert "addenda" not in again(changed.text).data


def test_an_entry_goes_and_the_others_stay() -> None:
    changed = edits()
    changed.drop(("lines", 0))
    changed.ask(("lines", 1, "where"))
    assert again(changed.text).data["lines"] == [{"line": "b", "where": "todo (T-1 had there)"}]
    assert "lines:\n- line: b\n" in changed.text


def test_what_is_not_there_is_not_changed() -> None:
    changed = edits()
    changed.put(("tender", "subtitle"), "none")
    changed.ask(("damages", "a_day"))
    changed.drop(("sections",))
    assert changed.text == TEXT


def test_another_value_is_put_and_the_comment_stays() -> None:
    changed = edits()
    changed.put(("tender", "number"), "T: 2")
    assert '  number: "T: 2" # the owner\'s\n' in changed.text
    assert changed.touched(("tender", "number"))
    assert not changed.touched(("tender", "title"))


WORDS = st.text(string.ascii_letters + string.digits + " ,.:;#'\"-{}[]()&*!|>%@`äß\n", min_size=1, max_size=200)


@given(st.lists(WORDS, min_size=1, max_size=4), st.data())
def test_whatever_stood_there_the_others_are_read_as_before(values: list[str], data: st.DataObject) -> None:
    text = yaml_text({"one": {f"k{number}": value for number, value in enumerate(values)}, "many": values})
    source = read_yaml("one.yaml", text)[0]
    chosen = data.draw(st.sampled_from(sorted(source.ends, key=str)))
    changed = Edits(source, "T-1")
    changed.ask(chosen)
    after = again(changed.text)
    assert after.todos == (chosen,)
    for at in source.ends:
        if at != chosen:
            assert _at(after, at) == _at(source, at)


def _at(source: Source, at: Path) -> object:
    value = source.data
    for key in at:
        value = value[key]
    return value
