"""Condition-found reports with their price, the hour for their answer, and what became of them by a day."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.model.award import Award
from tenderwright.model.in_dock import WAITING, ConditionReport
from tenderwright.model.in_dock_sense import answer_moment
from tenderwright.model.item import Item
from tenderwright.notices import Notice
from tenderwright.pricing.in_dock.contract import Contract
from tenderwright.pricing.in_dock.ordered import Price, by_pool, by_quantity
from tenderwright.pricing.money import cents


class PricedReport(Struct, frozen=True):
    """A condition-found report as the contract prices it."""

    report: ConditionReport
    item: Item | None
    price: Price | None
    """None where the yard has given none yet."""
    due: datetime | None
    """The hour by which it is to be answered."""
    asked: Decimal | None = None
    """The amount that the yard asks, where the contract gives another."""

    @property
    def name(self) -> str:
        """Give its number."""
        return self.report.report.name

    def state(self, on: date) -> str:
        """Give how it stands on a day: accepted, rejected, deferred or waiting; empty before it was made."""
        if self.report.day > on:
            return ""
        decided = self.report.decided
        return self.report.decision if decided is not None and decided <= on else WAITING

    def overdue(self, on: date) -> int:
        """Give by how many days the answer is late on a day; nothing on the day itself, and once it is answered."""
        if self.state(on) != WAITING or self.due is None:
            return 0
        return max((on - self.due.date()).days, 0)


def priced_report(report: ConditionReport, contract: Contract, item: Item | None) -> PricedReport | Notice:
    """Price a report: by the quantity of its line, else by hours of the pool, else by the amount that the yard asks."""
    what = f"report {report.report}"
    asked = cents(report.amount) if report.amount is not None else None
    line = contract.lines.get(report.line.name) if report.line is not None else None
    price: Price | Notice | None = None
    if report.line is not None and line is None:
        return PricedReport(report, item, None, due(report, contract.award))  # told where names are resolved
    if line is not None and report.quantity is not None:
        price = by_quantity(report.quantity, line, contract, what, report.here)
    elif line is not None and line.number in contract.pool and (report.hours is not None or report.materials):
        price = by_pool(report, report.line, contract, what)
    elif asked is not None:
        price = Price("negotiated", asked)
    elif report.quantity is not None:
        message = f"{what} gives a quantity, and no line by which it is paid"
        price = Notice("in-dock-price", report.here, message, hints=("add `line:`",))
    elif report.hours is not None or report.materials:
        price = by_pool(report, report.line, contract, what)
    if isinstance(price, Notice):
        return price
    made = PricedReport(report, item, price, due(report, contract.award))
    return replace(made, asked=asked) if price is not None and asked not in (None, price.amount) else made


def due(report: ConditionReport, award: Award) -> datetime | None:
    """Give the hour for the answer: as written, or the answering time of the award from the hour of the report.

    A report without an hour counts from the end of its day.
    """
    if report.answer_by or award.answer_within is None:
        return answer_moment(report)
    hour = report.hour or "23:59"
    made = datetime.fromisoformat(f"{report.day.isoformat()} {hour}")
    return made + timedelta(seconds=award.answer_within.si)
