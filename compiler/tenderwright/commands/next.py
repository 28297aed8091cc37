"""`tenderwright next`: begin the package of the tender after a closed one, which is kept in it as an archive."""

from __future__ import annotations

import hashlib
import re
import shlex
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder

_TODO = re.compile(r"\btodo\b")

if TYPE_CHECKING:
    from tenderwright.pipeline import Compiled, OwnersSide
    from tenderwright.reading.package import Files
    from tenderwright.starter.following.closed import Closed
    from tenderwright.starter.following.sources import Following


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package whose tender is over; it stays as it is")
    parser.add_argument("new", type=Path, metavar="NEW", help="a new or empty folder")
    parser.add_argument(
        "--number", required=True, metavar="N", help="the number of the next tender, such as HPT-2039-01"
    )


def run(arguments: Namespace) -> int:
    """Begin the next package."""
    from tenderwright.commands.both_sides import both_sides
    from tenderwright.pipeline import read

    root: Path = package_folder(arguments.folder)
    new: Path = arguments.new
    if new.resolve() == root.resolve() or root.resolve() in new.resolve().parents:
        raise WrongUse(f"`{new}` lies in the package that it would begin from; name a folder beside it")
    files = read(root)
    sides = both_sides(files)
    return MISTAKES if sides is None else _begin(files, new, arguments.number.strip(), *sides)


def _begin(files: Files, new: Path, number: str, compiled: Compiled, owner: OwnersSide) -> int:
    from tenderwright.reading.archived import ARCHIVE, LIST
    from tenderwright.reading.at_commit import NotAtCommit
    from tenderwright.reading.git import Refused
    from tenderwright.reading.issued import issued
    from tenderwright.starter.following.archive import archive_of, files_below
    from tenderwright.starter.following.closed import closed_tender
    from tenderwright.starter.following.sources import following
    from tenderwright.starter.write import shared_files, write_starter
    from tenderwright.writing.archive import file_name

    root, tender = files.root, compiled.package.tender
    if tender is None:
        raise WrongUse("nothing can be begun from it: package.yaml is not filled in yet")
    old = tender.tender.number
    if not number or number == old:
        raise WrongUse(f"the next tender needs a number of its own: this one is {old}")
    for one in (old, number):
        if (root / ARCHIVE / file_name(one)).exists():
            raise WrongUse(f"{one} is closed already: its archive lies in {root / ARCHIVE / file_name(one)}")
    closed = closed_tender(compiled.package, owner.papers, old)
    if closed.docking is None and owner.papers.award is not None:
        raise WrongUse(f"{old} is awarded and not closed: `tenderwright close` writes what its docking came to")
    try:
        copied, made = archive_of(files, tender, closed, [one for one in issued(root) if one.tender == old])
        sources = following(number, closed, compiled.package, compiled.links, files.sources)
        copied |= {path: root / path for path in (*sources.same, *files.travelling)}
        for kept in (ARCHIVE.rstrip("/"), "photographs", "drawings"):
            copied |= {path: root / path for path in files_below(root, kept)}
        copied |= {path: root / path for path in ("README.md", "LICENSE", "owner/README.md") if (root / path).is_file()}
        copied |= {name: path for name, path in shared_files().items() if name not in copied}
        written = write_starter(new, copied, {**sources.texts, **made})
    except (OSError, Refused, NotAtCommit) as error:
        raise WrongUse(str(error)) from error
    print(f"{new}: {len(written)} files, a first draft of {number}")
    for line in _told(closed, sources):
        print(f"  {line}")
    archive, listed = next((path, content) for path, content in made.items() if path.endswith(f"/{LIST}"))
    folder = archive.removesuffix(f"/{LIST}")
    print(f"{new / folder}: {old} as it was, {len(listed.splitlines())} files")
    print(f"  SHA-256 of its {LIST}: {hashlib.sha256(listed).hexdigest()}")
    print("  write that into the minutes: by it anybody can show later that the archive is this one")
    print(f"next: tenderwright check {shlex.quote(str(new))}")
    return CLEAN


def _told(closed: Closed, sources: Following) -> list[str]:
    """Say what the draft is made of."""
    from tenderwright.starter.following.register import REGISTER

    items = [path for path in (*sources.same, *sources.texts) if path.startswith("items/")]
    asked = [path for path in items if _TODO.search(sources.texts.get(path, ""))]
    told = [f"{len(items)} items, of which {len(asked)} ask something"]
    if sources.left:
        told.append(f"left behind, since withdrawn: {', '.join(sources.left)}")
    if closed.docking is None:
        told.append("no docking in history/ is later than its issue, so nothing of it counts as done")
    else:
        told.append(f"what was done and put off is in history/{closed.docking.docking}.yaml")
        told.append("`tenderwright add rates` takes what was paid for the same lines from owner/closing/")
    if REGISTER in sources.texts:
        told.append(
            "the approvals go along, none of them asked for yet; those of a source of money stay behind with it"
        )
    told.append("questions, rates, funding, risks, scope and grants are in the archive alone")
    return told
