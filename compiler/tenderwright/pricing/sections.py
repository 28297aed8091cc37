"""The sections of the price form, and in which of them each line stands."""

from __future__ import annotations

from collections.abc import Collection

from msgspec import Struct

from tenderwright.model.choices import ALTERNATIVE
from tenderwright.model.item import Item, Line
from tenderwright.model.tender import CONTINGENT, OPTIONS, POOL, Tender
from tenderwright.pricing.amount import DISCOUNT, PERCENT


class Section(Struct, frozen=True):
    """A section of the price form, and where it counts."""

    code: str
    title: str
    note: str
    in_base: bool
    component: str = ""
    """What it is in the evaluated price beside the base price; an alternative is no part of it."""

    def counted(self, components: Collection[str]) -> bool:
        """Tell whether it counts in an evaluated price of these parts."""
        return self.in_base or self.component in components


SECTIONS = (
    Section("A", "Docking and services", "Lump sums and rates for the dock and what serves the work.", True),
    Section("B", "Definite work", "Lump sums for work that is fully described.", True),
    Section("C", "Measured work", "Rates; the quantities are measured again when the work is done.", True),
    Section(
        "D",
        "Contingent work and further days",
        "Rates for work done only on written instruction; all yards price the same quantities.",
        False,
        CONTINGENT,
    ),
    Section(
        "E", "Hours pool", "Rates for hours and the percentage added to materials, for work not foreseen.", False, POOL
    ),
    Section("F", "Options", "Prices that the owner may take up until the day each option names.", False, OPTIONS),
    Section("G", "Credits", "Money back to the owner; write a positive amount.", True),
    Section("H", "Provisional sums", "The owner's fixed sums, the same for every yard.", True),
    Section(
        "I",
        "Alternatives",
        "Prices of work that is ordered, if the owner so chooses, in the place of other work.",
        False,
    ),
)
"""In the order of the price form; the last is there only where it has lines."""
UNCOUNTED = ("F", "I")
"""Sections whose lines the owner may never order: options and alternatives."""

BY_CODE = {section.code: section for section in SECTIONS}


def form_of(line: Line, section: Section) -> str:
    """Give the form of a line's price, by which quantity and rate make an amount: a credit is taken off."""
    if section.code != "G" or line.price == "fixed":
        return line.price
    return DISCOUNT if line.price == PERCENT else "credit"


def section_of(item: Item, line: Line, tender: Tender) -> Section:
    """Find the section of the price form in which a line stands."""
    kind = item.kind_of(line)
    if kind == ALTERNATIVE:
        return BY_CODE["I"]
    if item.kind == "option" and kind == "contingent":
        return BY_CODE["F"]  # it can be ordered only where the option was taken up
    if line.price == "markup" or (line.price == "hours" and kind == "contingent"):
        return BY_CODE["E"]
    if kind in ("option", "credit", "provisional", "contingent"):
        return BY_CODE[{"option": "F", "credit": "G", "provisional": "H", "contingent": "D"}[kind]]
    first = tender.sections[0] if tender.sections else None
    if first and first.from_ <= item.item <= first.to:
        return BY_CODE["A"]
    return BY_CODE["C" if kind == "measured" else "B"]
