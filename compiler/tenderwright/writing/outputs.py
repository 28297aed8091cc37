"""Puts the files of an edition in place, all of them or none."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path, PurePosixPath
from uuid import uuid4

from tenderwright.writing.errors import WritingError
from tenderwright.writing.manifest import MANIFEST_NAME


def write_outputs(build: Path, name: str, files: Mapping[str, bytes]) -> Path:
    """Write the files of one edition as `build/name`, in place of what was there, and give that folder.

    The new folder is filled beside the old one and then takes its name, so stale files vanish, and a failure
    leaves the old folder as it was. Raises `WritingError`, touching nothing, for a path that leaves the
    folder, for a link in place of a folder, and for a folder that holds no manifest and so was not written by
    an earlier build.
    """
    _check_paths([name])
    _check_paths(files)
    if "/" in name:
        raise WritingError(f"{name!r} is not the name of one folder")
    if MANIFEST_NAME not in files:
        raise WritingError(f"an edition is not written without its {MANIFEST_NAME}")
    folder = build / name
    retired = build / f".{name}.retired"
    _check_place(build, folder, retired)
    build.mkdir(parents=True, exist_ok=True)
    _recover(folder, retired)
    with _filled(build / f".{name}.{uuid4().hex}", files) as fresh:
        _swap(fresh, folder, retired)
    return folder


def _check_paths(paths: Mapping[str, bytes] | list[str]) -> None:
    known: set[str] = set()
    for path in paths:
        parts = path.split("/")
        if "\\" in path or "\0" in path or path.startswith("/") or any(part in ("", ".", "..") for part in parts):
            raise WritingError(f"{path!r} is not a path inside an edition")
        if path.casefold() in known:
            raise WritingError(f"two files would be called {path!r} where case does not tell them apart")
        known.add(path.casefold())
    for path in paths:
        for parent in PurePosixPath(path).parents:
            if str(parent).casefold() in known:
                raise WritingError(f"{str(parent)!r} would be a file and a folder")


def _check_place(build: Path, folder: Path, retired: Path) -> None:
    for place in (build, folder, retired):
        if place.is_symlink():
            raise WritingError(f"{place} is a link; outputs are not written through links")
        if place.exists() and not place.is_dir():
            raise WritingError(f"{place} is a file where a folder belongs")
    if folder.exists() and any(folder.iterdir()) and not (folder / MANIFEST_NAME).is_file():
        raise WritingError(f"{folder} holds files but no {MANIFEST_NAME}, so it was not written by an earlier build")


def _recover(folder: Path, retired: Path) -> None:
    """Bring back a folder that an interrupted build had put aside, or drop it when it was replaced."""
    if not retired.exists():
        return
    if folder.exists():
        shutil.rmtree(retired)
    else:
        retired.rename(folder)


@contextmanager
def _filled(fresh: Path, files: Mapping[str, bytes]) -> Iterator[Path]:
    """Make a folder with the files in it, and leave nothing of it behind when it was not put in place."""
    try:
        fresh.mkdir()
        for path, content in sorted(files.items()):
            target = fresh / path
            target.parent.mkdir(parents=True, exist_ok=True)
            with open(target, "xb") as output:
                output.write(content)
                output.flush()
                os.fsync(output.fileno())
        yield fresh
    finally:
        if fresh.exists():
            shutil.rmtree(fresh)


def _swap(fresh: Path, folder: Path, retired: Path) -> None:
    if not folder.exists():
        fresh.rename(folder)
        return
    folder.rename(retired)
    try:
        fresh.rename(folder)
    except OSError:
        retired.rename(folder)
        raise
    shutil.rmtree(retired)


def write_file(path: Path, content: bytes) -> None:
    """Write one file whole: beside its place first, then into it. Raises `WritingError` for a link."""
    if path.is_symlink() or path.parent.is_symlink():
        raise WritingError(f"{path} is a link; outputs are not written through links")
    path.parent.mkdir(parents=True, exist_ok=True)
    fresh = path.with_name(f".{path.name}.{uuid4().hex}")
    try:
        fresh.write_bytes(content)
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)
