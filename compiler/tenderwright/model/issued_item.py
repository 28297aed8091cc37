"""What earlier issues of a tender held, of each item just enough to know it again."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.model.item import said
from tenderwright.reading.package import Files


class IssuedItem(Struct, frozen=True):
    """A work item as an earlier issue held it."""

    number: str
    title: str
    kind: str
    lines: Mapping[str, str]
    """The text of each line that the yard prices, by its letter."""
    revision: int
    said: Mapping[str, Any]
    """What it asked of the yard."""
    tag: str
    """Of the issue."""
    path: str
    """Of its file then."""


def issued_items(files: Files) -> dict[str, IssuedItem]:
    """Give every item that an earlier issue held, by number, as the last issue that held it had it."""
    found: dict[str, IssuedItem] = {}
    for tag, sources in files.issued.items():
        for path, source in sources.items():
            item = _item(source.data, tag, path)
            if item is not None:
                found[item.number] = item
    return found


def _item(data: Any, tag: str, path: str) -> IssuedItem | None:
    """Read what an earlier edition of the format may have written a little otherwise."""
    if not isinstance(data, dict) or not isinstance(data.get("item"), int):
        return None
    entries = data.get("lines")
    lines = [line for line in entries if isinstance(line, dict)] if isinstance(entries, list) else []
    texts = {str(line.get("line", "")): str(line.get("text", "")) for line in lines}
    revision = data.get("revision", 0)
    return IssuedItem(
        str(data["item"]),
        str(data.get("title", "")),
        str(data.get("kind", "")),
        texts,
        revision if isinstance(revision, int) else 0,
        said(data),
        tag,
        path,
    )
