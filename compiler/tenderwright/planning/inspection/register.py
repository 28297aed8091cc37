"""The register of openings: everything that the work opens or takes out, and every opening that is to be seen shut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Literal

from msgspec import Struct

from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.model.services import service_answers
from tenderwright.quantities.position import Position

RowKind = Literal["opening", "tank", "block", "shell", "anodes"]

_OPENS = ("opens hull", "removes plug", "blanks opening")
_ENTERS = ("cleans tank", "enters confined space", "tests tightness", "certifies gas-free")


class RegisterRow(Struct, frozen=True):
    """A row of the register."""

    kind: RowKind
    name: str
    """Identifier of the opening or tank, frame of the block, or number of the item that cuts holes or fits anodes."""
    opened_by: tuple[Item, ...]
    """The items that open it, take it out or cover it; none for an opening that only has to be seen shut."""
    tested_by: tuple[Item, ...] = ()
    """The items whose tests prove it tight again."""
    block: Position | None = None

    @property
    def key(self) -> tuple[str, str]:
        """Give what it is found by."""
        return self.kind, self.name

    @property
    def wants_test(self) -> bool:
        """Tell whether it is to be proved tight once it was opened."""
        return self.kind in ("opening", "tank", "shell")

    @property
    def opened(self) -> bool:
        """Tell whether the tender has it opened."""
        return bool(self.opened_by)


def register_of(package: Package) -> tuple[RegisterRow, ...]:
    """List plugs and openings, then manholes, holes cut in the shell, anode covers and blocks that are taken out."""
    live = [item for item in package.items if not item.withdrawn]
    plugs_first = sorted(package.openings, key=lambda one: one.kind != "docking plug")
    rows = [_opening(opening.opening, live) for opening in plugs_first]
    rows += [row for tank in package.tanks if (row := _manhole(tank.tank, live)).opened]
    rows += [
        RegisterRow("shell", item.number, (item,), _testers(item, live))
        for item in live
        if "opens hull" in item.does and not item.where.openings
    ]
    if package.anodes:
        rows += [RegisterRow("anodes", item.number, (item,)) for item in live if item.system == "cathodic protection"]
    return (*rows, *_blocks(package))


def _opening(name: str, live: list[Item]) -> RegisterRow:
    at = [item for item in live if any(ref.name == name for ref in item.where.openings)]
    opens = tuple(item for item in at if any(word in item.does for word in _OPENS))
    return RegisterRow("opening", name, opens, _once(other for item in opens for other in _testers(item, live, at)))


def _manhole(name: str, live: list[Item]) -> RegisterRow:
    at = [item for item in live if any(ref.name == name for ref in item.where.tanks)]
    enters = tuple(item for item in at if any(word in item.does for word in _ENTERS))
    tests = (item for item in live if any(ref.name == name for test in item.tests for ref in test.tanks))
    return RegisterRow("tank", name, enters, _once((*(i for i in at if "tests tightness" in i.does), *tests)))


def _testers(item: Item, live: list[Item], at: Iterable[Item] = ()) -> tuple[Item, ...]:
    """Give the items that test what an item opens: itself where it has tests, and later ones that test tightness."""
    there = {id(one) for one in at}
    own = (item,) if item.tests else ()
    later = (
        one
        for one in live
        if one is not item
        and "tests tightness" in one.does
        and (id(one) in there or any(ref.name == item.number for ref in one.depends_on))
    )
    return (*own, *later)


def _blocks(package: Package) -> Iterator[RegisterRow]:
    plan = package.docking_plan
    answer = service_answers(package).get("block-moves")
    number = answer.item.name if answer is not None and answer.item is not None else ""
    moves = package.item_by_name.get(number)
    by = (moves,) if moves is not None and not moves.withdrawn else ()
    for position in plan.taken_out if plan is not None else ():
        yield RegisterRow("block", position.text, by, block=position)


def _once(items: Iterable[Item]) -> tuple[Item, ...]:
    return tuple({id(item): item for item in items}.values())
