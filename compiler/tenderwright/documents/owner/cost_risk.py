"""How sure the cost is: the trials in a sentence, their curve, what drives the spread, and each item's part of it."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from tenderwright.documents.desk import capital, joined
from tenderwright.documents.drawings.cost_curve import cost_curve
from tenderwright.documents.drawings.drivers import drivers
from tenderwright.documents.edition import (
    Block,
    Caution,
    Column,
    Facts,
    Figure,
    Heading,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.owner.risks import all_risks, counted, risk_name, risks_counted
from tenderwright.documents.owner.sums import Sum, sums
from tenderwright.documents.parts.condition import percent
from tenderwright.documents.parts.front import desk_item
from tenderwright.model.owner import Risk
from tenderwright.planning.foresight import Foresight
from tenderwright.planning.outlook import CostOutlook, Outlook
from tenderwright.planning.trials import GENERAL
from tenderwright.pricing.bundle import Bundle, without_options
from tenderwright.pricing.money import in_currency, rounding, total, written
from tenderwright.pricing.price import Estimate
from tenderwright.quantities.customs import apart
from tenderwright.quantities.display import decimals

_PLANNED = (0.50, 0.80)


def cost_risk(desk: OwnerDesk) -> Part | None:
    """Compose what the trials say of the cost; None where there were none."""
    seen, estimate = desk.foresight, desk.estimate
    if seen is None:
        return None
    cost, currency = seen.outlook.cost, desk.tender.currency
    bars = drivers(desk.package, cost, _names(estimate, all_risks(seen.papers)))
    blocks: list[Block] = [
        Paragraph(inline(in_words(cost, currency))),
        cost_curve(desk.package, cost, currency),
        Heading("From the sum of likely to P80"),
        _steps(seen, currency),
        *_driven(bars),
        *risks_counted(desk, seen),
        Heading("Levels"),
        _levels(seen.outlook, currency),
        Heading("Each item at P50 and P80"),
        _allocated(desk, estimate, cost),
        Heading("How the trials were run"),
        Facts(tuple((name, inline(words)) for name, words in _settings(desk, seen, estimate))),
        _caution(),
    ]
    return Part("cost-risk", "", "How sure the cost is", "schedule", OWNER, tuple(blocks))


def _driven(bars: Figure | None) -> list[Block]:
    return [Heading("What makes the cost uncertain"), bars] if bars else []


def in_words(cost: CostOutlook, currency: str) -> str:
    """Say in plain words what the trials tell of the cost."""
    about = rounding(currency, cost.levels.values())
    middle, four_of_five = (about.money(cost.at(level)) for level in _PLANNED)
    beyond = cost.contingency
    lay_by = (
        f"To be covered in four of five, set aside {about.money(beyond)} more than the likely sum."
        if beyond > 0
        else f"The sum of likely already covers four of five, with {about.money(-beyond)} to spare."
    )
    return (
        f"The sum of the likely prices, {about.money(cost.point)}, was enough in {of_hundred(cost.point_at)} "
        f"trials. Half the trials cost no more than {middle} (P50), four of five no more than "
        f"{four_of_five} (P80). {lay_by}"
    )


def of_hundred(share: float) -> str:
    """Write a share of the trials as so many of 100; what rounds to none or to all says so."""
    count = round(100 * share)
    if count == 0 and share > 0:
        return "fewer than 1 of 100"
    return "more than 99 of 100" if count == 100 and share < 1 else f"{count} of 100"


def level_name(level: float) -> str:
    """Name a level of the trials, such as `P80`."""
    return f"P{100 * level:.0f}"


def _names(estimate: Estimate, risks: tuple[Risk, ...]) -> Mapping[str, str]:
    """Name every line and every risk as the drawing writes it."""
    lines = {line.number: f"{line.line.text} ({line.number})" for line in estimate.lines}
    return lines | {
        risk.risk: capital(risk_name(risk)) + (f", item {risk.item.name}" if risk.item else "") for risk in risks
    }


def _steps(seen: Foresight, currency: str) -> Table:
    """Go from the sum of likely to the mean and to P80, step by step."""
    cost = seen.outlook.cost
    risks = total([driver.mean for driver in cost.drivers if driver.is_risk])
    reach = "Ranges that reach further one way than the other, and further days, on average"
    rows: list[Sum] = [
        ("Sum of the likely amounts, options left out", cost.point, "normal"),
        ("Risks, on the average of all trials", risks, "normal"),
        (reach, cost.mean - cost.point - risks, "normal"),
        ("Mean of the trials", cost.mean, "subtotal"),
        ("From the mean to what is enough in four trials of five", cost.at(0.80) - cost.mean, "normal"),
        ("P80", cost.at(0.80), "total"),
    ]
    return sums(currency, rows, f"Standard deviation of the trials: {in_currency(currency, cost.deviation)}.")


def _levels(seen: Outlook, currency: str) -> Table:
    cost, time = seen.cost, seen.time
    rows = []
    for level, amount in sorted(cost.levels.items()):
        cells = [level_name(level), written(amount), written(amount - cost.point)]
        cells += [decimals(time.dock[level], 1), decimals(time.yard[level], 1)] if time else []
        rows.append(Row(tuple(inline(cell) for cell in cells), "subtotal" if level in _PLANNED else "normal"))
    columns = [
        Column("Level", width=1),
        Column(currency, "decimal", 2),
        Column("Beyond the sum of likely", "decimal", 2),
    ]
    columns += [Column("Days on blocks", "decimal", 1.5), Column("Days in the yard", "decimal", 1.5)] if time else []
    words = "P80: in 80 of 100 trials it is no more than this."
    if time is not None:
        words += (
            " Each column is ranked by itself; cost and days on blocks move together with a correlation of "
            f"{decimals(time.together, 2)}, since further days and more work are dearer in the same trial."
        )
    return Table(tuple(columns), tuple(rows), note=inline(words))


def _allocated(desk: OwnerDesk, estimate: Estimate, cost: CostOutlook) -> Table:
    """Give each item its part of P50 and P80, beside its likely amount; every column adds up to the cent."""
    items = {item.number: item for item in desk.package.items}
    counted = without_options(estimate.lines).lines
    rows, likely_amounts = [], []
    for number, levels in cost.by_item.items():
        likely = Bundle(tuple(line for line in counted if line.item.number == number)).likely
        likely_amounts.append(likely)
        name = inline("Risks of no one item") if number == GENERAL else desk_item(desk, items[number])
        rows.append(_part_row(name, likely, levels[0.50], levels[0.80]))
    middle, four_of_five = (total([levels[level] for levels in cost.by_item.values()]) for level in _PLANNED)
    rows.append(_part_row(inline("All items"), total(likely_amounts), middle, four_of_five, last=True))
    columns = (
        Column("Item, with its risks", width=4),
        Column("Likely", "decimal", 1.5),
        Column("P50", "decimal", 1.5),
        Column("P80", "decimal", 1.5),
        Column("P80 less likely", "decimal", 1.5),
    )
    note = inline(
        "Options left out. The part of an item is its mean in the trials and its share, by covariance, of what the "
        "level adds to the mean of the whole, so that the parts make up the whole to the cent. Taken alone an item "
        "may cost more or less."
    )
    return Table(columns, tuple(rows), note=note)


def _part_row(name: tuple[Span, ...], likely: Decimal, middle: Decimal, most: Decimal, last: bool = False) -> Row:
    amounts = (likely, middle, most, most - likely)
    return Row((name, *(inline(written(amount)) for amount in amounts)), "total" if last else "normal")


def _settings(desk: OwnerDesk, seen: Foresight, estimate: Estimate) -> list[tuple[str, str]]:
    outlook, rates = seen.outlook, seen.papers.rates
    why = rates.simulation.why if rates and rates.simulation else ""
    together = (
        f"{percent(outlook.within)} between lines of one hundred of items, "
        f"{percent(outlook.across)} between any others. {why}"
        if outlook.within or outlook.across
        else "Not at all: every line is drawn by itself, since owner/rates.yaml states no correlation. "
        "That makes the spread too narrow."
    )
    trials = apart(f"{outlook.trials:,}", " ")
    risks = len(counted(seen.papers))
    return [
        ("Trials", f"{trials}, from seed {outlook.seed}: the same papers give the same figures."),
        (
            "Each line",
            "Quantity times rate, each drawn from low, likely and high as a PERT distribution (beta, weight 4).",
        ),
        ("Moving together", together.strip()),
        (
            "Risks",
            f"{risks} that happen or not in each trial, at a cost between low and high if they do."
            if risks
            else "None.",
        ),
        ("Days", _days(seen)),
        ("Not counted", _left_out(desk, seen, estimate)),
    ]


def _days(seen: Foresight) -> str:
    if seen.outlook.time is None:
        return "The programme was not drawn; lines that count days keep the range of their quantity."
    lines = seen.papers.programme.day_lines if seen.papers.programme else ()
    named = joined([f"{one.line} ({one.days}{f', less {one.less}' if one.less else ''})" for one in lines])
    counted = f"; by them are counted the lines {named}" if named else "; no line counts them"
    return f"The programme is drawn in the same trials{counted}."


def _left_out(desk: OwnerDesk, seen: Foresight, estimate: Estimate) -> str:
    options = [line for line in estimate.lines if line.section.code == "F"]
    money = [risk_name(risk) for risk in all_risks(seen.papers) if risk.bears_on == "money"]
    words = "Value added tax and the owner's own costs."
    if options:
        amount = f"{in_currency(desk.tender.currency, estimate.section_totals['F'])}"
        words += f" Options, {len(options)} lines of {amount} in all."
    if money:
        words += f" Risks that bear on the money in hand and not on the cost: {joined(money)}."
    return words


def _caution() -> Caution:
    words = (
        "The trials know only what the owner wrote down: ranges, likelihoods and correlations by judgement. What "
        "nobody thought of is in none of them. A range that is too narrow makes P80 too low, and no number of trials "
        "mends it.",
        "P80 is no promise: one trial in five cost more. "
        "Which level to plan by and to ask for is for the trustees to decide.",
    )
    return Caution("What the figures rest on", tuple(inline(one) for one in words))
