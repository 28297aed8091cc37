"""What a closed docking says of items is of its own tender: named with it in a later one, and never of other work."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from tenderwright.documents.desk import Desk
from tenderwright.documents.parts.history import history
from tenderwright.pipeline import Compiled, compile_owner, compile_package, read
from tenderwright.pricing.growth import growth_by_kind
from tenderwright.starter.write import write_starter
from tests.documents.composed import words

ENTRY = """docking: docking-2027
yard: Corve
dock_type: graving dock
docked: 2027-05-05
undocked: 2027-06-02
tender: {tender}
findings:
  - {{ where: stern, found: "Weld open, see <item:{item}>", done: Welded. }}
renewed:
  - {{ what: plate, strake: A, from: Fr 10, to: Fr 12, how: welded, item: "{item}" }}
"""
CLOSED = """docking: docking-2027
tender: {tender}
currency: EUR
lines:
  - {{ line: 110.a, work: Plates, kind: contingent, contract: 0, changes: 500, final: 500 }}
totals: {{ contract: 0, changes: 500, final: 500 }}
"""


def _compiled(root: Path, tender: str, item: str) -> Compiled:
    write_starter(root)
    (root / "history" / "docking-2027.yaml").write_text(ENTRY.format(tender=tender, item=item), "utf-8")
    (root / "owner" / "closing" / "docking-2027.yaml").write_text(CLOSED.format(tender=tender), "utf-8")
    return compile_package(read(root))


def _printed(made: Compiled) -> str:
    return words(history(Desk(made.package, made.links, made.calculated))).replace("\n", "")


def _number(root: Path) -> str:
    return str(yaml.safe_load((root / "package.yaml").read_text("utf-8"))["tender"]["number"])


def _dead(made: Compiled) -> list[str]:
    return [notice.message for notice in made.notices if notice.code == "dead-reference"]


def test_items_of_an_earlier_tender_are_named_with_it(tmp_path: Path) -> None:
    made = _compiled(tmp_path / "s", "OLD-7", "999")
    assert _dead(made) == []
    text = _printed(made)
    assert "Weld open, see item 999 of OLD-7" in text
    assert text.count("item 999 of OLD-7") == 2


def test_a_number_that_means_other_work_now_leads_nowhere(tmp_path: Path) -> None:
    made = _compiled(tmp_path / "s", "OLD-7", "110")
    assert "item 110 of OLD-7" in _printed(made)
    assert not [use for use in made.links.uses if use.kind == "item" and use.at.path == "history/docking-2027.yaml"]


def test_items_of_this_tender_are_held_to_be_there(tmp_path: Path) -> None:
    write_starter(tmp_path / "a")
    number = _number(tmp_path / "a")
    assert _dead(_compiled(tmp_path / "s", number, "999")) == ["there is no item 999"]


@pytest.mark.parametrize(("tender", "kind"), [("OLD-7", "contingent"), ("", "definite")])
def test_growth_goes_by_the_kind_that_a_line_had_in_its_own_tender(tmp_path: Path, tender: str, kind: str) -> None:
    """Line 110.a of the old tender was contingent; item 110 of this one is definite."""
    root = tmp_path / "s"
    made = _compiled(root, tender or '""', "110")
    papers = compile_owner(read(root), made).papers
    assert [one.kind for one in growth_by_kind(made.package, papers)][:-1] == sorted({kind, *_starter_kinds(tmp_path)})


def _starter_kinds(tmp_path: Path) -> set[str]:
    root = tmp_path / "plain"
    write_starter(root)
    files = read(root)
    made = compile_package(files)
    return {one.kind for one in growth_by_kind(made.package, compile_owner(files, made).papers)} - {"all"}
