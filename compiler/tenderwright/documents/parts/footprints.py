"""The blocks against the hull and against earlier dockings: openings, what stays bare, what was never painted."""

from __future__ import annotations

from tenderwright.calculations.blocks.frame_shift import LeastShift
from tenderwright.calculations.ship.footprints import (
    PLACES,
    Footprint,
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
from tenderwright.documents.not_calculated import not_calculated, why_not
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
        Heading("Area that stays bare"),
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
            Paragraph(inline(f"Not held against the blocks: {', '.join(left)}. Not calculated: {PLACES} them."))
        )
    found += [Paragraph(inline(f"{place(c.footprint)}: {c.kind} {c.name}, {show(c.gap, 'centre')}.")) for c in others]
    if rows:
        note = inline(
            f"From edge to edge, within {retold('2 m')}. The height of an opening over the block is "
            "counted, but not that of a "
            "plug, which is drawn downward."
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
    frames, plan = desk.package.frames, desk.package.docking_plan
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
    blocks += [Paragraph(inline(text)) for text in _moves(desk, last)]
    if before:
        label = frames.label if frames else (lambda x: show(x, "centre", more=-1))
        rows = tuple(
            Row(
                (
                    inline(f"{label(one.aft)} to {label(one.forward)}"),
                    inline(_across(one.right, one.left)),
                    inline(joined([years.get(name, name) for name in one.dockings])),
                    inline(in_column((one.forward - one.aft) * (one.left - one.right), "small area", more=1)),
                )
            )
            for one in before
        )
        columns = (
            Column("Frames" if frames else "Forward of the after perpendicular", width=3),
            Column("Across", width=1.6),
            Column("Covered in", width=1.6),
            Column(head("Area", "small area"), "decimal"),
        )
        text = "These were under blocks at two dockings running, and nobody has painted them since. They are free now."
        blocks += [Paragraph(inline(text)), Table(columns, rows, small=True)]
    if not blocks:
        blocks.append(Paragraph(inline("Not known: no earlier docking in history/ says where its blocks stood.")))
    return blocks


def _moves(desk: Desk, last: str) -> list[str]:
    shift, of_last = desk.calculated.outcome(plan_shift), desk.calculated.outcome(last_shift)
    said = (
        [f"Least move of the blocks. {why_not(shift)}"]
        if isinstance(shift, Absent) and not isinstance(shift, NotAsked)
        else []
    )
    if not isinstance(shift, Absent) and shift.blocks:
        said.append(f"The least move that frees them: {_move(shift)}.")
    if not isinstance(of_last, Absent) and of_last.blocks:
        said.append(
            f"Were the keel blocks of {last} set again where they stood, all of it would stay bare once more. The "
            f"least move by whole frame spaces that frees the bottom and keeps clear of the plugs: {_move(of_last)}."
        )
    return said


def _move(found: LeastShift) -> str:
    """Say a move in words: runs of blocks that move alike."""
    runs: list[list[int]] = []
    for number, frames in zip(found.blocks, found.frames, strict=True):
        if runs and runs[-1][1] == number - 1 and runs[-1][2] == frames:
            runs[-1][1] = number
        else:
            runs.append([number, number, frames])
    words = []
    for first, final, frames in runs:
        which = f"block {first}" if first == final else f"blocks {first} to {final}"
        spaces = "frame space" if abs(frames) == 1 else "frame spaces"
        words.append(f"{which} by {abs(frames)} {spaces} {'forward' if frames > 0 else 'aft'}")
    text = joined(words)
    return text + (f"; {len(found.held)} blocks are not freed by any move" if found.held else "")


def _bare(desk: Desk) -> str:
    bare = desk.calculated.outcome(bare_bottom)
    if isinstance(bare, Absent):
        return why_not(bare)
    area = desk.record.values["blocks.bare-area"]
    count = desk.record.values["blocks.keel-count"], desk.record.values["blocks.side-count"]
    return (
        f"{count[0].si:.0f} keel blocks and {count[1].si:.0f} side blocks leave {desk.figure(area, 3)} bare while she "
        "stands on them. A coating line takes this quantity as blocks.bare-area; blocks that are moved take their "
        "share off it."
    )


def _across(right: float, left: float) -> str:
    if right < 0.0 < left:
        return "under the keel"
    inner, outer = sorted((abs(right), abs(left)))
    return f"{show(inner, 'centre')} to {show(outer, 'centre')}, {'port' if left > 0 else 'starboard'}"
