"""Where two editions differ is said by file, line, part, page or byte, and nothing where they do not."""

from __future__ import annotations

import io
import zipfile

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.writing.archive import archive
from tenderwright.writing.differences import differences, first_different_byte
from tenderwright.writing.pdf import Typeset

from .test_pdf_pages import drawn


@given(st.binary(), st.binary(), st.binary())
def test_the_first_different_byte_is_the_first(same: bytes, one: bytes, other: bytes) -> None:
    a, b = same + one, same + other
    at = first_different_byte(a, b)
    assert a[:at] == b[:at]
    assert a[at : at + 1] != b[at : at + 1] or a == b


@given(st.dictionaries(st.sampled_from(["a.csv", "b.xlsx", "c.pdf", "d"]), st.binary()))
def test_what_is_the_same_has_no_difference(files: dict[str, bytes]) -> None:
    assert differences(files, dict(files)) == {}


@given(st.sampled_from(["a.csv", "b.xlsx", "c.pdf", "d", "e.html"]), st.binary(), st.binary())
def test_every_difference_is_told(path: str, one: bytes, other: bytes) -> None:
    assert bool(differences({path: one}, {path: other})) == (one != other)


@pytest.mark.parametrize(
    ("given_text", "made", "said"),
    [
        ("a\nb\nc", "a\nB\nc", "differs first in line 2: it says `b`, and the commit gives `B`"),
        ("a\nb", "a\nb\nc", "ends with line 2, and what the commit gives does not"),
        ("a\nb\nc", "a\nb", "goes on after line 2, and what the commit gives does not"),
        ("a\r\n", "a\n", r"differs first in line 1: it says `a\r`, and the commit gives `a`"),
        ("\x1b[2J", "x", r"differs first in line 1: it says `\x1b[2J`, and the commit gives `x`"),
        (
            "x" * 100 + "1" + "y" * 100,
            "x" * 100 + "2" + "y" * 100,
            f"differs first in line 1: it says `…{'x' * 24}1{'y' * 39}…`, "
            f"and the commit gives `…{'x' * 24}2{'y' * 39}…`",
        ),
    ],
)
def test_texts_differ_in_a_line(given_text: str, made: str, said: str) -> None:
    for path in ("q.csv", "drawings/plan.svg"):
        assert differences({path: given_text.encode()}, {path: made.encode()}) == {path: [said]}


def test_a_text_that_is_none_differs_at_a_byte() -> None:
    assert differences({"q.csv": b"ab\xff"}, {"q.csv": b"abc"}) == {"q.csv": ["differs first at byte 2"]}


def test_files_that_only_one_holds() -> None:
    assert differences({"a": b"", "b": b""}, {"b": b"", "c": b""}) == {
        "a": ["is not among the files that the commit gives"],
        "c": ["is missing"],
    }


def test_a_damaged_file_is_told() -> None:
    assert differences({"a.pdf": None}, {"a.pdf": b""}) == {"a.pdf": ["is damaged and cannot be unpacked"]}


def test_workbooks_differ_in_a_part() -> None:
    one = archive({"xl/a.xml": b"<a>1</a>", "xl/b.bin": b"1", "c.xml": b""})
    other = archive({"xl/a.xml": b"<a>2</a>", "xl/b.bin": b"2", "d.xml": b""})
    assert differences({"f.xlsx": one}, {"f.xlsx": other}) == {
        "f.xlsx": [
            "part c.xml is not among the files that the commit gives",
            "part d.xml is missing",
            "part xl/a.xml differs first in line 1: it says `<a>1</a>`, and the commit gives `<a>2</a>`",
            "part xl/b.bin differs first at byte 0",
        ]
    }


def test_workbooks_packed_otherwise_are_told() -> None:
    other = io.BytesIO()
    with zipfile.ZipFile(other, "w", zipfile.ZIP_STORED) as packed:
        packed.writestr("a.xml", "a" * 99)
    (said,) = differences({"f.xlsx": other.getvalue()}, {"f.xlsx": archive({"a.xml": b"a" * 99})})["f.xlsx"]
    assert said.startswith("holds the same parts and is packed otherwise, first at byte ")


def test_a_workbook_that_cannot_be_unpacked_is_told() -> None:
    (said,) = differences({"f.xlsx": b"PK\3\4"}, {"f.xlsx": archive({"a.xml": b""})})["f.xlsx"]
    assert (
        said
        == "differs first at byte 4; it cannot be looked into: it is not a zip archive, or its directory is damaged"
    )


def test_a_pdf_differs_on_a_page(typeset: Typeset) -> None:
    at = next(start for page, start in drawn(typeset.pdf) if page == 4) + 80
    spoilt = bytearray(typeset.pdf)
    spoilt[at] ^= 1
    assert differences({"s.pdf": bytes(spoilt)}, {"s.pdf": typeset.pdf}) == {
        "s.pdf": [f"differs first at byte {at}, which belongs to page 4"]
    }
    longer = differences({"s.pdf": typeset.pdf + b"\n"}, {"s.pdf": typeset.pdf})["s.pdf"]
    assert longer == [
        f"differs first at byte {len(typeset.pdf)}, which belongs to no page by itself, but to fonts, structure or data"
    ]
