"""The dead-ship sheet: what a ship without life of her own needs in dock, who supplies it, and when to stop."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tenderwright.calculations.ship.dead_ship import Floatable, floatable
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import (
    Block,
    Column,
    Edition,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.links_within import links_within
from tenderwright.documents.not_calculated import why_not
from tenderwright.model.item import Item
from tenderwright.model.services import service_answers
from tenderwright.model.tow import Arrangement, Stop
from tenderwright.quantities.display import in_column, show
from tenderwright.quantities.retold import retold

GROUP = "Dead ship in dock"
_USUAL = "common practice, no source"


@dataclass(frozen=True)
class Need:
    """A need, the services of the checklist that answer it, and what is usually asked of it."""

    need: str
    title: str
    services: tuple[str, ...]
    usual: str
    """Common practice, no source."""


NEEDS = (
    Need(
        "power",
        "Power",
        ("shore-power",),
        "Voltage, current, meter, who connects, notice of an outage; locked off for work",
    ),
    Need(
        "earth",
        "Earth",
        ("earth-return",),
        "Hull to dock earth at two places after landing; welding return at the job, not through bearings",
    ),
    Need(
        "shore isolation",
        "Shore-side isolation",
        (),
        "At a wet berth an isolating transformer, or an isolator in the earth lead: the safety earth is never cut",
    ),
    Need(
        "impressed current",
        "Impressed current",
        (),
        "Off and tagged before divers go down and before the dock is pumped; on after floating; potentials read",
    ),
    Need(
        "fire main",
        "Fire main",
        ("fire-main",),
        "Two sources, under pressure at all hours, hoses that reach every space; her own main is dead",
    ),
    Need(
        "fire watch",
        "Fire watch",
        ("fire-watch",),
        "A person with no other duty at each face of hot work, and after it",
    ),
    Need("extinguishers", "Extinguishers", ("extinguishers",), "Placed by her fire plan, inspected"),
    Need(
        "rounds",
        "Rounds by night and on holidays",
        ("gangway-watch",),
        "Every one to two hours with a log; no heating left unattended",
    ),
    Need(
        "alarms",
        "Alarms",
        (),
        "Fire, bilge and intruder live on the shore supply and heard where somebody "
        "is; an outage agreed; tested weekly",
    ),
    Need("access", "Access", ("gangways",), "Two ways off at opposite ends, lit, with rails and a load limit"),
    Need("lighting", "Lighting", ("lighting",), "On every way and at every place of work"),
    Need("telephone", "Telephone", ("telephone",), "At the gangway, with the numbers"),
    Need("visitors", "Visitors", (), "None without leave of the yard and its induction"),
    Need("washrooms", "Washrooms and overboards", ("sewage",), "Her own locked; every overboard shut"),
    Need("heating", "Heat and frost", ("heating",), "Drained, heated or treated below freezing; dryers kept running"),
    Need("rain and deck water", "Rain and deck water", (), "Led clear of the shell, so that none runs over a coat"),
    Need(
        "heavy weather",
        "Heavy weather on the blocks",
        (),
        "sheets come down, no block is out, and shores are looked at; a floating dock: her moorings and list",
    ),
    Need(
        "emergency floating",
        "Floating in an emergency",
        ("temporary-closures",),
        "A list of what is open, kept each day; who may order; the dock told if she cannot float",
    ),
)

STOPS = (
    (
        "entry",
        "List above 1°, or trim beyond the plan by more than 0.1 m",
        "Stay out of the dock; move ballast, read again",
    ),
    ("entry", "Wind, visibility or stream beyond the dock's own limits", "Stay out"),
    (
        "landing",
        "List that grows, or draft at touch 0.1 m from the forecast",
        "Stop the pumps, float her again, find the weight",
    ),
    (
        "dry",
        "A block crushes, a cap splits, a gap opens or the hull is heard",
        "Stop work under her, call the naval architect",
    ),
    ("flooding", "Water at the sea chests and overboards", "Hold, look at every valve, gland and plug, then go on"),
    ("flooding", "A leak that is not stopped", "Stop, lower the water"),
    (
        "flooding",
        "List above 0.5° as she lifts, or she lifts at another level than forecast",
        "Stop, hold her on the blocks",
    ),
    ("afloat", "Soundings after 1 h, 4 h and 24 h that rise", "Back over the blocks, or pumps and people aboard"),
)
"""When, at which sign, work or water is usually stopped, and what is done (common practice, no source)."""


def dead_ship_sheet(desk: Desk, edition: Edition) -> Edition | None:
    """Compose the sheet; None where neither the tender's services nor a tow plan say anything of it."""
    plan = desk.package.tow.in_dock if desk.package.tow is not None else None
    if plan is None and not service_answers(desk.package):
        return None
    blocks: list[Block] = [*_needs(desk), *_floating(desk), *_stops(desk, plan.stops if plan is not None else ())]
    part = Part("dead-ship", "DD1", GROUP, "data", GROUP, tuple(blocks), caution=True, audience="yard")
    title, subtitle = f"{GROUP}, {desk.tender.ship}", "For the dockside; planning figures"
    parts = links_within((part,))
    return replace(
        edition, title=title, subtitle=subtitle, parts=parts, facts=(), sheets={}, forms={}, tables={}, files={}
    )


def _needs(desk: Desk) -> list[Block]:
    plan = desk.package.tow.in_dock if desk.package.tow is not None else None
    said = {one.need: one for one in plan.arrangements} if plan is not None else {}
    rows, gaps = [], []
    for need in NEEDS:
        told, held = _answer(desk, need, said.get(need.need))
        if not told:
            gaps.append(need.title)
            told = (Span(f"GAP: no item supplies it and nothing is said. Usual: {need.usual}.", strong=True),)
        rows.append(Row((inline(need.title), told, held)))
    words = "She has no power, water, steam or watch of her own from arrival to redelivery. "
    open_ = f"Not answered yet, to be settled before she arrives: {'; '.join(gaps)}."
    words += open_ if gaps else "Every need is answered."
    columns = (Column("Need", width=1.2), Column("How it is met", width=3), Column("Held or tested", width=2.2))
    note = inline(
        "From the tender's items and its list of services; what stands as usual is common practice, no source."
    )
    return [Paragraph(inline(words)), Table(columns, tuple(rows), note=note, small=True)]


def _answer(desk: Desk, need: Need, said: Arrangement | None) -> tuple[Inline, Inline]:
    """Give how a need is met and what is held or tested of it; empty where nobody has said."""
    if said is not None:
        item = desk.package.item_by_name.get(said.item.name) if said.item is not None else None
        by = inline(f" Item {item.number}.") if item is not None and not item.withdrawn else ()
        return (*desk.words(said.says), *by), _held(desk, item)
    wind = desk.package.docking_plan.wind if desk.package.docking_plan is not None else None
    if need.need == "heavy weather" and wind is not None:
        planned = f"Blocks and shores are planned for a wind of {desk.quantity(wind.speed)}."
        return inline(f"{planned} Before more than that: {need.usual} (common practice, no source)."), inline("–")
    answers = service_answers(desk.package)
    for service in need.services:
        answer = answers.get(service)
        if answer is None:
            continue
        item = desk.package.item_by_name.get(answer.item.name) if answer.item is not None else None
        if item is not None and not item.withdrawn:
            return inline(f"By the yard, item {item.number}: {item.title}"), _held(desk, item)
        if answer.answer != "yes" and answer.why:
            return inline(
                f"{'Not needed' if answer.answer == 'not applicable' else 'Not by the yard'}: {answer.why}"
            ), inline("–")
    return (), inline("–")


def _held(desk: Desk, item: Item | None) -> Inline:
    """Name the hold points of an item, and its tests where it has none."""
    if item is None:
        return inline("–")
    told = [f"{item.number}.{one.hold} {one.at}" for one in item.holds]
    told += [f"{one.test}" for one in item.tests] if not told else []
    return inline("; ".join(told) or "–")


def _floating(desk: Desk) -> list[Block]:
    found = desk.calculated.outcome(floatable)
    head = Heading("Hours until she could float")
    if isinstance(found, Absent):
        return [] if isinstance(found, NotAsked) else [head, Paragraph(inline(f"{why_not(found)}"))]
    rows = []
    for kind in dict.fromkeys(one.kind for one in found.holes):
        alike = [one for one in found.holes if one.kind == kind]
        items = ", ".join(dict.fromkeys(one.item for one in alike))
        time = alike[0].time
        each = "not said" if time is None else in_column(time, "hours")
        all_ = "–" if time is None else in_column(time * len(alike), "hours")
        cells = (capital(kind), f"{len(alike)}", items, alike[0].how or "not said", each, all_)
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Open at the worst hour", width=1.5),
        Column("Count", "right", 0.6),
        Column("By items", width=1.2),
        Column("Closed in haste by", width=2.6),
        Column("Each, gang-h", "decimal", 0.9),
        Column("All, gang-h", "decimal", 0.9),
    )
    return [head, Table(columns, tuple(rows), small=True), Paragraph(inline(_hours(desk, found)))]


def _hours(desk: Desk, found: Floatable) -> str:
    plan = desk.package.docking_plan
    by = plan.ordered_by if plan is not None else ""
    who = f"Ordered by {by}. " if by else "Who may order it is not said. "
    if found.closing is None:
        words = f"Not known: nobody has said how long it takes to close {', '.join(found.without_time)}. "
    else:
        gangs = "one gang" if found.gangs == 1 else f"{found.gangs} gangs at once"
        words = f"Closed in {show(found.closing, 'hours')} by {gangs}, were all of them open. "
        if found.hours is None:
            words += "How long flooding takes is not said: ask the dock. "
        else:
            words += f"With flooding, {show(found.hours, 'hours')} until she floats. "
    return (
        f"{words}{who}Her stability is then not that of any calculation: tanks are open, weights are off. "
        "What is open stands in the register of openings of the inspection plan, kept each day: until it is closed and "
        "signed she cannot float, and the dock is told so."
    )


def _stops(desk: Desk, own: Sequence[Stop]) -> list[Block]:
    phases = {one.when for one in own}
    told = [(one.when, one.sign, one.do, one.source) for one in own]
    told += [(when, retold(sign), do, _USUAL) for when, sign, do in STOPS if when not in phases]
    order = ("entry", "landing", "dry", "flooding", "afloat")
    rows = tuple(
        Row((inline(capital(when)), *(inline(cell) for cell in cells)))
        for when, *cells in sorted(told, key=lambda one: order.index(one[0]))
    )
    columns = (
        Column("When", width=0.7),
        Column("Sign", width=2.6),
        Column("What is done", width=2.2),
        Column("Source", width=1.3),
    )
    note = inline(
        "Anybody may order a stop; only the dockmaster orders a start or going on, "
        "and the owner's representative signs before "
        "the dock is flooded. Levels and figures of this docking stand on the dock sheet, where there is one."
    )
    return [Heading("When to stop"), Table(columns, rows, note=note, small=True)]
