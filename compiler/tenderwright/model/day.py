"""A day of the tender: a date, or counted from an event of the programme."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping

from msgspec import Struct

_EVENT = re.compile(r"(award|arrival|docking|undocking|redelivery)(?: ([+-]) (\d+) d)?")


class Day(Struct, frozen=True):
    """A day counted from an event of the programme, or a date."""

    text: str
    event: str = ""
    days: int = 0
    date: datetime.date | None = None

    @classmethod
    def read(cls, text: str) -> Day:
        """Read `docking + 3 d`, `arrival` or `2027-04-12`; raises ValueError for a date that does not exist."""
        match = _EVENT.fullmatch(text)
        if match is None:
            return cls(text, date=datetime.date.fromisoformat(text))
        days = int(match[3] or 0)
        return cls(text, match[1], -days if match[2] == "-" else days)

    def on(self, events: Mapping[str, datetime.date | None]) -> datetime.date | None:
        """Give the date on which the day falls, where the programme says."""
        if self.date is not None:
            return self.date
        start = events.get(self.event)
        return start + datetime.timedelta(days=self.days) if start else None

    def __str__(self) -> str:
        """Give the day as written."""
        return self.text
