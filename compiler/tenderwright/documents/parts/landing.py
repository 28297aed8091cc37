"""How she lands: upthrust, drafts and stability by both methods, and as the water falls."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.landing.settling import Landing
from tenderwright.calculations.ship.landing import entry_trim
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.quantities.display import decimals

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
                "and shores are not counted: they are in place before the margin is used up."
            )
        ),
        Heading("At settling, and at instability"),
        both_methods(desk, found.exact, found.held),
        *_entry(desk),
        Heading("As the water falls"),
        levels(found),
    ]
    return Part("landing", "7.1", "Landing on the blocks", "data", "Docking data", tuple(blocks), caution=True)


def both_methods(desk: Desk, exact: Landing, held: Landing) -> Table:
    """Set the landing by the hand method beside that with the hydrostatics read again."""
    rows = [Row(tuple(inline(cell) for cell in (name, a, b))) for name, a, b in _figures(desk, held, exact)]
    columns = (
        Column("", width=3.2),
        Column("TPC, MCTC, LCF and KM held constant", "right", 2),
        Column("Hydrostatics read again at W − P", "right", 2),
    )
    share = desk.record.values["docking.landing.upthrust-share"]
    note = inline(
        f"The upthrust is {float(share.si):.1%} of her displacement. Form (a), KM falls: GM = RM/W. Form (b), KG "
        "rises: GM = RM/(W − P). Both give one righting moment, RM = (W − P) KM − W KG − FSM; the lesser GM governs."
    )
    return Table(columns, tuple(rows), note=note)


def _figures(desk: Desk, *landings: Landing) -> list[tuple[str, str, str]]:
    def column(one: Landing) -> list[str]:
        at, zero = one.settling, one.instability
        frames = desk.package.frames
        first = f"{decimals(at.first_block, 2)} m"
        return [
            f"{frames.label(at.first_block)} ({first})" if frames else first,
            f"{decimals(at.water_at_touch, 2)} m",
            f"{decimals(at.upthrust / 1000, 1)} t",
            f"{decimals(at.fall, 2)} m",
            f"{decimals(at.draft_aft, 2)} m / {decimals(at.draft_forward, 2)} m",
            f"{decimals(at.stability.gm_km_falls, 2)} m",
            f"{decimals(at.stability.gm_kg_rises, 2)} m",
            f"{decimals(at.stability.gm, 2)} m, {at.stability.governing}",
            f"{decimals(zero.upthrust / 1000, 1)} t",
            f"{decimals(zero.draft_aft, 2)} m / {decimals(zero.draft_forward, 2)} m",
            f"{decimals(zero.margin, 2)} m",
        ]

    names = [
        "First block touched, at its edge",
        "Water over it then",
        "Upthrust as she comes to lie on all the blocks",
        "Fall of water until then",
        "Draft aft and forward then",
        "Metacentric height then, form (a)",
        "Metacentric height then, form (b)",
        "Metacentric height that governs",
        "Upthrust at which stability is lost",
        "Draft aft and forward then",
        "Fall of water from settling to instability",
    ]
    return list(zip(names, *(column(one) for one in landings), strict=True))


def _entry(desk: Desk) -> list[Block]:
    entry, plan = desk.calculated.outcome(entry_trim), desk.package.docking_plan
    assert plan is not None
    if isinstance(entry, Absent):
        return [not_calculated(entry, "Greatest trim on entering")]
    wanted = desk.package.lightship.docking if desk.package.lightship else None
    least = plan.least_gm or (wanted.least_gm if wanted else None)
    facts: list[tuple[str, Inline]] = [
        ("Metacentric height to be kept", inline(desk.quantity(least))),
        (
            "Greatest trim on entering that keeps it",
            inline(f"{decimals(float(entry['trim']), 2)} m by the end that touches first"),
        ),
    ]
    if wanted is not None:
        facts.append(("Trim wanted", inline(desk.quantity(wanted.trim))))
    return [Facts(tuple(facts))]


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
            decimals(float(curve.water[index]), 2),
            decimals(float(curve.draft_aft[index]), 2),
            decimals(float(curve.draft_forward[index]), 2),
            decimals(float(curve.upthrust[index]) / 1000, 1),
            decimals(float(curve.gm[index]), 2),
            decimals(float(held.upthrust[index]) / 1000, 1),
            decimals(float(held.gm[index]), 2),
        ]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("", width=1.6),
        Column("Water over first block, m", "decimal", 1.3),
        Column("Draft aft, m", "decimal"),
        Column("Draft forward, m", "decimal"),
        Column("Upthrust, t", "decimal"),
        Column("GM, m", "decimal"),
        Column("Upthrust, held, t", "decimal", 1.1),
        Column("GM, held, m", "decimal"),
    )
    note = inline("GM is the lesser of the two forms. Held: TPC, MCTC, LCF and KM as afloat.")
    return Table(columns, tuple(rows), note=note, small=True)
