"""Puts the files of an edition in place, all of them or none."""

from __future__ import annotations

import os
import re
import shutil
from collections.abc import Mapping
from pathlib import Path, PurePosixPath
from uuid import uuid4

from tenderwright.writing.errors import WritingError
from tenderwright.writing.exchange import exchange
from tenderwright.writing.lock import locked, refuse_other_host
from tenderwright.writing.manifest import MANIFEST_NAME
from tenderwright.writing.ours import refuse_others, remove


def write_outputs(build: Path, name: str, files: Mapping[str, bytes], *, replace: bool = True) -> Path:
    """Write the files of one edition as `build/name`, in place of an earlier one, and give that folder.

    The new folder is filled beside the old one and then changes places with it, so stale files vanish, and a failure
    leaves the old folder as it was. Where it is not to `replace`, an earlier one must hold the same bytes already.
    Raises `WritingError`, touching nothing, for a path that leaves the folder, and as `check_place` does.
    """
    _check_paths([name])
    _check_paths(files)
    if MANIFEST_NAME not in files:
        raise WritingError(f"an edition is not written without its {MANIFEST_NAME}")
    check_place(build, name)
    folder = build / name
    build.mkdir(parents=True, exist_ok=True)
    with locked(build):
        _recover(build, name)
        check_place(build, name)
        if folder.exists() and not replace:
            _refuse_another(folder, files)
            return folder
        _put(folder, _retired(build, name), files)
    return folder


def remove_outputs(build: Path, name: str) -> None:
    """Take an edition away again; raises `WritingError` as `check_place` does."""
    with locked(build):
        check_place(build, name)
        remove(build / name)


def check_place(build: Path, name: str) -> None:
    """Raise `WritingError` where `build/name` cannot take an edition, and say which file is in the way.

    That is for a link in place of a folder, for a file in place of one, for a folder that holds anything but what an
    earlier run wrote, as it wrote it, and for a lock of another host.
    """
    if "/" in name:
        raise WritingError(f"{name!r} is not the name of one folder")
    folder, retired = build / name, _retired(build, name)
    for place in (build, folder, retired):
        if place.is_symlink():
            raise WritingError(f"{place} is a link; outputs are not written through links")
        if place.exists() and not place.is_dir():
            raise WritingError(f"{place} is a file where a folder belongs")
    refuse_other_host(build)
    for place in (folder, retired):
        if place.exists():
            refuse_others(place)


def _retired(build: Path, name: str) -> Path:
    return build / f".{name}.retired"


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


def _refuse_another(folder: Path, files: Mapping[str, bytes]) -> None:
    for path, content in files.items():
        if not (folder / path).is_file() or (folder / path).read_bytes() != content:
            raise WritingError(f"{folder} is there already with another {path}, and is never written over")


def _recover(build: Path, name: str) -> None:
    """Make good what a killed run left: bring back the folder it had put aside, take away what it had not placed."""
    folder, retired = build / name, _retired(build, name)
    if retired.exists():
        remove(retired) if folder.exists() else retired.rename(folder)
    unplaced = re.compile(rf"\.{re.escape(name)}\.[0-9a-f]{{32}}")
    for place in sorted(build.iterdir()):
        if unplaced.fullmatch(place.name) and place.is_dir() and not place.is_symlink():
            _discard(place)


def _discard(place: Path) -> None:
    """Take away a folder not in place; its manifest is the last file it gets, so one without was never whole."""
    if (place / MANIFEST_NAME).exists():
        remove(place)
    elif place.exists():
        shutil.rmtree(place)


def _put(folder: Path, retired: Path, files: Mapping[str, bytes]) -> None:
    fresh = folder.with_name(f".{folder.name}.{uuid4().hex}")
    try:
        _fill(fresh, files)
        if not folder.exists():
            fresh.rename(folder)
            return
        _swap(fresh, folder, retired)
    except BaseException:
        _discard(fresh)
        raise
    remove(retired)


def _fill(fresh: Path, files: Mapping[str, bytes]) -> None:
    fresh.mkdir()
    for path in sorted(files, key=lambda path: (path == MANIFEST_NAME, path)):
        target = fresh / path
        target.parent.mkdir(parents=True, exist_ok=True)
        with open(target, "xb") as output:
            output.write(files[path])
            output.flush()
            os.fsync(output.fileno())


def _swap(fresh: Path, folder: Path, retired: Path) -> None:
    """Give the new folder the name of the old one, and put that aside, unless something was put into it meanwhile."""
    if exchange(fresh, folder):
        try:
            refuse_others(fresh, folder)
        except WritingError:
            exchange(fresh, folder)
            raise
        fresh.rename(retired)
        return
    folder.rename(retired)
    try:
        refuse_others(retired, folder)
        fresh.rename(folder)
    except BaseException:
        if not folder.exists():
            retired.rename(folder)
        raise
