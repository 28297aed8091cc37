"""The data of a package as one tree: every file that yards read of by its path, compared to the last digit and key."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from typing import Any

from tenderwright.reading.package import Files

_NOT_FOR_YARDS = {"package.yaml": {"owner_papers", "format"}}
"""Keys that bear on the owner's own papers or on how files are written, which no yard is told of."""
_OWNERS_ALONE = ("facilities/", "care/")
"""Folders of which nothing stands in the yard edition, though they may be public."""

_YARDS_ALONE = {"tow.yaml": ("in_dock",)}
"""Of a file that is for others, the keys that yards read: the tow itself tells to which dock she goes."""

PackageData = Mapping[str, Any]
"""The data of each file by path: what YAML holds, or the text of a clause or survey."""


def package_data(files: Files) -> dict[str, Any]:
    """Give the data of every file that the yard edition tells of, by path."""
    read = files.without_owner().sources
    sources = sorted((path, source) for path, source in read.items() if not path.startswith(_OWNERS_ALONE))
    told = ((path, source.data) for path, source in sources if path not in _YARDS_ALONE or _kept(path, source.data))
    made = {path: _for_yards(path, data) for path, data in told}
    made |= {path: f"SHA-256 {one.sha256}\n" for path, one in files.travelling.items()}
    return made | {path: f"SHA-256 {files.photographs[path].sha256()}\n" for path in files.photographs_listed}


def _for_yards(path: str, data: Any) -> Any:
    if path in _YARDS_ALONE:
        return _kept(path, data)
    left_out = _NOT_FOR_YARDS.get(path)
    return {key: data[key] for key in data if key not in left_out} if left_out and isinstance(data, dict) else data


def _kept(path: str, data: Any) -> dict[str, Any]:
    """Give what yards read of a file that is for others; empty where there is nothing."""
    return {key: data[key] for key in _YARDS_ALONE[path] if key in data} if isinstance(data, dict) else {}


def written(data: Any) -> str:
    """Write data as JSON that tells apart 1, 1.0, true and "1", and the order of keys."""
    return json.dumps(data, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def same(one: Any, other: Any) -> bool:
    """Tell whether two pieces of data are the same in every value, type and order."""
    return written(one) == written(other)


def digest(data: PackageData) -> str:
    """Give the SHA-256 of a package's data, whose files come in the order of their paths."""
    return hashlib.sha256(written({path: data[path] for path in sorted(data)}).encode()).hexdigest()
