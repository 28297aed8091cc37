"""Either this or that: lines of which only one will be ordered, and which of them stands outside of the price."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from tenderwright.model.item import Item, Line
from tenderwright.model.named_lines import live_lines, named_lines
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean

ALTERNATIVE = "alternative"
"""The kind of a line that is ordered, if at all, in the place of another that counts."""
_KINDS = ("definite", "measured")


def with_choices(package: Package) -> tuple[Package, list[Notice]]:
    """Make alternatives of the lines that do not count: the one that stands instead, or by the owner's choice the other.

    Where the dearer counts, the line that stands instead is the alternative, and each bid is raised by what it is
    dearer.
    """
    lines = live_lines(package)
    notices = [one for number, (item, line) in lines.items() for one in _mistakes(package, lines, number, item, line)]
    out: set[str] = set()
    for number, (_, line) in lines.items():
        if line.instead_of:
            out |= set(_instead(line, lines)) if line.counts == "this" else {number}
    if not out or notices:
        return replace(package, broken=package.broken.told(notices)), notices
    items = (
        replace(item, lines=tuple(_made(item, line, out) for line in item.lines)) if not item.withdrawn else item
        for item in package.items
    )
    return replace(package, items=tuple(items)), []


def _made(item: Item, line: Line, out: set[str]) -> Line:
    return replace(line, kind=ALTERNATIVE) if f"{item.number}.{line.line}" in out else line


def choices(package: Package) -> dict[str, tuple[str, ...]]:
    """Give by each line that stands instead of others those that it stands instead of."""
    lines = live_lines(package)
    return {number: tuple(_instead(line, lines)) for number, (_, line) in lines.items() if line.instead_of}


def dearer(package: Package) -> dict[str, tuple[str, ...]]:
    """Give them where neither is the owner's stated choice, so that the dearer counts."""
    lines = live_lines(package)
    found = choices(package)
    return {number: others for number, others in found.items() if lines[number][1].counts in ("", "dearer")}


def _instead(line: Line, lines: Mapping[str, tuple[Item, Line]]) -> list[str]:
    return list(dict.fromkeys(found for name in line.instead_of for found in named_lines(name.name, lines)))


def _mistakes(
    package: Package, lines: Mapping[str, tuple[Item, Line]], number: str, item: Item, line: Line
) -> Iterator[Notice]:
    if line.counts and not line.instead_of:
        message = f"line {number} says which of two counts, and stands instead of nothing"
        yield Notice("bad-choice", line.here, message, hints=("add `instead_of`, or leave out `counts`",))
    for name in line.instead_of:
        found = named_lines(name.name, lines)
        if not found and not package.broken.may_hold("item", name.name.split(".")[0]):
            message = f"line {number} stands instead of `{name}`, which is not there"
            yield Notice("dead-reference", name.at, message, hints=did_you_mean(name.name, lines))
        for one in found:
            other_item, other = lines[one]
            kinds = {item.kind_of(line), other_item.kind_of(other)}
            if one == number or other.instead_of:
                message = f"line {number} stands instead of line {one}, which stands instead of another itself"
                yield Notice("bad-choice", name.at, message, hints=("let both name the one that counts",))
            elif not kinds <= set(_KINDS):
                message = f"lines {number} and {one} are {' and '.join(sorted(kinds))}, and only one of them is ordered"
                hint = (
                    "work that is definite or measured can stand in place of other such work; an option is one already"
                )
                yield Notice("bad-choice", name.at, message, hints=(hint,))
