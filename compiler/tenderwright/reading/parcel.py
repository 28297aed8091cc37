"""Read a parcel: the yard edition or an addendum as one archive, as a yard holds it."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tenderwright.reading.unpack import BadArchive, unpack

MAX_BYTES = 200_000_000
MANIFEST = "manifest.json"
_MAX_MANIFEST = 4_000_000
_COMMIT = re.compile(r"[0-9a-f]{40}(?:[0-9a-f]{24})?")


class BadParcel(Exception):
    """A file is not a parcel that can be compared with anything; the message says why."""


@dataclass(frozen=True)
class Parcel:
    """A parcel: its bytes, its files, and what its manifest says."""

    content: bytes
    members: Mapping[str, bytes | None]
    """By path below the folder that the parcel holds; None for one that is damaged."""
    tender: str
    commit: str
    compiler: str
    """Version of the compiler that wrote it; empty where the manifest does not say it."""
    checksums: Mapping[str, str]
    """SHA-256 of each file that the manifest lists."""
    amends: str = ""
    """Of an addendum, the commit of what yards had before it; empty for a yard edition."""

    def altered(self) -> dict[str, str]:
        """Tell, by path, which files are not those that the parcel's own manifest lists, and how."""
        found = dict.fromkeys(self.members.keys() - {*self.checksums, MANIFEST}, "is not in the manifest")
        for path, checksum in self.checksums.items():
            content = self.members.get(path)
            if path not in self.members:
                found[path] = "is in the manifest and not in the parcel"
            elif content is None:
                found[path] = "is damaged and cannot be unpacked"
            elif hashlib.sha256(content).hexdigest() != checksum:
                found[path] = "was altered after the manifest was written"
        return dict(sorted(found.items()))


def read_parcel(file: Path) -> Parcel:
    """Read a parcel; raises `BadParcel` where it is none, or is a draft, which names no commit."""
    name = f"`{file.name}`"
    try:
        if file.stat().st_size > MAX_BYTES:
            raise BadParcel(f"{name} is larger than {MAX_BYTES // 1_000_000} MB, which no parcel is")
        content = file.read_bytes()
        members = unpack(content)
    except OSError as error:
        raise BadParcel(f"`{file}` cannot be read: {error.strerror}") from error
    except BadArchive as error:
        raise BadParcel(f"{name} is not a parcel: {error}") from error
    folders = {path.partition("/")[0] for path in members}
    if len(folders) != 1:
        raise BadParcel(f"{name} is not a parcel: what it holds does not lie in one folder")
    below = {path.partition("/")[2]: held for path, held in members.items()}
    return _described(name, content, below, _manifest(name, below.get(MANIFEST)))


def _manifest(name: str, content: bytes | None) -> dict[str, Any]:
    if content is None or len(content) > _MAX_MANIFEST:
        raise BadParcel(f"{name} is not a parcel: it holds no {MANIFEST} that can be read")
    try:
        data = json.loads(content)
    except (ValueError, RecursionError) as error:
        raise BadParcel(f"{name} cannot be compared: its {MANIFEST} is not JSON") from error
    if not isinstance(data, dict):
        raise BadParcel(f"{name} cannot be compared: its {MANIFEST} is not that of an edition")
    return data


def _described(name: str, content: bytes, members: Mapping[str, bytes | None], said: dict[str, Any]) -> Parcel:
    listed = said.get("files")
    entries = [entry for entry in listed if isinstance(entry, dict)] if isinstance(listed, list) else []
    checksums = {str(entry.get("path")): str(entry.get("sha256")) for entry in entries}
    tender = str(said.get("tender"))
    if (
        said.get("edition") not in ("yard", "addendum")
        or not checksums
        or not all(one.isprintable() for one in (tender, *checksums))
    ):
        raise BadParcel(f"{name} cannot be compared: its {MANIFEST} is not that of a yard edition or an addendum")
    if said.get("state") != "issued":
        raise BadParcel(f"{name} is a draft: it names no commit that it could be compared with")
    commit = str(said.get("commit"))
    amends = str(said.get("amends")) if said.get("edition") == "addendum" else ""
    if not all(_COMMIT.fullmatch(one) for one in (commit, amends or commit)):
        raise BadParcel(f"{name} cannot be compared: its {MANIFEST} names no commit")
    compiler = said.get("compiler")
    known = compiler if isinstance(compiler, str) and compiler.isprintable() else ""
    return Parcel(content, members, tender, commit, known, checksums, amends)
