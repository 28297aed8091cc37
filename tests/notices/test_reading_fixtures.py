"""Mistakes that no file in a repository can hold: bytes, links, sizes, folders in the place of files, remotes."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from tenderwright.reading.layout import UNFINISHED
from tenderwright.reading.yaml_file import MAX_DEPTH, MAX_SURVEY_BYTES
from tenderwright.starter.write import write_starter
from tests.fixtures.overlay import Expected, all_notices_of, places
from tests.pipeline.packages import commit, git

Spoil = Callable[[Path], Expected]


def _bytes(root: Path) -> Expected:
    (root / "clauses" / "03-masts.md").write_bytes(b"# Masts\n\nOak of 4 \xbd in.\n")
    return {("clauses/03-masts.md", 3, "not-utf8")}


def _size(root: Path) -> Expected:
    with (root / "surveys.csv").open("wb") as file:
        file.truncate(MAX_SURVEY_BYTES + 1)
    (root / "surveys").mkdir()
    (root / "surveys.csv").rename(root / "surveys" / "2027.csv")
    return {("surveys/2027.csv", 1, "too-large")}


def _depth(root: Path) -> Expected:
    nested = "\n".join("  " * level + "deeper:" for level in range(MAX_DEPTH + 4))
    (root / "vessel" / "appendages.yaml").write_text(nested + " 1\n", "utf-8")
    return {("vessel/appendages.yaml", MAX_DEPTH + 1, "too-deep")}


def _folder(root: Path) -> Expected:
    (root / "vessel" / "appendages.yaml").mkdir()
    return {("vessel/appendages.yaml", 1, "not-a-file")}


def _pipe(root: Path) -> Expected:
    os.mkfifo(root / "items" / "500-mast-step.yaml")
    return {("items/500-mast-step.yaml", 1, "not-a-file")}


def _link_to_nothing(root: Path) -> Expected:
    (root / "items" / "500-mast-step.yaml").symlink_to("501-gone.yaml")
    return {("items/500-mast-step.yaml", 1, "no-such-file")}


def _link(root: Path) -> Expected:
    outside = root.parent / "elsewhere.yaml"
    outside.write_text("item: 500\n", "utf-8")
    (root / "items" / "500-mast-step.yaml").symlink_to(outside)
    return {("items/500-mast-step.yaml", 1, "outside-package")}


def _linked_folder(root: Path) -> Expected:
    (root / "more-items").symlink_to(root / "items", target_is_directory=True)
    return {("more-items", 1, "outside-package")}


def _missing(root: Path) -> Expected:
    (root / "package.yaml").unlink()
    return {("package.yaml", 1, "missing-file")}


def _damaged_repository(root: Path) -> Expected:
    commit(root)
    (root / ".git" / "HEAD").write_text("nowhere\n", "utf-8")
    return {("package.yaml", 1, "repository-refused")}


def _remote(root: Path) -> Expected:
    commit(root)
    git(root, "remote", "add", "origin", "https://example.org/sandling.git")
    return {("owner/", 1, "owner-goes-along")}


def _archive(root: Path) -> Expected:
    archive = root / "owner/archive/SP-2027-1"
    archive.mkdir(parents=True)
    (archive / "SHA256SUMS").write_text(f"{'0' * 64}  package/owner/award.yaml\n", "utf-8")
    return {("owner/archive/SP-2027-1/package/owner/award.yaml", 1, "archive-changed")}


def _unfinished(root: Path) -> Expected:
    (root / UNFINISHED).write_text("{}", "utf-8")
    return {(UNFINISHED, 1, "unfinished-files")}


SPOILT: dict[str, tuple[Spoil, ...]] = {
    "not-utf8": (_bytes,),
    "too-large": (_size,),
    "too-deep": (_depth,),
    "no-such-file": (_link_to_nothing,),
    "not-a-file": (_folder, _pipe),
    "outside-package": (_link, _linked_folder),
    "missing-file": (_missing,),
    "owner-goes-along": (_remote,),
    "repository-refused": (_damaged_repository,),
    "unfinished-files": (_unfinished,),
    "archive-changed": (_archive,),
}
"""The codes whose fixtures are made here."""


@pytest.mark.parametrize(("code", "spoil"), [(code, spoil) for code, all_ in SPOILT.items() for spoil in all_])
def test_the_mistake_is_reported(code: str, spoil: Spoil, tmp_path: Path) -> None:
    root = tmp_path / "package"
    write_starter(root)
    wanted = spoil(root)
    assert {found for _, _, found in wanted} == {code}
    assert places(all_notices_of(root)) == wanted
