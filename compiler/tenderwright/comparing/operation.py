"""Operations: the steps that make the data of one package into that of another, and how they are written as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal, cast

Does = Literal["file-moved", "file-added", "file-removed", "text", "set", "added", "removed", "order"]


@dataclass(frozen=True)
class Named:
    """An entry of a list, found by the key that names it, such as the line `a` of an item."""

    key: str
    name: str | int


Segment = str | int | Named
"""A key of a mapping, a place in a list counted from 0, or an entry of a list found by its name."""

At = tuple[Segment, ...]


@dataclass(frozen=True)
class Operation:
    """One step; each is applied to what those before it have made.

    file-moved: the file `file` is called `new`. file-added, file-removed: the whole file. text: lines from `position`
    on, the lines `old` becoming the lines `new`. set: the value at `at`. added: the value `new` stands at `at`, at
    `position` among its neighbours. removed: the value `old` at `at`. order: the keys, or the names, of what is at
    `at`, from `old` to `new`.
    """

    does: Does
    file: str
    at: At = ()
    old: Any = None
    new: Any = None
    position: int | None = None
    by: str = ""
    """For the order of a list, the key that names its entries."""


def as_json(operations: Iterable[Operation]) -> list[dict[str, Any]]:
    """Give operations as plain data that JSON can hold."""
    return [_plain(operation) for operation in operations]


def from_json(written: Sequence[Mapping[str, Any]]) -> tuple[Operation, ...]:
    """Read operations back from plain data."""
    return tuple(
        Operation(
            cast(Does, entry["does"]),
            entry["file"],
            tuple(_segment(segment) for segment in entry.get("at", ())),
            entry.get("old"),
            entry.get("new"),
            entry.get("position"),
            entry.get("by", ""),
        )
        for entry in written
    )


def _plain(operation: Operation) -> dict[str, Any]:
    entry: dict[str, Any] = {"does": operation.does, "file": operation.file}
    if operation.does not in ("file-moved", "file-added", "file-removed", "text"):
        entry["at"] = [{s.key: s.name} if isinstance(s, Named) else s for s in operation.at]
    if operation.position is not None:
        entry["position"] = operation.position
    if operation.by:
        entry["by"] = operation.by
    if operation.does not in ("added", "file-added", "file-moved"):
        entry["old"] = operation.old
    if operation.does not in ("removed", "file-removed"):
        entry["new"] = operation.new
    return entry


def _segment(written: Any) -> Segment:
    if isinstance(written, dict):
        ((key, name),) = written.items()
        return Named(key, name)
    return cast(Segment, written)
