"""A calendar as a file: lines, folds and texts as RFC 5545 has them, and the same bytes each time."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.documents.edition import Calendar, Event
from tenderwright.writing.calendar_file import calendar_file, escaped, folded, rule

EVENTS = (
    Event("bilge@marram.care", date(2026, 1, 5), "Bilges", "Read; then write, and call", 7, date(2026, 12, 31)),
    Event("docking@marram.care", date(2032, 5, 5), "The next docking, as planned"),
)


def unfolded(file: bytes) -> list[str]:
    return file.replace(b"\r\n ", b"").decode().split("\r\n")


def test_a_calendar_is_the_same_bytes_with_its_days_and_rules() -> None:
    file = calendar_file(Calendar("Marram: care", EVENTS), 1_796_601_600)
    assert file == calendar_file(Calendar("Marram: care", EVENTS), 1_796_601_600)
    lines = unfolded(file)
    assert lines[0] == "BEGIN:VCALENDAR"
    assert lines[-2:] == ["END:VCALENDAR", ""]
    assert lines.count("BEGIN:VEVENT") == lines.count("END:VEVENT") == 2
    assert lines.count("DTSTAMP:20261207T000000Z") == 2
    assert "DTSTART;VALUE=DATE:20260105" in lines
    assert "RRULE:FREQ=WEEKLY;UNTIL=20261231" in lines
    assert r"DESCRIPTION:Read\; then write\, and call" in lines
    assert sum(line.startswith("RRULE") for line in lines) == 1


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (7, "WEEKLY"),
        (14, "WEEKLY;INTERVAL=2"),
        (30, "MONTHLY"),
        (91, "MONTHLY;INTERVAL=3"),
        (182, "MONTHLY;INTERVAL=6"),
        (365, "YEARLY"),
        (1826, "YEARLY;INTERVAL=5"),
        (913, "DAILY;INTERVAL=913"),
    ],
)
def test_the_rule_is_by_weeks_months_or_years_where_days_come_to_such(days: int, words: str) -> None:
    assert rule(days, date(2030, 1, 2)) == f"FREQ={words};UNTIL=20300102"


@given(st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"]), max_size=400))
def test_a_fold_keeps_every_character_and_no_line_is_too_long(text: str) -> None:
    line = folded(f"SUMMARY:{text}")
    assert line.endswith(b"\r\n")
    parts = line.removesuffix(b"\r\n").split(b"\r\n")
    assert all(len(part) <= 75 for part in parts)
    assert "".join(part.decode()[number > 0 :] for number, part in enumerate(parts)) == f"SUMMARY:{text}"


@given(st.text())
def test_no_text_breaks_out_of_its_line(text: str) -> None:
    assert not any(one < " " for one in escaped(text))
