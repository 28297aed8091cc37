"""The files of a comparison: PDF, page, figures and drawing, each in the manifest."""

from __future__ import annotations

import csv
import io
import json

import pytest

from tenderwright.documents.bid_report import bid_report
from tenderwright.documents.edition import Stamp
from tenderwright.writing.bid_files import bid_files
from tenderwright.writing.edition_files import Written
from tenderwright.writing.pdf import Typesetter
from tests.fixtures.returned_bids import compared_bids

TIME = 1_828_500_000


def made() -> Written:
    report = bid_report(*compared_bids(), Stamp("no-git", "DRAFT: compiled outside git"))
    return bid_files(report, "45e349fc8b8b1f54", Typesetter(), TIME)


@pytest.fixture(scope="module")
def written() -> Written:
    return made()


def test_every_file_is_there_and_in_the_manifest(written: Written) -> None:
    names = {"bids.pdf", "bids.html", "bids-lines.csv", "bids-evaluated.csv", "drawings/bid-sensitivity.svg"}
    assert set(written.files) == names | {"manifest.json"}
    manifest = json.loads(written.files["manifest.json"])
    assert {one["path"] for one in manifest["files"]} == names
    assert (manifest["confidential"], manifest["edition"]) == (True, "bids")
    assert written.uncovered == ""


def test_the_tables_are_read_back(written: Written) -> None:
    _, found = compared_bids()
    rows = list(csv.DictReader(io.StringIO(written.files["bids-evaluated.csv"].decode())))
    totals = {row["bid"]: row["amount"] for row in rows if row["what"] == "As published"}
    assert totals == {bid.name: f"{bid.total:f}" for bid in found.bids}
    lines = list(csv.DictReader(io.StringIO(written.files["bids-lines.csv"].decode())))
    assert {row["status"] for row in lines} == {"priced", "zero", "included", "no bid", "empty"}


def test_the_same_bids_give_the_same_bytes(written: Written) -> None:
    assert made().files == written.files
