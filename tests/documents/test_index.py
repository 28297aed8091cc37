"""The index of all documents: each where it is kept, with the checksum of its file."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest

from tenderwright.documents.edition import Edition
from tenderwright.reading.filed import checksums
from tenderwright.reading.package import read_package
from tests.pipeline.packages import MARRAM, starter

from .composed import composed, rows, tables, words


@pytest.fixture(scope="module")
def index() -> Edition:
    return composed("marram").edition("owner").sheets["index"]


def _all(index: Edition) -> list[list[str]]:
    return [row for table in tables(index.parts) for row in rows(table)]


def test_each_checksum_is_that_of_the_file_that_it_stands_beside(index: Edition) -> None:
    summed = [(row[3], row[4]) for row in _all(index) if row[4]]
    assert len(summed) > 50
    for path, checksum in summed:
        assert hashlib.sha256((MARRAM / path).read_bytes()).hexdigest() == checksum, path


def test_every_kind_of_document_is_in_it(index: Edition) -> None:
    kept = {row[3]: row for row in _all(index)}
    assert kept["references/d-10.pdf"][:2] == ["D-10", "Docking plan as used, 2007"]
    assert kept["surveys/thickness-2025.csv"][1] == "Thickness readings thickness-2025"
    assert kept["history/docking-2007.yaml"][1:3] == ["Docking of 2007", "10 September 2007"]
    assert kept["photographs/2026-06-16-sea-chest-main.jpg"][:3] == ["P8", "Main sea chest", "16 June 2026"]
    assert kept["owner/photographs/2027-05-10-f-port-fr-23.jpg"][0] == "O1"
    assert kept["owner/documents/bids/corve-price-form.xlsx"][1] == "Its price form as it came back"
    assert {"yard/dock-sheet.pdf", "yard/photographs.pdf", "owner/survey-forms.pdf", "owner/brief.pdf"} <= set(kept)
    assert "held by the owner" not in kept


def test_a_document_that_is_not_in_the_package_has_its_holder_in_its_place(index: Edition) -> None:
    (row,) = [row for row in _all(index) if row[0] == "R-05"]
    assert row[3].startswith("owner, photocopy; two pages missing")
    assert row[4] == ""


def test_nothing_is_listed_twice(index: Edition) -> None:
    kept = [row[3] for row in _all(index) if row[4]]
    assert len(kept) == len(set(kept))


def test_a_small_package_says_what_there_is_none_of() -> None:
    index = composed("starter").edition("owner").sheets["index"]
    said = words(index.parts)
    assert "Photographs (0)" in said
    assert "None." in said


def test_what_is_kept_beside_the_package_is_summed_too(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    for path in ("owner/documents/letters/a.txt", "drawings/old.tif", "owner/archive/T-1/SHA256SUMS", "owner/.hidden"):
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(path.encode())
    (root / "owner/archive/T-1/package").mkdir()
    (root / "owner/archive/T-1/package/package.yaml").write_bytes(b"a: 1\n")
    found = checksums(read_package(root))
    assert found["owner/documents/letters/a.txt"] == hashlib.sha256(b"owner/documents/letters/a.txt").hexdigest()
    assert {"drawings/old.tif", "owner/archive/T-1/SHA256SUMS", "owner/rates.yaml", "package.yaml"} <= set(found)
    assert not any("hidden" in path or path.endswith("T-1/package/package.yaml") for path in found)
