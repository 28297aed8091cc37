"""The work in a docking report: steel, coating, anodes, openings, clearances, tests, conditions found."""

from __future__ import annotations

from tenderwright.calculations.ship.timber import of_wood
from tenderwright.documents.closing_desk import ClosedDocking
from tenderwright.documents.desk import Desk
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
    plain,
)
from tenderwright.documents.history_entry import rows_filled
from tenderwright.documents.parts.found import (
    DASH,
    clearances_table,
    filled_tables,
    rivets_table,
    steel_table,
    tests_table,
    timber_table,
    valves_table,
    words,
)
from tenderwright.documents.parts.report_summary import GROUP
from tenderwright.model.findings import ConditionFound, PaintLog
from tenderwright.model.found import CoatApplied, DryFilm
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import show

NOTHING = Paragraph(inline("Nothing is recorded."))


def steel(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose readings, steel and rivets, or the timber of a hull of wood."""
    rows = tuple(
        Row(
            (
                inline(one.place),
                inline(str(one.readings)),
                inline(f"{100 * one.mean_loss:.1f} %"),
                inline(f"{100 * one.greatest_loss:.1f} %"),
                inline(one.where or DASH),
            )
        )
        for one in closed.totals.losses
    )
    columns = (
        Column("Strake or tank", width=2),
        Column("Readings", "right"),
        Column("Mean loss", "right"),
        Column("Greatest loss", "right"),
        Column("Where", width=2),
    )
    note = inline("Loss is counted against the thickness as built; a reading above it counts as none.")
    readings: list[Block] = [Table(columns, rows, caption="Thickness readings", small=True, note=note)] if rows else []
    found = closed.findings
    blocks = [
        *readings,
        *steel_table(desk, found.renewed),
        *rivets_table(desk, found.rivets),
        *timber_table(desk, found.timber),
    ]
    title = "Timber and fastenings" if of_wood(desk.package.particulars) else "Thickness, steel and rivets"
    return Part("steel", "3", title, "data", GROUP, tuple(blocks or [NOTHING]), caution=True, audience="yard")


def coating(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose the paint log."""
    blocks: list[Block] = []
    for log in closed.findings.paint:
        blocks += [Heading(desk.ref(log.zone).text), Facts(_log_facts(desk, log)), _coats(desk, log)]
    title = "Paint log"
    return Part(
        "paint", "4", title, "data", GROUP, tuple(blocks or [NOTHING]), landscape=True, caution=True, audience="yard"
    )


def _log_facts(desk: Desk, log: PaintLog) -> tuple[tuple[str, Inline], ...]:
    facts = [
        ("Scheme", log.scheme.name if log.scheme else ""),
        ("Area", desk.quantity(log.area)),
        ("Preparation", log.grade),
        ("Profile, mean", desk.quantity(log.profile)),
        ("Salts, greatest", desk.quantity(log.salts)),
        ("Dust, class", str(log.dust) if log.dust is not None else ""),
        ("Holidays made good", str(log.holidays) if log.holidays is not None else ""),
    ]
    return tuple((name, inline(text)) for name, text in facts if text)


def _coats(desk: Desk, log: PaintLog) -> Table:
    rows = tuple(
        Row(
            (
                inline(str(coat.coat)),
                inline(coat.product),
                inline(", ".join(coat.batches) or DASH),
                inline(words(coat.begun, coat.ended, between=" to ") or DASH),
                inline(_climate(desk, coat)),
                inline(words(desk.quantity(coat.wft), _thinned(desk, coat)) or DASH),
                inline(_film(desk, coat.dft)),
                inline(coat.inspector or DASH),
            )
        )
        for coat in log.coats
    )
    columns = (
        Column("Coat", width=0.5),
        Column("Product", width=2.4),
        Column("Batches", width=1.6),
        Column("Begun and ended", width=1.9),
        Column("Air, steel, humidity, dew point; steel above dew point", width=2.2),
        Column("Wet film", width=1.2),
        Column("Dry film: mean, least to most, deviation, readings", width=2.4),
        Column("Inspector", width=1.2),
    )
    return Table(columns, rows, small=True)


def _thinned(desk: Desk, coat: CoatApplied) -> str:
    return f"thinned {desk.quantity(coat.thinning)}" if coat.thinning else ""


def _climate(desk: Desk, coat: CoatApplied) -> str:
    seen = [desk.quantity(one) for one in (coat.air, coat.steel, coat.humidity, coat.dew_point) if one]
    margin = ""
    if coat.steel is not None and coat.dew_point is not None:
        margin = f"; {show(coat.steel.si - coat.dew_point.si, 'temperature difference')} above".replace("-", "−")
    return ", ".join(seen) + margin or DASH


def _film(desk: Desk, film: DryFilm | None) -> str:
    if film is None:
        return DASH
    spread = words(desk.quantity(film.least), desk.quantity(film.most), between=" to ")
    deviation = f"s {desk.quantity(film.deviation)}" if film.deviation else ""
    count = f"n {film.readings}" if film.readings is not None else ""
    return words(desk.quantity(film.mean), spread, deviation, count, film.of)


def anodes(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose what was left of each anode and what was fitted."""
    old = {one.anode: one for one in desk.package.anodes}
    rows = []
    for one in closed.findings.anodes:
        before = old.get(one.anode.name)
        cells = (
            one.anode.name,
            words(str(before.at), before.side) if before else "",
            words(desk.quantity(before.mass), before.alloy) if before else "",
            desk.quantity(one.left),
            desk.quantity(one.left_mass),
            words(desk.quantity(one.fitted), one.alloy),
            one.note,
        )
        rows.append(Row(tuple(inline(cell or DASH) for cell in cells)))
    columns = (
        Column("Anode", width=0.8),
        Column("Where", width=1.6),
        Column("When new", width=1.4),
        Column("Left", "right", 0.8),
        Column("Mass left", "right", 1),
        Column("Fitted", width=1.4),
        Column("Note", width=2),
    )
    blocks: list[Block] = [Table(columns, tuple(rows), small=True)] if rows else [NOTHING]
    return Part("anodes", "5", "Anodes", "data", GROUP, tuple(blocks), caution=True, audience="yard")


def fittings(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose valves, clearances and tests of tanks."""
    findings = closed.findings
    blocks = [
        *valves_table(desk, findings.valves),
        *clearances_table(desk, findings.clearances),
        *tests_table(desk, findings.tank_tests),
        *filled_tables(rows_filled(findings, desk.package)),
    ]
    title = "Sea valves, clearances and tests"
    return Part("fittings", "6", title, "data", GROUP, tuple(blocks or [NOTHING]), caution=True, audience="yard")


def conditions(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose the condition-found reports."""
    blocks: list[Block] = []
    for found in closed.findings.conditions_found:
        item = f", item {found.item}" if found.item else ""
        blocks += [Heading(f"{found.report}, {found.where}{item}"), Facts(_condition_facts(desk, found))]
    title = "Conditions found"
    return Part("conditions", "7", title, "data", GROUP, tuple(blocks or [NOTHING]), caution=True, audience="yard")


def _condition_facts(desk: Desk, found: ConditionFound) -> tuple[tuple[str, Inline], ...]:
    decided = f" ({day(found.decided)})" if found.decided else ""
    facts: list[tuple[str, Inline]] = [
        ("Found", inline(f"{day(found.day)}: ") + desk.words(found.found)),
        ("How much", inline(found.extent)),
        ("Cause", desk.words(found.cause) if found.cause else ()),
        ("Recommended", desk.words(found.repair) if found.repair else ()),
        ("Decided", (*desk.words(found.decision), *inline(decided)) if found.decision else ()),
        ("Done", desk.words(found.done) if found.done else ()),
    ]
    return tuple(fact for fact in facts if plain(fact[1]))


def lessons(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose lessons and photographs."""
    findings = closed.findings
    blocks: list[Block] = [Heading("What to do otherwise"), desk.prose(findings.lessons)] if findings.lessons else []
    if findings.photographs:
        shown = [
            words(one.file, one.what, one.where, one.when, f"item {one.item}" if one.item else "")
            for one in findings.photographs
        ]
        blocks += [Heading("Photographs"), Bullets(tuple(inline(line) for line in shown))]
    return Part("lessons", "9", "Lessons and photographs", "data", GROUP, tuple(blocks or [NOTHING]), audience="yard")
