"""The owner's figures for a spreadsheet: estimate by line, levels of cost and time, activities of the programme."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.edition import DataTable
from tenderwright.documents.owner.approvals_table import approvals_table
from tenderwright.documents.owner.cost_risk import level_name
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.estimate_classes import bounded
from tenderwright.documents.owner.funding import ladder_table
from tenderwright.documents.owner.price_basis import steps_run
from tenderwright.documents.owner.programme import waits_for
from tenderwright.planning.foresight import Foresight
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.amount import units
from tenderwright.pricing.price import Estimate

Cell = str | int | Decimal | None


def owner_tables(desk: OwnerDesk) -> dict[str, DataTable]:
    """Gather the tables by the stem of their file; one that there are no figures for is left out."""
    found = {"estimate": _estimate(desk, desk.estimate)}
    if desk.foresight is not None:
        found["cost-risk"] = _levels(desk.foresight, desk.tender.currency)
        if desk.foresight.schedule is not None:
            found["programme"] = _programme(desk.foresight, desk.foresight.schedule)
    ladder = ladder_table(desk)
    if ladder is not None:
        found["funding-ladder"] = ladder
    approvals = approvals_table(desk)
    if approvals is not None:
        found["approvals"] = approvals
    return found


def _estimate(desk: OwnerDesk, estimate: Estimate) -> DataTable:
    by_class = bounded(desk)
    rates = desk.foresight.papers.rates if desk.foresight else None
    rows: list[tuple[Cell, ...]] = []
    for line in estimate.lines:
        price, fixed = line.unit_price, line.form == "fixed"
        unit, rates_in = units(line.form, line.quantity.unit, desk.tender.currency)
        rate = rates.of(line.number) if rates else None
        rows.append(
            (
                line.number,
                line.item.number,
                line.section.code,
                line.line.text,
                _plain(line.least),
                _plain(line.quantity.number),
                _plain(line.most),
                unit,
                line.quantity.basis,
                rates_in,
                price.low,
                price.likely,
                price.high,
                None if fixed else price.estimate_class,
                "yes" if line.number in by_class else "no",
                desk.tender.currency,
                line.low,
                line.amount,
                line.high,
                steps_run(line),
                rate.evidence if rate else "",
                line.basis,
            )
        )
    header = "line item section description quantity_least quantity quantity_most unit quantity_basis rates_in "
    header += "rate_low rate rate_high class range_from_class amounts_in low likely high steps evidence basis"
    return DataTable(tuple(header.split()), tuple(rows))


def _levels(seen: Foresight, currency: str) -> DataTable:
    cost, time = seen.outlook.cost, seen.outlook.time
    rows: list[tuple[Cell, ...]] = [("sum of likely", _number(cost.point_at, 5), cost.point, None, None)]
    mean_dock = _number(time.mean_dock, 2) if time else None
    rows.append(("mean", None, cost.mean, mean_dock, None))
    for level, amount in sorted(cost.levels.items()):
        days = (_number(time.dock[level], 2), _number(time.yard[level], 2)) if time else (None, None)
        rows.append((level_name(level), _number(level, 2), amount, *days))
    return DataTable(("level", "share_of_trials", f"cost_{currency}", "days_on_blocks", "days_in_yard"), tuple(rows))


def _programme(seen: Foresight, schedule: Schedule) -> DataTable:
    time = seen.outlook.time
    rows: list[tuple[Cell, ...]] = []
    for one in schedule.activities:
        node, days = one.node, one.node.duration
        rows.append(
            (
                node.name,
                node.title,
                node.item.number if node.item else "",
                node.kind,
                node.phase,
                node.crew,
                *(_number(end, 3) for end in (days.low, days.likely, days.high)),
                _number(one.start, 3),
                _number(one.finish, 3),
                one.begins.isoformat() if one.begins else "",
                one.ends.isoformat() if one.ends else "",
                _number(one.total_float, 3),
                _number(one.free_float, 3),
                "yes" if one.critical else "no",
                _number(time.critical[node.name], 4) if time else None,
                "; ".join(waits_for(link, schedule) for link in one.driven_by),
            )
        )
    header = "activity title item kind phase crew low_days likely_days high_days start_day finish_day begins ends "
    header += "float_days free_float_days critical share_of_trials_critical waits_for"
    return DataTable(tuple(header.split()), tuple(rows))


def _number(value: float, places: int) -> Decimal:
    return Decimal(f"{value:.{places}f}")


def _plain(number: Decimal) -> Decimal:
    return Decimal(f"{number.normalize():f}")
