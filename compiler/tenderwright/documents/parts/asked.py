"""What is asked, on one page: ship, dates, dock, quantities by trade, what is contingent, and what to return."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from decimal import Decimal

from tenderwright.calculations.facility.clearances import IN_SERVICE
from tenderwright.calculations.ship.cradle import docking_line_load
from tenderwright.calculations.ship.dock_demands import dock_demands, docked_drafts
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk, joined
from tenderwright.documents.edition import (
    Beside,
    Block,
    Column,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.not_calculated import why_not
from tenderwright.documents.parts.by_section import by_section
from tenderwright.documents.parts.contract import to_sign
from tenderwright.documents.parts.limits import both
from tenderwright.documents.price_form import FormLine, PriceForm
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.item import Item
from tenderwright.pricing.money import in_currency
from tenderwright.pricing.quantity import written_number
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import plainly, plus_minus, show, shown_unit
from tenderwright.quantities.units import dimension_of, unit

Pairs = list[tuple[str, Inline]]
ByItem = Mapping[str, list[FormLine]]
_TIED = "\N{NO-BREAK SPACE}"
_FORMS = {"lump": "sum", "fixed": "sum", "markup": "mark-up", "percent": "%", "discount": "%"}
"""How lines stand that have no quantity to add up, by their kind."""
_FEW = 6
"""Items that are listed; the table of quantities shows which have more."""


def asked(desk: Desk, form: PriceForm) -> Part:
    """Compose the page from which an estimator sees whether to bid, and what to price first."""
    at_left = (
        *(Heading("The ship", 3), Facts(tuple(_ship(desk)))),
        *(Heading("Dates", 3), Facts(tuple(_dates(desk)))),
        *(Heading("What to return", 3), Facts(tuple(_return(desk, form)))),
    )
    at_right = (
        *(Heading("What a dock must offer", 3), Facts(tuple(_dock(desk)))),
        *(Heading("What is contingent, and how it is decided", 3), Facts(tuple(_contingent(desk, form)))),
    )
    blocks: list[Block] = [
        Beside((at_left, at_right)),
        Heading("Main quantities by trade (together: an area counts each time it is worked on)", 3),
        *_quantities(desk, form),
    ]
    return Part("asked", "", "What is asked", "asked", "Front matter", tuple(blocks), caution=True, audience="yard")


def _ship(desk: Desk) -> Pairs:
    ship = desk.package.particulars
    if ship is None:
        return [("Ship", inline(f"{desk.tender.ship}. Not described: it needs the ship's particulars."))]
    size, keel, hull = ship.dimensions, ship.keel, ship.hull
    built = f", {ship.built}" if ship.built else ""
    sizes = [f"{desk.quantity(size.length_overall)} over all", f"{desk.quantity(size.beam)} broad"]
    sizes += [f"{desk.quantity(size.depth)} deep"] if size.depth else []
    facts: Pairs = [
        ("Ship", inline(f"{ship.name}, {ship.type}{built}" + (f", {hull.material}, {hull.fastening}" if hull else ""))),
        ("Size", inline(", ".join(sizes))),
        *_afloat(desk),
        ("Keel", inline(f"{keel.kind}, {desk.quantity(keel.width)} wide")),
    ]
    return facts


def _afloat(desk: Desk) -> Pairs:
    """Tell her weight and drafts when she is docked, or what it takes to know them."""
    found = desk.calculated.outcome(docking)
    if isinstance(found, Absent):
        return [("Weight and drafts", inline(why_not(found)))]
    known, h = desk.calculated.found(how_sure), found.hydrostatics

    def shown(si: float, purpose: str, of: str) -> str:
        u = known.u(of) if known is not None else None
        return plus_minus(si, u, purpose) if u else show(si, purpose)

    drafts = (
        f"{shown(h.draft_aft, 'draft', 'draft_aft')} aft, {shown(h.draft_forward, 'draft', 'draft_forward')} forward"
    )
    return [
        ("Weight as docked", inline(shown(found.loading.mass, "weight", "displacement"))),
        ("Drafts as docked", inline(f"{drafts}, above the keel line, in water of {show(h.density, 'density')}")),
    ]


def _dock(desk: Desk) -> Pairs:
    """Tell what she asks of any dock, clearances included."""
    found = desk.calculated.outcome(dock_demands)
    if isinstance(found, Absent):
        return [("Dock", inline(why_not(found)))]
    reasons = {"line load": desk.calculated.outcome(docking_line_load)}
    facts: Pairs = []
    ship, plan = desk.package.particulars, desk.package.docking_plan
    high = f", blocks {desk.quantity(plan.block_height)} high" if plan is not None and plan.block_height else ""
    for one in found:
        why = reasons.get(one.name, desk.calculated.outcome(docked_drafts))
        words = why_not(why) if one.demand is None and isinstance(why, Absent) else both(one)
        words += high if one.name == "water over the blocks" else ""
        facts.append((_DEMANDS[one.name], inline(words)))
    if ship is not None:
        straight = ship.keel.straight
        facts.append(
            (
                "Length on blocks",
                inline(f"{show(straight.to.x - straight.from_.x, 'distance')}, the straight keel from {straight}"),
            )
        )
    if plan is None:
        facts.append(("With", inline(f"{plainly(IN_SERVICE.side, 'clearance')} clear all round")))
    return [*facts, ("How it is found", inline(desk.part("docking-data")))]


def _dates(desk: Desk) -> Pairs:
    tender, plan = desk.tender, desk.tender.programme
    dates, visit = tender.dates, tender.dates.site_visit
    facts: Pairs = []
    if visit is not None:
        must = ", mandatory" if visit.mandatory else ""
        facts.append(("Site visit", inline(f"{day(visit.date)}{must}" + (f". {visit.where}" if visit.where else ""))))
    facts.append(("Award", inline(day(dates.award) if dates.award else TO_BE_WRITTEN)))
    if plan is None:
        return [*facts, ("Docking", inline("Not planned yet: the programme is not written."))]
    stay = f"{day(plan.arrival)} to {day(plan.redelivery)}"
    included = f", {plan.dock_days} days on the blocks in the price" if plan.dock_days else ""
    return [
        *facts,
        ("With the yard", inline(stay)),
        ("On the blocks", inline(f"{day(plan.docking)} to {day(plan.undocking)}{included}")),
    ]


def _return(desk: Desk, form: PriceForm) -> Pairs:
    tender, owner = desk.tender, desk.tender.owner
    lines = sum(len(section.lines) for section in form.sections)
    what = f"price-form.xlsx: {_counted(lines, 'line', 'lines')} priced, {len(form.yard_questions)} questions answered"
    if form.tables:
        what += f", tables filled: {joined([table.title for table in form.tables])}"
    if form.addenda:
        what += f", {_counted(len(form.addenda), 'addendum', 'addenda')} acknowledged"
    if to_sign(desk):
        what += "; forms/ signed"
    open_ = (
        f"; the bid stays open {desk.quantity(tender.dates.valid).replace(' d', ' days')}" if tender.dates.valid else ""
    )
    ask = owner.representative + (f", {owner.contact}" if owner.contact else "")
    until = f", until {day(tender.dates.questions_until)}" if tender.dates.questions_until else ""
    return [
        ("What", inline(what)),
        ("By", inline((day(tender.dates.closing) if tender.dates.closing else TO_BE_WRITTEN) + open_)),
        ("To", inline(", ".join(filter(None, (owner.name, owner.address or owner.place))))),
        ("Whom to ask", inline(f"{ask}{until}")),
    ]


def _quantities(desk: Desk, form: PriceForm) -> list[Block]:
    """Give for each item its quantities, added up over its lines, trade by trade, in two columns."""
    sure, more = (_by_item(form, in_base=in_base) for in_base in (True, False))
    priced = [item for item in desk.package.items if item.number in sure.keys() | more.keys()]
    rows: list[Row] = []
    breaks: list[int] = []
    for title, items in by_section(desk, priced, lambda item: item.item):
        breaks.append(len(rows))
        rows.append(Row((inline(title or "Other items", *_together(items, sure, more)),), "group"))
        for item in items:
            told = (_summed(lines.get(item.number, ())) for lines in (sure, more))
            rows.append(Row((inline(desk.item_ref(item.number)), inline(item.title), *(inline(one) for one in told))))
    if not rows:
        return [Paragraph(inline("No item has a line to price yet."))]
    middle = min(breaks[1:] or [len(rows)], key=lambda at: abs(at - len(rows) / 2))
    columns = (
        Column("", width=0.75),
        Column("Item", width=4.85),
        Column("For certain", "right", 2.6),
        Column("If instructed", "right", 1.9),
    )
    halves = [half for half in (rows[:middle], rows[middle:]) if half]
    return [Beside(tuple((Table(columns, tuple(half), small=True),) for half in halves))]


def _together(items: list[Item], sure: ByItem, more: ByItem) -> list[str | Span]:
    """Add up the areas and the masses of a trade, where several of its items have them; other units do not add up."""
    sums: dict[str, list[Decimal]] = {}
    having: dict[str, set[str]] = defaultdict(set)
    for item in items:
        for at, lines in enumerate((sure, more)):
            for line in lines.get(item.number, ()):
                if line.kind == "rate" and dimension_of(unit(line.unit)) in ("area", "mass"):
                    sums.setdefault(line.unit, [Decimal(0), Decimal(0)])[at] += line.quantity
                    having[line.unit].add(item.number)
    told = []
    for one, (certain, instructed) in sums.items():
        if len(having[one]) > 1:
            told += [f"{written_number(certain)} {shown_unit(one)}"] if certain else []
            told += [f"{written_number(instructed)} {shown_unit(one)} if instructed"] if instructed else []
    return [Span(f" – together {', '.join(told)}", faint=True)] if told else []


def _by_item(form: PriceForm, *, in_base: bool) -> dict[str, list[FormLine]]:
    lines: dict[str, list[FormLine]] = defaultdict(list)
    for section in form.sections:
        for line in section.lines if section.in_base is in_base else ():
            lines[line.item].append(line)
    return lines


def _summed(lines: Iterable[FormLine]) -> str:
    """Add up quantities by their unit; days, which run beside each other, stand one after the other."""
    found: dict[str, list[Decimal]] = {}
    for line in lines:
        found.setdefault(_FORMS.get(line.kind, line.unit), []).append(line.quantity)
    told = [form for form in dict.fromkeys(_FORMS.values()) if found.pop(form, None)]
    for of, numbers in found.items():
        each = numbers if of == "d" else [sum(numbers, Decimal(0))]
        words = f"{' + '.join(written_number(one) for one in each)} {shown_unit(of)}"
        told.append(words.replace(" ", _TIED))
    return ", ".join(told)


def _contingent(desk: Desk, form: PriceForm) -> Pairs:
    """Tell by section of the form what is priced and not ordered at the award, and at which gates it is decided."""
    facts: Pairs = []
    for section in form.sections:
        if section.lines and not section.in_base:
            items = list(dict.fromkeys(line.item for line in section.lines))
            note = section.note.removesuffix(".").partition(";")[0]
            what = f"{_counted(len(section.lines), 'line', 'lines')}: {note[:1].lower()}{note[1:]}"
            refs: list[str | Span] = [what]
            for number in items if len(items) <= _FEW else ():
                refs += [", "] if len(refs) > 1 else ["; item " if len(items) == 1 else "; items "]
                refs.append(desk.item_ref(number))
            facts.append((section.title, inline(*refs)))
    for section in form.sections:
        for line in section.lines:
            if line.fixed_amount is not None:
                fixed = in_currency(desk.tender.currency, line.fixed_amount)
                facts.append(
                    ("Provisional sum", inline(f"{fixed}, the same for all yards; item ", desk.item_ref(line.item)))
                )
    for item in desk.package.items:
        if item.decision is not None and not item.withdrawn:
            words = f" {item.title}, within {desk.quantity(item.decision.within)}"
            facts.append(("Decided at", inline(desk.item_ref(item.number), words)))
    facts = facts or [("Contingent", inline("Nothing: all lines are ordered at the award."))]
    return [*facts, ("How it is evaluated", inline(desk.part("revision-record")))]


def _counted(number: int, one: str, more: str) -> str:
    return f"{number} {one if number == 1 else more}"


_DEMANDS = {
    "length": "Length",
    "beam": "Breadth",
    "water over the sill": "Water over the sill",
    "water over the blocks": "Water over the blocks",
    "lift": "Weight to lift",
    "line load": "Line load",
}
