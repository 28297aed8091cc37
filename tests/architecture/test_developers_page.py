"""The files and folders that DEVELOPERS.md names are in the tree."""

from __future__ import annotations

import re

from .tree import REPOSITORY, tracked

MADE = ("dist/", "owner/", "references/")
"""What a build makes, or what stands in a package."""


def test_every_file_that_the_page_names_is_there() -> None:
    page = (REPOSITORY / "DEVELOPERS.md").read_text("utf-8")
    named = set(re.findall(r"`([\w./-]+(?:/|\.py|\.md|\.yaml|\.lock))`", page)).difference(MADE)
    assert len(named) > 60
    paths = [f"/{path.relative_to(REPOSITORY)}" for path in tracked()]

    def is_there(name: str) -> bool:
        return any(path.endswith(f"/{name}") or f"/{name.rstrip('/')}/" in path for path in paths)

    assert [name for name in sorted(named) if not is_there(name)] == []
