"""The difference of two packages as operations: what was done to the data of one so that it became the other's."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from tenderwright.comparing.alignment import paired, trimmed_opcodes
from tenderwright.comparing.data import PackageData, same, written
from tenderwright.comparing.operation import At, Named, Operation, Segment
from tenderwright.reading.layout import schema_of

NAMING = (
    "line",
    "hold",
    "drawing",
    "file",
    "tank",
    "opening",
    "appendage",
    "shaft",
    "strake",
    "zone",
    "scheme",
    "anode",
    "plug",
    "leak",
    "month",
    "station",
    "number",
    "from",
)
"""Keys that name the entries of a list, the first that is in all of them and never twice."""

_IDENTITY = {"items": "item", "history": "docking", "questions": "question"}
"""By folder, the key that says which thing a file holds, whatever it is called."""


def differences(before: PackageData, after: PackageData) -> tuple[Operation, ...]:
    """Find the operations that make the data of one package into that of another."""
    moved = _moved(before, after)
    operations = [Operation("file-moved", old, new=new) for old, new in sorted(moved.items())]
    held = {moved.get(path, path): data for path, data in before.items()}
    for path in sorted(held.keys() | after.keys()):
        if path not in after:
            operations.append(Operation("file-removed", path, old=held[path]))
        elif path not in held:
            operations.append(Operation("file-added", path, new=after[path]))
        elif schema_of(path) is None and isinstance(held[path], str) and isinstance(after[path], str):
            operations += _texts(path, held[path], after[path])
        else:
            operations += _values(path, (), held[path], after[path])
    return tuple(operations)


def _moved(before: PackageData, after: PackageData) -> dict[str, str]:
    """Find the files that hold the same thing under another name."""
    gone, come = _only_in(before, after), _only_in(after, before)
    return {
        gone[identity][0]: come[identity][0]
        for identity in gone.keys() & come.keys()
        if len(gone[identity]) == len(come[identity]) == 1
    }


def _only_in(here: PackageData, there: PackageData) -> dict[tuple[str, str], list[str]]:
    """List the files that only one package has, by the thing that they hold."""
    found: dict[tuple[str, str], list[str]] = {}
    for path in here.keys() - there.keys():
        identity = _identity(path, here[path])
        if identity is not None:
            found.setdefault(identity, []).append(path)
    return found


def _identity(path: str, data: Any) -> tuple[str, str] | None:
    folder, _, name = path.rpartition("/")
    if folder == "clauses":
        number, dash, rest = name.partition("-")
        return folder, rest if dash and number.isdigit() else name
    key = _IDENTITY.get(folder, "")
    return (folder, written(data[key])) if isinstance(data, dict) and key in data else None


def _texts(path: str, old: str, new: str) -> Iterator[Operation]:
    """Yield the hunks of a text from the last to the first, so that each stands at its line of the old one."""
    one, other = old.split("\n"), new.split("\n")
    for tag, i1, i2, j1, j2 in reversed(trimmed_opcodes(one, other)):
        if tag != "equal":
            yield Operation("text", path, old=one[i1:i2], new=other[j1:j2], position=i1)


def _values(file: str, at: At, old: Any, new: Any) -> Iterator[Operation]:
    if same(old, new):
        return
    if isinstance(old, dict) and isinstance(new, dict):
        yield from _mappings(file, at, old, new)
    elif isinstance(old, list) and isinstance(new, list):
        key = _naming_key(old, new)
        if key:
            yield from _named(file, at, key, old, new)
        else:
            yield from _placed(file, at, old, new)
    else:
        yield Operation("set", file, at, old, new)


def _mappings(file: str, at: At, old: dict[str, Any], new: dict[str, Any]) -> Iterator[Operation]:
    yield from _keyed(file, at, old, new, {key: key for key in (*old, *new)}, "")


def _named(file: str, at: At, key: str, old: list[Any], new: list[Any]) -> Iterator[Operation]:
    one, other = ({entry[key]: entry for entry in entries} for entries in (old, new))
    yield from _keyed(file, at, one, other, {name: Named(key, name) for name in (*one, *other)}, key)


def _keyed(
    file: str,
    at: At,
    old: Mapping[Any, Any],
    new: Mapping[Any, Any],
    segments: Mapping[Any, Segment],
    by: str,
) -> Iterator[Operation]:
    """Yield what changed in things that have keys or names: inside them, gone, come, and their order."""
    for name, value in old.items():
        if name in new:
            yield from _values(file, (*at, segments[name]), value, new[name])
    for name, value in old.items():
        if name not in new:
            yield Operation("removed", file, (*at, segments[name]), old=value)
    order = [name for name in old if name in new]
    for position, (name, value) in enumerate(new.items()):
        if name not in old:
            yield Operation("added", file, (*at, segments[name]), new=value, position=position)
            order.insert(position, name)
    if order != list(new):
        yield Operation("order", file, at, old=order, new=list(new), by=by)


def _placed(file: str, at: At, old: list[Any], new: list[Any]) -> Iterator[Operation]:
    """Yield what changed in a list whose entries have no name: in them at their old places, then gone, then come."""
    pairs, gone, come = paired(old, new)
    for i, j in pairs:
        yield from _values(file, (*at, i), old[i], new[j])
    for i in reversed(gone):
        yield Operation("removed", file, (*at, i), old=old[i])
    for j in come:
        yield Operation("added", file, (*at, j), new=new[j])


def _naming_key(old: list[Any], new: list[Any]) -> str:
    entries = [*old, *new]
    if not entries or not all(isinstance(entry, dict) for entry in entries):
        return ""
    return next((key for key in NAMING if _names(key, old) and _names(key, new)), "")


def _names(key: str, entries: list[Any]) -> bool:
    """Tell whether a key names every entry with text, or every one with a whole number, and none twice."""
    names = [entry.get(key) for entry in entries]
    kinds = {type(name) for name in names}
    return (kinds <= {str} or kinds <= {int}) and len(set(names)) == len(names)
