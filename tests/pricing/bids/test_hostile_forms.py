"""A corpus of hostile and clumsy forms: of none is a price misread or a word lost."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.commands.bids_read import check_text
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.reading.workbook.guard import look_through
from tenderwright.reading.workbook.refusal import Refusal
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tenderwright.writing.yaml_file import yaml_text
from tests.programs import convert

from .filled import PERCENTAGE, cells, filled, form, put_at, read, whole
from .hostile_forms import CORPUS, LINE, Hostile, _duplicate


@pytest.mark.parametrize("one", CORPUS, ids=lambda one: one.name)
def test_no_price_is_misread_and_no_word_is_lost(one: Hostile) -> None:
    bid = read(one.data()).bid
    line = bid.lines.get(LINE)
    rate = line.rate if line is not None else None
    assert rate in [Decimal(said) if said is not None else None for said in one.read_as]
    others = {n: line.rate for n, line in bid.lines.items() if n not in (LINE, "420.a", "410.a", PERCENTAGE)}
    assert set(others.values()) == {Decimal(100)}
    text = yaml_text(bid_entry(bid))
    check_text("owner/bids/corve.yaml", text, bid)
    recorded = " ".join(
        (*bid.doubts, *(one.note for one in bid.lines.values()), *(one.as_written for one in bid.lines.values()))
    )
    recorded = " ".join((recorded, *(one.text for one in bid.exclusions))).replace("\n", " ")
    assert [words for words in one.kept if words not in " ".join(recorded.split())] == []


def test_the_corpus_is_large_and_each_form_has_its_name() -> None:
    assert len({one.name for one in CORPUS}) == len(CORPUS) >= 60


def test_two_cells_of_one_address_are_refused() -> None:
    with pytest.raises(Refusal, match="has two cells of the address G16"):
        look_through("bid.xlsx", _duplicate())


def test_a_form_filled_in_honestly_leaves_no_doubt() -> None:
    assert read(filled(whole)).notices == ()


def test_an_untouched_form_leaves_no_doubt_but_that_nothing_is_said_of_the_terms() -> None:
    (doubt,) = read(price_form_workbook(form())).bid.doubts
    assert "it is not said whether the terms of the tender are accepted" in doubt


@pytest.mark.needs("soffice")
def test_a_form_saved_by_another_program_leaves_no_doubt(tmp_path: Path) -> None:
    honest = put_at("Acknowledgements", "Addendum 1", 3, "2026-03-01")
    (tmp_path / "filled.xlsx").write_bytes(filled(whole, honest))
    (tmp_path / "untouched.xlsx").write_bytes(price_form_workbook(form()))
    sources = [tmp_path / "filled.xlsx", tmp_path / "untouched.xlsx"]
    honest_saved, untouched = convert(sources, "xlsx", tmp_path / "saved", tmp_path / "profile")
    found = read(honest_saved.read_bytes())
    assert found.notices == ()
    assert {line.rate for number, line in found.bid.lines.items() if number != PERCENTAGE} == {Decimal(100)}
    assert len(read(untouched.read_bytes()).bid.doubts) == 1
    assert cells(untouched.read_bytes()).beside != ()
