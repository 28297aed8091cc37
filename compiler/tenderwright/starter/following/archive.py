"""The archive of a closed tender: its whole package as it was, what was issued of it, and a checksum of each file."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from tenderwright.model.tender import Tender
from tenderwright.reading.archived import ARCHIVE, LIST, list_text
from tenderwright.reading.at_commit import package_at
from tenderwright.reading.issued import Issued
from tenderwright.reading.package import Files
from tenderwright.starter.following.closed import Closed
from tenderwright.writing.archive import file_name

_BESIDE = ("README.md", "owner/README.md")
_DOCUMENTS = "owner/documents"
_BUILT = "build"


def archive_of(
    files: Files, tender: Tender, closed: Closed, issues: Iterable[Issued]
) -> tuple[dict[str, Path], dict[str, bytes]]:
    """Give the files of the archive by their paths in the new package: those that are copied, and those made."""
    root, issues = files.root, tuple(issues)
    top = f"{ARCHIVE}{file_name(closed.number) or 'tender'}/"
    paths = {*files.paths, *(path for path in _BESIDE if (root / path).is_file()), *files_below(root, _DOCUMENTS)}
    copied = {f"package/{path}": root / path for path in sorted(paths)}
    made: dict[str, bytes] = {}
    for issue in issues:
        at = f"issued/{file_name(issue.tag)}/"
        made |= {f"{at}{path}": content for path, content in _as_issued(root, issue)}
        parcel = root / _BUILT / "issued" / issue.tag / issue.parcel
        if parcel.is_file():
            copied[f"{at}{issue.parcel}"] = parcel
    for addendum in tender.addenda:
        folder = f"addendum-{addendum.number}"
        built = files_below(root, f"{_BUILT}/{folder}")
        copied |= {f"addenda/{path.removeprefix(f'{_BUILT}/')}": root / path for path in built}
    made["README.md"] = _readme(tender, closed, issues).encode()
    sums = {path: hashlib.sha256(source.read_bytes()).hexdigest() for path, source in copied.items()}
    sums |= {path: hashlib.sha256(content).hexdigest() for path, content in made.items()}
    made[LIST] = list_text(sums).encode()
    return {top + path: source for path, source in copied.items()}, {top + path: one for path, one in made.items()}


def files_below(root: Path, folder: str) -> Iterator[str]:
    """Yield the files below a folder of a package by their paths in it, but for hidden ones and links."""
    for at, folders, names in os.walk(root / folder):
        folders[:] = sorted(one for one in folders if not one.startswith("."))
        for name in sorted(names):
            path = Path(at) / name
            if not name.startswith(".") and path.is_file() and not path.is_symlink():
                yield path.relative_to(root).as_posix()


def _as_issued(root: Path, issue: Issued) -> Iterator[tuple[str, bytes]]:
    """Yield the files that an issue had and that are gone or otherwise since."""
    with package_at(root, issue.commit) as folder:
        for path in files_below(folder, "."):
            content = (folder / path).read_bytes()
            now = root / path
            if not now.is_file() or now.read_bytes() != content:
                yield path, content


_README = """\
# Tender {number}, closed

{title}. {led}Confidential, as all under `owner/`.

`package/` is the package as it stood when the next one was begun from it, byte for byte: the tender, its questions and
items, the bids and their evaluation, the award, the papers in dock, and what was paid. The commands read it as they
read any package, such as `tenderwright bids compare` and `tenderwright build`.

`issued/` holds, for each issue and addendum that a tag records, the files that were otherwise then, and of an issue the
parcel as it was sent, where it was at hand. `addenda/` holds the addenda as they were built, where they were at hand.

{addenda}

{issues}

`{list}` has the checksum of every file here. `tenderwright verify` with this folder, or `sha256sum --check {list}` in
it, shows that none was changed, lost or added since. Whoever can change a file can write the list again: so keep the
checksum of the list elsewhere, such as in the minutes of the trustees.
"""


def _readme(tender: Tender, closed: Closed, issues: Iterable[Issued]) -> str:
    docking = closed.docking
    led = f"It led to `{docking.docking}`, {docking.docked} to {docking.undocked}, {docking.yard}. " if docking else ""
    addenda = [f"- {one.number}, {one.date}: {' '.join(one.summary.split())}" for one in tender.addenda]
    recorded = [
        f"- `{issue.tag}`: {issue.what}, commit `{issue.commit}` of {issue.date.date()}, parcel "
        f"`{issue.parcel}`, SHA-256 `{issue.parcel_sha256}`"
        for issue in issues
    ]
    return _README.format(
        number=closed.number,
        title=tender.tender.title,
        led=led,
        addenda="\n".join(["Addenda:", "", *addenda]) if addenda else "No addendum was issued.",
        issues="\n".join(["Issues and addenda that tags record:", "", *recorded])
        if recorded
        else "No tag records an issue of it.",
        list=LIST,
    )
