"""A package that fits a ship: what her papers can fill, in her units, nothing of another ship, no mistake in it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tenderwright.pipeline import Compiled, compile_owner, compile_package, compose_yard, read
from tenderwright.reading.git_state import GitState
from tenderwright.reading.layout import NEEDED
from tenderwright.starter.fitted import FASTENINGS, MATERIALS, PAPERS, Ship, fitted_files
from tenderwright.starter.write import write_fitted

OF_OTHERS = re.compile(r"Marram|Harrow Point|Sandling|Brackwater|\bHPT\b|\bBWT\b", re.IGNORECASE)
METRIC = re.compile(r"[0-9] ?(?:mm|cm|m|t|kg|m2|m3|bar|degC)\b")


def made(folder: Path, ship: Ship) -> Compiled:
    write_fitted(folder, fitted_files(ship))
    files = read(folder)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    assert [*compiled.notices, *owner.notices] == []
    return compiled


ALL = frozenset(PAPERS)
SHIPS = {
    "us, twin screw": Ship("Kestrel Bank", "steel", "welded", 2, "us", "USD", "Dunmore Flats", ALL - {"tank-bounds"}),
    "wood": Ship("Withy", "wood", "treenails", 0, "metric", "GBP", "Saltings Creek", frozenset({"drawings"})),
    "iron, nothing known": Ship(material="iron"),
    "everything": Ship("Sprat", "steel", "riveted", 3, "both", "EUR", "", ALL),
}


@pytest.mark.parametrize("name", SHIPS)
def test_it_has_todos_and_no_mistake_and_its_draft_can_be_made(name: str, tmp_path: Path) -> None:
    ship = SHIPS[name]
    compiled = made(tmp_path / "ship", ship)
    assert compiled.package.todos
    assert compiled.package.tender is not None
    assert (compiled.package.tender.currency, compiled.package.tender.units) == (ship.currency, ship.units)
    edition, _ = compose_yard(compiled, GitState("draft", why="a trial"))
    assert edition.parts


@pytest.mark.parametrize("name", SHIPS)
def test_nothing_of_another_ship_unit_or_currency_stands_in_it(name: str, tmp_path: Path) -> None:
    ship = SHIPS[name]
    write_fitted(tmp_path / "ship", fitted_files(ship))
    for path in [path for path in (tmp_path / "ship").rglob("*") if path.suffix in (".yaml", ".md")]:
        text = path.read_text("utf-8")
        assert not OF_OTHERS.search(text), path
        assert path.suffix != ".yaml" or not set(re.findall(r"\b(?:EUR|USD|GBP)\b", text)) - {ship.currency}, path
        assert ship.units != "us" or path.suffix != ".yaml" or not METRIC.search(text), path


def test_no_date_and_no_service_is_answered_beforehand(tmp_path: Path) -> None:
    tender = made(tmp_path / "ship", SHIPS["everything"]).package.tender
    assert tender is not None
    assert (tender.dates.issued, tender.dates.closing, tender.programme, tender.services) == (None, None, None, {})


def test_only_files_that_her_papers_can_fill_are_there() -> None:
    bare = set(fitted_files(Ship()))
    assert bare == {*NEEDED, "vessel/zones.yaml"}
    assert set(fitted_files(Ship(papers=frozenset({"history"})))) - bare == {"history/last-docking.yaml"}
    assert "vessel/timber.yaml" in fitted_files(SHIPS["wood"])


def test_every_material_has_its_fastenings() -> None:
    assert set(FASTENINGS) == set(MATERIALS)
