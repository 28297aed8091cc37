"""The lists of a survey of timber, as tables."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Row, Table, inline
from tenderwright.model.build import Reference
from tenderwright.model.timber import Timber
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity


def planks_table(desk: Desk, found: Timber) -> list[Block]:
    """Set out the planks."""
    rows = tuple(
        Row(
            (
                inline(one.plank),
                inline(f"{one.strake}, {one.side}"),
                inline(f"{one.from_} to {one.to}"),
                inline(f"{one.species}, {one.fitted}" if one.fitted else one.species),
                inline(f"{desk.quantity(one.thickness)} by {desk.quantity(one.width)}"),
                inline(one.condition + (f": {one.notes}" if one.notes else "")),
                _item(desk, one.item),
            )
        )
        for one in found.planks
    )
    columns = (
        Column("Plank", width=0.8),
        Column("Strake", width=1.2),
        Column("Butt to butt", width=1.5),
        Column("Wood", width=1.2),
        Column("Thickness and width", width=1.5),
        Column("Found", width=2.4),
        Column("Item", width=0.6),
    )
    return _list("Planks", columns, rows)


def seams_table(desk: Desk, found: Timber) -> list[Block]:
    """Set out the seams and butts."""
    rows = tuple(
        Row(
            (
                inline(f"{one.seam}, {one.side}"),
                inline(f"{one.from_} to {one.to}" if one.from_ and one.to else "–"),
                inline(desk.quantity(one.length)),
                inline(", ".join(word for word in (one.material, desk.quantity(one.depth)) if word) or "–"),
                inline(one.payed or "–"),
                inline(day(one.raked)),
                inline(one.state),
            )
        )
        for one in found.seams
    )
    columns = (
        Column("Seam or butts", width=2),
        Column("Stretch", width=1.5),
        Column("Length", "right", 1.2),
        Column("Caulked with, and depth", width=1.6),
        Column("Payed with", width=1.6),
        Column("Last caulked", width=1.1),
        Column("Found", width=0.8),
    )
    return _list("Seams and butts", columns, rows)


def borings_table(desk: Desk, found: Timber, verdict: str) -> list[Block]:
    """Set out the borings."""
    rows = tuple(
        Row(
            (
                inline(one.core),
                inline(one.where),
                inline(_place(desk, one.at, one.side, one.height)),
                inline(desk.quantity(one.through)),
                inline(desk.quantity(one.sound_from)),
                inline(f"{decimals(100 * one.sound_from.si / one.through.si, 0)} %"),
                inline(desk.quantity(one.decay, "–")),
                inline("yes" if one.plugged else "no"),
                _item(desk, one.item),
            )
        )
        for one in found.borings
    )
    columns = (
        Column("Core", width=0.6),
        Column("Bored", width=1.6),
        Column("Where", width=1.8),
        Column("Thickness", "right", 1.4),
        Column("Sound from", "right", 1.3),
        Column("Unsound", "right", 0.8),
        Column("Decay", "right", 0.7),
        Column("Plugged", width=0.7),
        Column("Item", width=0.6),
    )
    limit = found.practice.unsound if found.practice else None
    above = f"Limit: {desk.quantity(limit)} of the thickness. " if limit else ""
    return _list("Borings", columns, rows, f"{above}{verdict}")


def moisture_table(desk: Desk, found: Timber, note: str) -> list[Block]:
    """Set out the readings of moisture."""
    rows = tuple(
        Row(
            (
                inline(one.spot),
                inline(_place(desk, one.at, one.side, one.height)),
                inline(desk.quantity(one.reading)),
                inline(day(one.day or found.surveyed)),
            )
        )
        for one in found.moisture
    )
    columns = (
        Column("Spot", width=0.8),
        Column("Where", width=3),
        Column("Moisture", "right"),
        Column("Day", width=1.4),
    )
    limit = found.practice.moisture if found.practice else None
    above = f"Limit: {desk.quantity(limit)}. " if limit else ""
    return _list("Moisture", columns, rows, f"{above}{note}")


def bolts_table(desk: Desk, found: Timber) -> list[Block]:
    """Set out the keel bolts."""
    rows = tuple(
        Row(
            (
                inline(one.bolt),
                inline(one.at.text),
                inline(one.kind),
                inline(desk.quantity(one.diameter)),
                inline(desk.quantity(one.now, "–")),
                inline(one.by),
                _item(desk, one.item),
            )
        )
        for one in found.keel_bolts
    )
    columns = (
        Column("Bolt"),
        Column("At"),
        Column("Kind", width=1.4),
        Column("As fitted", "right"),
        Column("Least now", "right"),
        Column("Looked at by", width=1.4),
        Column("Item", width=0.7),
    )
    return _list("Keel bolts", columns, rows, "Blocks are built clear of keel bolts (common practice, no source).")


def borers_table(desk: Desk, found: Timber) -> list[Block]:
    """Set out what borers attacked."""
    alive = {True: "alive", False: "dead", None: "not stated"}
    rows = tuple(
        Row(
            (
                inline(one.kind),
                inline(f"{one.where}, {_place(desk, one.at, one.side, None)}"),
                inline(desk.quantity(one.depth, "–")),
                inline(alive[one.live]),
                inline(one.treated or "–"),
                _item(desk, one.item),
            )
        )
        for one in found.borers
    )
    columns = (
        Column("Borer"),
        Column("Where", width=3),
        Column("Depth", "right"),
        Column("Found"),
        Column("Treated", width=1.6),
        Column("Item", width=0.7),
    )
    return _list("Borers", columns, rows)


def sheathing_blocks(desk: Desk, found: Timber) -> list[Block]:
    """Set out the sheathing and where it is torn."""
    sheathing = found.sheathing
    if sheathing is None:
        return []
    facts = (
        ("Sheathing", sheathing.metal),
        ("Thickness", desk.quantity(sheathing.thickness)),
        ("Nails", sheathing.nails),
        ("Under it", sheathing.under),
    )
    rows = tuple(
        Row(
            (
                inline(f"{one.where}, {_place(desk, one.at, one.side, None)}"),
                inline(desk.quantity(one.area)),
                _item(desk, one.item),
            )
        )
        for one in sheathing.torn
    )
    columns = (Column("Torn or gone", width=4), Column("Area", "right"), Column("Item", width=0.7))
    told = Facts(tuple((name, inline(words)) for name, words in facts if words))
    return [Heading("Sheathing"), told, *([Table(columns, rows, small=True)] if rows else [])]


def potentials_table(desk: Desk, found: Timber, aim: tuple[float, float]) -> list[Block]:
    """Set out the potentials of bonded metals."""
    rows = tuple(
        Row((inline(_place(desk, one.at, one.side, None)), inline(desk.quantity(one.potential))))
        for one in found.potentials
    )
    note = (
        f"Against silver/silver chloride. The aim on wood is {aim[1]:.2f} V to {aim[0]:.2f} V (from memory); more "
        "makes alkali, which eats the wood round the metal. The rule for metal hulls is not applied."
    ).replace("-", "−")
    return _list("Potentials of bonded metals", (Column("Where", width=3), Column("Potential", "right")), rows, note)


def _list(title: str, columns: tuple[Column, ...], rows: tuple[Row, ...], note: str = "") -> list[Block]:
    return [Heading(title), Table(columns, rows, note=inline(note) if note else (), small=True)] if rows else []


def _place(desk: Desk, at: Position, side: str, height: Quantity | None) -> str:
    up = f"{desk.quantity(height)} up" if height else ""
    return ", ".join(word for word in (at.text, side, up) if word)


def _item(desk: Desk, item: Reference | None) -> Inline:
    return (desk.item_ref(item.name),) if item else inline("–")
