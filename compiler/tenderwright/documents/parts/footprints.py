"""The blocks against the hull and against earlier dockings: openings, what stays bare, what was never painted."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.blocks.frame_shift import LeastShift
from tenderwright.calculations.ship.footprints import (
    PLACES,
    Footprint,
    Strip,
    bare_bottom,
    block_clearances,
    covered_strips,
    earlier_footprints,
    not_placed,
)
from tenderwright.calculations.ship.shift import last_shift, plan_shift
from tenderwright.calculations.ship.works import blocks_over_work
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk, joined
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.in_words import in_words
from tenderwright.documents.not_calculated import not_calculated, why_not
from tenderwright.documents.parts.abreast import folded
from tenderwright.quantities.display import head, in_column, show
from tenderwright.quantities.retold import retold


def footprints(desk: Desk) -> Part | None:
    """Compose the blocks against openings and earlier dockings; None without a docking plan."""
    if desk.package.docking_plan is None:
        return None
    blocks: list[Block] = [
        Heading("Openings, plugs and fittings"),
        *openings(desk),
        *_work(desk),
        Heading("Places covered before"),
        *_covered(desk),
        Paragraph(inline(_bare(desk))),
    ]
    return Part(
        "footprints",
        "",
        "Blocks against the hull",
        "data",
        "Docking data",
        tuple(blocks),
        caution=True,
        audience="yard",
    )


def openings(desk: Desk) -> list[Block]:
    """Give each opening in the bottom with its nearest block, and any that is too near."""
    found_near, plan = desk.calculated.outcome(block_clearances), desk.package.docking_plan
    if isinstance(found_near, Absent):
        return [not_calculated(found_near)]
    wanted = desk.quantity(plan.clearance.value) if plan and plan.clearance else retold("300 mm")
    source = plan.clearance.source if plan and plan.clearance else "common practice, no source"
    names = {one.opening: one for one in desk.package.openings}
    too_near = {(one.name, one.footprint) for one in found_near.conflicts}
    rows = []
    for one in found_near.nearest:
        opening = names.get(one.name)
        mark = " (too near)" if (one.name, one.footprint) in too_near else ""
        cells = (
            opening.name if opening else one.name,
            f"{opening.at}, {opening.side}" if opening else "",
            place(one.footprint),
            f"{show(one.gap, 'centre')}{mark}",
        )
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Opening", width=2.4),
        Column("Where", width=2),
        Column("Nearest block", width=2.2),
        Column("Distance", "right", 1.2),
    )
    others = [one for one in found_near.conflicts if one.name not in names]
    fitted = "anode, " if desk.package.anodes else ""
    text = f"No edge of a cap is nearer than {wanted} ({source}) to an opening, plug, {fitted}transducer or bilge keel."
    if found_near.conflicts:
        text = f"{len(found_near.conflicts)} blocks stand nearer than {wanted} ({source}) to something on the hull."
    left = desk.calculated.found(not_placed)
    if left:
        text = f"Of what can be placed: {text[0].lower()}{text[1:]}"
    found: list[Block] = [Paragraph(inline(text))]
    if left:
        found.append(
            Paragraph(
                inline(f"Not compared with the blocks: {', '.join(left)}. Not calculated: {in_words(PLACES)} them.")
            )
        )
    found += [Paragraph(inline(f"{place(c.footprint)}: {c.kind} {c.name}, {show(c.gap, 'centre')}.")) for c in others]
    if rows:
        note = inline(
            f"From edge to edge, within {retold('2 m')}. The height of an opening over the block is "
            "counted, but not that of a plug, which is drawn downward."
        )
        found.append(Table(columns, tuple(rows), note=note, small=True))
    return found


def place(one: Footprint) -> str:
    """Name a block by its kind and place."""
    return f"keel block {one.position}" if one.kind == "keel" else f"side block {one.position}, {one.side}"


def _work(desk: Desk) -> list[Block]:
    works = desk.calculated.outcome(blocks_over_work)
    if isinstance(works, NotAsked):
        return []
    if isinstance(works, Absent):
        return [not_calculated(works, "Blocks on shell that is worked on")]
    if not works:
        text = "No side block stands on shell on which a definite or measured item does hot work."
        return [Paragraph(inline(text))]
    rows = tuple(
        Row((inline(place(one.footprint)), inline(desk.item_ref(one.item, f"item {one.item}")), inline(one.what)))
        for one in works
    )
    columns = (Column("Block", width=2), Column("Moved for", width=1), Column("Plating under it", width=2))
    return [Paragraph(inline("Blocks on shell that is worked on:")), Table(columns, rows, small=True)]


def _covered(desk: Desk) -> list[Block]:
    strips, earlier = desk.calculated.outcome(covered_strips), desk.calculated.outcome(earlier_footprints)
    if isinstance(strips, Absent):
        return [not_calculated(strips)]
    if isinstance(earlier, Absent):
        return [not_calculated(earlier)]
    plan = desk.package.docking_plan
    years = {one.docking: str(one.docked.year) for one in desk.package.history} | {"plan": "this docking"}
    again = [one for one in strips if one.dockings[-1] == "plan"]
    before = [one for one in strips if one.dockings[-1] != "plan"]
    margin = f", by {desk.quantity(plan.margin.value)} or more ({plan.margin.source})" if plan and plan.margin else ""
    last = years.get(list(earlier)[-1], "") if earlier else ""
    blocks: list[Block] = []
    if earlier and not again:
        blocks.append(Paragraph(inline(f"The plan clears every place that was under a block in {last}{margin}.")))
    if again:
        text = f"The plan covers again {len(again)} places that were under blocks at the last docking, and not painted."
        blocks.append(Paragraph(inline(text)))
    moves, free = _moves(desk, last), list[Block]()
    if before:
        free = _bare_twice(desk, before, years)
    blocks += [*free, *moves]
    if not blocks:
        blocks.append(Paragraph(inline("Not known: no earlier docking says where its blocks stood.")))
    return blocks


def _bare_twice(desk: Desk, before: list[Strip], years: Mapping[str, str]) -> list[Block]:
    """List what was under blocks at two dockings running; where all lie alike, that is said once."""
    frames = desk.package.frames
    label = frames.label if frames else (lambda x: show(x, "centre", more=-1))
    told = [
        (
            f"{label(one.aft)} to {label(one.forward)}",
            _across(one.right, one.left),
            joined([years.get(name, name) for name in one.dockings]),
            in_column((one.forward - one.aft) * (one.left - one.right), "small area", more=1),
        )
        for one in before
    ]
    columns = [
        Column("Frames" if frames else "Forward of the after perpendicular", width=3.2),
        Column("Across", width=1.6),
        Column("Covered in", width=1.5),
        Column(head("Area", "small area"), "decimal"),
    ]
    alike = len({row[1:3] for row in told}) == 1
    kept = (0, 3) if alike else (0, 1, 2, 3)
    where = f", {told[0][1]}, in {told[0][2]}" if alike else ""
    text = f"Under blocks at two dockings running{where}, not painted since, and free now:"
    rows = tuple(Row(tuple(inline(row[at]) for at in kept)) for row in told)
    table = Table(tuple(columns[at] for at in kept), rows, small=True)
    return [Paragraph(inline(text)), *(folded(table, 3) if alike else [table])]


def _moves(desk: Desk, last: str) -> list[Block]:
    """Give the least move of the blocks that frees what they cover, and that of the last docking's."""
    shift, of_last = desk.calculated.outcome(plan_shift), desk.calculated.outcome(last_shift)
    said: list[Block] = []
    if isinstance(shift, Absent) and not isinstance(shift, NotAsked):
        said.append(not_calculated(shift, "Least move of the blocks"))
    if not isinstance(shift, Absent) and shift.blocks:
        said += [Paragraph(inline("The least move that frees them, blocks numbered from aft:")), *_move(shift)]
    if not isinstance(of_last, Absent) and of_last.blocks:
        text = (
            f"Were the keel blocks of {last} set again where they stood, all of it would stay bare once more. The "
            "least move by whole frame spaces that frees the bottom and keeps clear of the plugs, blocks numbered from "
            "aft:"
        )
        said += [Paragraph(inline(text)), *_move(of_last)]
    return said


def _move(found: LeastShift) -> list[Block]:
    """Tell a move: runs of blocks that move alike."""
    runs: list[list[int]] = []
    for number, frames in zip(found.blocks, found.frames, strict=True):
        if runs and runs[-1][1] == number - 1 and runs[-1][2] == frames:
            runs[-1][1] = number
        else:
            runs.append([number, number, frames])
    rows = []
    for first, final, frames in runs:
        spaces = "frame space" if abs(frames) == 1 else "frame spaces"
        moved = f"{abs(frames)} {spaces} {'forward' if frames > 0 else 'aft'}" if frames else "stay"
        rows.append(Row((inline(f"{first}" if first == final else f"{first} to {final}"), inline(moved))))
    note = inline(f"{len(found.held)} blocks are not freed by any move.") if found.held else ()
    table = Table((Column("Block"), Column("Move", width=2)), tuple(rows), note=note, small=True)
    return folded(table, 3, short=3)


def _bare(desk: Desk) -> str:
    bare = desk.calculated.outcome(bare_bottom)
    if isinstance(bare, Absent):
        return why_not(bare)
    area = desk.record.values["blocks.bare-area"]
    count = desk.record.values["blocks.keel-count"], desk.record.values["blocks.side-count"]
    return (
        f"{count[0].si:.0f} keel blocks and {count[1].si:.0f} side blocks leave {desk.figure(area, 3)} bare while she "
        "stands on them. A coating line may take this area as its quantity; blocks that are moved take their share "
        "off it."
    )


def _across(right: float, left: float) -> str:
    if right < 0.0 < left:
        return "under the keel"
    inner, outer = sorted((abs(right), abs(left)))
    return f"{show(inner, 'centre')} to {show(outer, 'centre')}, {'port' if left > 0 else 'starboard'}"
