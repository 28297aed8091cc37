"""The sections of the price form, and in which of them each line stands."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.model.choices import ALTERNATIVE
from tenderwright.model.item import Item, Line
from tenderwright.model.tender import Tender
from tenderwright.pricing.amount import DISCOUNT, PERCENT


class Section(Struct, frozen=True):
    """A section of the price form, and whether it counts in the base and in the evaluated price."""

    code: str
    title: str
    note: str
    in_base: bool
    in_evaluated: bool


SECTIONS = (
    Section("A", "Docking and services", "Lump sums and rates for the dock and what serves the work.", True, True),
    Section("B", "Definite work", "Lump sums for work that is fully described.", True, True),
    Section("C", "Measured work", "Rates; the quantities are measured again when the work is done.", True, True),
    Section(
        "D",
        "Contingent work and further days",
        "Rates for work done only on written instruction; all yards price the same quantities.",
        False,
        True,
    ),
    Section(
        "E", "Hours pool", "Rates for hours and the percentage added to materials, for work not foreseen.", False, True
    ),
    Section("F", "Options", "Prices that the owner may take up until the day each option names.", False, True),
    Section("G", "Credits", "Money back to the owner; write a positive amount.", True, True),
    Section("H", "Provisional sums", "The owner's fixed sums, the same for every yard.", True, True),
    Section(
        "I",
        "Alternatives",
        "Prices of work that is ordered, if the owner so chooses, in the place of other work.",
        False,
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
