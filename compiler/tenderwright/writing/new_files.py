"""Puts new files into a package, all of them or none, and never over a file that is there."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from uuid import uuid4

from tenderwright.writing.errors import WritingError


def in_the_way(root: Path, files: Mapping[str, bytes]) -> list[str]:
    """List the files that are there already."""
    return [path for path in files if os.path.lexists(root / path)]


@contextmanager
def new_files(root: Path, files: Mapping[str, bytes]) -> Iterator[None]:
    """Write new files below root for the time of what follows, and for good once that has succeeded.

    Where anything fails, the files and the folders made for them are gone again. Raises `WritingError`, touching
    nothing, where one of them is there already or its folder leads out of root.
    """
    if there := in_the_way(root, files):
        raise WritingError(f"{there[0]} is there already, and no source file is ever written over")
    for path in files:
        if not _parent_of(root, path).resolve().is_relative_to(root.resolve()):
            raise WritingError(f"the folder of {path} leads out of the package")
    made: list[Path] = []
    try:
        for path, content in files.items():
            _make_folder((root / path).parent, made)
            _write_new(root / path, content, made)
        yield
    except BaseException:
        _take_away(made)
        raise


def _take_away(made: list[Path]) -> None:
    """Take away what was made, but no folder in which someone else has put a file meanwhile."""
    for path in reversed(made):
        if not path.is_dir():
            path.unlink(missing_ok=True)
        elif not any(path.iterdir()):
            path.rmdir()


def _parent_of(root: Path, path: str) -> Path:
    """Give the nearest folder above a file that there is."""
    parent = (root / path).parent
    while not parent.exists() and parent != root:
        parent = parent.parent
    return parent


def _make_folder(folder: Path, made: list[Path]) -> None:
    if not folder.exists():
        _make_folder(folder.parent, made)
        folder.mkdir()
        made.append(folder)


def _write_new(target: Path, content: bytes, made: list[Path]) -> None:
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
        made.append(target)
    finally:
        fresh.unlink(missing_ok=True)
