"""`tenderwright close` as a user runs it: what it writes, what it refuses, and that it writes all or nothing."""

from __future__ import annotations

import re
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
import yaml

from tenderwright.cli import main
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.reading.git_state import GitState
from tenderwright.starter.write import write_starter
from tenderwright.writing.errors import WritingError

from .conftest import MARRAM, PACKAGE, SMALL

Tree = dict[str, bytes]


def tree(folder: Path) -> Tree:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def new_in(folder: Path, before: Tree) -> set[str]:
    """Name the files that are new; those that were there must be as they were."""
    now = tree(folder)
    assert {path: now.get(path) for path in before} == before
    return set(now) - set(before)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    write_starter(tmp_path / "sandling")
    return tmp_path / "sandling"


def close(root: Path, findings: Path = SMALL) -> int:
    return main(["close", str(root), str(findings), "--out", str(root.parent / "made")])


def test_close_writes_entry_readings_account_and_report(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = tree(root)
    assert close(root) == 0
    wanted = {"history/docking-2028.yaml", "surveys/docking-2028.csv", "owner/closing/docking-2028.yaml"}
    assert new_in(root, before) == wanted
    made = root.parent / "made" / "docking-report"
    assert set(tree(made)) == {
        "docking-report.pdf",
        "docking-report.html",
        "owner/docking-report.pdf",
        "owner/docking-report.html",
        "manifest.json",
    }
    assert [path.name for path in made.parent.iterdir()] == ["docking-report"]
    out, err = capsys.readouterr()
    assert err == ""
    assert all(str(root / path) in out for path in wanted)


def test_the_package_is_clean_with_the_new_entry(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert close(root) == 0
    capsys.readouterr()
    assert main(["check", str(root), "--strict"]) == 0
    assert "no mistakes found" in capsys.readouterr().out


def test_the_entry_is_read_as_the_latest_docking_with_quantities_as_written(root: Path) -> None:
    assert close(root) == 0
    text = (root / "history" / "docking-2028.yaml").read_text("utf-8")
    assert "#" not in text
    assert '"1.10"' in text
    assert list(yaml.safe_load(text))[:4] == ["docking", "tender", "yard", "place"]
    latest = compile_package(read(root)).package.history[0]
    assert (latest.docking, latest.days) == ("docking-2028", 14)
    assert not {"currency", "prices"} & set(yaml.safe_load(text))
    assert [(str(a.anode), str(a.left), str(a.left_mass), a.renewed) for a in latest.anodes] == [
        ("p1", "20 %", "0.8 kg", 1),
        ("s1", "25 %", "None", 1),
    ]
    assert latest.blocks.sides[0].painted
    assert latest.coatings[0].coats[0].batches == ("0101", "1.10")
    assert latest.coatings[0].system == "epoxy primer 150 um, epoxy"
    assert latest.deferred[0].condition == "3 mm of wear"
    assert (latest.hours_used[0].offered, str(latest.hours_used[0].used)) == (latest.hours_used[0].offered, "36 h")
    assert str(latest.hours_used[0].offered) == "40 h"
    assert str(latest.lessons) == "Count rivets after the wash.\nThen count them again."


def test_inline_readings_become_a_survey(root: Path) -> None:
    assert close(root) == 0
    assert (root / "surveys" / "docking-2028.csv").read_text("utf-8").splitlines()[1:] == [
        "A,18.5,port,,,plate,9.5,8.1,2028-03-06,ultrasonic,after blast",
        "B,20,starboard,,,plate,7.9,8,2028-03-06,ultrasonic,after blast",
    ]


def test_the_account_lies_with_the_owners_papers_and_adds_up(root: Path) -> None:
    assert close(root) == 0
    files = read(root)
    papers = compile_owner(files, compile_package(files)).papers
    account = papers.closings["owner/closing/docking-2028.yaml"]
    assert account.docking.name == "docking-2028"
    assert account.totals is not None
    assert (account.totals.contract, account.totals.changes, account.totals.final) == (
        Decimal("26300.50"), Decimal("2769"), Decimal("29069.50"),
    )  # fmt: skip
    assert [(line.line, line.kind, line.estimate) for line in account.lines] == [
        ("110.a", "definite", Decimal("21500")),
        ("320.a", "contingent", Decimal("3800")),
        ("420.a", "measured", Decimal("4400")),
    ]


def test_prices_that_may_be_published_still_lie_with_the_owners_papers(
    root: Path, small_text: str, tmp_path: Path
) -> None:
    findings = tmp_path / "open.yaml"
    findings.write_text(small_text + "publish_prices: true\n", "utf-8")
    before = tree(root)
    assert close(root, findings) == 0
    wanted = {"history/docking-2028.yaml", "surveys/docking-2028.csv", "owner/closing/docking-2028.yaml"}
    assert new_in(root, before) == wanted
    files = read(root)
    closing = compile_owner(files, compile_package(files)).papers.closing_of("docking-2028")
    assert closing is not None
    assert closing.currency == "EUR"
    assert [(str(p.item), p.quantity, p.amount, p.growth) for p in closing.paid] == [
        ("110", "", Decimal("21900.5"), Decimal("0")),
        ("320", "31 each", Decimal("2945"), Decimal("2945")),
        ("420", "48 m2", Decimal("4224"), Decimal("-176")),
    ]
    assert main(["check", str(root)]) == 0


def test_the_file_of_a_gauging_firm_goes_into_the_package_as_it_was_delivered(
    root: Path, small_text: str, tmp_path: Path
) -> None:
    start, end = small_text.index("readings:\n"), small_text.index("rivets:\n")
    said = """readings_file: firm.csv
readings_columns:
  heading_row: 2
  columns:
    - { column: Where, reads: ["{strake} frame {frame} {side}"] }
    - { column: Found, reads: ["{measured}"], unit: in }
  same: { as_built: 3/8 in, date: 2028-03-06 }
"""
    findings, delivered = tmp_path / "firm.yaml", "Harrow Gauging\nWhere,Found\n\nA frame 18.5 P,.3125\n"
    findings.write_text(f"{small_text[:start]}{said}{small_text[end:]}", "utf-8")
    (tmp_path / "firm.csv").write_text(delivered, "utf-8")
    before = tree(root)
    assert close(root, findings) == 0
    assert {"surveys/docking-2028.csv", "surveys/docking-2028.yaml"} <= new_in(root, before)
    assert (root / "surveys" / "docking-2028.csv").read_text("utf-8") == delivered
    latest = compile_package(read(root)).package.surveys[-1]
    assert "A,18.5,port,,,plate,9.525,7.9375,2028-03-06" in latest.text
    assert main(["check", str(root)]) == 0
    assert close(root, findings) == 0


def test_without_owner_the_prices_are_only_in_the_confidential_report(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.rmtree(root / "owner")
    before = tree(root)
    assert close(root) == 0
    assert new_in(root, before) == {"history/docking-2028.yaml", "surveys/docking-2028.csv"}
    assert not (root / "owner").exists()
    assert "what was paid is kept in the confidential report alone" in capsys.readouterr().err


def test_nothing_confidential_is_in_what_others_see(root: Path) -> None:
    assert close(root) == 0
    amounts = {"21900.5", "21900.50", "2945", "4224", "26300.50", "29069.50", "2769"}
    made = tree(root.parent / "made" / "docking-report")
    seen = made["docking-report.html"].decode() + (root / "history" / "docking-2028.yaml").read_text("utf-8")
    seen = re.sub(r"(?<=\d)[\u00a0\u202f ](?=\d{3})", "", seen)
    assert not {amount for amount in amounts if re.search(rf"(?<![\d.]){re.escape(amount)}(?!\d)", seen)}
    secret = re.sub(r"(?<=\d)[\u00a0\u202f ](?=\d{3})", "", made["owner/docking-report.html"].decode())
    assert {"21900.50", "26300.50", "29069.50"} <= set(re.findall(r"\d+\.\d\d", secret))
    assert "CONFIDENTIAL" in secret
    assert "CONFIDENTIAL" not in seen


def test_a_second_close_changes_nothing_and_one_by_other_findings_is_refused(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert close(root) == 0
    before = tree(root.parent)
    capsys.readouterr()
    assert close(root) == 0
    assert "docking-2028 is closed already by these very findings" in capsys.readouterr().out
    assert tree(root.parent) == before
    findings = root.parent / "other.yaml"
    findings.write_text(SMALL.read_text("utf-8").replace("Then count them again.", "Then rest."), "utf-8")
    assert close(root, findings) == 2
    assert "docking-2028 is closed; nothing was written" in capsys.readouterr().err
    findings.unlink()
    assert tree(root.parent) == before


def test_a_report_that_is_gone_is_written_again(root: Path) -> None:
    assert close(root) == 0
    before = tree(root.parent)
    shutil.rmtree(root.parent / "made")
    assert close(root) == 0
    assert tree(root.parent) == before


@pytest.mark.parametrize(
    "there", ["history/docking-2028.yaml", "surveys/docking-2028.csv", "owner/closing/docking-2028.yaml"]
)
def test_no_source_file_is_ever_written_over(there: str, root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert close(root) == 0
    kept = (root / there).read_bytes()
    for path in ("history/docking-2028.yaml", "surveys/docking-2028.csv", "owner/closing/docking-2028.yaml"):
        if path != there and not (path.startswith("history") and there.startswith("owner")):
            (root / path).unlink()
    before = tree(root)
    capsys.readouterr()
    assert close(root) == 2
    assert (root / there).read_bytes() == kept
    assert tree(root) == before


def test_a_docking_closed_in_a_file_of_another_name_is_not_closed_again(root: Path) -> None:
    assert close(root) == 0
    (root / "history" / "docking-2028.yaml").rename(root / "history" / "the-last.yaml")
    (root / "surveys" / "docking-2028.csv").unlink()
    shutil.rmtree(root / "owner" / "closing")
    before = tree(root)
    assert close(root) == 2
    assert tree(root) == before


def test_mistakes_give_notices_and_write_nothing(
    root: Path, small_text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    findings = tmp_path / "bad.yaml"
    findings.write_text(small_text.replace("final: 2945 }", "final: 2954 }"), "utf-8")
    before = tree(root)
    assert close(root, findings) == 1
    out, err = capsys.readouterr()
    assert out == ""
    line = small_text.split("final: 2945 }")[0].count("\n") + 1
    assert f"{findings}:{line}:" in err
    assert "error[sum-differs]: line 320.a: contract 0.00 and changes 2945.00 make 2945.00, not 2954.00" in err
    assert err.endswith("nothing was written\n")
    assert tree(root) == before
    assert not (root.parent / "made").exists()


def test_a_package_with_mistakes_is_not_closed(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = root / "items" / "320-rivets-renew.yaml"
    file.write_text(file.read_text("utf-8").replace("strakes: [A, B]", "strakes: [A, Q]"), "utf-8")
    before = tree(root)
    assert close(root) == 1
    assert "the package has 1 mistake; nothing was written" in capsys.readouterr().err
    assert tree(root) == before


def test_a_report_that_cannot_be_put_in_place_leaves_no_source_file(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = root.parent / "made" / "docking-report"
    out.mkdir(parents=True)
    (out / "thesis.txt").write_text("mine", "utf-8")
    before = tree(root.parent)
    assert close(root) == 2
    assert "thesis.txt was not written by an earlier run" in capsys.readouterr().err
    assert tree(root.parent) == before
    assert not (root / "surveys").exists()


def test_a_failure_half_way_leaves_no_source_file(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from tenderwright.writing import new_files

    write = new_files.write_new

    def fail(target: Path, content: bytes) -> None:
        if target.parent.name == "history":
            raise WritingError("the disk is full")
        write(target, content)

    monkeypatch.setattr(new_files, "write_new", fail)
    before = tree(root.parent)
    assert close(root) == 2
    assert tree(root.parent) == before


def test_the_package_itself_is_not_written_over(root: Path) -> None:
    before = tree(root)
    assert main(["close", str(root), str(SMALL), "--out", str(root)]) == 2
    assert main(["close", str(root / "none"), str(SMALL)]) == 2
    assert tree(root) == before


def test_the_same_findings_give_the_same_bytes(root: Path, tmp_path: Path) -> None:
    write_starter(tmp_path / "again" / "sandling")
    assert close(root) == 0
    assert close(tmp_path / "again" / "sandling") == 0
    assert tree(root) == tree(tmp_path / "again" / "sandling")
    assert tree(root.parent / "made") == tree(tmp_path / "again" / "made")


def test_the_demonstration_is_closed_and_its_package_is_clean_after(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("tenderwright.commands.close.stamp_of", lambda compiled: GitState("no-git", why="a test"))
    root = tmp_path / "marram"
    # The papers from the dock tell of another course of things than these findings, and leave rows open.
    shutil.copytree(PACKAGE, root, ignore=shutil.ignore_patterns("build", "in-dock"))
    before = tree(root)
    assert close(root, MARRAM) == 0
    wanted = {"history/docking-2027.yaml", "surveys/docking-2027.csv", "owner/closing/docking-2027.yaml"}
    assert new_in(root, before) == wanted
    beside = MARRAM.with_name("marram-2027-thickness.csv")
    assert (root / "surveys" / "docking-2027.csv").read_bytes() == beside.read_bytes()
    capsys.readouterr()
    assert main(["check", str(root)]) == 0, capsys.readouterr().out
    assert " mistake" not in capsys.readouterr().out.replace("no mistakes found", "")
    assert main(["explain", str(root), "640"]) == 0
