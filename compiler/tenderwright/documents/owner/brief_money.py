"""What the docking needs and costs, how sure that is, how long it takes, and what money there is, for trustees."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from tenderwright.documents.desk import capital, joined
from tenderwright.documents.drawings.cost_bridge import Beam, cost_bridge
from tenderwright.documents.edition import Block, Column, Facts, Figure, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.owner.cost_risk import of_hundred
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.funding import asked
from tenderwright.documents.owner.risks import all_risks, risk_name
from tenderwright.documents.parts.by_section import by_section
from tenderwright.model.funding import FundingSource
from tenderwright.model.item import Item
from tenderwright.planning.scope import available
from tenderwright.pricing.bundle import without_options
from tenderwright.pricing.money import ZERO, Rounding, rounding, total
from tenderwright.quantities.customs import apart, day, month

BRIDGE = "From the likely price to the sum to have in hand"
STATUSES = ("in hand", "promised", "applied for", "hoped for")
LEVELS = {0.50: "as likely as not", 0.80: "in four cases of five", 0.95: "in nineteen of twenty"}
"""The levels of the trials that are told, each in words."""
_GREATEST = 3
_DRIVERS = 5


def sources_of(desk: OwnerDesk) -> tuple[FundingSource, ...]:
    """Give the sources of money that the owner names."""
    papers = desk.foresight.papers if desk.foresight else None
    return papers.funding.sources if papers is not None and papers.funding is not None else ()


def level(desk: OwnerDesk) -> float:
    """Give the share of the trials that the sum to have in hand is to cover: as the owner asks, else four of five."""
    papers = desk.foresight.papers if desk.foresight else None
    return 0.50 if papers is not None and papers.scope is not None and papers.scope.confidence == "P50" else 0.80


def likely(desk: OwnerDesk) -> Decimal:
    """Give the sum of the likely prices, options left out."""
    return without_options(desk.estimate.lines).likely


def needed(desk: OwnerDesk) -> Decimal:
    """Give the sum to have in hand: what covers the share of the trials that the owner asks for."""
    if desk.foresight is None:
        return likely(desk) + desk.estimate.contingency
    return desk.foresight.outlook.cost.at(level(desk))


def rounded(desk: OwnerDesk) -> Rounding:
    """Give how the brief rounds its money."""
    return rounding(desk.tender.currency, (needed(desk), likely(desk)))


def money_of(desk: OwnerDesk, *statuses: str) -> Decimal:
    """Sum up the money of sources of some standing, without what is kept back of it."""
    return total([available(one) for one in sources_of(desk) if one.status in statuses])


def in_short(desk: OwnerDesk) -> list[Block]:
    """Give the whole in five lines."""
    pairs: tuple[tuple[str, str], ...] = (
        ("What she needs", _need(desk)),
        ("What it costs", _cost(desk)),
        ("How sure that is", _sure(desk)),
        ("How long it takes", _time(desk)),
        ("What money there is", _money(desk)),
    )
    return [Facts(tuple((term, inline(words)) for term, words in pairs))]


def _need(desk: OwnerDesk) -> str:
    items, about = desk.estimate.items, rounded(desk)
    groups = [
        (total([one.direct for one in inside]), title)
        for title, inside in by_section(desk, items, lambda one: one.item.item)
        if title
    ]
    told = f"{len(items)} pieces of work are priced."
    if groups:
        greatest = sorted(groups, key=lambda one: -one[0])[:_GREATEST]
        told += f" The dearest: {'; '.join(f'{_lower(title)}, {about.money(cost)}' for cost, title in greatest)}."
    ladder = asked(desk)
    if ladder is not None and ladder.must:
        priced = {one.item.number for one in items}
        must = [number for number in ladder.must if number in priced]
        told += (
            f" {len(must)} of them must be done whatever the money, among them docking, services and safety: "
            f"{about.money(ladder.must_cost)}."
        )
    return told


def _lower(title: str) -> str:
    return title[:1].lower() + title[1:]


def _cost(desk: OwnerDesk) -> str:
    about = rounded(desk)
    words = f"At likely prices {about.money(likely(desk))}. To have in hand: {about.money(needed(desk))}"
    return f"{words}, which covers it {LEVELS[level(desk)]}." if desk.foresight is not None else f"{words}."


def _sure(desk: OwnerDesk) -> str:
    if desk.foresight is None:
        return "Not known: no trials were run."
    cost, about = desk.foresight.outlook.cost, rounded(desk)
    words = (
        f"The docking was tried out on paper {apart(f'{desk.foresight.outlook.trials:,}')} times, each time with other "
        f"prices, quantities and mishaps. The likely prices alone were enough in {of_hundred(cost.point_at)}."
    )
    words += (
        f" One in ten cost less than {about.money(cost.at(0.10))}, one in ten more than {about.money(cost.at(0.90))}."
    )
    if not all_risks(desk.foresight.papers):
        words += " No risk is written down in owner/risks.yaml, so the true spread is wider."
    return words


def _time(desk: OwnerDesk) -> str:
    plan, seen = desk.tender.programme, desk.foresight
    told = []
    if plan is not None:
        blocks = f"On blocks from {day(plan.docking)} to {day(plan.undocking)}"
        told.append(f"{blocks}, home after {day(plan.redelivery)}, as tendered.")
    if seen is None or seen.schedule is None or seen.outlook.time is None:
        told.append("Whether that is long enough is not known: it needs a programme of the work, owner/programme.yaml.")
        return " ".join(told)
    time, tendered = seen.outlook.time, seen.schedule.dock_days_tendered
    if tendered is not None and time.within_tendered is not None:
        told.append(f"The {tendered} days on blocks were enough in {of_hundred(time.within_tendered)} trials.")
    even, four_of_five = (f"{time.dock[share]:.0f}" for share in (0.50, 0.80))
    told.append(f"{even} days on blocks are as likely as not, {four_of_five} enough in four cases of five.")
    return " ".join(told)


def _money(desk: OwnerDesk) -> str:
    if not sources_of(desk):
        return "Not known: owner/funding.yaml, which names each source and how sure it is, is not written."
    about = rounded(desk)
    words = [f"{about.money(money_of(desk, one))} {one}" for one in STATUSES if money_of(desk, one)]
    gap = needed(desk) - money_of(desk, "in hand", "promised")
    end = f"Still to be found: {about.money(gap)}." if gap > 0 else "That is enough, where all of it may pay for this."
    return f"{joined(words)}. {end}"


def cost_and_money(desk: OwnerDesk) -> list[Block]:
    """Go from the likely price to the sum to have in hand, and set the money against it."""
    return [Heading(BRIDGE), bridge(desk), Paragraph(inline(_outside(desk)))]


def bridge(desk: OwnerDesk) -> Figure:
    """Draw the bridge, with its amounts rounded so that they add up as they are printed."""
    about, need = rounded(desk), needed(desk)
    beams: list[Beam] = []
    reached = ZERO
    for words, upto, kind in _steps(desk):
        change = about(upto) - about(reached)
        sign = "" if kind == "sum" or not beams else "+ " if change >= 0 else "− "
        told = f"{sign}{about.figure(abs(change) if sign else upto)}"
        beams.append(Beam(words, ZERO if kind == "sum" else reached, upto, told, kind))
        reached = upto
    reached = ZERO
    for status in STATUSES:
        amount = money_of(desk, status)
        if amount:
            beams.append(Beam(f"Money {status}", reached, reached + amount, about.figure(amount), status))
            reached += amount
    return cost_bridge(beams, need, f"to have in hand: {about.money(need)}")


def _steps(desk: OwnerDesk) -> Sequence[tuple[str, Decimal, str]]:
    """Give each step with the sum that is reached with it."""
    estimate, seen = desk.estimate, desk.foresight
    steps = [("Work that the contract names", estimate.base, "step")]
    if likely(desk) != estimate.base:
        steps.append(("Work ordered only as it is found", likely(desk), "step"))
    steps.append(("Sum of likely prices", likely(desk), "sum"))
    if seen is None:
        if estimate.contingency:
            steps.append(("Contingency that the owner sets", needed(desk), "step"))
        return [*steps, ("To have in hand", needed(desk), "sum")]
    cost = seen.outlook.cost
    mishaps = total([driver.mean for driver in cost.drivers if driver.is_risk])
    if mishaps:
        steps.append(("Mishaps, on average", cost.point + mishaps, "step"))
    steps.append(("Prices and days that run over, on average", cost.mean, "step"))
    steps.append((f"To be covered {LEVELS[level(desk)]}", needed(desk), "step"))
    return [*steps, ("To have in hand", needed(desk), "sum")]


def _outside(desk: OwnerDesk) -> str:
    """Say what is in none of these figures."""
    about, estimate, seen = rounded(desk), desk.estimate, desk.foresight
    options = estimate.section_totals.get("F", ZERO)
    rise = f"each per cent by which prices rise until the work is done adds {about.money(needed(desk) / 100)}"
    words = (
        f"Prices of {month(estimate.base_month)}; {rise}. "
        "Not in these figures: value added tax and the owner's own costs, such as the tow, insurance and staff"
    )
    words += f"; options, {about.money(options)} if all are taken. " if options else ". "
    kept = total([one.kept_back for one in sources_of(desk)])
    if kept:
        words += f"Of the money, {about.money(kept)} is kept back for something else and not counted. "
    if seen is not None and estimate.contingency:
        beyond = needed(desk) - likely(desk)
        over = estimate.contingency - beyond
        words += f"The estimate sets {about.money(estimate.contingency)} aside as contingency; "
        words += f"that is {about.money(abs(over))} {'more' if over >= 0 else 'less'} than the {about.money(beyond)} "
        words += "between the likely prices and the sum to have in hand."
    return words.strip()


def sureness(desk: OwnerDesk) -> list[Block]:
    """Say what money and days are enough how often, and what could move them most."""
    seen = desk.foresight
    if seen is None:
        return []
    about, time = rounded(desk), seen.outlook.time
    rows = []
    for share, words in LEVELS.items():
        cells = [capital(words), about.figure(seen.outlook.cost.at(share))]
        cells += [f"{time.dock[share]:.0f}", f"{time.yard[share]:.0f}"] if time is not None else []
        rows.append(Row(tuple(inline(cell) for cell in cells), "subtotal" if share == level(desk) else "normal"))
    columns = [Column("To be enough", width=3), Column(f"Money, {desk.tender.currency}", "right", 2)]
    columns += (
        [Column("Days on blocks", "right", 2), Column("Days in the yard", "right", 2)] if time is not None else []
    )
    moved = inline(f"What could move the cost most: {'; '.join(_movers(desk))}.")
    return [Heading("How sure to be"), Table(tuple(columns), tuple(rows)), Paragraph(moved)]


def _movers(desk: OwnerDesk) -> list[str]:
    """Name what drives the spread of the cost, in words."""
    assert desk.foresight is not None
    lines = {line.number: line for line in desk.estimate.lines}
    found = []
    for driver in desk.foresight.outlook.cost.drivers[:_DRIVERS]:
        line = lines.get(driver.part)
        if line is None:
            found.append(risk_name_of(desk, driver.part))
        else:
            found.append(f"{_lower(line.line.text)} ({thing(line.item)})")
    return found


def thing(item: Item) -> str:
    """Name an item by what is worked on: `Rudder, lift and rebush` is the rudder."""
    title = item.title.rpartition(", ")[0] or item.title
    return title if title[1:2].isupper() else _lower(title)


def risk_name_of(desk: OwnerDesk, name: str) -> str:
    """Name a risk in words."""
    risks = all_risks(desk.foresight.papers) if desk.foresight else ()
    return next((risk_name(risk) for risk in risks if risk.risk == name), name)


def plain_cells(*cells: str) -> tuple[Inline, ...]:
    """Make the cells of a row from words."""
    return tuple(inline(cell) for cell in cells)
