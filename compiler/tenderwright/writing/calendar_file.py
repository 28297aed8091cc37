"""A calendar as a file that any calendar program reads (RFC 5545), in the same bytes each time."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta

from tenderwright.documents.edition import Calendar, Event

_OCTETS = 75
"""A line is no longer than this, its end left out (RFC 5545, 3.1)."""
_MONTHS = {30: 1, 61: 2, 91: 3, 122: 4, 182: 6}
_YEAR = 365.25


def calendar_file(calendar: Calendar, timestamp: int) -> bytes:
    """Write a calendar; `timestamp` is when it was made, so that the same edition is the same bytes."""
    stamp = f"{datetime.fromtimestamp(timestamp, UTC):%Y%m%dT%H%M%SZ}"
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Tenderwright//care plan//EN", "CALSCALE:GREGORIAN"]
    lines += [f"X-WR-CALNAME:{escaped(calendar.name)}"]
    for event in calendar.events:
        lines += _event(event, stamp)
    lines.append("END:VCALENDAR")
    return b"".join(folded(line) for line in lines)


def _event(event: Event, stamp: str) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{event.uid}"
    yield f"DTSTAMP:{stamp}"
    yield f"DTSTART;VALUE=DATE:{event.day:%Y%m%d}"
    yield f"DTEND;VALUE=DATE:{event.day + timedelta(days=1):%Y%m%d}"
    if event.every and event.until is not None and event.until >= event.day:
        yield f"RRULE:{rule(event.every, event.until)}"
    yield f"SUMMARY:{escaped(event.title)}"
    if event.text:
        yield f"DESCRIPTION:{escaped(event.text)}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def rule(days: int, until: date) -> str:
    """Give the rule by which an event comes again: by weeks, months or years where the days come to such."""
    years = round(days / _YEAR)
    if years and abs(days - years * _YEAR) < 1:
        often = ("YEARLY", years)
    elif days in _MONTHS:
        often = ("MONTHLY", _MONTHS[days])
    elif days % 7 == 0:
        often = ("WEEKLY", days // 7)
    else:
        often = ("DAILY", days)
    every = f";INTERVAL={often[1]}" if often[1] > 1 else ""
    return f"FREQ={often[0]}{every};UNTIL={until:%Y%m%d}"


def escaped(text: str) -> str:
    """Write text as a value (RFC 5545, 3.3.11); other control characters are left out."""
    text = text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\r\n", "\n").replace("\n", "\\n")
    return "".join(one for one in text if one >= " ")


def folded(line: str) -> bytes:
    """Write a line with its end, folded so that no part is longer than 75 octets and no character is parted."""
    parts, part = [], b""
    for character in line:
        octets = character.encode()
        if len(part) + len(octets) > _OCTETS:
            parts.append(part)
            part = b" "
        part += octets
    return b"\r\n".join([*parts, part]) + b"\r\n"
