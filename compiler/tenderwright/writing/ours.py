"""Tells what in an output folder an earlier run wrote, and takes away nothing else."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Any

from tenderwright.reading.unpack import BadArchive, unpack
from tenderwright.writing.archive import parcel_name
from tenderwright.writing.errors import WritingError
from tenderwright.writing.manifest import MANIFEST_NAME

LEFT_BY_DESKTOPS = (".DS_Store", "Thumbs.db", "desktop.ini")
"""What file managers leave in folders that are looked at; it says nothing, and goes with the folder."""


@dataclass(frozen=True)
class Found:
    """What lies in an output folder, by path."""

    ours: tuple[str, ...]
    """The manifest, and the files that stand as it lists them; and what desktops left."""
    folders: tuple[str, ...]
    """Of those files, the deepest first."""
    others: Mapping[str, str]
    """What is not ours, with what is to be said of it."""


def look_through(folder: Path) -> Found:
    """Tell what in a folder is as its manifest lists it, and what is not."""
    said = manifest_in(folder)
    listed = _listed(said)
    parents = {str(parent) for path in listed for parent in PurePosixPath(path).parents}
    ours: list[str] = []
    folders: list[str] = []
    others: dict[str, str] = {}
    for path, entry in _walk(folder, ""):
        if entry.is_dir(follow_symlinks=False):
            if path in parents:
                folders.append(path)
            elif not any(other.startswith(f"{path}/") for other in others):
                others[path] = "was not written by an earlier run"
        elif not entry.is_file(follow_symlinks=False):
            others[path] = "was not written by an earlier run"
        elif path == MANIFEST_NAME and not listed:
            others[path] = "is not the list of an edition"
        elif path in listed:
            if _sha256(folder / path) == listed[path]:
                ours.append(path)
            else:
                others[path] = "was changed after it was written"
        elif path.rpartition("/")[2] in LEFT_BY_DESKTOPS or _is_parcel(folder, path, said, listed):
            ours.append(path)
        elif path != MANIFEST_NAME:
            others[path] = "was not written by an earlier run"
    if listed:
        ours.append(MANIFEST_NAME)
    return Found(tuple(ours), tuple(folders), dict(sorted(others.items())))


def refuse_others(folder: Path, shown: Path | None = None) -> None:
    """Raise `WritingError` where a folder holds anything that is not ours; `shown` is what the folder is called."""
    others = look_through(folder).others
    if others:
        path, what = next(iter(others.items()))
        more = f" (and {len(others) - 1} more there)" if len(others) > 1 else ""
        raise WritingError(
            f"{(shown or folder) / path} {what}{more}, and would be lost; "
            "move it to another folder or delete it, and give the command again"
        )


def remove(folder: Path) -> None:
    """Take away the folder of an edition, file by file as listed; raises `WritingError` as `refuse_others` does.

    The manifest goes last, so that what a killed run leaves can still be told to be ours.
    """
    refuse_others(folder)
    found = look_through(folder)
    for path in found.ours:
        if path != MANIFEST_NAME:
            (folder / path).unlink(missing_ok=True)
    for path in found.folders:
        (folder / path).rmdir()
    (folder / MANIFEST_NAME).unlink(missing_ok=True)
    folder.rmdir()


def manifest_in(folder: Path) -> dict[str, Any]:
    """Read the manifest of a folder; empty where there is none that can be read."""
    file = folder / MANIFEST_NAME
    try:
        said = json.loads(file.read_bytes()) if file.is_file() and not file.is_symlink() else {}
    except (ValueError, RecursionError):
        return {}
    return said if isinstance(said, dict) else {}


def _listed(said: Mapping[str, Any]) -> dict[str, str]:
    """Give the checksum of each file that the manifest of an edition lists; empty for any other."""
    entries = said.get("files")
    known = all(isinstance(said.get(key), str) for key in ("tender", "edition", "compiler"))
    if not known or not isinstance(entries, list) or not all(isinstance(entry, dict) for entry in entries):
        return {}
    return {str(entry.get("path")): str(entry.get("sha256")) for entry in entries}


def _is_parcel(folder: Path, path: str, said: Mapping[str, Any], listed: Mapping[str, str]) -> bool:
    """Tell whether a file is the edition's own parcel: an archive of what the manifest lists, and of the manifest."""
    name = parcel_name(str(said.get("tender")), str(said.get("edition")))
    if not path.startswith(name) or not path.endswith(".zip"):
        return False
    try:
        members = unpack((folder / path).read_bytes())
    except BadArchive:
        return False
    stem = path.removesuffix(".zip")
    wanted = {f"{stem}/{name}": checksum for name, checksum in listed.items()}
    wanted[f"{stem}/{MANIFEST_NAME}"] = _sha256(folder / MANIFEST_NAME)
    return wanted == {name: hashlib.sha256(held or b"").hexdigest() for name, held in members.items()}


def _sha256(file: Path) -> str:
    with open(file, "rb") as content:
        return hashlib.file_digest(content, "sha256").hexdigest()


def _walk(folder: Path, below: str) -> Iterator[tuple[str, os.DirEntry[str]]]:
    """Give everything in a folder by its path, what a folder holds before the folder itself."""
    for entry in sorted(os.scandir(folder / below), key=lambda entry: entry.name):
        path = f"{below}{entry.name}"
        if entry.is_dir(follow_symlinks=False):
            yield from _walk(folder, f"{path}/")
        yield path, entry
