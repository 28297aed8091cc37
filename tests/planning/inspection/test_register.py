"""The register of openings has a row for all that is opened or taken out, and for every opening that is to be seen."""

from __future__ import annotations

from tenderwright.planning.inspection.register import register_of
from tests.documents.composed import composed
from tests.replacing import replace


def test_every_opening_has_its_row_plugs_first() -> None:
    package = composed("marram").compiled.package
    rows = [row for row in register_of(package) if row.kind == "opening"]
    assert {row.name for row in rows} == {one.opening for one in package.openings}
    plugs = [one.opening for one in package.openings if one.kind == "docking plug"]
    assert [row.name for row in rows[: len(plugs)]] == plugs
    assert all([item.number for item in row.opened_by] == ["125"] for row in rows[: len(plugs)])


def test_holes_manholes_anodes_and_blocks_come_from_the_items_and_the_docking_plan() -> None:
    package = composed("marram").compiled.package
    by_kind: dict[str, list[str]] = {}
    for row in register_of(package):
        by_kind.setdefault(row.kind, []).append(row.name)
    assert by_kind["shell"] == ["220", "310", "315", "335"]
    assert "forepeak" in by_kind["tank"]
    assert by_kind["anodes"] == ["640"]
    assert package.docking_plan is not None
    assert by_kind["block"] == [position.text for position in package.docking_plan.taken_out]


def test_an_opening_that_no_item_opens_is_still_to_be_seen_shut() -> None:
    package = composed("marram").compiled.package
    without = replace(package, items=tuple(item for item in package.items if item.number != "125"))
    plug = next(row for row in register_of(without) if row.name == "plug-forepeak")
    assert not plug.opened
    assert len(register_of(without)) == len(register_of(package))
