"""Whether each facility takes her, on one page: pass, fail or not known, with what decides and the margin."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.facility.clearances import IN_SERVICE
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.keel_loads import keel_bearing
from tenderwright.calculations.verdict import Limit, Verdict
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.floated_on import floated_on
from tenderwright.documents.not_calculated import absent_of
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.parts.limits import both, shown, word
from tenderwright.quantities.display import plainly

COMMON = (
    "length",
    "beam",
    "water over the sill",
    "water over the blocks",
    "lift",
    "line load",
    "air draft",
)
"""Limits that every kind of facility has, as they are set side by side."""
NEAREST = 4
"""Further limits of each facility that are shown: those used most."""


def facility_comparison(desk: Desk) -> Part | None:
    """Compose the page that sets the facilities side by side; None where the package has none."""
    blocks = comparison(desk)
    title = "Facilities side by side"
    return Part("facility-fit", "", title, "data", OWNER, tuple(blocks), caution=True) if blocks else None


def comparison(desk: Desk) -> list[Block]:
    """Give the tables of all facilities: the verdicts, then demand against limit for what all of them limit."""
    if not desk.package.facilities:
        return []
    clearances = "the clearances of the docking plan"
    if desk.package.docking_plan is None:
        clearances = f"{plainly(IN_SERVICE.side, 'clearance')} of clearance all round (common practice, no source)"
    text = (
        f"Each demand is that of the docking condition in the facility's own water, with {clearances}. The facility's "
        "limits are as its owner gave them; the certificate and the dockmaster govern."
    )
    judged = [Heading("Demand against limit", 3), _side_by_side(desk), *_others(desk)] if _fits(desk) else []
    return [Paragraph(inline(text)), *floated_on(desk), _verdicts(desk), *_end_blocks(desk), *judged]


def _fits(desk: Desk) -> Mapping[str, Verdict]:
    return desk.calculated.found(facility_fits) or {}


def _end_blocks(desk: Desk) -> list[Block]:
    """Say of which hull the line load is, and what an estimated one rests on."""
    bearing = desk.calculated.found(keel_bearing)
    if bearing is None:
        return []
    text = (
        "The line load is the worst of her weight spread over the whole keel, and over the length that each block "
        "holds up under a rigid and under an elastic hull."
    )
    rests = next((one.rests_on for fit in _fits(desk).values() for one in fit.limits if one.rests_on), "")
    if rests:
        text += (
            f" Under an elastic hull it rests on estimates ({rests}), so that whether she is within the limit is not "
            "known. The naval architect's block loads settle it: `calculated_loads` in vessel/docking-plan.yaml."
        )
    return [Paragraph(inline(text))]


def _verdicts(desk: Desk) -> Table:
    rows = []
    for facility in desk.package.facilities:
        name = inline(Span(facility.name, desk.anchor("facility", facility.facility)))
        fit = _fits(desk).get(facility.facility)
        absent = absent_of(desk.calculated.outcome(facility_fits), facility.facility)
        if fit is None:
            why = absent.why if absent is not None else ""
            words: list[str | Span] = [Span("Not calculated", strong=True), why, "–", "–", "–"]
        else:
            one = fit.governs
            figures = (both(one), shown(one.limit, one), shown(one.margin, one))
            words = [Span(word(fit.met), strong=True), one.name, *figures]
        rows.append(Row((name, *(inline(each) for each in words))))
    columns = (
        Column("Facility", width=2.6),
        Column("Result", width=1.1),
        Column("What decides", width=2.4),
        Column("Demand", "right", 1.2),
        Column("Limit", "right", 1.2),
        Column("Margin", "right", 1.2),
    )
    return Table(columns, tuple(rows))


def _side_by_side(desk: Desk) -> Table:
    """Set one limit on a row, one facility in a column; what is passed is stressed."""
    names = [f for f in desk.package.facilities if f.facility in _fits(desk)]
    rows = []
    for name in COMMON:
        cells: list[Inline] = [inline(name.capitalize())]
        found = False
        for facility in names:
            limit = next((one for one in _fits(desk)[facility.facility].limits if one.name == name), None)
            found = found or limit is not None
            cells.append(_pair(limit))
        if found:
            rows.append(Row(tuple(cells)))
    columns = (Column("", width=1.4), *(Column(f.name, "right", 1.6) for f in names))
    note = inline(
        "Demand, clearances included, of limit. Water over blocks is less what planned blocks stand higher than the "
        "facility's own. After ±: twice the standard uncertainty. Stressed: past the limit."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _pair(limit: Limit | None) -> Inline:
    if limit is None:
        return inline("–")
    text = f"{both(limit)} of {shown(limit.limit, limit)}"
    return inline(Span(text, strong=limit.met is False))


def _others(desk: Desk) -> list[Block]:
    """List what the kind of a facility adds, each with its demand and limit."""
    rows = []
    for facility in desk.package.facilities:
        fit = _fits(desk).get(facility.facility)
        more = [one for one in fit.limits if one.name not in COMMON and one.use] if fit else []
        more = sorted(more, key=lambda one: one.use or 0.0, reverse=True)[:NEAREST]
        if more:
            rows.append(Row((inline(facility.name),), "group"))
            rows += [
                Row((inline(one.name[:1].upper() + one.name[1:]), _pair(one), inline(shown(one.margin, one))))
                for one in more
            ]
    if not rows:
        return []
    columns = (Column("", width=3.4), Column("Demand of limit", "right", 2), Column("Margin", "right", 1))
    return [
        Heading("What the kind of dock adds, the nearest to their limits", 3),
        Table(columns, tuple(rows), small=True),
    ]
