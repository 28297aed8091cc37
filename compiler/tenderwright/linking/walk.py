"""Walk everything in a package and yield each reference with what holds it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields
from typing import Any

from msgspec import Struct

from tenderwright.linking.prose import references_in
from tenderwright.linking.symbols import things
from tenderwright.model.build import Prose, Reference
from tenderwright.model.findings import Findings
from tenderwright.model.noun import Noun, keys_of
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Place

Holder = tuple[str, str]
"""Kind and name of the thing that holds a reference."""


class Use(Struct, frozen=True):
    """One use of a name: what it names, where it stands, and what holds it."""

    kind: str
    name: str
    at: Place
    by: Holder
    paragraph: str = ""
    """The numbered requirement of an item in which it stands, such as `3`; empty elsewhere."""


def uses_of(package: Package) -> Iterator[Use]:
    """Yield every use of a name in the package."""
    for kind, name, thing in things(package):
        yield from _uses(thing, (kind, name))
    for part in (package.tender, package.particulars, package.lightship, package.docking_plan, package.condition):
        if part is not None:
            yield from _uses(part, ("package", ""))


def uses_of_owner(papers: OwnerPapers) -> Iterator[Use]:
    """Yield every use of a name in the owner's papers."""
    for part in fields(papers):
        yield from _uses(getattr(papers, part.name), ("owner", ""))


def uses_of_findings(findings: Findings) -> Iterator[Use]:
    """Yield every use of a name in the findings of a docking."""
    yield from _uses(findings, ("docking", findings.docking))


def _uses(thing: Any, by: Holder, paragraph: str = "") -> Iterator[Use]:
    if isinstance(thing, Reference):
        yield Use(thing.kind, thing.name, thing.at, by, paragraph)
    elif isinstance(thing, Prose):
        for kind, name, words, nth in references_in(thing.text):
            yield Use(kind, name, thing.place_of(words, nth), by, paragraph)
    elif isinstance(thing, (tuple, list)):
        for entry in thing:
            yield from _uses(entry, by, paragraph)
    elif isinstance(thing, Mapping):
        for entry in thing.values():
            yield from _uses(entry, by, paragraph)
    elif isinstance(thing, Noun):
        for field_name, _ in keys_of(thing):
            value = getattr(thing, field_name)
            if field_name == "requirements" and by[0] == "item":
                for number, requirement in enumerate(value, start=1):
                    yield from _uses(requirement, by, str(number))
            else:
                yield from _uses(value, by, paragraph)
