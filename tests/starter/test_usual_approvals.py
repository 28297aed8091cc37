"""The form of the register names the usual approvals, each with what it holds up, and asks who gives it."""

from __future__ import annotations

from pathlib import Path

from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.starter.forms import Facts, form
from tests.pipeline.packages import starter


def test_it_is_sound_and_asks_who_gives_each(tmp_path: Path) -> None:
    path, text = form("approvals", "", Facts(tender="BWT-2028-01"))
    root = starter(tmp_path / "sandling")
    (root / path).write_text(text, "utf-8")
    files = read(root)
    owner = compile_owner(files, compile_package(files))
    assert owner.notices == ()
    assert owner.papers.approvals is not None
    listed = owner.papers.approvals.approvals
    assert {todo.key for todo in owner.papers.todos} == {"given_by"}
    assert len(owner.papers.todos) == len(listed) == len({one.approval for one in listed})
    assert {"issue", "award", "departure", "start", "flooding"} <= {gate for one in listed for gate in one.gates}
    assert all(one.lead is not None for one in listed)
