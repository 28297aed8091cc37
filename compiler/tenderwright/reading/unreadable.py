"""Notices of files that are not there or cannot be read."""

from __future__ import annotations

from pathlib import Path as FilePath

from tenderwright.notices import Notice, Place


def no_file(file: FilePath, name: str, at: Place) -> Notice:
    """Tell of a name under which there is no file."""
    if file.is_dir():
        return Notice("not-a-file", at, f"`{name}` is a folder", hints=("name a file in it",))
    if file.exists():
        return Notice("not-a-file", at, f"`{name}` is not a file", hints=("name a file",))
    return Notice("no-such-file", at, f"`{name}` does not exist", hints=("look at how the name is written",))


def unreadable(path: str, error: OSError) -> Notice:
    """Tell of a file or folder that the system does not let us read."""
    message = f"`{path}` cannot be read: {(error.strerror or 'the system gives no reason').lower()}"
    hint = "give yourself the right to read it, or copy it here again"
    return Notice("unreadable-file", Place(path), message, hints=(hint,))
