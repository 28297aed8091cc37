"""`tenderwright add` writes a new file of any kind, in the package's units, and never over one that is there."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.reading.layout import YAML_FILES
from tenderwright.starter.forms import kinds
from tenderwright.starter.items import entries

from .run import Runner

METRIC = re.compile(r"as [0-9.]+ (?:mm|m|t|kg|m2|m3|bar|degC|t/m|t/m3)\b")


@pytest.fixture
def ship(run: Runner, tmp_path: Path) -> Path:
    flags = ("--name", "Kestrel Bank", "--shafts", "2", "--units", "us", "--papers", "capacity-plan")
    assert run("start", tmp_path / "ship", *flags).code == 0
    return tmp_path / "ship"


def mistakes(root: Path) -> list[str]:
    files = read(root)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    notices = [*compiled.notices, *owner.notices]
    return [f"{one.place}: {one.message}" for one in notices if one.severity == "error"]


def test_alone_it_lists_items_and_files(run: Runner) -> None:
    ran = run("add")
    assert ran.code == 0
    assert all(re.search(rf"^ +{name}\b", ran.out, re.MULTILINE) for name in (*entries(), *kinds()))


def test_no_file_of_the_format_is_without_a_form(run: Runner, ship: Path) -> None:
    assert set(YAML_FILES.values()) <= set(kinds())
    for word, path in kinds().items():
        name = ("a-name",) if "*" in path else ()
        if not (ship / path).exists():
            ran = run("add", word, *name, "--in", ship)
            assert ran.code == 0, (word, ran.err)
    assert mistakes(ship) == []
    for path in ship.rglob("*.yaml"):
        assert not METRIC.search(path.read_text("utf-8")), path


def test_items_of_the_catalogue_go_in_under_free_numbers(run: Runner, ship: Path) -> None:
    for name in ("dock-and-undock", "waste", "growth-wash"):
        assert run("add", name, "--in", ship).code == 0
    wash = next((ship / "items").glob("*-growth-wash.yaml"))
    text = wash.read_text("utf-8")
    assert "psi" in text
    assert re.search(r'^depends_on: \["1\d\d", "1\d\d"\]', text, re.MULTILINE)
    assert mistakes(ship) == []


def test_the_rates_ask_for_every_line(run: Runner, ship: Path) -> None:
    assert run("add", "dock-and-undock", "--in", ship).code == 0
    assert run("add", "rates", "--in", ship).code == 0
    text = (ship / "owner" / "rates.yaml").read_text("utf-8")
    assert re.search(r"^  1\d\d\.a: \{ rate: todo \}", text, re.MULTILINE)
    assert mistakes(ship) == []


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("particulars",), "vessel/particulars.yaml is there already"),
        (("particulars", "hers"), "takes no name"),
        (("facility",), "`facilities/*.yaml` needs a name"),
        (("facility", "North Dock"), "`North Dock` is not a name for a file"),
        (("growth-wsh",), "did you mean `growth-wash`"),
    ],
)
def test_what_cannot_be_added_is_refused(run: Runner, ship: Path, words: tuple[str, ...], said: str) -> None:
    before = {path: path.read_bytes() for path in ship.rglob("*") if path.is_file()}
    ran = run("add", *words, "--in", ship)
    assert ran.code == 2
    assert said in ran.err
    assert {path: path.read_bytes() for path in ship.rglob("*") if path.is_file()} == before


def test_every_item_of_the_catalogue_can_stand_in_one_package(run: Runner, ship: Path) -> None:
    for name in entries():
        assert run("add", name, "--in", ship).code == 0, name
    assert mistakes(ship) == []
