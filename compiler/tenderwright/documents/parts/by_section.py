"""Groups what belongs to items by the sections of the tender."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from tenderwright.documents.desk import Desk

Thing = TypeVar("Thing")


def by_section(desk: Desk, things: Sequence[Thing], number: Callable[[Thing], int]) -> list[tuple[str, list[Thing]]]:
    """Give the things of each section that has any, by its title; those of no section come last, under no title."""
    sections = desk.tender.sections
    found = [(one.title, [thing for thing in things if one.from_ <= number(thing) <= one.to]) for one in sections]
    outside = [thing for thing in things if not any(one.from_ <= number(thing) <= one.to for one in sections)]
    return [(title, inside) for title, inside in (*found, ("", outside)) if inside]
