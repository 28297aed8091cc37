"""What the register of approvals holds up is not issued and not closed, and each approval is named."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from tenderwright.commands.held_up import held_up, issue_held_up
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.reading.issued import issued
from tests.pipeline.packages import commit, starter

from .run import Runner

REGISTER = """approvals:
  - approval: consent
    title: Consent to the rivets
    kind: heritage
    gates: [issue, close]
    given_by: Monuments office
    asked: 2027-08-02
"""
GIVEN = "    granted: 2027-09-20\n"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return starter(tmp_path / "sandling")


def write(root: Path, register: str) -> Path:
    (root / "owner" / "approvals.yaml").write_text(register, "utf-8")
    return root


@pytest.mark.usefixtures("git_knows_who")
def test_a_tender_without_its_consent_is_not_issued(run: Runner, root: Path, tmp_path: Path) -> None:
    commit(write(root, REGISTER))
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 1
    named = "owner/approvals.yaml:2: Consent to the rivets (Monuments office): "
    assert f"{named}asked for on 2 August 2027, and not given yet" in ran.err
    assert "owner/approvals.yaml says that this waits for them" in ran.err
    assert "nothing was issued" in ran.err
    assert not issued(root)
    assert not (tmp_path / "out").exists()


def test_one_that_has_its_consent_is(root: Path) -> None:
    assert not issue_held_up(read(root))
    assert not issue_held_up(read(write(root, REGISTER + GIVEN)))
    assert issue_held_up(read(write(root, REGISTER + GIVEN.replace("2027-09-20", "2027-10-05"))))


@pytest.mark.parametrize(
    ("register", "why"),
    [
        (REGISTER.replace("gates: [issue, close]", "gates: todo"), "still `todo`: `gates` on line 5"),
        (REGISTER + GIVEN + "    expires: soon\n", "expires"),
        ("approvals: [", "owner/approvals.yaml"),
    ],
)
def test_a_register_that_cannot_be_read_whole_holds_the_issue_up(
    root: Path, capsys: pytest.CaptureFixture[str], register: str, why: str
) -> None:
    assert issue_held_up(read(write(root, register)))
    told = capsys.readouterr().err
    assert "cannot be read whole" in told
    assert why in told


def test_a_docking_is_closed_when_what_holds_the_close_up_is_given(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for register, held in ((REGISTER, True), (REGISTER + GIVEN, False)):
        files = read(write(root, register))
        compiled = compile_package(files)
        owner = compile_owner(files, compiled)
        assert held_up("close", date(2028, 4, 19), "nothing was written", compiled, owner) == held
    assert "nothing was written" in capsys.readouterr().err
