"""The facilities that could take her: limits, certificate, and the cradle under her where there are cars."""

from __future__ import annotations

from tenderwright.calculations.cradle.cars import Cradle
from tenderwright.calculations.ship.cradle import cradles
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.verdict import Verdict
from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import (
    Block,
    Bullets,
    Column,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Table,
    inline,
)
from tenderwright.documents.not_calculated import absent_of
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.parts.limits import shown
from tenderwright.model.facility import Facility, Slope
from tenderwright.model.package import sound
from tenderwright.quantities.display import head, in_column, show


def facilities(desk: OwnerDesk) -> Part | None:
    """Compose what is known of each facility; None where the package has none."""
    blocks: list[Block] = []
    for facility in desk.package.facilities:
        blocks += _facility(desk, facility)
    return Part("facilities", "", "Facilities", "data", OWNER, tuple(blocks), caution=True) if blocks else None


def _facility(desk: OwnerDesk, facility: Facility) -> list[Block]:
    blocks: list[Block] = [
        Heading(facility.name, 2, desk.anchor("facility", facility.facility)),
        Facts(tuple(_limits(desk, facility))),
    ]
    if facility.cars is not None:
        absent = absent_of(desk.calculated.outcome(cradles), facility.facility)
        found = desk.calculated.found(cradles)
        if absent is not None:
            blocks.append(Paragraph(inline(f"Cradle. Not calculated: {absent.why}.")))
        elif found is not None:
            blocks += _cradle(desk, facility, found[facility.facility])
    blocks += _where_from(desk, facility)
    kept = desk.foresight.papers.kept_of(facility.facility) if desk.foresight is not None else None
    if kept is not None and kept.kept_because:
        blocks.append(Paragraph(inline(f"Kept in the list: {kept.kept_because}.")))
    if kept is not None and kept.notes is not None:
        blocks.append(desk.prose(kept.notes))
    return blocks


def _where_from(desk: Desk, facility: Facility) -> list[Block]:
    """List where the limits that she is held against come from, those of one source together."""
    fit = desk.calculated.each(facility_fits).get(facility.facility)
    by_source: dict[str, list[str]] = {}
    for one in fit.limits if fit is not None else ():
        if one.limit is not None:
            by_source.setdefault(one.source, []).append(one.name.removeprefix("cradle: "))
    told = [inline(f"{capital(joined(list(dict.fromkeys(names))))}: {source}.") for source, names in by_source.items()]
    return [Heading("Where its limits come from", 3), Bullets(tuple(told))] if told else []


def _limits(desk: Desk, facility: Facility) -> list[tuple[str, Inline]]:
    limits, certificate = facility.limits, facility.certificate
    facts = [
        ("Kind and place", ", ".join(word for word in (facility.kind, facility.place) if word)),
        (
            "Clear length and breadth",
            " by ".join(desk.quantity(q, beside=True) for q in (limits.length, limits.beam) if q),
        ),
        ("Water over sill", desk.quantity(limits.sill, beside=True)),
        ("Water over blocks", desk.quantity(limits.blocks, beside=True)),
        ("Height of keel blocks", desk.quantity(limits.block_height, beside=True)),
        ("Capacity", desk.quantity(limits.lift, beside=True)),
        ("Limit along the keel", desk.quantity(limits.line_load, beside=True)),
        ("Slope", _slope(desk, facility.slope)),
        ("Tide at which depths hold", limits.tide),
        ("Distance from the berth", desk.quantity(facility.tow)),
    ]
    if certificate:
        until = f", valid until {certificate.valid_until}" if certificate.valid_until else ""
        facts.append(("Certificate", f"{certificate.by} {certificate.number}".strip() + until))
    return [(label, inline(text)) for label, text in facts if text]


def _slope(desk: Desk, slope: Slope | None) -> str:
    if slope is None:
        return ""
    haul = f", hauled with {desk.quantity(slope.haul)}" if slope.haul else ""
    track = f", track of {desk.quantity(slope.track)}" if slope.track else ""
    return f"{slope.gradient}{haul}{track}"


def verdict(fit: Verdict) -> str:
    """Say whether the cradle is calculated to take her, subject to what, and what decides."""
    if fit.met:
        use = f", at {100 * fit.governs.use:.0f} % of its limit" if fit.governs.use is not None else ""
        nearest = f"What comes nearest is {fit.governs.name}{use}"
        return f"The cradle is calculated to take her, subject to its certificate and the dockmaster. {nearest}."
    if fit.met is None:
        return f"Whether the cradle takes her is not known: {fit.why_unknown}."
    reasons = "; ".join(
        f"{limit.name} {shown(limit.demand, limit)} against {shown(limit.limit, limit)}" for limit in fit.passed
    )
    return f"The cradle is calculated not to take her: {reasons}."


def _cradle(desk: Desk, facility: Facility, found: Cradle) -> list[Block]:
    frames, train = sound(desk.package.frames), found.train

    def where(x: float) -> str:
        return f"{frames.label(x)} ({show(x, 'centre')})"

    facts: tuple[tuple[str, Inline], ...] = (
        ("Cars", inline(f"{len(train.cars)} coupled, {show(train.coupled_length, 'centre')} over all")),
        ("From", inline(where(train.start))),
        ("To", inline(where(train.end))),
        (
            "Straight keel left beyond them",
            inline(f"{show(train.unsupported_aft, 'centre')} aft, {show(train.unsupported_forward, 'centre')} forward"),
        ),
        ("Result", inline(verdict(found.verdict))),
    )
    blocks: list[Block] = [Facts(facts)]
    if train.load is not None:
        rows = tuple(
            Row(
                (
                    inline(str(number)),
                    inline(f"{frames.label(car.start)} to {frames.label(car.end)}"),
                    inline(in_column(car.load, "weight")),
                    inline(in_column(car.peak, "line load")),
                    inline(in_column(car.axle_load, "weight") if car.axle_load is not None else "–"),
                )
            )
            for number, car in enumerate(train.cars, start=1)
        )
        columns = (
            Column("Car from aft", width=1),
            Column("Under the keel", width=3.4),
            Column(head("Load", "weight"), "decimal", 1.2),
            Column(head("Greatest line load", "line load"), "decimal", 1.8),
            Column(head("Load on an axle", "weight"), "decimal", 1.6),
        )
        blocks.append(Table(columns, rows, caption=f"Cars under the keel, {facility.name}", small=True))
    return blocks
