"""Where the Tenderwright that runs was fetched from, at one commit, as pip takes it."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit, urlunsplit

import tenderwright
from tenderwright.reading.as_committed import committed_files, is_as_committed
from tenderwright.reading.git import Refused, repository_of

_COMMIT = re.compile(r"[0-9a-f]{40}(?:[0-9a-f]{24})?")
_SHORT_SSH = re.compile(r"([\w.-]+@[\w.-]+):(?!/)(\S+)")
"""The short way to write an SSH address, `user@host:path`."""


def pinned_source() -> str:
    """Give what pip installs to have this very Tenderwright; nothing where others cannot fetch it, or it is unknown."""
    code = Path(tenderwright.__file__).resolve().parent
    checkout = code.parents[1]
    if (checkout / "pyproject.toml").is_file():
        return of_checkout(checkout)
    try:
        installed = distribution("tenderwright")
    except PackageNotFoundError:
        return ""
    told = installed.read_text("direct_url.json")
    if told is None or Path(str(installed.locate_file("tenderwright"))).resolve() != code:
        return ""
    return of_direct_url(json.loads(told))


def of_direct_url(told: Mapping[str, Any]) -> str:
    """Read the record that installers leave of where a distribution came from (PEP 610)."""
    about = told.get("vcs_info", {})
    if about.get("vcs") != "git" or "subdirectory" in told:
        return ""
    return _pinned(str(told.get("url", "")), str(about.get("commit_id", "")))


def of_checkout(root: Path) -> str:
    """Give the commit that is checked out, where nothing is changed and a remote held it when last asked."""
    try:
        repository = repository_of(root)
    except Refused:
        return ""
    if repository is None or repository.top != root.resolve():
        return ""
    committed = committed_files(repository, repository.top)
    if not committed or not all(is_as_committed(root / path, entry) for path, entry in committed.items()):
        return ""
    if not repository.answer("for-each-ref", "--contains=HEAD", "refs/remotes/origin/"):
        return ""
    url, commit = repository.answer("remote", "get-url", "origin"), repository.answer("rev-parse", "HEAD")
    return _pinned(url or "", commit or "")


def _pinned(url: str, commit: str) -> str:
    short = _SHORT_SSH.fullmatch(url)
    parts = urlsplit(f"ssh://{short[1]}/{short[2]}" if short else url)
    if parts.scheme not in ("http", "https", "ssh") or not parts.hostname or not _COMMIT.fullmatch(commit):
        return ""
    host = parts.netloc.rpartition("@")[2]
    user = f"{parts.username}@" if parts.scheme == "ssh" and parts.username else ""
    return f"tenderwright @ git+{urlunsplit((parts.scheme, user + host, parts.path, '', ''))}@{commit}"
