"""Whether a file is as it was committed, found without asking git to look at it.

It is where its bytes have the name that git gave them (`_blob_name`), so no filter of the repository is asked to run.
Line ends may differ: where git was told to write CRLF into the files, they are compared as LF, which the reader makes
of all of them anyway.
"""

from __future__ import annotations

import hashlib
import os
import stat
from pathlib import Path
from typing import NamedTuple

from tenderwright.reading.git import Repository
from tenderwright.reading.yaml_file import MAX_SURVEY_BYTES


class Committed(NamedTuple):
    """A file as a commit has it."""

    mode: str
    name: str
    """Of its content."""


def committed_files(repository: Repository, folder: Path) -> dict[str, Committed]:
    """Give the files below a folder as HEAD has them, by path; none where git does not know them."""
    listed = repository.answer("ls-tree", "-r", "-z", "--full-tree", f"HEAD:{repository.path_of(folder)}") or ""
    found = {}
    for entry in listed.split("\0"):
        about, _, path = entry.partition("\t")
        if path:
            mode, _, name = about.split()
            found[path] = Committed(mode, name)
    return found


def is_as_committed(file: Path, entry: Committed) -> bool:
    """Tell whether a file is as it was committed.

    One too large for the reader is not looked at. Of a repository within the repository (a submodule) nothing is asked:
    its files are not committed in this one.
    """
    if entry.mode == "160000":
        return True
    try:
        about = file.lstat()
        if entry.mode == "120000":
            return stat.S_ISLNK(about.st_mode) and _blob_name(os.fsencode(os.readlink(file)), entry.name) == entry.name
        if not stat.S_ISREG(about.st_mode) or about.st_size > MAX_SURVEY_BYTES:
            return False
        content = file.read_bytes()
    except OSError:
        return False
    unix = content.replace(b"\r\n", b"\n")
    return entry.name in (_blob_name(content, entry.name), _blob_name(unix, entry.name))


def _blob_name(content: bytes, like: str) -> str:
    """Give the name that git gives a content (its hash, after a heading), by the hash of another name."""
    made = hashlib.sha256() if len(like) == 64 else hashlib.sha1(usedforsecurity=False)
    made.update(b"blob %d\0" % len(content))
    made.update(content)
    return made.hexdigest()
