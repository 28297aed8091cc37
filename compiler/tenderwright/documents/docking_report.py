"""Compose the docking report: what was put off, how she stood, what was found and done, and what it came to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from tenderwright.documents.closing_desk import ClosedDocking, ReportDesk
from tenderwright.documents.desk import CAUTION, in_its_units
from tenderwright.documents.edition import Edition, Part, Stamp
from tenderwright.documents.in_print import in_print
from tenderwright.documents.parts import report_work
from tenderwright.documents.parts.front import contents
from tenderwright.documents.parts.report_account import account
from tenderwright.documents.parts.report_dock import docking
from tenderwright.documents.parts.report_inspections import inspections
from tenderwright.documents.parts.report_photographs import of_the_docking
from tenderwright.documents.parts.report_summary import summary
from tenderwright.model.findings import Findings
from tenderwright.model.package import Package
from tenderwright.model.table_rows import rows_to_fill
from tenderwright.planning.inspection.points import points_of
from tenderwright.quantities.customs import day


@in_its_units
def docking_report(desk: ReportDesk, closed: ClosedDocking, stamp: Stamp, basis: str, *, confidential: bool) -> Edition:
    """Compose the report; only the confidential one shows estimates, bids and prices that are not published."""
    findings, tender = closed.findings, desk.tender
    if not confidential and not findings.publish_prices:
        closed = replace(closed, account=None)
    title = f"Docking report, {tender.ship}, {findings.dates.docked.year}"
    parts = (
        Part("cover", "", title, "cover", "Front matter", (), audience="yard"),
        contents(),
        summary(desk, closed),
        docking(desk, closed),
        report_work.steel(desk, closed),
        report_work.coating(desk, closed),
        *((report_work.anodes(desk, closed),) if desk.package.anodes or findings.anodes else ()),
        report_work.fittings(desk, closed),
        report_work.conditions(desk, closed),
        account(desk, closed, confidential=confidential),
        report_work.lessons(desk, closed),
        inspections(desk, closed),
        of_the_docking(desk, findings, closed.papers if confidential else None),
    )
    edition = Edition(
        name="owner-report" if confidential else "report",
        title=title,
        subtitle="With the final account" if confidential else "What was found, done and put off",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=closing_day(findings),
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=tuple(part for part in parts if part is not None),
        caution=CAUTION,
        confidential=confidential,
        audience="owner" if confidential else "yard",
        facts=_cover_facts(desk, findings, basis),
    )
    return in_print(desk, edition)


def closing_day(findings: Findings) -> date:
    """Give the last day of the docking."""
    return findings.dates.departed or findings.dates.undocked


def _cover_facts(desk: ReportDesk, findings: Findings, basis: str) -> tuple[tuple[str, str], ...]:
    facts = (
        ("Ship", desk.tender.ship),
        ("Owner", desk.tender.owner.name),
        ("Yard", ", ".join(word for word in (findings.yard, findings.place) if word)),
        ("Dock", findings.dock_type),
        ("Docked", f"{day(findings.dates.docked)} to {day(findings.dates.undocked)}"),
        ("Tender", desk.tender.tender.number),
        ("Findings", basis),
    )
    return tuple((name, text) for name, text in facts if text)


def not_recorded(findings: Findings, package: Package, surveys: Sequence[str], *, inspected: bool = False) -> list[str]:
    """List in words what a docking record ought to hold, and neither these findings nor surveys of these days do."""
    anodes = {one.anode.name for one in findings.anodes}
    plugs = {one.plug.name for one in findings.plugs}
    unseen = [one.anode for one in package.anodes if one.anode not in anodes]
    undrawn = [one.name for one in package.openings if one.kind == "docking plug" and one.opening not in plugs]
    batchless = sum(1 for log in findings.paint for coat in log.coats if not coat.batches)
    unsized = [b for b in (*findings.blocks.keel, *findings.blocks.sides) if b.length is None or b.width is None]
    ship = package.particulars
    hull = ship.hull if ship is not None else None
    turning = "shaft and rudder" if ship is None or ship.shafts else "the rudder"
    soundings = (
        ("soundings on docking", findings.on_docking.soundings),
        ("soundings on undocking", findings.on_undocking.soundings),
    )
    shell = (
        ("thickness readings", findings.readings or findings.readings_file or surveys)
        if hull is None or hull.of_metal
        else ("planks, seams and fastenings", findings.timber)
    )
    silent: list[tuple[str, object]] = [
        ("drafts on docking", findings.on_docking.drafts),
        ("drafts on undocking", findings.on_undocking.drafts),
        *(soundings if package.tanks else ()),
        ("block positions", findings.blocks.keel),
        shell,
        *((("sea valves", findings.valves),) if package.openings else ()),
        (f"clearances of {turning}", findings.clearances),
        *((("tests of tanks", findings.tank_tests),) if package.tanks else ()),
        *((("results of inspections and the register of openings", inspected),) if points_of(package) else ()),
        ("paint log", findings.paint),
        ("prices paid", findings.prices),
        ("end of the guarantee", findings.guarantee_until),
        ("photographs", findings.photographs),
    ]
    filled = {(one.item.name, one.table, one.row) for one in findings.tables}
    unfilled = [name for name in rows_to_fill(package) if name not in filled]
    missing = [words for words, found in silent if not found]
    missing += [f"what was left of anodes {', '.join(unseen)}"] if unseen else []
    missing += [f"whether these were drawn: {', '.join(undrawn)}"] if undrawn else []
    missing += [f"tables not filled: {', '.join('.'.join(one) for one in unfilled)}"] if unfilled else []
    missing += [f"batch numbers of {batchless} coats"] if batchless else []
    missing += [f"size of {len(unsized)} blocks or rows of blocks"] if unsized else []
    return missing
