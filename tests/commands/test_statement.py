"""`tenderwright statement` as a user runs it: one page, whole or not at all, the same bytes each time."""

from __future__ import annotations

import csv
import io
import json
from decimal import Decimal
from pathlib import Path

import pypdf
import pytest

from tenderwright.writing.errors import WritingError
from tests.pricing.in_dock.sandling import AWARD, SCOPE, WEEK, write_docked

from .run import Runner

LONG = (
    "Behind the lining the floor and its reverse bar are wasted over most of their depth, and the rivets to the shell "
    "are loose over four frame spaces; the plate beneath is sound."
)
CAUSES = (
    "condition found",
    "quantity measured",
    "owner's change",
    "document wrong",
    "late answer",
    "weather",
    "work left out",
    "other",
)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return write_docked(tmp_path / "sandling")


def tree(folder: Path) -> dict[str, bytes]:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def test_it_writes_a_page_its_lines_and_a_manifest(run: Runner, root: Path, tmp_path: Path) -> None:
    before = tree(root)
    ran = run("statement", root, "--out", tmp_path / "made")
    assert (ran.code, ran.err) == (0, "")
    made = tree(tmp_path / "made" / "statement-2028-04-09")
    assert set(made) == {"statement.pdf", "statement.html", "statement-lines.csv", "manifest.json"}
    assert "1 page, 4 files" in ran.out
    assert len(pypdf.PdfReader(io.BytesIO(made["statement.pdf"])).pages) == 1
    assert json.loads(made["manifest.json"])["confidential"] is True
    rows = list(csv.DictReader(io.StringIO(made["statement-lines.csv"].decode())))
    assert sum(Decimal(row["in forecast"]) for row in rows) == Decimal("47651.00")
    assert tree(root) == before


def test_the_same_papers_give_the_same_bytes(run: Runner, root: Path, tmp_path: Path) -> None:
    assert run("statement", root, "--out", tmp_path / "one").code == 0
    assert run("statement", root, "--out", tmp_path / "two").code == 0
    assert tree(tmp_path / "one") == tree(tmp_path / "two")


def test_it_goes_under_build_by_its_day(
    run: Runner, root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("statement", root).code == 0
    assert run("statement", root, "--on", "2028-04-07").code == 0
    assert {path.name for path in (tmp_path / "build").iterdir()} == {"statement-2028-04-09", "statement-2028-04-07"}


def _crowded() -> str:
    """Give a week with eight changes of eight causes, four open conditions with long texts, and work put off."""
    conditions = "".join(
        f'  - report: CF-{n}\n    day: 2028-04-08\n    hour: 15:30\n    item: "320"\n    line: 320.a\n'
        f"    quantity: {n} each\n    where: strakes A and B, port and starboard, Fr {10 + n} to Fr {20 + n}\n"
        f"    found: {LONG}\n    days: 1\n"
        for n in range(1, 5)
    )
    changes = "".join(
        f"  - {{ change: CO-{n}, day: 2028-04-08, line: 320.a, quantity: {n} each, cause: {cause}, what: rivets aft, "
        f"by: Trustees, signed: 2028-04-09, days: 1, condition: CF-0 }}\n"
        for n, cause in enumerate(CAUSES, start=1)
    )
    return (
        "until: 2028-04-09\ndays: { docked: 2028-04-05 }\nconditions:\n"
        "  - { report: CF-0, day: 2028-04-06, where: A, found: Wasted., decision: accepted, decided: 2028-04-07 }\n"
        f"{conditions}changes:\n{changes}"
        "  - { change: CO-9, day: 2028-04-09, line: 110.c, quantity: 1 each, cause: other, what: one block moved }\n"
        "measured:\n  - { line: 130.a, quantity: 44 h }\n"
        'deferred:\n  - { work: "140", day: 2028-04-06, why: no money, by: Trustees }\n'
    )


def test_a_crowded_week_still_fits_one_page(run: Runner, tmp_path: Path) -> None:
    scope = SCOPE.replace('needs: ["140", "210"]', 'needs: ["130"]').replace(', needs: ["210"]', "")
    root = write_docked(tmp_path / "s", week_1=_crowded(), scope=scope)
    ran = run("statement", root, "--out", tmp_path / "made")
    assert ran.code == 0, ran.err
    assert "1 page," in ran.out


def test_more_than_a_page_goes_on_and_loses_nothing(run: Runner, tmp_path: Path) -> None:
    more = "".join(
        f'  - {{ report: CF-{n}, day: 2028-04-08, where: strake B, found: "{n}. {LONG[:90]}", amount: 10 }}\n'
        for n in range(10, 46)
    )
    root = write_docked(tmp_path / "s", week_1=WEEK.replace("changes:\n", f"{more}changes:\n"))
    assert run("statement", root, "--out", tmp_path / "made").code == 0
    pages = pypdf.PdfReader(tmp_path / "made" / "statement-2028-04-09" / "statement.pdf").pages
    text = " ".join(page.extract_text() for page in pages)
    assert len(pages) == 2
    assert all(f"CF-{n}" in text for n in range(10, 46))


def test_a_mistake_writes_nothing(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s", award=AWARD.replace("36760", "1"))
    ran = run("statement", root, "--out", tmp_path / "made")
    assert ran.code == 1
    assert "sum-differs" in ran.err
    assert not (tmp_path / "made").exists()


def test_warnings_of_the_dock_are_shown_and_do_not_stop_it(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s", award=AWARD.replace("12000", "100"))
    ran = run("statement", root, "--out", tmp_path / "made")
    assert ran.code == 0
    assert "contingency-spent" in ran.err


def test_a_failure_while_writing_leaves_nothing(
    run: Runner, root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise WritingError("no ink")

    monkeypatch.setattr("tenderwright.writing.statement_files.manifest", refuse)
    ran = run("statement", root, "--out", tmp_path / "made")
    assert (ran.code, "no ink" in ran.err) == (2, True)
    assert not (tmp_path / "made").exists()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--on", "2028-01-30"), "before the award of 2028-01-31"),
        (("--on", "April"), "`April` is not a day written year-month-day"),
    ],
)
def test_a_day_that_cannot_be_told_of(run: Runner, root: Path, words: tuple[str, ...], told: str) -> None:
    ran = run("statement", root, *words)
    assert ran.code == 2
    assert told in ran.err


def test_it_is_not_written_over_the_package(run: Runner, root: Path) -> None:
    before = tree(root)
    assert run("statement", root, "--out", root).code == 2
    assert tree(root) == before


def test_without_an_award_or_papers_it_says_what_is_missing(run: Runner, root: Path) -> None:
    (root / "owner" / "in-dock" / "week-1.yaml").unlink()
    assert "no file under owner/in-dock/" in run("statement", root).err
    (root / "owner" / "award.yaml").unlink()
    assert "no owner/award.yaml" in run("statement", root).err
