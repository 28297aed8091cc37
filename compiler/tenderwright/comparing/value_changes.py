"""Which calculated figures that the yard reads or prices have changed, and because of which source.

The cause is found by trial. A file is one where the figure is another with that file alone put back as it was, or with
it alone changed; an operation in it is one where the figure is another with that operation alone made.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.value import Record, Value
from tenderwright.comparing.apply import CannotApply, apply
from tenderwright.comparing.operation import Operation
from tenderwright.comparing.side import Side
from tenderwright.model.load import load_package
from tenderwright.reading.package import Files
from tenderwright.reading.source import Source
from tenderwright.shapes.shape import shape

_NO_SOURCE = ("clauses/", "questions/")
"""What no calculation reads."""
_MOST_TRIED = 12
"""Operations in a file that are still tried one by one; each takes as long as calculating the ship."""


@dataclass(frozen=True)
class ValueChange:
    """A figure that changed, came or went, with the operations that caused it and where it is used."""

    name: str
    old: Value | None
    new: Value | None
    files: tuple[str, ...]
    """The sources whose change made the figure another."""
    causes: tuple[int, ...]
    """The operations in them that bear on it, counted from 0."""
    used_by: tuple[tuple[str, str], ...]
    """Kind and name of what shows it."""
    lines: tuple[str, ...]
    """The lines that take their quantity from it."""


def value_changes(before: Side, after: Side, operations: Sequence[Operation]) -> tuple[ValueChange, ...]:
    """Find the figures that prose shows or lines take and that are not what they were, with their causes."""
    used = {use.name for side in (before, after) for use in side.links.uses if use.kind == "value"}
    names = sorted(name for name in used if _si(before.record, name) != _si(after.record, name))
    if not names:
        return ()
    causes = _files_by_trial(before, after, operations, names)
    single = _operations(before, operations, causes)
    return tuple(
        ValueChange(
            name,
            before.record.values.get(name),
            after.record.values.get(name),
            causes[name],
            single[name],
            _used_by(after, name),
            _lines(after, name),
        )
        for name in names
    )


def _si(record: Record, name: str) -> str:
    value = record.values.get(name)
    return "" if value is None else repr(value.si)


def _used_by(side: Side, name: str) -> tuple[tuple[str, str], ...]:
    return tuple(dict.fromkeys(use.by for use in side.links.uses if (use.kind, use.name) == ("value", name)))


def _lines(side: Side, name: str) -> tuple[str, ...]:
    return tuple(
        f"{item.number}.{line.line}"
        for item in side.package.items
        if not item.withdrawn
        for line in item.lines
        if line.takes is not None and line.takes.name == name
    )


def _files_by_trial(
    before: Side, after: Side, operations: Sequence[Operation], names: list[str]
) -> dict[str, tuple[str, ...]]:
    """Put back each changed file by itself, then, for what is still without a cause, change each by itself."""
    changed = [path for path in _changed(operations) if not path.startswith(_NO_SOURCE)]
    causes: dict[str, list[str]] = {name: [] for name in names}
    for base, other in ((after, before), (before, after)):
        open_names = [name for name in names if not causes[name]]
        for path in changed if open_names else ():
            tried = _trial(base.files, other.files, path)
            for name in open_names:
                if _si(tried, name) != _si(base.record, name):
                    causes[name].append(path)
    return {name: tuple(files) for name, files in causes.items()}


def _changed(operations: Sequence[Operation]) -> list[str]:
    return sorted({operation.file for operation in operations if operation.does != "file-moved"})


def _operations(
    before: Side, operations: Sequence[Operation], causes: Mapping[str, tuple[str, ...]]
) -> dict[str, tuple[int, ...]]:
    """Make each operation in the causing files by itself; where none alone tells, all in the file count as causes."""
    found: dict[str, set[int]] = {name: set() for name in causes}
    for path in sorted({path for paths in causes.values() for path in paths}):
        here = [number for number, operation in enumerate(operations) if operation.file == path]
        names = [name for name, paths in causes.items() if path in paths]
        alone = (
            {number: _alone(before, operations[number], names) for number in here}
            if 1 < len(here) <= _MOST_TRIED
            else {}
        )
        for name in names:
            found[name] |= {number for number in here if name in alone.get(number, ())} or set(here)
    return {name: tuple(sorted(numbers)) for name, numbers in found.items()}


def _alone(before: Side, operation: Operation, names: list[str]) -> set[str]:
    """Give the figures that one operation changes when it is made by itself."""
    if operation.file not in before.files.sources:
        return set()
    try:
        made = apply({operation.file: before.files.sources[operation.file].data}, [operation])
    except CannotApply:
        return set()
    data = made.get(operation.file)
    text = data if isinstance(data, str) else ""
    record = _calculated(before.files, operation.file, Source(operation.file, text, data))
    return {name for name in names if _si(record, name) != _si(before.record, name)}


def _trial(base: Files, other: Files, path: str) -> Record:
    """Calculate with one file taken from the other side."""
    return _calculated(base, path, other.sources.get(path))


def _calculated(base: Files, path: str, source: Source | None) -> Record:
    """Calculate with another source in place of one; what that breaks is left out of the record."""
    sources = {name: one for name, one in base.without_owner().sources.items() if name != path}
    if source is not None:
        sources[path] = source
    files = Files(base.root, dict(sorted(sources.items())), ())
    package, _ = load_package(files, shape(files)[0])
    return calculate(package).record
