"""Judge where a command writes, before any work."""

from __future__ import annotations

from argparse import ArgumentParser
from pathlib import Path
from tempfile import TemporaryFile

from tenderwright.commands.folder import WrongUse
from tenderwright.writing.errors import WritingError
from tenderwright.writing.new_files import take_back
from tenderwright.writing.outputs import check_place

BUILD = Path("build")


def add_out(parser: ArgumentParser, below: str) -> None:
    """Add the argument that names the folder, in which the command writes the folders `below`."""
    parser.add_argument(
        "--out", type=Path, default=BUILD, metavar="DIR", help=f"where {below} is written (default: {BUILD})"
    )


def judge_out(root: Path, out: Path) -> None:
    """Raise WrongUse where the folder is the package, lies among its sources, is a file, or cannot be written."""
    place, package = out.resolve(), root.resolve()
    if place == package:
        raise WrongUse("nothing can be written over the package itself; name another folder with --out")
    if place.is_relative_to(package):
        first = place.relative_to(package).parts[0]
        if first == ".git" or (first != BUILD.name and not first.startswith(".")):
            raise WrongUse(f"`{out}` lies among the sources of the package; name a folder outside it with --out")
    there = next((folder for folder in (place, *place.parents) if folder.exists()), place)
    if not there.is_dir():
        raise WrongUse(f"`{there}` is a file where a folder belongs; name another folder with --out")
    try:
        with TemporaryFile(dir=there):
            pass
    except OSError as error:
        raise WrongUse(f"`{there}` cannot be written: {error.strerror}; name another folder with --out") from error


def judge_place(out: Path, *names: str) -> None:
    """Raise WrongUse where folders of these names cannot take an edition, and say which file is in the way."""
    for name in names:
        try:
            check_place(out, name)
        except (WritingError, OSError) as error:
            raise WrongUse(str(error)) from error


def take_back_unfinished(root: Path) -> None:
    """Take away what a killed command left half done in a package; raises WrongUse where that cannot be."""
    try:
        take_back(root)
    except (WritingError, OSError) as error:
        raise WrongUse(str(error)) from error
