"""How she lands: upthrust, drafts and stability by both methods, and as the water falls."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.landing.settling import ComesDown, Landing
from tenderwright.calculations.ship.block_places import block_line
from tenderwright.calculations.ship.landing import entry_limit
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.wanted import LEAST_GM, least_gm
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.documents.floated_on import floated_on
from tenderwright.documents.in_words import in_words
from tenderwright.documents.not_calculated import why_not
from tenderwright.quantities.display import abbreviation, head, in_column, show

_BEARING = (
    "Upthrust at which the metacentric height is the least asked for",
    "Draft aft and forward then",
    "Fall of water from settling to there: side blocks and shores bear before",
)
LEVELS = 12
"""Rows of the table of levels, about."""


def landing(desk: Desk) -> Part | None:
    """Compose the landing; None without a docking plan and a docking condition."""
    found = desk.calculated.found(landing_step)
    if found is None:
        return None
    blocks: list[Block] = [
        Paragraph(
            inline(
                "Drafts on this page are above the underside of the keel, where it stands on the blocks. Side blocks "
                "and shores are not counted."
            )
        ),
        *floated_on(desk),
        Heading("At settling, and below it"),
        both_methods(desk, found.exact, found.held),
        Heading("What limits the landing"),
        Facts(tuple(landing_limits(desk, sourced=True))),
        Heading("As the water falls"),
        levels(found),
    ]
    return Part(
        "landing", "", "Landing on the blocks", "data", "Docking data", tuple(blocks), caution=True, audience="yard"
    )


def both_methods(desk: Desk, exact: Landing, held: Landing) -> Table:
    """Set the landing by the hand method beside that with the hydrostatics read again."""
    rows = [Row(tuple(inline(cell) for cell in (name, a, b))) for name, a, b in _figures(desk, held, exact)]
    columns = (
        Column("", width=3.2),
        Column(f"{abbreviation('immersion')}, {abbreviation('change of trim')}, LCF and KM held constant", "right", 2),
        Column("Hydrostatics read again at W − P", "right", 2),
    )
    share = desk.record.values["docking.landing.upthrust-share"]
    note = inline(
        f"The upthrust is {100 * float(share.si):.1f} % of her displacement. Form (a), KM falls: GM = RM/W. Form (b), "
        "KG rises: GM = RM/(W − P). Both give one righting moment, RM = (W − P) KM − W KG − FSM; the lesser GM governs."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _figures(desk: Desk, *landings: Landing) -> list[tuple[str, str, str]]:
    def column(one: Landing) -> list[str]:
        at, zero = one.settling, one.instability
        frames = desk.package.frames
        first = show(at.first_block, "centre")
        return [
            f"{frames.label(at.first_block)} ({first})" if frames else first,
            show(at.water_at_touch, "water level"),
            show(at.upthrust, "weight"),
            show(at.fall, "water level"),
            f"{show(at.draft_aft, 'draft')} / {show(at.draft_forward, 'draft')}",
            show(at.stability.gm_km_falls, "metacentric height"),
            show(at.stability.gm_kg_rises, "metacentric height"),
            f"{show(at.stability.gm, 'metacentric height')}, {at.stability.governing}",
            *bearing(one),
            *comes_down(zero),
        ]

    def comes_down(there: ComesDown) -> list[str]:
        draft = f"{show(there.draft_aft, 'draft')} / {show(there.draft_forward, 'draft')}"
        found = [show(there.upthrust, "weight"), draft, show(there.margin, "centre")]
        more = ("more than ", "less than ", "more than ") if there.at_least else ("", "", "")
        return [words + figure for words, figure in zip(more, found, strict=True)]

    def bearing(one: Landing) -> list[str]:
        return [] if one.bearing is None else comes_down(one.bearing)

    names = [
        "First block touched, at its edge",
        "Water over it then",
        "Upthrust as she comes to lie on all the blocks",
        "Fall of water until then",
        "Draft aft and forward then",
        "Metacentric height then, form (a)",
        "Metacentric height then, form (b)",
        "Metacentric height that governs",
        *(_BEARING if landings[0].bearing is not None else ()),
        "Upthrust at which stability is lost",
        "Draft aft and forward then",
        "Fall of water from settling to instability",
    ]
    return list(zip(names, *(column(one) for one in landings), strict=True))


def landing_limits(desk: Desk, *, sourced: bool = False) -> list[tuple[str, Inline]]:
    """Say within what she may land: the metacentric height kept, when side blocks bear, and the trim on entering."""
    least = least_gm(desk.package.docking_plan, desk.package.lightship)
    kept = desk.quantity(least) if least is not None else f"Not known: {in_words(LEAST_GM)}."
    facts = [("Metacentric height to be kept", kept), ("Side blocks and shores bear", _bear(desk))]
    return [(label, inline(text)) for label, text in [*facts, *_entry(desk, sourced=sourced)]]


def _bear(desk: Desk) -> str:
    """Say before which level side blocks and shores bear, by the lesser of both methods."""
    found = desk.calculated.found(landing_step)
    assert found is not None
    fall, settling, lost = found.bear_within, found.exact.settling, found.exact.instability
    if fall is None:
        below = f"{'more than ' if lost.at_least else ''}{show(lost.margin, 'centre')} below settling"
        return f"Not known: {in_words(LEAST_GM)}. Without them stability is lost {below}."
    water = f"with {show(settling.water_at_touch - settling.fall - fall, 'water level')} of water over the first block"
    if fall < 0:
        return (
            "in no time: the metacentric height is down to the least asked for "
            f"{show(-fall, 'water level')} of fall before "
            "she lies on all the blocks, where side blocks cannot bear yet. She is not to be landed so"
        )
    return (
        f"before the water has fallen {show(fall, 'water level')} below settling, {water}: GM is then the "
        "least asked for"
    )


def _entry(desk: Desk, *, sourced: bool) -> list[tuple[str, str]]:
    """Say with what trim she may enter: the least limit, which it is, and each of them, with its source where asked."""
    entry = desk.calculated.outcome(entry_limit)
    if isinstance(entry, Absent):
        return [("Trim on entering", why_not(entry))]
    end = "stern" if by_stern(desk) else "head"
    governs = entry.governs
    assert governs.limit is not None
    unknown = [one.name for one in entry.limits if one.limit is None]
    most = f"to {show(governs.limit, 'centre')} by the {end}: {governs.name} governs"
    if unknown:
        most += f". Not known: {' and '.join(unknown)}, since the pressure allowed on the caps is not given"
    known = [(one, one.limit) for one in entry.limits if one.limit is not None]
    each = "; ".join(
        f"{one.name} {show(limit, 'centre')}" + (f" ({one.source})" if sourced else "") for one, limit in known
    )
    least = entry.least_trim
    lower = f"{show(least, 'centre')} by the {end}" if least >= 0 else f"{show(-least, 'centre')} by the other end"
    return [("Trim on entering", f"{lower} {most}"), ("Greatest by each limit", each)]


def by_stern(desk: Desk) -> bool:
    """Tell whether the after end of the blocks is touched first."""
    found, blocks = desk.calculated.found(landing_step), desk.calculated.found(block_line)
    return found is None or blocks is None or found.exact.settling.first_block == blocks.aft


def levels(found: BothLandings) -> Table:
    """Give upthrust and metacentric height at a choice of water levels, by both methods."""
    curve, held = found.curve, found.held_curve
    lost = np.flatnonzero(curve.gm[: curve.water.size - 1] <= 0)
    last = int(lost[0]) if lost.size else curve.water.size - 2
    before = np.linspace(0, curve.settled, 5)[:-1]
    after = np.linspace(curve.settled, max(last, curve.settled + 1), LEVELS - 4)
    picked = sorted({round(float(index)) for index in [*before, *after]})
    rows = []
    for index in picked:
        stage = "first touch" if index == 0 else "on all the blocks" if index == curve.settled else ""
        cells = [
            stage,
            in_column(float(curve.water[index]), "water level"),
            in_column(float(curve.draft_aft[index]), "draft"),
            in_column(float(curve.draft_forward[index]), "draft"),
            in_column(float(curve.upthrust[index]), "weight"),
            in_column(float(curve.gm[index]), "metacentric height"),
            in_column(float(held.upthrust[index]), "weight"),
            in_column(float(held.gm[index]), "metacentric height"),
        ]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("", width=1.6),
        Column(head("Water over first block", "water level"), "decimal", 1.3),
        Column(head("Draft aft", "draft"), "decimal"),
        Column(head("Draft forward", "draft"), "decimal"),
        Column(head("Upthrust", "weight"), "decimal"),
        Column(head("GM", "metacentric height"), "decimal"),
        Column(head("Upthrust, held", "weight"), "decimal", 1.1),
        Column(head("GM, held", "metacentric height"), "decimal"),
    )
    note = inline("GM is the lesser of the two forms. Held: TPC, MCTC, LCF and KM as afloat.")
    return Table(columns, tuple(rows), note=note, small=True)
