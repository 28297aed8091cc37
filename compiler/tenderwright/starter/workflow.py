"""The workflow that checks a package on every push: at the top of the repository, at one commit of Tenderwright."""

from __future__ import annotations

import json
import re
from pathlib import Path

from tenderwright.reading.git import Refused, repository_of

WORKFLOWS = ".github/workflows"
_TEMPLATE = Path(__file__).resolve().parent / "files" / "github-workflow.yml"
_PACKAGE = '  PACKAGE: "."\n'
_SOURCE = re.compile(r'^  TENDERWRIGHT: "".*\n', re.MULTILINE)


def top_for(folder: Path) -> Path:
    """Give the top of the repository that will hold a package: that of git, or else the package itself.

    A folder that git ignores is of no repository above it.
    """
    folder = folder.resolve()
    there = next(one for one in (folder, *folder.parents) if one.is_dir())
    try:
        repository = repository_of(there)
    except Refused:
        return folder
    if repository is None or repository.ask("check-ignore", "--quiet", str(folder)).code == 0:
        return folder
    return repository.top


def workflow_text(package: str, source: str) -> str:
    """Write the workflow for a package at a path below the top; without a source its line is left to be filled in."""
    text = _TEMPLATE.read_text("utf-8").replace(_PACKAGE, f"  PACKAGE: {json.dumps(package)}\n")
    return _SOURCE.sub(lambda _: f"  TENDERWRIGHT: {json.dumps(source)}\n", text) if source else text


def names_for(package: str) -> tuple[str, ...]:
    """Give the paths at which the workflow may stand, in the order in which they are tried."""
    own = re.sub(r"[^A-Za-z0-9_-]+", "-", package).strip("-") or "package"
    return f"{WORKFLOWS}/docking.yml", f"{WORKFLOWS}/docking-{own}.yml"


def add_workflow(top: Path, package: str, text: str) -> str:
    """Write the workflow under the first name that is free and give its path from the top; nothing if none is.

    Raises OSErrors where the disk refuses.
    """
    (top / WORKFLOWS).mkdir(parents=True, exist_ok=True)
    for name in names_for(package):
        try:
            with (top / name).open("x", encoding="utf-8", newline="\n") as file:
                file.write(text)
        except FileExistsError:
            continue
        return name
    return ""
