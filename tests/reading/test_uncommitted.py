"""What is not committed is named from the top of the package, owner/ apart."""

from __future__ import annotations

from pathlib import Path

from tenderwright.reading.git_state import uncommitted
from tenderwright.reading.package import read_package
from tests.pipeline.packages import commit, edit, git, starter


def test_each_file_is_named_once(tmp_path: Path) -> None:
    root = starter(tmp_path / "ships" / "sandling")
    commit(root.parent)
    assert uncommitted(root, read_package(root, owner=False).sources) == []
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    edit(root, "owner/rates.yaml", "21500", "21501")
    git(root, "mv", "clauses/02-changes.md", "clauses/09-wéchsel.md")
    (root / "items" / "210-hull-wash.yaml").unlink()
    (root / "items" / "500-mast step.yaml").write_text("item: 500\n", "utf-8")
    (root.parent / ".git" / "info" / "exclude").write_text("510-*\n", "utf-8")
    (root / "items" / "510-hidden.yaml").write_text("item: 510\n", "utf-8")
    (root.parent / "letter.txt").write_text("one", "utf-8")
    assert uncommitted(root, read_package(root, owner=False).sources) == [
        "clauses/02-changes.md",
        "clauses/09-wéchsel.md",
        "items/210-hull-wash.yaml",
        "items/500-mast step.yaml",
        "items/510-hidden.yaml",
        "package.yaml",
    ]
