"""The summary of a docking report: what was put off first, then the docking in short, and what is not recorded."""

from __future__ import annotations

from collections import Counter

from tenderwright.calculations.ship.bare_places import bare_area
from tenderwright.documents.closing_desk import ClosedDocking
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Bullets, Facts, Heading, Inline, Paragraph, Part, inline, plain
from tenderwright.documents.parts.found import deferred_table, words
from tenderwright.pricing.money import in_currency
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import show, shown_unit

GROUP = "Docking report"


def summary(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose the summary."""
    findings = closed.findings
    put_off = deferred_table(desk, findings.deferred) or [Paragraph(inline("Nothing was put off."))]
    blocks: list[Block] = [
        *put_off,
        Heading("The docking in short"),
        Facts(tuple(fact for fact in _facts(desk, closed) if plain(fact[1]))),
    ]
    if closed.missing:
        note = "The findings are silent on the following; it may have been done all the same."
        blocks += [Heading("Not recorded"), Paragraph(inline(note)), Bullets(tuple(inline(m) for m in closed.missing))]
    return Part("summary", "1", "Summary", "data", GROUP, tuple(blocks), caution=True, audience="yard")


def _facts(desk: Desk, closed: ClosedDocking) -> list[tuple[str, Inline]]:
    findings, dates = closed.findings, closed.findings.dates
    lost = sum(one.days for one in findings.days_lost)
    causes = ", ".join(
        f"{one.cause} {one.days} d" + (f" ({one.what})" if one.what else "") for one in findings.days_lost
    )
    facts = [
        ("Yard", words(findings.yard, findings.place, findings.dock_type)),
        ("Docked", f"{day(dates.docked)} to {day(dates.undocked)}, {findings.days} days on blocks"),
        ("Days lost", f"{lost}: {causes}" if lost else ""),
        *_work(desk, closed),
        *_money(closed),
        ("Guarantee until", day(findings.guarantee_until) if findings.guarantee_until else ""),
    ]
    return [(name, inline(text)) for name, text in facts]


def _work(desk: Desk, closed: ClosedDocking) -> list[tuple[str, str]]:
    totals, findings = closed.totals, closed.findings
    rivets = ", ".join(f"{number} {how}" for how, number in totals.rivets.items())
    coated = "; ".join(
        words(desk.ref(log.zone).text, log.scheme.name if log.scheme else "", desk.quantity(log.area))
        for log in findings.paint
    )
    left = totals.anode_share_left
    seen = f", {100 * left:.0f} % of the old mass left" if left is not None else ""
    anodes = (
        f"{totals.anodes_fitted} fitted, {show(totals.anode_mass, 'small part')}"
        if totals.anodes_fitted
        else "none fitted"
    )
    bare = bare_area(list(closed.places))
    parts = Counter(one.component for one in findings.timber)
    timber = ", ".join(f"{number} {part}{'s' if number > 1 else ''}" for part, number in parts.items())
    return [
        (
            "Steel renewed",
            f"{show(totals.steel, 'small part', more=-1)} in {len(findings.renewed)} places"
            if findings.renewed
            else "",
        ),
        ("Rivets", rivets),
        ("Timber, entries", timber),
        ("Coated", coated),
        ("Left bare under blocks", show(bare, "area") if bare else ""),
        ("Anodes", f"{anodes}{seen}" if findings.anodes else ""),
        ("Conditions found", f"{len(findings.conditions_found)} reports" if findings.conditions_found else ""),
    ]


def _money(closed: ClosedDocking) -> list[tuple[str, str]]:
    if closed.account is None:
        return []
    whole = closed.account.whole
    grown = "" if whole.growth is None else f", {percent(whole.growth)} against the contract"
    return [
        ("Contract", f"{in_currency(closed.account.currency, whole.awarded)}"),
        ("Paid", f"{in_currency(closed.account.currency, whole.final)}{grown}"),
    ]


def percent(share: object) -> str:
    """Write a share as a signed percentage with one decimal."""
    number = float(str(share)) * 100
    sign = "+" if number > 0 else "−" if number < 0 else ""
    return f"{sign}{abs(number):.1f} {shown_unit('%')}"
