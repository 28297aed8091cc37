"""The parts about the ship's condition, composed once, and what is written in them."""

from __future__ import annotations

from functools import cache

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Part, Table, each_block, plain
from tenderwright.documents.parts.anodes import anodes
from tenderwright.documents.parts.coating_conditions import coating_conditions
from tenderwright.documents.parts.condition import condition
from tenderwright.documents.parts.gauging import gauging
from tenderwright.documents.parts.tightness import tightness
from tenderwright.linking.link import link
from tests.calculations.ship.condition.ship import marram

COMPOSERS = {
    "condition": condition,
    "anodes": anodes,
    "coating-conditions": coating_conditions,
    "tightness": tightness,
    "gauging": gauging,
}


@cache
def desk() -> Desk:
    """Give the desk of the demonstration ship."""
    package, _, calculated = marram()
    links, _ = link(package)
    return Desk(package, links, calculated)


@cache
def part(name: str) -> Part:
    """Compose a part."""
    made = COMPOSERS[name](desk())
    assert made is not None
    return made


def tables(name: str) -> list[Table]:
    """Give the tables of a part."""
    return [block for block in each_block(part(name).blocks) if isinstance(block, Table)]


def rows(name: str, title: str) -> list[list[str]]:
    """Give the cells of the first table of a part that has a column of this title."""
    table = next(one for one in tables(name) if any(column.title == title for column in one.columns))
    return [[plain(cell) for cell in row.cells] for row in table.rows]


def text(name: str) -> str:
    """Give everything that stands in a part by its name."""
    return text_of(part(name))


def text_of(made: Part) -> str:
    """Give everything that stands in a part."""
    said = []
    for block in each_block(made.blocks):
        for attribute in ("text", "caption", "note"):
            value = getattr(block, attribute, ())
            said.append(value if isinstance(value, str) else plain(value))
        said += [plain(cell) for row in getattr(block, "rows", ()) for cell in row.cells]
        said += [plain(entry) for entry in getattr(block, "entries", ())]
    return "\n".join(said)
