"""Whole bids: random well-formed ones are read as they were meant, also after another program has saved them."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from tenderwright.commands.bids_read import check_text
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.writing.yaml_file import yaml_text
from tests.programs import convert

from .filled import PRICED, read
from .returned import ANSWERS, TREATMENTS, Answer, Treatment, returned

Answers = dict[str, tuple[Answer, str | None]]
MEANT_OTHERWISE = {"bid-incomplete", "bid-unread"}
"""What may be told of a bid that is well formed: that lines are left empty, and what its sheets are called now."""


def assert_read_as_meant(data: bytes, answers: Answers) -> None:
    found = read(data)
    assert {notice.code for notice in found.notices} <= MEANT_OTHERWISE, found.notices
    assert tuple(found.bid.lines) == PRICED
    for number, (answer, note) in answers.items():
        line = found.bid.lines[number]
        assert (line.rate, line.status) == (answer.rate, answer.read_as), number
        assert line.note == (note or ""), number
    assert (found.bid.days, found.bid.dock_days, found.bid.addenda) == (37, 28, (1, 2))
    check_text("owner/bids/corve.yaml", yaml_text(bid_entry(found.bid)), found.bid)


@given(ANSWERS, TREATMENTS)
@settings(max_examples=40)
def test_a_well_formed_bid_is_read_as_it_was_meant(answers: Answers, treatment: Treatment) -> None:
    assert_read_as_meant(returned(answers, treatment), answers)


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("office")


@pytest.mark.needs("soffice")
@given(st.lists(st.tuples(ANSWERS, TREATMENTS), min_size=3, max_size=3))
@settings(
    max_examples=2,
    phases=[Phase.explicit, Phase.reuse, Phase.generate],  # each example takes seconds, so none is made smaller
)
def test_bids_survive_being_saved_by_another_program(office: Path, bids: list[tuple[Answers, Treatment]]) -> None:
    sources = [office / f"bid-{number}.xlsx" for number in range(len(bids))]
    for source, (answers, treatment) in zip(sources, bids, strict=True):
        source.write_bytes(returned(answers, treatment))
    between = convert(sources, "ods", office / "ods", office / "profile")
    saved = convert(between, "xlsx", office / "xlsx", office / "profile")
    for one, (answers, _) in zip(saved, bids, strict=True):
        assert_read_as_meant(one.read_bytes(), answers)
