"""How long an activity takes: low, likely and high, in working days or days that pass."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.schedule.elapsed import elapsed
from tenderwright.model.item import Item
from tenderwright.model.programme import Activity
from tenderwright.notices import Notice
from tenderwright.quantities.quantity import Quantity

DAY = 86400.0


class Duration(Struct, frozen=True):
    """A three-point duration in days as written, with what stretches working days to days that pass."""

    low: float
    likely: float
    high: float
    week: int = 7
    """Days worked in a week; 7 where the days pass by themselves."""
    workable: float = 1.0
    """Share of days on which the weather lets it go on."""

    @classmethod
    def fixed(cls, days: float) -> Duration:
        """Give a duration that is certain."""
        return cls(days, days, days)

    @classmethod
    def none(cls) -> Duration:
        """Give the duration of a milestone."""
        return cls.fixed(0.0)

    @property
    def days(self) -> float:
        """Give the likely days that pass."""
        return elapsed(self.likely, self.week, self.workable)


def duration(activity: Activity, item: Item, week: int, workable: float) -> Duration | Notice:
    """Give the duration of an activity; without one, work takes the item's, a decision its answering time."""
    likely = activity.likely
    if likely is None and activity.kind == "decision" and item.decision is not None:
        likely = item.decision.within
    if likely is None and activity.kind == "work":
        likely = item.duration
    if likely is None:
        message = f"activity `{activity.activity}` has no likely duration"
        return Notice("missing-key", activity.here, message, hints=("add `likely: 2 d`, or `duration` of its item",))
    low, middle, high = (_days(each or likely) for each in (activity.low, likely, activity.high))
    if not 0 <= low <= middle <= high:
        message = f"activity `{activity.activity}`: low, likely and high do not rise in that order"
        return Notice("range-order", activity.here, message)
    if activity.kind != "work":
        return Duration(low, middle, high)
    return Duration(low, middle, high, week, workable if activity.outdoors else 1.0)


def _days(time: Quantity) -> float:
    return time.si / DAY
