"""What the ship's own data tell of a docking to be closed: blocks, plugs, anodes, valves, clearances, tanks, tables."""

from __future__ import annotations

from itertools import groupby, pairwise

from tenderwright.calculations.ship.block_places import PlacedBlock
from tenderwright.documents.findings_draft.account import TODO, Entry
from tenderwright.model.item import Item
from tenderwright.model.item_table import IN_DOCK
from tenderwright.model.package import Package
from tenderwright.model.table_rows import filled_in, rows_of
from tenderwright.quantities.display import plainly

_EVEN = 0.001
"""How far the distances between the blocks of a row may be from each other, m."""
_OF = {"shaft": ("shaft", "stern", "gland", "bearing"), "rudder": ("rudder", "pintle")}


def blocks_as_planned(package: Package, placed: tuple[PlacedBlock, ...] | None) -> Entry:
    """Give the blocks of the docking plan, with `notes` that ask how she stood in truth."""
    plan = package.docking_plan
    if plan is None:
        return {"keel": [{"at": TODO, "length": TODO, "width": TODO}], "sides": [], "notes": TODO}
    keel: list[Entry] = []
    for _, found in groupby(placed or (), key=lambda one: id(one.row)):
        keel += _row(list(found))
    sides: list[Entry] = []
    for pair in sorted(plan.side_blocks, key=lambda one: one.at.x):
        entry = {"at": pair.at.text, "off_centre": pair.off_centre.text, "side": "both"}
        sides.append({**entry, "length": _written(pair.length), "width": _written(pair.width)})
    return {"keel": keel, "sides": sides, "notes": TODO}


def _row(blocks: list[PlacedBlock]) -> list[Entry]:
    """Write blocks of one row of the plan as a row, or one by one where they stand unevenly."""
    size = {"length": blocks[0].row.length.text, "width": blocks[0].row.width.text}
    gaps = [after.x - before.x for before, after in pairwise(blocks)]
    if gaps and max(gaps) - min(gaps) < _EVEN:
        pitch = plainly(gaps[0], "size")
        return [{"at": blocks[0].position, "to": blocks[-1].position, "pitch": pitch, **size}]
    return [{"at": one.position, **size} for one in blocks]


def _written(quantity: object) -> str:
    return TODO if quantity is None else str(quantity)


def ship_entries(package: Package, live: tuple[Item, ...]) -> Entry:
    """Give a row for each thing of which the findings tell: those that the ordered work names, or all there are."""
    work = [one for one in live if one.kind not in ("information", "owner")]
    renewed = {ref.name for item in work for ref in item.where.anodes}
    tanks = {ref.name for item in work if item.tests and item.system == "tanks" for ref in item.where.tanks}
    clearances = package.condition.clearances if package.condition is not None else ()
    return {
        "plugs": [
            {"plug": one.opening, "drawn": TODO, "refitted": TODO, "state": TODO, "witness": TODO}
            for one in package.openings
            if one.kind == "docking plug"
        ],
        "anodes": [
            {"anode": one.anode, "left": TODO, **({"fitted": TODO} if one.anode in renewed else {})}
            for one in package.anodes
        ],
        "valves": [
            {"opening": one.opening, "found": TODO, "done": TODO, "test": TODO, "tight": TODO, "witness": TODO}
            for one in package.openings
            if one.valve and one.kind != "docking plug"
        ],
        "clearances": [
            {
                "of": _of(one.what),
                "where": one.what,
                "found": TODO,
                "limit": one.limit.text,
                "limit_source": one.source,
                "left": TODO,
                "done": TODO,
            }
            for one in clearances
        ],
        "tank_tests": [
            {"tank": one.tank, "test": TODO, "held": TODO, "tight": TODO, "day": TODO, "witness": TODO}
            for one in package.tanks
            if one.tank in tanks
        ],
        "tables": [
            {
                "item": item.number,
                "table": table.table.name,
                "row": row.row,
                "cells": {column.column: TODO for column in filled_in(table, IN_DOCK)},
            }
            for item in work
            for table in item.tables
            if filled_in(table, IN_DOCK)
            for row in rows_of(package, item, table)
        ],
    }


def _of(what: str) -> str:
    """Tell what a clearance belongs to by its words; `todo` where they name neither shaft nor rudder."""
    found = [of for of, words in _OF.items() if any(word in what.lower() for word in words)]
    return found[0] if len(found) == 1 else TODO


def soundings(package: Package, *, docking: bool) -> list[Entry]:
    """Ask for a sounding of each tank that held something on arrival; what it holds afterwards is asked too."""
    held = [one for one in package.tanks if one.contents.liquid != "none"]
    return [{"tank": one.tank, "liquid": one.contents.liquid if docking else TODO, "sounding": TODO} for one in held]
