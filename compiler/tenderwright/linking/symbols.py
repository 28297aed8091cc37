"""The symbol table: every thing of the package that has a name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct

from tenderwright.linking.parts import PARTS
from tenderwright.model.package import Package
from tenderwright.notices import Note, Notice, Place


class Symbol(Struct, frozen=True):
    """A named thing: its kind, name, the words for it in text, and where it stands."""

    kind: str
    name: str
    title: str
    here: Place


def things(package: Package) -> Iterator[tuple[str, str, Any]]:
    """Yield every named thing of the package with its kind and name."""
    for item in package.items:
        yield "item", item.number, item
    for clause in package.clauses:
        yield "clause", clause.clause, clause
    for question in package.questions:
        yield "question", question.number, question
    for kind, entries in (
        ("drawing", package.drawings),
        ("tank", package.tanks),
        ("opening", package.openings),
        ("appendage", package.appendages),
        ("strake", package.strakes),
        ("zone", package.zones),
        ("scheme", package.schemes),
        ("anode", package.anodes),
        ("facility", package.facilities),
        ("docking", package.history),
        ("shaft", package.particulars.shafts if package.particulars is not None else ()),
    ):
        for entry in entries:
            yield kind, getattr(entry, kind), entry


def _title(kind: str, name: str, thing: Any) -> str:
    if kind == "docking":
        return f"docking of {thing.docked.year}"
    return getattr(thing, "title", "") or getattr(thing, "name", "") or name


def symbol_table(package: Package) -> tuple[Mapping[tuple[str, str], Symbol], list[Notice]]:
    """Make the symbol table, with the parts that a specification can have; a name for two things is a mistake."""
    table: dict[tuple[str, str], Symbol] = {}
    notices: list[Notice] = []
    for kind, name, thing in things(package):
        first = table.get((kind, name))
        if first is not None:
            what = f"item number {name}" if kind == "item" else f"{kind} `{name}`"
            notices.append(_twice(what, thing.here, first.here))
        else:
            table[(kind, name)] = Symbol(kind, name, _title(kind, name, thing), thing.here)
    table |= {("part", name): Symbol("part", name, title, Place("")) for name, title in PARTS.items()}
    return table, notices + _inside_items(package)


def _twice(what: str, here: Place, first: Place) -> Notice:
    notes = (Note("it is first listed here", first),)
    return Notice("duplicate-name", here, f"{what} is used twice", notes, ("give one of them another name",))


def _inside_items(package: Package) -> list[Notice]:
    """Report line letters and hold points that one item uses twice."""
    notices = []
    for item in package.items:
        named = [
            (f"line {item.number}.{line.line}", line.here)
            for line in (*item.lines, *package.withdrawn_lines.get(item.number, ()))
        ]
        named += [(f"hold `{hold.hold}` of item {item.number}", hold.here) for hold in item.holds]
        first: dict[str, Place] = {}
        for what, here in named:
            if what in first:
                notices.append(_twice(what, here, first[what]))
            first.setdefault(what, here)
    return notices
