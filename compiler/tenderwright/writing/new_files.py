"""Puts new files into a package, all of them or none, and never over a file that is there."""

from __future__ import annotations

import hashlib
import json
import os
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from uuid import uuid4

from tenderwright.reading.layout import UNFINISHED
from tenderwright.writing.errors import WritingError
from tenderwright.writing.json_file import Json, canonical_json
from tenderwright.writing.lock import locked


def in_the_way(root: Path, files: Mapping[str, bytes]) -> list[str]:
    """List the files that are there already."""
    return [path for path in files if os.path.lexists(root / path)]


@contextmanager
def new_files(root: Path, files: Mapping[str, bytes]) -> Iterator[None]:
    """Write new files below root for the time of what follows, and for good once that has succeeded.

    Where anything fails, the files and the folders made for them are gone again; where the process is killed, a list
    of them stays, by which `take_back` does the same. Raises `WritingError`, touching nothing, where one of them is
    there already or its folder leads out of root.
    """
    with locked(root):
        _take_back(root)
        if there := in_the_way(root, files):
            raise WritingError(f"{there[0]} is there already, and no source file is ever written over")
        for path in files:
            if not _parent_of(root, path).resolve().is_relative_to(root.resolve()):
                raise WritingError(f"the folder of {path} leads out of the package")
        try:
            _list(root, files)
            for path, content in files.items():
                (root / path).parent.mkdir(parents=True, exist_ok=True)
                write_new(root / path, content)
            yield
        except BaseException:
            _take_back(root)
            raise
        (root / UNFINISHED).unlink()


def take_back(root: Path) -> None:
    """Take away the files that a killed command had put into a package before it was done, unless changed since."""
    if (root / UNFINISHED).exists():
        with locked(root):
            _take_back(root)


def _list(root: Path, files: Mapping[str, bytes]) -> None:
    """Write down what will be put where, before anything is."""
    folders = {parent for path in files for parent in Path(path).parents if not (root / parent).exists()}
    checksums = {path: hashlib.sha256(content).hexdigest() for path, content in files.items()}
    listed: Json = {"files": checksums, "folders": sorted((folder.as_posix() for folder in folders), reverse=True)}
    with open(root / UNFINISHED, "xb") as output:
        output.write(canonical_json(listed))
        output.flush()
        os.fsync(output.fileno())


def _take_back(root: Path) -> None:
    """Take away what the list names, as it was written, but no folder in which someone else has put a file."""
    try:
        listed = json.loads((root / UNFINISHED).read_bytes())
    except FileNotFoundError:
        return
    except ValueError:  # killed while the list was written, so that nothing was put anywhere
        listed = {"files": {}, "folders": []}
    for path, checksum in listed["files"].items():
        target = root / path
        if not target.resolve().is_relative_to(root.resolve()):
            raise WritingError(f"{root / UNFINISHED} names {path}, which leads out of the package; delete that list")
        if target.is_file() and hashlib.sha256(target.read_bytes()).hexdigest() == checksum:
            target.unlink()
        half_written = re.compile(rf"\.{re.escape(target.name)}\.[0-9a-f]{{32}}")
        for beside in list(target.parent.iterdir()) if target.parent.is_dir() else []:
            if half_written.fullmatch(beside.name):
                beside.unlink()
    for folder in listed["folders"]:
        if (root / folder).is_dir() and not any((root / folder).iterdir()):
            (root / folder).rmdir()
    (root / UNFINISHED).unlink()


def _parent_of(root: Path, path: str) -> Path:
    """Give the nearest folder above a file that there is."""
    parent = (root / path).parent
    while not parent.exists() and parent != root:
        parent = parent.parent
    return parent


def write_new(target: Path, content: bytes) -> None:
    """Write a file whole beside its place, then give it its name, unless another has taken that meanwhile."""
    fresh = target.with_name(f".{target.name}.{uuid4().hex}")
    try:
        with open(fresh, "xb") as output:
            output.write(content)
            output.flush()
            os.fsync(output.fileno())
        try:
            os.link(fresh, target)
        except FileExistsError as error:
            raise WritingError(f"{target} is there already, and no source file is ever written over") from error
        except OSError:  # a file system without hard links
            if target.exists():
                raise
            fresh.rename(target)
    finally:
        fresh.unlink(missing_ok=True)
