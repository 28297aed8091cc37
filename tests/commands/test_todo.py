"""What the commands do while a value is still `todo`."""

from __future__ import annotations

import hashlib
import json
import re
from pathlib import Path

import pytest

from tenderwright.writing.archive import archive, parcel_name
from tenderwright.writing.ours import look_through
from tests.pipeline.packages import commit, edit, starter

from .run import Runner, package

BEAM = ("vessel/particulars.yaml", "beam: 5.44 m", "beam: todo")
RATE = ("owner/rates.yaml", "130.a: { rate: 42 }", "130.a: todo")


def test_check_lists_it_with_what_it_would_bring_and_finds_no_mistake(run: Runner, tmp_path: Path) -> None:
    ran = run("check", package(tmp_path / "package", BEAM, RATE))
    assert ran.code == 0
    lines = ran.out.splitlines()
    at = lines.index("still `todo`: 2 values in 2 files; write each once it is known")
    assert lines[at + 1].startswith("  vessel/particulars.yaml:") or lines[at + 1].startswith("  owner/rates.yaml:")
    (brings,) = [line for line in lines if line.startswith("  vessel/particulars.yaml: would bring ")]
    assert "condition.*" in brings


def test_many_are_told_by_what_holds_them(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    text = (root / "package.yaml").read_text("utf-8")
    answers = re.compile(r"^(  [a-z-]+): \{ answer: .*$", re.MULTILINE)
    (root / "package.yaml").write_text(answers.sub(r"\1: todo", text), "utf-8")
    ran = run("check", root)
    assert ran.code == 0
    (line,) = [line for line in ran.out.splitlines() if line.startswith("  package.yaml:")]
    assert re.search(r":\d+-\d+: services: pilotage to berth-refit, \d+ in all$", line)


@pytest.mark.usefixtures("git_knows_who")
def test_no_tender_goes_out_with_it(run: Runner, tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    edit(root, *BEAM)
    commit(root)
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 1
    assert "error[still-todo]: `beam` is still `todo`: her greatest moulded breadth" in ran.err
    assert "1 value is still `todo`; nothing was issued" in ran.err
    assert not (tmp_path / "out").exists()


def test_without_the_tender_itself_no_page_is_made(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package", ("package.yaml", "currency: EUR", "currency: todo"))
    ran = run("build", root, "--out", tmp_path / "out")
    assert (ran.code, ran.out) == (2, "")
    assert "nothing can be written yet: `currency` in package.yaml is still `todo`" in ran.err


def last_line(run: Runner, root: Path) -> str:
    return run("check", root).out.splitlines()[-1]


def test_check_ends_with_what_to_do_next(run: Runner, tmp_path: Path) -> None:
    root = tmp_path / "ship"
    assert run("start", root, "--name", "Withy", "--material", "wood", "--shafts", "0").code == 0
    count = (root / "vessel" / "particulars.yaml").read_text("utf-8").count(": todo")
    assert last_line(run, root).startswith(f"next: answer the {count} `todo` in vessel/particulars.yaml; ")
    assert run("record", root).out.splitlines()[-1] == last_line(run, root)
    example = package(tmp_path / "example")
    assert last_line(run, example).startswith("next: `tenderwright add docking-plan`; it would bring blocks.*, ")
    edit(example, *BEAM)
    assert last_line(run, example).startswith("next: answer the 1 `todo` in vessel/particulars.yaml; ")


def test_where_there_is_a_mistake_that_comes_first(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "example", ("vessel/particulars.yaml", "beam: 5.44 m", "beam: wide"))
    assert "next:" not in run("check", root).out


def test_no_contract_is_summed_over_what_is_open(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package", ("items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: todo"))
    ran = run("bids", "compare", root, "--out", tmp_path / "out")
    assert ran.code == 1
    assert "error[still-todo]: `quantity` is still `todo`" in ran.err
    assert "what bids are made of is still `todo`; nothing was written" in ran.err


def test_a_draft_can_be_built_again_while_the_number_of_the_tender_is_open(tmp_path: Path) -> None:
    files = {"page.html": b"a draft"}
    edition = "To be written"
    (tmp_path / "page.html").write_bytes(files["page.html"])
    listed = [{"path": "page.html", "sha256": hashlib.sha256(files["page.html"]).hexdigest()}]
    said = {"tender": edition, "edition": "yard", "compiler": "1", "files": listed}
    manifest = json.dumps(said).encode()
    (tmp_path / "manifest.json").write_bytes(manifest)
    name = parcel_name(edition, "yard")
    (tmp_path / f"{name}.zip").write_bytes(archive({**files, "manifest.json": manifest}, name))
    assert look_through(tmp_path).others == {}
