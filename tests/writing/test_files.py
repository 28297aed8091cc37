"""CSV, JSON, manifest and archive."""

from __future__ import annotations

import csv
import hashlib
import io
import json
import zipfile
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

import tenderwright
from tenderwright.writing.archive import archive, parcel_name
from tenderwright.writing.csv_table import csv_table
from tenderwright.writing.json_file import Json, canonical_json
from tenderwright.writing.manifest import manifest

from .sample import sample_edition


def test_csv_is_quoted_and_ended_as_rfc_4180_says() -> None:
    table = csv_table(("Line", "Words"), [("420.a", 'say "so", twice\nover'), ("420.b", "µm")])
    assert table == 'Line,Words\r\n420.a,"say ""so"", twice\nover"\r\n420.b,µm\r\n'.encode()


def test_csv_formulas_become_text_and_numbers_stay_numbers() -> None:
    row: tuple[str | int | Decimal | None, ...] = (
        "=1+1",
        "+cmd",
        "-x",
        "@A1",
        "\t=1",
        " =1",
        "-3.25",
        Decimal("-1E+2"),
        7,
        None,
    )
    (_, read) = csv.reader(io.StringIO(csv_table([""] * len(row), [row]).decode(), newline=""))
    assert read == ["'=1+1", "'+cmd", "'-x", "'@A1", "'\t=1", "' =1", "-3.25", "-100", "7", ""]


@given(st.lists(st.lists(st.text(st.characters(exclude_characters="\0", codec="utf-8")), min_size=2, max_size=2)))
def test_csv_reads_back_and_holds_no_formula(rows: list[list[str]]) -> None:
    read = list(csv.reader(io.StringIO(csv_table(("a", "b"), rows).decode(), newline="")))[1:]
    assert [[cell.removeprefix("'") for cell in row] for row in read] == [
        [cell.removeprefix("'") for cell in row] for row in rows
    ]
    for cell in (cell for row in read for cell in row):
        assert not cell.startswith(("=", "@", "\t", "\r"))


def test_csv_rows_must_fit_the_header() -> None:
    with pytest.raises(ValueError, match="row 2 has 1 cells"):
        csv_table(("a", "b"), [("1", "2"), ("3",)])


def test_json_is_canonical() -> None:
    data: dict[str, Json] = {"b": [Decimal("1.50"), date(2026, 2, 2)], "a": "µ"}
    expected = '{\n  "a": "µ",\n  "b": [\n    "1.50",\n    "2026-02-02"\n  ]\n}\n'
    assert canonical_json(data) == expected.encode()
    assert canonical_json(dict(reversed(data.items()))) == expected.encode()
    with pytest.raises(ValueError, match="not JSON compliant"):
        canonical_json(float("nan"))
    with pytest.raises(TypeError, match="complex"):
        canonical_json(1j)  # type: ignore[arg-type]


def test_manifest_lists_every_file_with_its_checksum() -> None:
    files = {"b.pdf": b"pdf", "a.html": b"html"}
    read = json.loads(manifest(sample_edition(0), files, "abc"))
    assert [entry["path"] for entry in read["files"]] == ["a.html", "b.pdf"]
    assert read["files"][1] == {"path": "b.pdf", "size": 3, "sha256": hashlib.sha256(b"pdf").hexdigest()}
    assert (read["tender"], read["commit"], read["state"], read["edition_hash"]) == (
        "HP-2026-01",
        "1a2b3c4",
        "issued",
        "abc",
    )
    assert read["compiler"] == tenderwright.__version__
    with pytest.raises(ValueError, match="itself"):
        manifest(sample_edition(0), {"manifest.json": b""})


def test_archive_depends_on_names_and_contents_only() -> None:
    files = {"b/c.txt": b"c" * 1000, "a.txt": b"a"}
    packed = archive(files, "HP-2026-01")
    assert packed == archive(dict(reversed(files.items())), "HP-2026-01")
    with zipfile.ZipFile(io.BytesIO(packed)) as opened:
        assert opened.namelist() == ["HP-2026-01/a.txt", "HP-2026-01/b/c.txt"]
        assert opened.read("HP-2026-01/b/c.txt") == files["b/c.txt"]
        assert opened.testzip() is None
        for member in opened.infolist():
            assert member.date_time == (1980, 1, 1, 0, 0, 0)
            assert member.external_attr >> 16 == 0o100644


@pytest.mark.parametrize(
    ("tender", "name"),
    [
        ("HPT-2027-01", "HPT-2027-01-yard"),
        ("2028/07 (A)", "2028-07-A-yard"),
        ("$(touch x); ../..", "touch-x-yard"),
        ("–", "tender-yard"),
    ],
)
def test_a_parcel_has_a_plain_name_whatever_the_tender_is_called(tender: str, name: str) -> None:
    assert parcel_name(tender, "yard") == name
