"""Walk everything in a package and give each reference with what holds it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import Any

from msgspec import Struct

from tenderwright.linking.prose import references_in
from tenderwright.linking.symbols import things
from tenderwright.model.build import Prose, Reference
from tenderwright.model.day import Day
from tenderwright.model.findings import Findings
from tenderwright.model.history import EarlierDocking
from tenderwright.model.noun import Noun
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity

Holder = tuple[str, str]
"""Kind and name of the thing that holds a reference."""


_LEAVES = frozenset({type(None), str, bool, int, float, Decimal, date, Quantity, Position, Place, Day})
"""What holds no reference."""


class Use(Struct, frozen=True):
    """One use of a name: what it names, where it stands, and what holds it."""

    kind: str
    name: str
    at: Place
    by: Holder
    paragraph: str = ""
    """The numbered requirement of an item in which it stands, such as `3`; empty elsewhere."""


def uses_of(package: Package) -> tuple[Use, ...]:
    """Give every use of a name in the package."""
    uses: list[Use] = []
    for kind, name, thing in things(package):
        if isinstance(thing, EarlierDocking) and not package.is_of(thing.tender):
            uses += _without_items(thing, (kind, name))
        else:
            _add(uses, thing, (kind, name))
    whole = (package.tender, package.particulars, package.lightship, package.docking_plan, package.condition)
    for part in (*whole, package.timber, package.contract, package.frame_notes, package.photographs):
        _add(uses, part, ("package", ""))
    return tuple(uses)


def uses_of_owner(papers: OwnerPapers, package: Package) -> tuple[Use, ...]:
    """Give every use of a name in the owner's papers."""
    uses: list[Use] = []
    for name in papers.__struct_fields__:
        if name != "closings":
            _add(uses, getattr(papers, name), ("owner", ""))
    for closing in papers.closings.values():
        if package.is_of(closing.tender):
            _add(uses, closing, ("owner", ""))
        else:
            uses += _without_items(closing, ("owner", ""))
    return tuple(uses)


def uses_of_findings(findings: Findings) -> tuple[Use, ...]:
    """Give every use of a name in the findings of a docking."""
    uses: list[Use] = []
    _add(uses, findings, ("docking", findings.docking))
    return tuple(uses)


def _without_items(thing: Noun, by: Holder) -> list[Use]:
    """Give the uses of what tells of an earlier tender, whose items are not those of this package."""
    uses: list[Use] = []
    _add(uses, thing, by)
    return [use for use in uses if use.kind != "item"]


def _add(uses: list[Use], thing: Any, by: Holder, paragraph: str = "") -> None:
    if thing.__class__ in _LEAVES:
        return
    if isinstance(thing, Reference):
        uses.append(Use(thing.kind, thing.name, thing.at, by, paragraph))
    elif isinstance(thing, Prose):
        for kind, name, words, nth in references_in(thing.text):
            uses.append(Use(kind, name, thing.place_of(words, nth), by, paragraph))
    elif isinstance(thing, (tuple, list)):
        for entry in thing:
            _add(uses, entry, by, paragraph)
    elif isinstance(thing, Noun):
        for field_name in thing.__struct_fields__:
            value = getattr(thing, field_name)
            if field_name == "requirements" and by[0] == "item":
                for number, requirement in enumerate(value, start=1):
                    _add(uses, requirement, by, str(number))
            elif value.__class__ not in _LEAVES:
                _add(uses, value, by, paragraph)
    elif isinstance(thing, Mapping):
        for entry in thing.values():
            _add(uses, entry, by, paragraph)
