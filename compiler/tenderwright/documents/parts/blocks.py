"""The blocks of the docking plan: where the keel blocks stand and what they carry, and the side blocks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tenderwright.calculations.ship.block_places import (
    KeelBlockResult,
    keel_blocks,
)
from tenderwright.calculations.ship.keel_loads import (
    elastic_keel_loads,
    first_block_pressure,
    keel_bearing,
    one_block_out,
    planned_keel_blocks,
    rigid_keel_loads,
)
from tenderwright.calculations.ship.timber import wood
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import (
    Block,
    Column,
    Facts,
    Heading,
    Paragraph,
    Part,
    Row,
    Table,
    inline,
    plain,
)
from tenderwright.documents.not_calculated import not_calculated, not_calculated_of
from tenderwright.documents.parts.abreast import folded, without_dashes
from tenderwright.documents.parts.limits import judged
from tenderwright.documents.parts.side_blocks import side_blocks
from tenderwright.model.docking_plan import BlockLayer
from tenderwright.quantities.display import decimals, head, in_column, unit_of


def blocks(desk: Desk) -> Part | None:
    """Compose the tables of keel blocks and side blocks; None without a docking plan."""
    if desk.package.docking_plan is None:
        return None
    text = (
        "The owner's arrangement for tender, in the docking condition. Loads are for planning: the yard makes its own."
    )
    parts: list[Block] = [Paragraph(inline(text)), *_inputs(desk), Heading("Keel blocks"), *_keel(desk)]
    if desk.package.docking_plan.side_blocks:
        parts += [Heading("Side blocks"), *side_blocks(desk)]
    return Part(
        "blocks", "", "Blocks and their loads", "data", "Docking data", tuple(parts), caution=True, audience="yard"
    )


def _keel(desk: Desk) -> list[Block]:
    placed = desk.calculated.outcome(keel_blocks)
    if isinstance(placed, Absent):
        return [not_calculated(placed)]
    without: dict[str, object] = {
        "Rigid hull": desk.calculated.outcome(rigid_keel_loads),
        "Elastic hull": desk.calculated.outcome(elastic_keel_loads),
        "Pressure as she lands": desk.calculated.outcome(first_block_pressure),
        "With one block out": desk.calculated.outcome(one_block_out),
    }
    told = {name: one if isinstance(one, Absent) else None for name, one in without.items()}
    planned = desk.calculated.found(planned_keel_blocks) or placed
    return [*_keel_result(desk, planned), *not_calculated_of(told), *keel_columns(planned), *_hogged(desk)]


def _hogged(desk: Desk) -> list[Block]:
    """Say that the heights follow a keel that is not straight, and what the loads make of it."""
    timber = desk.calculated.found(wood)
    if timber is None or timber.hog is None or timber.hog.blocks != "measured line":
        return []
    words = "Heights follow the measured line of her keel; loads are those of a keel that lies evenly on all of them."
    return [Paragraph(inline(words))]


def _inputs(desk: Desk) -> list[Block]:
    plan = desk.package.docking_plan
    assert plan is not None
    facts: list[tuple[str, str]] = [("Height of keel blocks", desk.quantity(plan.block_height))]
    if plan.allowable is not None:
        facts.append(
            ("Allowable on the caps", f"{desk.quantity(plan.allowable.value, beside=True)}. {plan.allowable.source}")
        )
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
    """Give every keel block with place, cap, height, loads and pressure, as far as they are known."""
    return without_dashes(_whole(blocks))


def _whole(blocks: Sequence[KeelBlockResult]) -> Table:
    rows = [_keel_row(one) for one in blocks]
    columns = (
        Column("No. from aft", "right", 0.8),
        Column("Place", width=1.7),
        Column(head("Cap", "distance"), "right", 1.1),
        Column(head("Height", "height"), "decimal"),
        Column(head("Rigid hull", "weight"), "decimal"),
        Column(head("Elastic hull", "weight"), "decimal"),
        Column(head("Line load", "line load"), "decimal"),
        Column(head("Pressure", "block load"), "decimal", 1.1),
    )
    note = inline(
        "Loads without anything on the side blocks. Line load: the greater load over the length that the block holds "
        "up. Pressure: the greater load on the cap's length and the width on which the keel bears."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def keel_columns(blocks: Sequence[KeelBlockResult]) -> list[Block]:
    """Give the keel blocks in two columns where all are as high, the height said once; else as one table."""
    whole = _whole(blocks)
    heights = {plain(row.cells[_HEIGHT]) for row in whole.rows}
    if len(heights) != 1:
        return [without_dashes(whole)]
    rows = tuple(replace(row, cells=(*row.cells[:_HEIGHT], *row.cells[_HEIGHT + 1 :])) for row in whole.rows)
    columns = (
        Column("No.", "right", 0.65),
        Column("Place", width=1.8),
        Column(head("Cap", "distance"), "right", 1.3),
        Column(head("Rigid", "weight"), "decimal", 0.9),
        Column(head("Elastic", "weight"), "decimal", 0.9),
        Column(head("Line", "line load"), "decimal", 0.9),
        Column(head("Press.", "block load"), "decimal", 0.9),
    )
    note = inline(f"Numbered from aft; all {heights.pop()} {unit_of('height')} high. ", *whole.note)
    return folded(without_dashes(replace(whole, columns=columns, rows=rows, note=note)))


_HEIGHT = 3
"""The column of heights in the table of keel blocks."""


def _keel_row(one: KeelBlockResult) -> Row:
    def figure(si: float | None, purpose: str, more: int = 0) -> str:
        return "–" if si is None else in_column(si, purpose, more=more)

    cells = (
        str(one.number),
        one.position,
        f"{in_column(one.length, 'distance')} × {in_column(one.width, 'distance')}",
        figure(one.height, "height", more=1),
        figure(one.rigid, "weight"),
        figure(one.elastic, "weight"),
        figure(one.line_load, "line load"),
        figure(one.pressure, "block load"),
    )
    return Row(tuple(inline(cell) for cell in cells))


def _keel_result(desk: Desk, blocks: Sequence[KeelBlockResult]) -> list[Block]:
    values, standing = desk.record.values, desk.calculated.found(elastic_keel_loads)
    facts: list[tuple[str, str]] = []
    said: list[str] = []
    bearing = desk.calculated.found(keel_bearing)
    if bearing is not None:
        at = blocks[bearing.hardest].position
        facts.append(("Greatest pressure on a keel block", f"at {at}, {judged(bearing.limit)}"))
    first = values.get("blocks.first.pressure")
    if first is not None:
        label, _, lying = first.working.about.partition(", as ")
        facts.append((capital(label), desk.figure(first, 3) + (f" as {lying}" if lying else "")))
    if standing is not None and not standing.rigid_justified:
        said.append(
            f"λL of the keel line is {decimals(standing.slenderness, 1)}, above π/4, so that the loads of a rigid hull "
            "are not justified by themselves: the hull bends, and the blocks under her ends carry more. The elastic "
            "loads rest on the girder and the layers given, and are no better than these; the naval architect judges "
            "them."
        )
    facts += _one_out(desk, blocks)
    if any(one.elastic == 0.0 or one.rigid == 0.0 for one in blocks):
        lifted = [one.position for one in blocks if one.elastic == 0.0 or one.rigid == 0.0]
        said.append(
            f"She lifts off the blocks at {', '.join(lifted)}: a matter for the naval architect and the dockmaster."
        )
    told = [Facts(tuple((label, inline(text)) for label, text in facts))] if facts else []
    return [*told, *(Paragraph(inline(one)) for one in said), *_each_out(desk, blocks)]


def one_out(desk: Desk) -> tuple[str, str] | None:
    """Say which block is worst to take out, and the worst pressure then; None where it was not calculated."""
    turns, blocks = desk.calculated.found(one_block_out), desk.calculated.found(keel_blocks)
    if turns is None or blocks is None:
        return None
    worst = turns.worst
    out, hardest = (blocks[number - 1].position for number in (worst.out, worst.hardest))
    return f"with that at {out} out, on that at {hardest}", judged(turns.limit)


_FEW = 8
"""Blocks taken out in turn up to which what each leaves is told in a line."""


def _one_out(desk: Desk, blocks: Sequence[KeelBlockResult]) -> list[tuple[str, str]]:
    """Say what the blocks bear at worst with one that is taken out in turn, and with each where those are few."""
    found, turns = one_out(desk), desk.calculated.found(one_block_out)
    if found is None or turns is None:
        return []
    facts = [("Greatest with one keel block out, each in turn", f"{found[0]}, {found[1]}")]
    if len(turns.cases) <= _FEW:
        told = (f"{blocks[one.out - 1].position} {in_column(one.pressure, 'block load')}" for one in turns.cases)
        facts.append((f"Greatest with each out, {unit_of('block load')}", ", ".join(told)))
    return facts


def _each_out(desk: Desk, blocks: Sequence[KeelBlockResult]) -> list[Block]:
    """Give the greatest pressure with each of many blocks out that are taken out in turn."""
    turns = desk.calculated.found(one_block_out)
    if turns is None or len(turns.cases) <= _FEW:
        return []
    rows = tuple(
        Row((inline(blocks[one.out - 1].position), inline(in_column(one.pressure, "block load"))))
        for one in turns.cases
    )
    columns = (Column("Block out"), Column(head("Greatest pressure then", "block load"), "decimal", 1.6))
    return folded(Table(columns, rows, small=True), 3, short=3)
