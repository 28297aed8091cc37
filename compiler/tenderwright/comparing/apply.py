"""Apply operations to the data of a package: FROM and an addendum give TO."""

from __future__ import annotations

import copy
from collections.abc import Iterable
from typing import Any

from tenderwright.comparing.data import PackageData, same
from tenderwright.comparing.operation import At, Named, Operation, Segment


class CannotApply(ValueError):
    """An operation does not fit the data that it is applied to."""


def apply(data: PackageData, operations: Iterable[Operation]) -> dict[str, Any]:
    """Apply operations one after the other; raises `CannotApply` where what they name is not there."""
    held: dict[str, Any] = copy.deepcopy(dict(data))
    for operation in operations:
        try:
            _apply(held, operation)
        except (KeyError, IndexError, TypeError, AttributeError) as error:
            raise CannotApply(f"{operation.does} in {operation.file} at {operation.at}: {error!r}") from error
    return held


def _apply(held: dict[str, Any], operation: Operation) -> None:
    file, new = operation.file, copy.deepcopy(operation.new)
    if operation.does == "file-moved":
        _must(new not in held, operation)
        held[new] = held.pop(file)
    elif operation.does == "file-added":
        _must(file not in held, operation)
        held[file] = new
    elif operation.does == "file-removed":
        _must(same(held.pop(file), operation.old), operation)
    elif operation.does == "text":
        held[file] = _text(held[file], operation)
    elif operation.does == "set" and not operation.at:
        _must(same(held[file], operation.old), operation)
        held[file] = new
    elif operation.does == "order":
        _order(_find(held[file], operation.at), operation)
    else:
        _value(_find(held[file], operation.at[:-1]), operation.at[-1], operation, new)


def _must(fits: bool, operation: Operation) -> None:
    if not fits:
        raise CannotApply(f"{operation.does} in {operation.file} at {operation.at} does not fit what stands there")


def _text(text: str, operation: Operation) -> str:
    lines, first = text.split("\n"), operation.position or 0
    last = first + len(operation.old)
    _must(lines[first:last] == operation.old, operation)
    return "\n".join([*lines[:first], *operation.new, *lines[last:]])


def _find(data: Any, at: At) -> Any:
    for segment in at:
        data = data[_index(data, segment)]
    return data


def _index(holder: Any, segment: Segment) -> Any:
    """Give the key or the place in a list that a segment means."""
    if not isinstance(segment, Named):
        return segment
    for index, entry in enumerate(holder):
        if same(entry.get(segment.key), segment.name):
            return index
    raise KeyError(segment.name)


def _value(holder: Any, segment: Segment, operation: Operation, new: Any) -> None:
    if operation.does == "added":
        _add(holder, segment, operation, new)
        return
    index = _index(holder, segment)
    _must(same(holder[index], operation.old), operation)
    if operation.does == "set":
        holder[index] = new
    else:
        del holder[index]


def _add(holder: Any, segment: Segment, operation: Operation, new: Any) -> None:
    if isinstance(holder, list):
        place = segment if isinstance(segment, int) else operation.position or 0
        holder.insert(place, new)
        return
    _must(segment not in holder, operation)
    entries = list(holder.items())
    entries.insert(operation.position or 0, (segment, new))
    holder.clear()
    holder.update(entries)


def _order(holder: Any, operation: Operation) -> None:
    if isinstance(holder, dict):
        _must(list(holder) == operation.old, operation)
        entries = [(key, holder[key]) for key in operation.new]
        holder.clear()
        holder.update(entries)
        return
    named = {entry[operation.by]: entry for entry in holder}
    _must(list(named) == operation.old and len(operation.new) == len(holder), operation)
    holder[:] = [named[name] for name in operation.new]
