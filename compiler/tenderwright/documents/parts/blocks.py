"""The blocks of the docking plan: where they stand, what they carry, and how the side blocks are built to the hull."""

from __future__ import annotations

from collections.abc import Sequence
from math import degrees

from tenderwright.calculations.ship.block_places import (
    KeelBlockResult,
    SideBlockResult,
    keel_blocks,
    side_block_seats,
)
from tenderwright.calculations.ship.keel_loads import (
    elastic_keel_loads,
    first_block_pressure,
    planned_keel_blocks,
    rigid_keel_loads,
)
from tenderwright.calculations.ship.side_loads import planned_side_blocks, side_block_standing
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated, not_calculated_of
from tenderwright.documents.parts.facility_fit import shown
from tenderwright.model.docking_plan import BlockLayer
from tenderwright.quantities.display import decimals


def blocks(desk: Desk) -> Part | None:
    """Compose the tables of keel blocks and side blocks; None without a docking plan."""
    if desk.package.docking_plan is None:
        return None
    text = (
        "The owner's arrangement for tender, in the docking condition. Loads are for planning: "
        "the yard makes its own, with its own blocks."
    )
    parts: list[Block] = [Paragraph(inline(text)), *_inputs(desk), Heading("Keel blocks"), *_keel(desk)]
    if desk.package.docking_plan.side_blocks:
        parts += [Heading("Side blocks"), *_sides(desk)]
    return Part("blocks", "7.2", "Blocks and their loads", "data", "Docking data", tuple(parts), caution=True)


def _keel(desk: Desk) -> list[Block]:
    placed = desk.calculated.outcome(keel_blocks)
    if isinstance(placed, Absent):
        return [not_calculated(placed)]
    without: dict[str, object] = {
        "Rigid hull": desk.calculated.outcome(rigid_keel_loads),
        "Elastic hull": desk.calculated.outcome(elastic_keel_loads),
        "Pressure as she lands": desk.calculated.outcome(first_block_pressure),
    }
    told = {name: one if isinstance(one, Absent) else None for name, one in without.items()}
    planned = desk.calculated.found(planned_keel_blocks) or placed
    return [*_keel_result(desk, planned), *not_calculated_of(told), keel_table(planned)]


def _sides(desk: Desk) -> list[Block]:
    seats = desk.calculated.outcome(side_block_seats)
    if isinstance(seats, Absent):
        return [not_calculated(seats)]
    without = {f"Pair {number}": one for number, one in seats.absent.items()}
    pairs = desk.calculated.found(planned_side_blocks) or ()
    return [*not_calculated_of(without), *([side_table(pairs)] if pairs else []), *_overturning(desk)]


def _inputs(desk: Desk) -> list[Block]:
    plan = desk.package.docking_plan
    assert plan is not None
    facts: list[tuple[str, str]] = [("Height of keel blocks", desk.quantity(plan.block_height))]
    if plan.allowable is not None:
        facts.append(("Allowable on the caps", f"{desk.quantity(plan.allowable.value)}. {plan.allowable.source}"))
    layers = {_layers(desk, row.layers): None for row in plan.keel_blocks if row.layers}
    if layers:
        facts.append(("Layers of the keel blocks, from below", "; or ".join(layers)))
    if plan.declivity is not None:
        facts.append(("Slope of the block line", f"{desk.quantity(plan.declivity.value)}: {plan.declivity.source}"))
    facts += [("Between frames", f"{one.at}: {one.off_frame}") for one in plan.keel_blocks if one.off_frame]
    if plan.girder is not None:
        facts.append(
            (
                "Hull girder",
                f"{desk.quantity(plan.girder.second_moment)}, {desk.quantity(plan.girder.modulus)}: "
                f"{plan.girder.source}",
            )
        )
    return [Facts(tuple((label, inline(text)) for label, text in facts if text))]


def _layers(desk: Desk, layers: Sequence[BlockLayer]) -> str:
    told = []
    for one in layers:
        stiffness = f", {desk.quantity(one.stiffness)}" if one.stiffness else ""
        source = f" ({one.source})" if one.source else ""
        told.append(f"{desk.quantity(one.height)} of {one.material}{stiffness}{source}")
    return ", then ".join(told)


def keel_table(blocks: Sequence[KeelBlockResult]) -> Table:
    """Give every keel block with place, cap, height, loads and pressure."""
    rows = [_keel_row(one) for one in blocks]
    columns = (
        Column("No. from aft", "right", 0.8),
        Column("Frame", width=1.7),
        Column("Cap, m", "right", 1.1),
        Column("Height, m", "decimal"),
        Column("Rigid hull, t", "decimal"),
        Column("Elastic hull, t", "decimal"),
        Column("Line load, t/m", "decimal"),
        Column("Pressure, MPa", "decimal", 1.1),
    )
    note = inline(
        "Loads without anything on the side blocks. Line load: the greater load over the length that the block holds "
        "up. Pressure: the greater load on the cap's length and the width on which the keel bears."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _keel_row(one: KeelBlockResult) -> Row:
    def figure(number: float | None, factor: float, places: int) -> str:
        return "–" if number is None else decimals(number / factor, places)

    cells = (
        str(one.number),
        one.position,
        f"{decimals(one.length, 2)} × {decimals(one.width, 2)}",
        figure(one.height, 1.0, 3),
        figure(one.rigid, 1e3, 1),
        figure(one.elastic, 1e3, 1),
        figure(one.line_load, 1e3, 1),
        figure(one.pressure, 1e6, 2),
    )
    return Row(tuple(inline(cell) for cell in cells))


def _keel_result(desk: Desk, blocks: Sequence[KeelBlockResult]) -> list[Block]:
    values, standing = desk.record.values, desk.calculated.found(elastic_keel_loads)
    said: list[str] = []
    greatest = values.get("blocks.keel.greatest.pressure")
    if greatest is not None:
        met = values.get("blocks.keel.greatest.met")
        allowed = values.get("blocks.keel.greatest.allowable")
        words = f"{greatest.working.about[0].upper()}{greatest.working.about[1:]}: {desk.figure(greatest, 3)}"
        if allowed is not None and allowed.si is not None and met is not None:
            words += f", {'within' if met.si else 'above'} the allowable of {desk.figure(allowed, 3)}"
        said.append(words + ".")
    first = values.get("blocks.first.pressure")
    if first is not None:
        said.append(f"{first.working.about[0].upper()}{first.working.about[1:]}: {desk.figure(first, 3)}.")
    if standing is not None and not standing.rigid_justified:
        said.append(
            f"λL of the keel line is {decimals(standing.slenderness, 1)}, above π/4, so that the loads of a rigid hull "
            "are not justified by themselves: the hull bends, and the blocks under her ends carry more. The elastic "
            "loads rest on the girder and the layers given, and are no better than these; the naval architect judges "
            "them."
        )
    if any(one.elastic == 0.0 or one.rigid == 0.0 for one in blocks):
        lifted = [one.position for one in blocks if one.elastic == 0.0 or one.rigid == 0.0]
        said.append(
            f"She lifts off the blocks at {', '.join(lifted)}: a matter for the naval architect and the dockmaster."
        )
    return [Paragraph(inline(one)) for one in said]


def side_table(blocks: Sequence[SideBlockResult]) -> Table:
    """Give every pair of side blocks with place, heights, bevels and loads."""
    rows = [_side_row(one) for one in blocks]
    columns = (
        Column("Pair from aft", "right", 0.7),
        Column("Frame", width=0.9),
        Column("Off centre, m", "decimal"),
        Column("Cap, m", "right", 1.1),
        Column("Height, inboard edge, m", "decimal", 1.1),
        Column("Middle, m", "decimal"),
        Column("Outboard edge, m", "decimal", 1.1),
        Column("Bevel across", "right"),
        Column("Bevel along", "right"),
        Column("Wind, t", "decimal", 0.9),
        Column("Earth­quake, t", "decimal", 0.9),
    )
    note = inline(
        "Heights above the dock floor to the moulded shell; plating is not taken off. Bevels rise outboard and, with a "
        "plus, forward. Wind and earthquake: load of the lee block, each by itself."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _side_row(one: SideBlockResult) -> Row:
    raised = None if one.height is None else one.height - one.shell

    def height(shell: float) -> str:
        return "–" if raised is None else decimals(shell + raised, 3)

    along = degrees(one.fore_and_aft)
    cells = (
        str(one.number),
        one.position,
        decimals(one.off_centre, 2),
        f"{decimals(one.length, 2)} × {decimals(one.width, 2)}",
        height(one.shell_inner),
        height(one.shell),
        height(one.shell_outer),
        f"{decimals(degrees(one.bevel), 1)}°",
        f"{'+' if along > 0 else ''}{decimals(along, 1)}°",
        "–" if one.wind is None else decimals(one.wind / 1000, 1),
        "–" if one.earthquake is None else decimals(one.earthquake / 1000, 1),
    )
    return Row(tuple(inline(cell) for cell in cells))


def _overturning(desk: Desk) -> list[Block]:
    side, plan = desk.calculated.outcome(side_block_standing), desk.package.docking_plan
    assert plan is not None
    if isinstance(side, NotAsked):
        return []
    if isinstance(side, Absent):
        return [not_calculated(side, "Loads of the side blocks")]
    facts: list[tuple[str, Inline]] = []
    if plan.wind is not None:
        facts.append(
            (
                "Wind",
                inline(
                    f"{desk.quantity(plan.wind.speed)} on {desk.quantity(plan.wind.area)}, coefficient "
                    f"{plan.wind.coefficient:g}, centre {desk.quantity(plan.wind.height)} above the keel line: "
                    f"{plan.wind.source}"
                ),
            )
        )
    if plan.earthquake is not None:
        facts.append(
            ("Earthquake", inline(f"{plan.earthquake.coefficient:g} of her weight sideways: {plan.earthquake.source}"))
        )
    if plan.friction is not None:
        facts.append(("Friction", inline(f"{plan.friction.value:g}: {plan.friction.source}")))
    for limit in side.limits:
        use = f", {limit.use:.0%}" if limit.use is not None else ""
        name = limit.name[0].upper() + limit.name[1:]
        facts.append((name, inline(f"{shown(limit.demand, limit)} of {shown(limit.limit, limit)}{use}")))
    pressure = desk.record.values.get("blocks.side.greatest.pressure")
    if pressure is not None:
        facts.append(("Greatest pressure on a side block", inline(desk.figure(pressure, 3))))
    return [Facts(tuple(facts))]
