"""Docking data: the condition on arrival, hydrostatics, movements of liquid, and the cradle of each facility."""

from __future__ import annotations

from math import degrees

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.cradle.cars import Fit, Limit
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.model.facility import Facility
from tenderwright.quantities.display import decimals, show, shown_unit

DOCKING = "Docking data"
_UNITS = {"mass": ("t", 1), "line_load": ("t/m", 1), "length": ("m", 2), "each": ("", 0)}


def docking_data(desk: Desk) -> Part:
    """Compose the docking data for the dockmaster's planning."""
    blocks: list[Block] = [
        Paragraph(
            inline(
                "Planning figures for tender. The yard makes its own docking plan and calculations from soundings and "
                "drafts taken on the day."
            )
        )
    ]
    arrival, plan = desk.results.arrival, desk.results.trim_plan
    if arrival is not None:
        blocks += [Heading("Condition on arrival"), _condition(desk, arrival, plan.position if plan else None)]
        blocks += _movements(desk)
    blocks += [*_hydrostatics(desk), *_line_load(desk)]
    for facility in desk.package.facilities:
        blocks += _facility(desk, facility)
    return Part("docking-data", "7", "Docking data", "data", DOCKING, tuple(blocks), caution=True)


def _condition(desk: Desk, arrival: FloatingPosition, docked: FloatingPosition | None) -> Table:
    def cells(found: FloatingPosition) -> list[str]:
        h, loading = found.hydrostatics, found.loading
        heel = degrees(found.heel) if found.heel is not None else 0.0
        side = " to starboard" if heel > 0.005 else " to port" if heel < -0.005 else ""
        return [
            decimals(loading.mass / 1000, 1) + " t",
            decimals(loading.lcg, 2) + " m",
            decimals(loading.vcg, 2) + " m",
            decimals(h.draft_aft, 2) + " m",
            decimals(h.draft_forward, 2) + " m",
            decimals(h.draft, 2) + " m",
            decimals(h.trim, 2) + " m by the stern" if h.trim >= 0 else decimals(-h.trim, 2) + " m by the head",
            decimals(abs(heel), 2) + "°" + side,
            decimals(h.km_transverse, 2) + " m",
            decimals(loading.free_surface_moment / 1000, 1) + " t·m",
            decimals(found.gm_fluid, 2) + " m",
        ]

    names = [
        "Displacement",
        "Centre of gravity forward of AP",
        "Centre of gravity above the keel line",
        "Draft aft, at AP",
        "Draft forward, at FP",
        "Mean draft",
        "Trim",
        "List",
        "Transverse metacentre above the keel line",
        "Free-surface moment",
        "Metacentric height, fluid",
    ]
    columns = [Column("", width=3), Column("On arrival", width=2)]
    table = [names, cells(arrival)]
    if docked is not None:
        columns.append(Column("With the tanks moved", width=2))
        table.append(cells(docked))
    rows = tuple(Row(tuple(inline(cell) for cell in row)) for row in zip(*table, strict=True))
    density = decimals(desk.results.water_density / 1000, 3)
    note = inline(f"In water of {density} t/m³. Drafts are above the keel line. Upright, small angles of list.")
    return Table(tuple(columns), rows, note=note)


def _movements(desk: Desk) -> list[Block]:
    plan = desk.results.trim_plan
    lightship = desk.package.lightship
    if plan is None or lightship is None or lightship.docking is None:
        return []
    wanted = desk.quantity(lightship.docking.trim)
    blocks: list[Block] = [Heading("Liquid to move for the trim wanted")]
    names = {tank.tank: tank.name for tank in desk.package.tanks} | {"sea": "the sea"}
    if not plan.feasible:
        reached = decimals(plan.position.hydrostatics.trim, 2)
        blocks.append(
            Paragraph(
                inline(
                    f"A trim of {wanted} without list cannot be reached with the movable tanks; the nearest is {reached} m."
                )
            )
        )
    if not plan.transfers:
        return [*blocks, Paragraph(inline(f"Nothing: she floats at the trim of {wanted} wanted."))]
    rows = tuple(
        Row(
            (
                inline(names.get(t.source, t.source)),
                inline(names.get(t.destination, t.destination)),
                inline(t.liquid),
                inline(decimals(t.mass / 1000, 2)),
            )
        )
        for t in plan.transfers
    )
    columns = (
        Column("From", width=2),
        Column("To", width=2),
        Column("Liquid", width=1.4),
        Column("Mass, t", "decimal"),
    )
    note = inline(
        f"The least movement between the tanks marked movable that gives {wanted} by the stern and no list. Sound all "
        "tanks and read the drafts again after it."
    )
    return [*blocks, Table(columns, rows, note=note)]


def _hydrostatics(desk: Desk) -> list[Block]:
    found = desk.results.hydrostatics
    if not found:
        return []
    kg = desk.results.arrival.loading.vcg if desk.results.arrival else None
    rows = tuple(
        Row(
            tuple(
                inline(text)
                for text in (
                    decimals(h.draft, 2),
                    decimals(h.displacement / 1000, 1),
                    decimals(h.mass_per_immersion / 1e5, 2),
                    decimals(h.moment_to_change_trim(kg) / 1e5, 2),
                    decimals(h.lcb, 2),
                    decimals(h.lcf, 2),
                    decimals(h.kb, 2),
                    decimals(h.km_transverse, 2),
                    decimals(h.waterplane_area, 1),
                )
            )
        )
        for h in found
    )
    columns = tuple(
        Column(title, "decimal")
        for title in (
            "Draft, m",
            "Displ., t",
            "TPC, t/cm",
            "MCTC, t·m/cm",
            "LCB, m",
            "LCF, m",
            "KB, m",
            "KM, m",
            "Waterplane, m²",
        )
    )
    density = decimals(desk.results.water_density / 1000, 3)
    source = desk.package.offsets.source if desk.package.offsets else ""
    note = inline(
        f"Even keel, water of {density} t/m³, moulded, from the offsets ({source}). LCB and LCF are forward of the after "
        "perpendicular, heights and drafts above the keel line."
    )
    return [Heading("Hydrostatics"), Table(columns, rows, note=note, small=True)]


def _line_load(desk: Desk) -> list[Block]:
    record, ship = desk.record, desk.package.particulars
    if "keel.line-load.peak" not in record.values or ship is None:
        return []
    facts: tuple[tuple[str, Inline], ...] = (
        ("Straight of keel", inline(str(ship.keel.straight))),
        ("Load at its after end", inline(f"{desk.number('keel.line-load.load-at-keel-aft', 1)} t/m")),
        ("Load at its forward end", inline(f"{desk.number('keel.line-load.load-at-keel-forward', 1)} t/m")),
        ("Keel without load", inline(f"{desk.number('keel.line-load.lift-off', 2)} m")),
    )
    note = "Rigid hull on a full line of equal blocks; a stern overhang loads the last blocks more than this says."
    return [Heading("Load along the keel"), Facts(facts), Paragraph(inline(note))]


def _facility(desk: Desk, facility: Facility) -> list[Block]:
    blocks: list[Block] = [
        Heading(facility.name, 2, desk.anchor("facility", facility.facility)),
        Facts(tuple(_limits(desk, facility))),
    ]
    fit = desk.results.cradles.get(facility.facility)
    if fit is not None:
        blocks += _cradle(desk, facility, fit)
    if facility.notes:
        blocks.append(desk.prose(facility.notes))
    return blocks


def _limits(desk: Desk, facility: Facility) -> list[tuple[str, Inline]]:
    limits, certificate = facility.limits, facility.certificate
    facts = [
        ("Kind and place", ", ".join(word for word in (facility.kind, facility.place) if word)),
        ("Clear length and breadth", " by ".join(desk.quantity(q) for q in (limits.length, limits.beam) if q)),
        ("Water over sill", desk.quantity(limits.sill)),
        ("Water over blocks", desk.quantity(limits.blocks)),
        ("Height of keel blocks", desk.quantity(limits.block_height)),
        ("Capacity", desk.quantity(limits.lift)),
        ("Limit along the keel", desk.quantity(limits.line_load)),
        ("Tide at which depths hold", limits.tide),
        ("Distance from the berth", desk.quantity(facility.tow)),
    ]
    if certificate:
        until = f", valid until {certificate.valid_until}" if certificate.valid_until else ""
        facts.append(("Certificate", f"{certificate.by} {certificate.number}".strip() + until))
    return [(label, inline(text)) for label, text in facts if text]


def verdict(desk: Desk, fit: Fit) -> str:
    """Say in a sentence whether the cradle takes her, and what decides."""
    if fit.fits:
        use = f", at {fit.deciding.use:.0%} of its limit" if fit.deciding.use is not None else ""
        return f"The cradle takes her. What comes nearest is {fit.deciding.name}{use}."
    if fit.fits is None:
        unknown = ", ".join(limit.name for limit in fit.unknown)
        return f"Whether the cradle takes her is not known: no limit is given for {unknown}."
    reasons = "; ".join(
        f"{limit.name} {_shown(limit.demand, limit)} against {_shown(limit.limit, limit)}" for limit in fit.passed
    )
    return f"The cradle does not take her: {reasons}."


def _shown(number: float | None, limit: Limit) -> str:
    if number is None:
        return "not known"
    unit, places = _UNITS.get(limit.dimension, ("", 2))
    from tenderwright.quantities.display import in_unit

    return f"{decimals(in_unit(number, unit, limit.dimension), places)} {shown_unit(unit)}".strip()


def _cradle(desk: Desk, facility: Facility, fit: Fit) -> list[Block]:
    frames, train = desk.package.frames, fit.train
    assert frames is not None

    def where(x: float) -> str:
        return f"{frames.label(x)} ({decimals(x, 2)} m)"

    facts: tuple[tuple[str, Inline], ...] = (
        ("Cars", inline(f"{len(train.cars)} coupled, {decimals(train.coupled_length, 2)} m over all")),
        ("From", inline(where(train.start))),
        ("To", inline(where(train.end))),
        (
            "Straight keel left beyond them",
            inline(f"{decimals(train.unsupported_aft, 2)} m aft, {decimals(train.unsupported_forward, 2)} m forward"),
        ),
        ("Result", inline(verdict(desk, fit))),
    )
    blocks: list[Block] = [Facts(facts)]
    if train.load is not None:
        rows = tuple(
            Row(
                (
                    inline(str(number)),
                    inline(f"{frames.label(car.start)} to {frames.label(car.end)}"),
                    inline(decimals(car.load / 1000, 1)),
                    inline(decimals(car.peak / 1000, 1)),
                    inline(decimals(car.axle_load / 1000, 1) if car.axle_load is not None else "–"),
                )
            )
            for number, car in enumerate(train.cars, start=1)
        )
        columns = (
            Column("Car from aft", width=1),
            Column("Under the keel", width=3.4),
            Column("Load, t", "decimal", 1.2),
            Column("Greatest line load, t/m", "decimal", 1.8),
            Column("Load on an axle, t", "decimal", 1.6),
        )
        blocks.append(Table(columns, rows, caption=f"Cars under the keel, {facility.name}", small=True))
    return blocks


__all__ = ["docking_data", "show", "verdict"]
