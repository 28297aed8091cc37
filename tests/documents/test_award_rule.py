"""The rule of the evaluated price says just what is counted."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.documents.award_rule import afterwards, parts_counted
from tenderwright.documents.desk import Desk
from tenderwright.documents.form import price_form
from tenderwright.pipeline import compile_package, read
from tenderwright.starter.write import write_starter
from tests.pipeline.packages import edit

_STARTER = "counts: [contingent lines, hours pool, options]"
WORDS = {
    "contingent lines": "contingent lines",
    "hours pool": "hours pool",
    "options": "the options",
    "owner's days": "cost of a day of EUR 300.00",
    "towing": "tow to the bidder's dock",
    "travel": "travel to the bidder's dock",
}


def _desk(root: Path, counts: str) -> Desk:
    write_starter(root)
    edit(root, "package.yaml", _STARTER, counts)
    compiled = compile_package(read(root))
    return Desk(compiled.package, compiled.links, compiled.calculated)


@pytest.mark.parametrize("left_out", WORDS)
def test_each_part_is_named_where_it_is_counted_and_else_said_not_to_be(tmp_path: Path, left_out: str) -> None:
    counted = [name for name in WORDS if name != left_out]
    desk = _desk(tmp_path / "p", f"counts: [{', '.join(counted)}]\n  day_cost: 300")
    parts = " ".join(parts_counted(desk))
    assert {name for name, words in WORDS.items() if words in parts} == set(counted)
    assert afterwards(desk)[0].startswith("Not counted ")
    assert parts_counted(desk)[-1].endswith("at the owner's estimate.")


def test_by_which_figure_what_is_left_out_is_priced(tmp_path: Path) -> None:
    desk = _desk(tmp_path / "p", f"{_STARTER}\n  exclusions: owner's estimate")
    assert "one other bidder" not in parts_counted(desk)[-1]
    assert "one other bidder" in parts_counted(_desk(tmp_path / "q", _STARTER))[-1]


def test_the_price_form_carries_the_same_sentences_and_counts_the_same_sections(tmp_path: Path) -> None:
    desk = _desk(tmp_path / "p", "counts: [hours pool]")
    form = price_form(desk, "")
    assert all(words in form.evaluated_rule for words in (*parts_counted(desk), *afterwards(desk)))
    assert {section.code for section in form.sections if section.in_evaluated} <= set("ABCEGH")
    assert form.day_cost is None
