"""The blocks of the docking plan: where they stand, what they carry, and how the side blocks are built to the hull."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import degrees

from tenderwright.calculations.ship.block_places import (
    KeelBlockResult,
    SideBlockResult,
    keel_blocks,
    side_block_places,
    side_block_seats,
)
from tenderwright.calculations.ship.keel_loads import (
    elastic_keel_loads,
    first_block_pressure,
    keel_bearing,
    one_block_out,
    planned_keel_blocks,
    rigid_keel_loads,
)
from tenderwright.calculations.ship.side_loads import (
    earlier_side_slopes,
    planned_side_blocks,
    side_block_slopes,
    side_block_standing,
    side_block_verdict,
)
from tenderwright.calculations.ship.timber import wood
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.verdict import Limit, within
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
    facts_abreast,
    inline,
    plain,
)
from tenderwright.documents.not_calculated import not_calculated, not_calculated_of
from tenderwright.documents.parts.abreast import folded
from tenderwright.documents.parts.limits import shown, word
from tenderwright.model.docking_plan import BlockLayer, DockingPlan
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
        parts += [Heading("Side blocks"), *_sides(desk)]
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
    return [*_keel_result(desk, planned), *not_calculated_of(told), *_keel_columns(planned), *_hogged(desk)]


def _hogged(desk: Desk) -> list[Block]:
    """Say that the heights follow a keel that is not straight, and what the loads make of it."""
    timber = desk.calculated.found(wood)
    if timber is None or timber.hog is None or timber.hog.blocks != "measured line":
        return []
    words = "Heights follow the measured line of her keel; loads are those of a keel that lies evenly on all of them."
    return [Paragraph(inline(words))]


def _sides(desk: Desk) -> list[Block]:
    seats = desk.calculated.outcome(side_block_seats)
    if isinstance(seats, Absent):
        return [not_calculated(seats)]
    without: Mapping[str, Absent | None] = {f"Pair {number}": one for number, one in seats.absent.items()}
    if len({one.why for one in seats.absent.values()}) == 1 and not seats:
        without = {"The shell over them": next(iter(seats.absent.values()))}
    pairs = desk.calculated.found(planned_side_blocks) or ()
    table = side_table(pairs) if pairs else places_table(desk)
    return [*not_calculated_of(without), table, *_standing(desk)]


def places_table(desk: Desk) -> Table:
    """Give where every pair of side blocks stands and what it bears, where the shell over them is not known."""
    places, standing = desk.calculated.found(side_block_places) or (), desk.calculated.found(side_block_standing)
    acting = (standing.wind, standing.earthquake) if standing is not None else (None, None)
    lee = [standing.lee(effect) if standing is not None and effect is not None else None for effect in acting]
    rows = [
        (
            str(one.number),
            one.position,
            in_column(one.off_centre, "centre"),
            " × ".join(in_column(size, "centre") for size in (one.length, one.width)),
            *("–" if loads is None else in_column(loads[one.number - 1], "weight") for loads in lee),
        )
        for one in places
    ]
    columns = (
        Column("Pair from aft", "right", 0.7),
        Column("Place", width=0.9),
        Column(head("Off centre", "centre"), "decimal"),
        Column(head("Cap", "centre"), "right", 1.1),
        Column(head("Wind", "weight"), "decimal", 0.9),
        Column(head("Earth­quake", "weight"), "decimal", 0.9),
    )
    note = inline(
        "Heights and bevels are taken off the ship, or from her docking plan: her form over them is not known. Wind "
        "and earthquake: load of the lee block, each by itself."
    )
    return Table(columns, tuple(Row(tuple(inline(cell) for cell in row)) for row in rows), note=note, small=True)


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
    """Give every keel block with place, cap, height, loads and pressure."""
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


def _keel_columns(blocks: Sequence[KeelBlockResult]) -> list[Block]:
    """Give the keel blocks in two columns where all are as high, the height said once; else as one table."""
    whole = keel_table(blocks)
    heights = {plain(row.cells[_HEIGHT]) for row in whole.rows}
    if len(heights) != 1:
        return [whole]
    rows = tuple(replace(row, cells=(*row.cells[:_HEIGHT], *row.cells[_HEIGHT + 1 :])) for row in whole.rows)
    columns = (
        Column("No.", "right", 0.5),
        Column("Place", width=1.8),
        Column(head("Cap", "distance"), "right", 1.3),
        Column(head("Rigid", "weight"), "decimal", 0.9),
        Column(head("Elastic", "weight"), "decimal", 0.9),
        Column(head("Line", "line load"), "decimal", 0.9),
        Column(head("Press.", "block load"), "decimal", 0.9),
    )
    note = inline(f"Numbered from aft; all {heights.pop()} {unit_of('height')} high. ", *whole.note)
    return folded(replace(whole, columns=columns, rows=rows, note=note))


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
    return [*told, *(Paragraph(inline(one)) for one in said)]


def judged(limit: Limit) -> str:
    """Say a figure, what is allowed and the verdict; both figures where the worse rests on estimates."""
    allowed = f"{shown(limit.limit, limit)} allowed" if limit.limit is not None else "no limit is given"
    words = f"{word(limit.met).lower()}, {allowed}"
    if limit.estimate is None:
        return f"{shown(limit.demand, limit)}: {words}"
    return f"{shown(limit.demand, limit)} rigid, {shown(limit.estimate, limit)} elastic by estimates: {words}"


def one_out(desk: Desk) -> tuple[str, str] | None:
    """Say which block is worst to take out, and the worst pressure then; None where it was not calculated."""
    turns, blocks = desk.calculated.found(one_block_out), desk.calculated.found(keel_blocks)
    if turns is None or blocks is None:
        return None
    worst = turns.worst
    out, hardest = (blocks[number - 1].position for number in (worst.out, worst.hardest))
    return f"with that at {out} out, on that at {hardest}", judged(turns.limit)


def _one_out(desk: Desk, blocks: Sequence[KeelBlockResult]) -> list[tuple[str, str]]:
    """Say what the blocks bear with each that is taken out in turn, the worst of them first."""
    found, turns = one_out(desk), desk.calculated.found(one_block_out)
    if turns is None or found is None:
        return []
    where, how = found
    each = ", ".join(f"{blocks[one.out - 1].position} {in_column(one.pressure, 'block load')}" for one in turns.cases)
    return [
        ("Greatest with one keel block out, each in turn", f"{where}, {how}"),
        (f"Greatest with each out, {unit_of('block load')}", each),
    ]


def side_table(blocks: Sequence[SideBlockResult]) -> Table:
    """Give every pair of side blocks with place, heights, bevels and loads."""
    rows = [_side_row(one) for one in blocks]
    columns = (
        Column("Pair from aft", "right", 0.7),
        Column("Place", width=0.9),
        Column(head("Off centre", "distance"), "decimal"),
        Column(head("Cap", "distance"), "right", 1.1),
        Column(head("Height, inboard edge", "height"), "decimal", 1.1),
        Column(head("Middle", "height"), "decimal"),
        Column(head("Outboard edge", "height"), "decimal", 1.1),
        Column("Bevel across", "right"),
        Column("Bevel along", "right"),
        Column(head("Wind", "weight"), "decimal", 0.9),
        Column(head("Earth­quake", "weight"), "decimal", 0.9),
    )
    note = inline(
        "Heights above the dock floor to the moulded shell, its thickness not taken off. Bevels rise outboard and, "
        "with a plus, forward. Wind and earthquake: load of the lee block, each by itself."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _side_row(one: SideBlockResult) -> Row:
    raised = None if one.height is None else one.height - one.shell

    def height(shell: float) -> str:
        return "–" if raised is None else in_column(shell + raised, "height", more=1)

    along = degrees(one.fore_and_aft)
    cells = (
        str(one.number),
        one.position,
        in_column(one.off_centre, "distance"),
        f"{in_column(one.length, 'distance')} × {in_column(one.width, 'distance')}",
        height(one.shell_inner),
        height(one.shell),
        height(one.shell_outer),
        f"{decimals(degrees(one.bevel), 1)}°",
        f"{'+' if along > 0 else ''}{decimals(along, 1)}°",
        "–" if one.wind is None else in_column(one.wind, "weight"),
        "–" if one.earthquake is None else in_column(one.earthquake, "weight"),
    )
    return Row(tuple(inline(cell) for cell in cells))


def _standing(desk: Desk) -> list[Block]:
    """Judge the side blocks by each of their limits, the one that governs first."""
    side, plan = desk.calculated.outcome(side_block_standing), desk.package.docking_plan
    assert plan is not None
    acting, limits = (
        tuple((label, inline(text)) for label, text in facts) for facts in (_acting(desk, plan), side_limits(desk))
    )
    blocks: list[Block] = [Facts(acting)] if acting else []
    blocks += [facts_abreast(limits)] if limits else []
    if isinstance(side, NotAsked):
        words = "What they bear in wind and earthquake is not known: neither is given in vessel/docking-plan.yaml."
        blocks.append(Paragraph(inline(words)))
    elif isinstance(side, Absent):
        blocks.append(not_calculated(side, "Loads of the side blocks"))
    return [*blocks, *_earlier(desk)]


def _acting(desk: Desk, plan: DockingPlan) -> list[tuple[str, str]]:
    """Say what acts on her, each with its source."""
    facts = []
    if (wind := plan.wind) is not None:
        words = (
            f"{desk.quantity(wind.speed)} on {desk.quantity(wind.area)}, coefficient {wind.coefficient:g}, centre "
            f"{desk.quantity(wind.height)} above the keel line: {wind.source}"
        )
        facts.append(("Wind", words))
    if plan.earthquake is not None:
        words = f"{plan.earthquake.coefficient:g} of her weight sideways: {plan.earthquake.source}"
        facts.append(("Earthquake", words))
    if plan.friction is not None:
        facts.append(("Friction", f"{plan.friction.value:g}: {plan.friction.source}"))
    return facts


def side_limits(desk: Desk) -> list[tuple[str, str]]:
    """Say how the side blocks stand by each limit, and which governs; nothing without side blocks.

    The sources of friction and of what the caps bear stand with those figures.
    """
    found, slopes = desk.calculated.found(side_block_verdict), desk.calculated.found(side_block_slopes)
    pairs = desk.calculated.found(planned_side_blocks)
    if found is None or (slopes is not None and not pairs):
        return []
    facts = [("Result", f"{word(found.met)}: {found.governs.name} {'governs' if found.met is not None else 'is open'}")]
    for limit in found.limits:
        name = limit.name[0].upper() + limit.name[1:]
        at = f"at {pairs[slopes.steepest].position}, " if slopes and pairs and limit == slopes.limit else ""
        told = limit.limit is not None and limit.dimension in ("moment", "mass")
        facts.append((name, at + judged(limit) + (f" ({limit.source})" if told else "") + _wanting(limit)))
    return facts


_WANTED = {"angle": "friction", "mass": "hull_at_side_blocks", "pressure": "allowable"}
"""The field of the docking plan that supplies a limit, by its dimension."""


def _wanting(limit: Limit) -> str:
    if limit.limit is not None:
        return ""
    field = _WANTED[limit.dimension]
    who = ", from the naval architect" if field == "hull_at_side_blocks" else ""
    return f"; it needs `{field}` in vessel/docking-plan.yaml{who}"


def _earlier(desk: Desk) -> list[Block]:
    """Name the side blocks of earlier dockings that stood on a slope beyond friction."""
    slopes, earlier = desk.calculated.found(side_block_slopes), desk.calculated.found(earlier_side_slopes)
    most = slopes.limit.limit if slopes is not None else None
    steep = [one for one in earlier or () if most is not None and not within(one.slope, most)]
    if not steep or most is None:
        return []
    years = {one.docking: one.docked.year for one in desk.package.history}
    named = "; ".join(f"{years[one.docking]}, {one.position}: {decimals(degrees(one.slope), 0)}°" for one in steep)
    words = (
        f"Side blocks of earlier dockings stood where the shell is steeper than the {decimals(degrees(most), 1)}° that "
        f"friction holds: {named}. That some of them held is no measure for this docking."
    )
    return [Paragraph(inline(words))]
