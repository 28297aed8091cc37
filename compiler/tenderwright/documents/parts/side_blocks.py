"""The side blocks of the docking plan: where they stand, how they are built to the hull, and how they stand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import degrees

from tenderwright.calculations.ship.block_places import (
    SideBlockResult,
    side_block_places,
    side_block_seats,
)
from tenderwright.calculations.ship.side_loads import (
    earlier_side_slopes,
    planned_side_blocks,
    side_block_slopes,
    side_block_standing,
    side_block_verdict,
)
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.verdict import Limit, Verdict, within
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import (
    Block,
    Column,
    Facts,
    Paragraph,
    Row,
    Table,
    inline,
)
from tenderwright.documents.not_calculated import not_calculated, not_calculated_of
from tenderwright.documents.parts.abreast import facts_abreast, without_dashes
from tenderwright.documents.parts.limits import judged, word
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.quantities.display import decimals, head, in_column


def side_blocks(desk: Desk) -> list[Block]:
    """Compose the side blocks and how they stand, or why that is not known."""
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
    made = tuple(Row(tuple(inline(cell) for cell in row)) for row in rows)
    return without_dashes(Table(columns, made, note=note, small=True))


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
    return without_dashes(Table(columns, tuple(rows), note=note, small=True))


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
    blocks += facts_abreast(limits)
    if isinstance(side, NotAsked):
        words = "What they carry in wind and earthquake is not known: the docking plan gives neither."
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
    facts = [("Result", f"{word(found.met)}: {_governing(found)}")]
    for limit in found.limits:
        name = limit.name[0].upper() + limit.name[1:]
        at = f"at {pairs[slopes.steepest].position}, " if slopes and pairs and limit == slopes.limit else ""
        told = limit.limit is not None and limit.dimension in ("moment", "mass")
        facts.append((name, at + judged(limit) + (f" ({limit.source})" if told else "") + _wanting(limit)))
    return facts


_WANTED = {
    "angle": "the friction under them",
    "mass": "what shell and frame can take there, from the naval architect",
    "pressure": "the pressure allowed on the caps",
}
"""What supplies a limit that is not given, by its dimension."""


def _governing(found: Verdict) -> str:
    name = found.governs.name
    if found.met is not None:
        return f"{name} governs"
    return f"no limit is given for {name}" if found.governs.limit is None else f"{name} is not calculated"


def _wanting(limit: Limit) -> str:
    return f"; it needs {_WANTED[limit.dimension]}" if limit.limit is None else ""


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
