"""Editions composed for tests, once each, and ways to walk through them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields, is_dataclass
from functools import cache, cached_property
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Literal, TypeVar

from markdown_it.token import Token

from tenderwright.calculations.steps.step import Step
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Edition, Part, Prose, Span, Table, plain
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.price_form import PriceForm
from tenderwright.pipeline import (
    Compiled,
    OwnersSide,
    compile_owner,
    compile_package,
    compose_owner,
    compose_priced,
    compose_yard,
    owner_desk,
    read,
)
from tenderwright.reading.git_state import GitState
from tests.outcomes import result_of
from tests.pipeline.packages import MARRAM, starter

ISSUED = GitState("issued", "1a2b3c4d5e6f7a8b9c0d1a2b3c4d5e6f7a8b9c0d", 1_822_635_000)

R = TypeVar("R")
Name = Literal["starter", "marram"]


@dataclass
class Composed:
    """A package compiled, and its two editions."""

    compiled: Compiled
    owner: OwnersSide

    @cached_property
    def yard(self) -> tuple[Edition, PriceForm]:
        """Give the yard edition and its price form."""
        return compose_yard(self.compiled, ISSUED)

    @cached_property
    def owners(self) -> tuple[Edition, PriceForm]:
        """Give the owner edition and its price form."""
        return compose_owner(self.compiled, self.owner, ISSUED)

    @cached_property
    def priced(self) -> Edition:
        """Give the specification with the owner's prices."""
        return compose_priced(self.compiled, self.owner, self.yard[0])

    def edition(self, name: str) -> Edition:
        """Give an edition by name: yard, owner for the owner's book, or priced."""
        return self.priced if name == "priced" else (self.yard if name == "yard" else self.owners)[0]

    def found(self, step: Step[R]) -> R:
        """Give the result of a step that must have one."""
        return result_of(self.compiled.calculated, step)

    def desk(self) -> Desk:
        """Give the desk at which the yard edition is composed."""
        return Desk(self.compiled.package, self.compiled.links, self.compiled.calculated)

    def owner_desk(self) -> OwnerDesk:
        """Give the desk at which the owner's papers are composed."""
        return owner_desk(self.compiled, self.owner)


def compiled(root: Path) -> Composed:
    """Compile a package that must be sound."""
    files = read(root)
    package = compile_package(files)
    owner = compile_owner(files, package)
    mistakes = [notice for notice in [*package.notices, *owner.notices] if notice.severity == "error"]
    assert mistakes == []
    return Composed(package, owner)


@cache
def composed(name: Name) -> Composed:
    """Give the starter or the demonstration, compiled once for all tests."""
    if name == "marram":
        return compiled(MARRAM)
    return changed(lambda root: None)


def changed(change: Callable[[Path], None]) -> Composed:
    """Compile the starter after a change to its files."""
    with TemporaryDirectory() as folder:
        root = starter(Path(folder) / "sandling")
        change(root)
        return compiled(root)


def walk(node: Any) -> Iterator[Any]:
    """Yield everything inside an edition, a part or a block: blocks, rows, steps, spans, tokens."""
    yield node
    if isinstance(node, Prose):
        for token in node.tokens:
            yield from _walk_token(token)
    elif isinstance(node, (tuple, list)):
        for child in node:
            yield from walk(child)
    elif is_dataclass(node):
        for field in fields(node):
            yield from walk(getattr(node, field.name))


def _walk_token(token: Token) -> Iterator[Token]:
    yield token
    for child in token.children or ():
        yield from _walk_token(child)


def targets(node: Any) -> list[str]:
    """List the anchors that are linked to inside a node."""
    found = []
    for thing in walk(node):
        if isinstance(thing, Span) and thing.target:
            found.append(thing.target)
        if isinstance(thing, Token) and thing.type == "link_open" and str(thing.attrs["href"]).startswith("#"):
            found.append(str(thing.attrs["href"])[1:])
    return found


def anchors(node: Any) -> list[str]:
    """List the anchors inside a node."""
    return [thing.anchor for thing in walk(node) if getattr(thing, "anchor", "")]


def words(node: Any) -> str:
    """Give every text inside a node, a line for each."""
    found = []
    for thing in walk(node):
        if isinstance(thing, Token):
            found.append(thing.content)
        elif isinstance(thing, str):
            found.append(thing)
    return "\n".join(found)


def part(edition: Edition, anchor: str) -> Part:
    """Find a part."""
    (found,) = [part for part in edition.parts if part.anchor == anchor]
    return found


def tables(node: Any) -> list[Table]:
    """List the tables inside a node."""
    return [thing for thing in walk(node) if isinstance(thing, Table)]


def rows(table: Table) -> list[list[str]]:
    """Give the text of a table's cells."""
    return [[plain(cell) for cell in row.cells] for row in table.rows]
