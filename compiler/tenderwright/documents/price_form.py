"""The price form as data: what yards fill in, section by section, with the rule that gives the evaluated total."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from tenderwright.pricing.described import in_full

LineKind = Literal["lump", "rate", "fixed", "credit", "day", "hours", "markup", "percent", "discount"]
"""lump: one price. rate: quantity times rate. fixed: the owner's provisional sum, not priced. credit: a rate or lump
that is subtracted. day: a rate per day. hours: the hours pool. markup: a percentage on the materials
allowance. percent: a percentage of what other lines come to; discount: one that is subtracted."""


@dataclass(frozen=True)
class FormLine:
    """One row of the price form; its number never changes after issue."""

    number: str
    """Such as `420.a`."""
    item: str
    """Such as `420`."""
    title: str
    """That of its item, which the form shows once above all of its lines."""
    text: str
    """Its words, with names and units as print has them."""
    written: str
    """Its words as the owner typed them, to which a returned form is tied."""
    kind: LineKind
    quantity: Decimal
    unit: str
    basis: str
    """surveyed, drawing, calculated, assumed or owner's."""
    fixed_amount: Decimal | None = None
    of: tuple[str, ...] = ()
    """For a percentage, the lines that it is of; its quantity is what they come to, and stands empty until then."""
    rate: Decimal | None = None
    """Only among the owner's papers: the owner's own rate; never in the yard edition."""

    @property
    def description(self) -> str:
        """Give the words by which the line is known where it stands without its item."""
        return in_full(self.title, self.text)


@dataclass(frozen=True)
class FormSection:
    """A section of the price form with its own sub-total."""

    code: str
    """A letter, such as `C`."""
    title: str
    note: str
    in_base: bool
    in_evaluated: bool
    lines: tuple[FormLine, ...]


@dataclass(frozen=True)
class FormTable:
    """A table of an item of which the yard fills cells with the tender."""

    name: str
    """Such as `520.valves`."""
    title: str
    columns: tuple[tuple[str, bool, str], ...]
    """Headings, whether the yard fills the column, and in which unit."""
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    """By name, such as `520.valves.suction-fire`, what stands in the cells."""


@dataclass(frozen=True)
class FormFigure:
    """A figure that is asked of the dock."""

    path: str
    """Where it stands in a bid, such as `limits.length`."""
    label: str
    hint: str
    unit: str
    form: Literal["text", "number", "day", "choice"]
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class PriceForm:
    """The whole price form of a tender."""

    tender: str
    title: str
    ship: str
    owner: str
    currency: str
    issued: date | None
    closing: date | None
    stamp: str
    edition_hash: str
    """Ties a returned form to the lines it was issued with."""
    sections: tuple[FormSection, ...]
    evaluated_rule: str
    """The published rule in words."""
    addenda: tuple[str, ...]
    """Addenda issued so far, for acknowledgement; blank rows follow."""
    yard_questions: tuple[tuple[str, str], ...]
    """What the yard tells of itself: label and hint."""
    caution: str
    day_cost: Decimal | None = None
    """The owner's published cost of each day from arrival to redelivery, counted in the evaluated price."""
    page_size: Literal["A4", "Letter"] = "A4"
    dearer: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...] = ()
    """Lines that count in the place of others where they are the dearer, and those others."""
    tables: tuple[FormTable, ...] = ()
    """The tables of items that the yard fills with the tender."""
    dock: tuple[tuple[str, tuple[FormFigure, ...]], ...] = ()
    """What is asked of the dock, in groups."""
    withdrawn: tuple[str, ...] = ()
    """The items and lines that are withdrawn, by number and words."""
