"""Withy, a smack of wood without machinery: her package is sound, and her tender goes from issue to close."""

from __future__ import annotations

import csv
import io
import re
import shutil
from functools import cache
from itertools import combinations
from pathlib import Path

import openpyxl
import pytest
import yaml

from tenderwright.calculations.ship.block_places import keel_blocks
from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.calculations.ship.survey_readings import survey_readings
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import NotAsked
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Figure
from tenderwright.documents.form import price_form
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.commands.run import Runner
from tests.documents.composed import Composed, words
from tests.documents.drawings.ship import texts
from tests.pipeline.packages import QUIET_GIT, git

from .life import FINDINGS, Stage, lay, stages

WITHY = Path(__file__).parents[1] / "packages" / "withy"
LIFE = stages(Path(__file__).with_name("withy.yaml"), WITHY)
CLOSED = FINDINGS / "withy-2028.yaml"
SIGNED = """until: 2028-05-06
inspections:
  - { item: "310", point: H1, where: p3-1, day: 2028-04-21, result: passed, yard: Shipwright, owner: Surveyor }
  - { item: "310", point: H1, day: 2028-04-24, result: passed, yard: Shipwright, owner: Surveyor }
  - { item: "320", point: H1, day: 2028-04-28, result: passed, yard: Shipwright, owner: Surveyor }
  - { item: "110", point: H1, day: 2028-05-02, result: passed, yard: Slip master, owner: Surveyor }
openings:
  - { shell: "310", hole: p1-1, closed: 2028-04-26, yard: Shipwright, owner: Surveyor }
  - { shell: "310", hole: p1-1, tested: 2028-05-02, result: passed }
  - { shell: "310", hole: p3-1, closed: 2028-04-27, yard: Shipwright, owner: Surveyor }
  - { shell: "310", hole: p3-1, tested: 2028-05-02, result: passed }
  - { block: 2.7 m, closed: 2028-04-20, yard: Slip master, owner: Surveyor }
  - { block: 4.1 m, opened: 2028-04-20, closed: 2028-04-21, yard: Slip master, owner: Surveyor }
"""
METAL = re.compile(
    r"\b(?:steel|plates?|plating|plated|weld\w*|rivet\w*|anodes?|propellers?|blast\w*|thickness readings?)\b",
    re.IGNORECASE,
)


@cache
def withy() -> Composed:
    files = read(WITHY)
    compiled = compile_package(files)
    return Composed(compiled, compile_owner(files, compiled))


@pytest.fixture(scope="module")
def life(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return lay(tmp_path_factory.mktemp("life") / "withy", LIFE)


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Runner:
    for name, value in QUIET_GIT.items():
        monkeypatch.setenv(name, value)
    return Runner(capsys)


@pytest.fixture
def at(life: Path, tmp_path: Path) -> Path:
    """Give a copy of her repository, to be looked at as one chapter or another."""
    return Path(shutil.copytree(life, tmp_path / "withy"))


def test_she_is_sound_as_she_stands_and_nothing_is_warned_of() -> None:
    assert [*withy().compiled.notices, *withy().owner.notices] == []


@pytest.mark.parametrize("stage", LIFE, ids=lambda stage: stage.chapter.chapter)
def test_every_chapter_is_sound(life: Path, tmp_path: Path, stage: Stage) -> None:
    root = tmp_path / "withy"
    git(life, "worktree", "add", "--quiet", "--detach", str(root), stage.chapter.chapter)
    files = read(root)
    compiled = compile_package(files)
    assert [*compiled.notices, *compile_owner(files, compiled).notices] == []


def test_what_the_survey_comes_to_is_calculated() -> None:
    """Summed by hand from vessel/timber.yaml; the bound is that of the beta distribution."""
    values = {name: value.si for name, value in withy().compiled.record.values.items()}
    assert values["timber.planking.length"] == pytest.approx(4.3 + 3.9 + 3.6)
    assert values["timber.planking.board"] == pytest.approx(1.4 * 0.038 * (4.3 * 0.21 + 3.9 * 0.16 + 3.6 * 0.17))
    assert values["timber.seams.rake"] == pytest.approx(18 + 34 + 6.4)
    assert values["timber.fastenings.bottom.failed"] == 3
    assert values["timber.fastenings.bottom.upper"] == pytest.approx(0.4565, abs=1e-4)
    assert values["timber.hog.hog"] == pytest.approx(0.0337, abs=5e-5)
    assert values["timber.borings.beyond"] == 2
    assert values["timber.days-dry.met"] is False


def test_every_figure_comes_out_the_same_from_its_printed_inputs() -> None:
    assert list(different(withy().compiled.record)) == []


def test_nothing_of_a_metal_hull_is_asked_for() -> None:
    for step in (survey_readings, shell_renewal):
        assert isinstance(withy().compiled.calculated.outcome(step), NotAsked)
    told = {**withy().compiled.record.missing, **withy().compiled.record.failed}
    assert [name for name in told if name.startswith(("shell.", "anodes.", "interval."))] == []


@pytest.mark.parametrize("edition", ["yard", "owner"])
def test_no_word_of_a_metal_hull_stands_on_her_pages(edition: str) -> None:
    """She has none in her own texts, so that each would be one of ours."""
    whole = withy().edition(edition)
    parts = [part for part in whole.parts if part.anchor != "trade-checks"]
    parts += [part for stem, sheet in whole.sheets.items() if stem != "record" for part in sheet.parts]
    # Every ship is asked of each service of the checklist, this one too.
    said = {part.anchor: words(part).replace("Anode protection", "") for part in parts}
    told = {anchor: sorted({found[0] for found in METAL.finditer(text)}) for anchor, text in said.items()}
    assert {anchor: found for anchor, found in told.items() if found} == {}


def test_the_yard_reads_planks_seams_and_fastenings() -> None:
    edition = withy().edition("yard")
    told = words(next(part for part in edition.parts if part.anchor == "condition"))
    for said in ("Planks", "Seams and butts", "Borings", "Moisture", "Fastenings drawn", "Keel bolts", "Borers", "Hog"):
        assert said in told
    assert "hogged by 33.7 mm" in told
    assert "3 of 16" in told
    assert "Planks as surveyed" in {part.title for part in edition.parts if part.group == "Drawings"}


def test_no_text_of_her_drawings_overlaps_another() -> None:
    """She is told of in two systems of units, and is small: words take more room than she does."""
    drawn = [block for part in withy().edition("yard").parts for block in part.blocks if isinstance(block, Figure)]
    assert len(drawn) > 4
    pairs = [(a.content, b.content) for one in drawn for a, b in combinations(texts(one), 2) if a.overlaps(b)]
    assert pairs == []


def test_the_blocks_stand_to_the_line_of_the_hogged_keel() -> None:
    """The keel line is drawn straight between its points: 23.0 mm at 3.2 m, 34.0 mm at 5.0 m, 19.0 mm at 7.0 m."""
    blocks = withy().found(keel_blocks)
    raised = [1e3 * (one.height - 0.8) for one in blocks if one.height is not None]
    assert raised == pytest.approx([3.4, 17.2, 28.5, 29.5, 18.0, 4.0], abs=0.1)
    page = next(part for part in withy().edition("yard").parts if part.anchor == "blocks")
    assert "Heights follow the measured line of her keel" in words(page)


def test_she_is_issued_and_her_addendum_is_told(run: Runner, at: Path, tmp_path: Path) -> None:
    git(at, "checkout", "--quiet", "-B", "tender", "issue")
    ran = run("issue", at, "--tag", "issued-1", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    folder = tmp_path / "out" / "issued" / "issued-1"
    assert (folder / "SCT-2028-01-yard.zip").is_file()
    git(at, "checkout", "--quiet", "-B", "tender", "addendum-1")
    ran = run("addendum", at, "issue", "addendum-1", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    assert "proved that nothing else changed; price can be affected" in ran.out
    assert "12 m" in (tmp_path / "out" / "addendum-1" / "addendum.json").read_text("utf-8")


def test_a_returned_form_is_read_and_the_bids_are_compared(run: Runner, at: Path, tmp_path: Path) -> None:
    git(at, "checkout", "--quiet", "bids")
    compiled = compile_package(read(at))
    desk = Desk(compiled.package, compiled.links, compiled.calculated)
    book = openpyxl.load_workbook(io.BytesIO(price_form_workbook(price_form(desk, "issued"))))
    sheet = book["Price form"]
    for row in range(5, sheet.max_row + 1):
        if sheet.cell(row, 3).value and sheet.cell(row, 9).value != "the owner's sum":
            sheet.cell(row, 6).value, sheet.cell(row, 7).value = "priced", 100
    said = book["Acknowledgements"]
    terms = next(cell.row for cell in said["A"] if str(cell.value).startswith("The terms of the tender"))
    said.cell(terms, 2).value = "yes"
    output = io.BytesIO()
    book.save(output)
    (tmp_path / "returned.xlsx").write_bytes(output.getvalue())
    ran = run("bids", "read", at, tmp_path / "returned.xlsx", "--yard", "Third Yard", "--received", "2028-01-13")
    assert ran.code == 0, ran.err
    assert yaml.safe_load((at / "owner/bids/third-yard.yaml").read_text("utf-8"))["lines"]["310.a"]["rate"] == 100
    ran = run("bids", "compare", at, "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    assert [line.split(":")[0] for line in ran.out.splitlines()[:3]] == [
        "1. Brent Hythe Boatyard",
        "2. Creek Shipwrights",
        "3. Third Yard",
    ]


def test_she_is_told_of_in_dock_and_closed_into_her_history(run: Runner, at: Path, tmp_path: Path) -> None:
    ran = run("statement", at, "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    rows = list(
        csv.DictReader((tmp_path / "out/statement-2028-04-20/statement-lines.csv").read_text("utf-8").splitlines())
    )
    assert "310.b" in {row["number"] for row in rows}
    ran = run("close", at, CLOSED, "--out", tmp_path / "out")
    assert ran.code == 1, "planks are off and a block is out on the day on which she floated"
    assert "floated-on-open-row" in ran.err
    assert "shell of item 310, no. p3-1, open" in ran.err
    (at / "owner/in-dock/2028-05-06.yaml").write_text(SIGNED, "utf-8")
    ran = run("close", at, CLOSED, "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    assert "3 points and rows of the inspection plan still open" in ran.err
    entry = yaml.safe_load((at / "history/docking-2028.yaml").read_text("utf-8"))
    assert entry["left_open"] == ["item 140 T1, open", "item 140 R1, open", "item 510 R1, open"]
    report = (tmp_path / "out/docking-report/docking-report.html").read_text("utf-8")
    assert METAL.findall(re.sub(r"<[^>]*>", " ", report[report.index("<body") :])) == []
    assert [one["component"] for one in entry["timber"]] == ["plank", "plank", "frame", "seam", "fastening", "bolt"]
    files = read(at)
    compiled = compile_package(files)
    assert [notice for notice in compiled.notices if notice.severity == "error"] == []
