"""Whole bids: random well-formed ones are read as they were meant, also after another program has saved them."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from tenderwright.commands.bids_read import check_text
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.writing.yaml_file import yaml_text

from .filled import PRICED, read
from .returned import ANSWERS, TREATMENTS, Answer, Treatment, returned

Answers = dict[str, tuple[Answer, str | None]]
MEANT_OTHERWISE = {"bid-incomplete"}
"""What may be told of a bid that is well formed: that lines are left empty."""


def assert_read_as_meant(data: bytes, answers: Answers) -> None:
    found = read(data)
    assert {notice.code for notice in found.notices} <= MEANT_OTHERWISE, found.notices
    assert tuple(found.bid.lines) == PRICED
    for number, (answer, note) in answers.items():
        line = found.bid.lines[number]
        assert (line.rate, line.status) == (answer.rate, answer.read_as), number
        assert line.note == (note or ""), number
    empty = [number for number, (answer, _) in answers.items() if answer.read_as == "empty"]
    assert len(found.bid.doubts) == (1 if empty else 0)
    assert (found.bid.days, found.bid.dock_days, found.bid.addenda) == (37, 28, (1, 2))
    check_text("owner/bids/corve.yaml", yaml_text(bid_entry(found.bid)), found.bid)


@given(ANSWERS, TREATMENTS)
@settings(max_examples=40, deadline=None)
def test_a_well_formed_bid_is_read_as_it_was_meant(answers: Answers, treatment: Treatment) -> None:
    assert_read_as_meant(returned(answers, treatment), answers)


needs_office = pytest.mark.skipif(shutil.which("soffice") is None, reason="LibreOffice is not installed")


def _convert(folder: Path, source: Path, kind: str) -> Path:
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = ["soffice", profile, "--headless", "--convert-to", kind, "--outdir", str(folder / kind), str(source)]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    return folder / kind / f"{source.stem}.{kind}"


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("office")


@needs_office
@given(ANSWERS, TREATMENTS)
@settings(
    max_examples=4,
    deadline=None,
    phases=[Phase.explicit, Phase.reuse, Phase.generate],  # each example takes seconds, so none is made smaller
    suppress_health_check=[HealthCheck.too_slow],
)
def test_a_bid_survives_being_saved_by_another_program(office: Path, answers: Answers, treatment: Treatment) -> None:
    source = office / "bid.xlsx"
    source.write_bytes(returned(answers, treatment))
    saved = _convert(office, _convert(office, source, "ods"), "xlsx")
    assert_read_as_meant(saved.read_bytes(), answers)
