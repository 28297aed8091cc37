"""What is asked: one page, its quantities those of the lines, and what cannot be told said in its place."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.calculations.ship.dock_demands import dock_demands, docked_drafts
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.documents.edition import Facts, each_block, plain
from tenderwright.documents.links_within import links_within
from tenderwright.quantities.display import shown_unit
from tenderwright.writing.pdf import Typesetter
from tests.documents.composed import Composed, changed, compiled, composed, part, rows, tables

PACKAGES = Path(__file__).parents[1] / "packages"


def facts(one: Composed) -> dict[str, str]:
    found = [block for block in each_block(part(one.edition("yard"), "asked").blocks) if isinstance(block, Facts)]
    return {term: plain(text) for block in found for term, text in block.pairs}


@pytest.mark.parametrize("name", ["marram", "starter", "kestrel-bank", "withy"])
def test_it_is_one_page(name: str) -> None:
    one = (
        compiled(PACKAGES / name)
        if (PACKAGES / name).exists()
        else composed("marram" if name == "marram" else "starter")
    )
    edition = one.edition("yard")
    alone = replace(edition, parts=links_within((part(edition, "asked"),)), sheets={})
    assert Typesetter().typeset(alone, 0).page_count == 1


def test_quantities_of_an_item_are_those_of_its_lines_added_up() -> None:
    edition, form = composed("marram").yard
    shown = {row[0]: row[2:] for table in tables(part(edition, "asked")) for row in rows(table) if len(row) == 4}
    lines = [line for section in form.sections for line in section.lines]
    assert set(shown) == {line.item for line in lines}
    sums: dict[tuple[str, bool, str], Decimal] = defaultdict(Decimal)
    for section in form.sections:
        for line in section.lines:
            if line.kind in ("rate", "hours", "credit") and line.unit != "d":
                sums[line.item, section.in_base, line.unit] += line.quantity
    for (item, sure, unit), total in sums.items():
        cell = shown[item][0 if sure else 1].replace("\N{NO-BREAK SPACE}", " ")
        assert f"{total.normalize():,f} {shown_unit(unit)}".replace(",", " ") in cell.split(", "), item
    assert shown["310"] == ["1\N{NO-BREAK SPACE}450\N{NO-BREAK SPACE}kg", "770\N{NO-BREAK SPACE}kg"]
    assert shown["110"][0].startswith("sum, 27\N{NO-BREAK SPACE}+")
    assert shown["165"][1] == "mark-up, 700\N{NO-BREAK SPACE}h"


def test_the_dock_is_asked_for_her_drafts_with_the_clearances() -> None:
    one = composed("marram")
    found = {limit.name: limit.demand for limit in one.found(dock_demands)}
    drafts, afloat = one.found(docked_drafts), one.found(docking)
    plan = one.compiled.package.docking_plan
    assert plan is not None
    assert plan.under_keel is not None
    assert plan.over_sill is not None
    assert found["water over the blocks"] == pytest.approx(drafts.over_blocks + plan.under_keel.value.si)
    assert found["water over the sill"] == pytest.approx(drafts.over_sill + plan.over_sill.value.si)
    assert found["lift"] == afloat.loading.mass
    assert drafts.aft == pytest.approx(afloat.hydrostatics.draft_aft, abs=1e-6)
    assert facts(one)["Water over the blocks"].startswith("3.79 ± 0.04 m, blocks ")


def test_what_is_contingent_says_where_it_is_decided_and_what_is_returned_to_whom() -> None:
    said = facts(composed("marram"))
    assert said["Provisional sum"].endswith("item 930")
    assert said["Options"].endswith("items 810, 820, 830")
    assert said["By"].startswith("22 February 2027")
    assert "2 addenda acknowledged" in said["What"]
    assert said["Whom to ask"].startswith("Ship manager")


def test_what_cannot_be_told_says_what_it_takes() -> None:
    without = changed(lambda root: (root / "vessel" / "lightship.yaml").unlink())
    said = facts(without)
    assert said["Dock"] == said["Weight and drafts"] == "Not calculated: it needs the account of her weights."
