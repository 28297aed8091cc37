"""Compose the price form from the items."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any, Literal

from tenderwright.documents.award_rule import BEGINS, afterwards, parts_counted
from tenderwright.documents.desk import CAUTION, Desk, in_its_units
from tenderwright.documents.in_print import Names
from tenderwright.documents.parts.item_tables import cell_text, heading_of
from tenderwright.documents.price_form import FormFigure, FormLine, FormSection, FormTable, LineKind, PriceForm
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.choices import dearer
from tenderwright.model.item import Item, Line
from tenderwright.model.item_table import WITH_TENDER, ItemTable
from tenderwright.model.kinds import DOCK_TYPES as KINDS
from tenderwright.model.table_rows import rows_of
from tenderwright.model.tender import DAYS
from tenderwright.pricing.choices import groups
from tenderwright.pricing.described import in_full, words
from tenderwright.pricing.dock_figures import DAY, FIGURES, GRADIENT, KIND, TEXT, DockFigure
from tenderwright.pricing.percents import percents
from tenderwright.pricing.quantity import LineQuantity, line_quantity
from tenderwright.pricing.sections import SECTIONS, Section, form_of, section_of

_KINDS: dict[str, LineKind] = {
    "lump": "lump",
    "rate": "rate",
    "day": "day",
    "hours": "hours",
    "fixed": "fixed",
    "markup": "markup",
    "credit": "credit",
    "percent": "percent",
    "discount": "discount",
}

QUESTIONS = (
    ("Earliest and latest docking day", ""),
    ("Insurance", "ship repairer's liability, limit"),
)


@in_its_units
def price_form(desk: Desk, stamp: str) -> PriceForm:
    """Compose the whole price form, without a rate."""
    tender = desk.tender
    of, names = percents(desk.package), Names(desk)
    sections = tuple(_section(desk, section, of, names) for section in SECTIONS)
    sections = tuple(one for one in sections if one.lines)
    tables = tuple(_tables(desk))
    asked = tuple((q.ask, q.hint) for q in tender.yard_questions) or QUESTIONS
    return PriceForm(
        tender=tender.tender.number,
        title=tender.tender.title,
        ship=tender.ship,
        owner=tender.owner.name,
        currency=tender.currency,
        issued=tender.dates.issued,
        closing=tender.dates.closing,
        stamp=stamp,
        edition_hash=_hash(_issue(desk), sections, tables),
        sections=sections,
        evaluated_rule=_rule(desk),
        addenda=tuple(f"{a.number}, {a.date}: {a.summary}" for a in tender.addenda),
        yard_questions=asked,
        caution=CAUTION,
        day_cost=tender.award.day_cost if DAYS in tender.award.components else None,
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        tables=tables,
        dock=asked_of_the_dock(),
        dearer=tuple((tuple(these), others) for others, these in groups(dearer(desk.package)).items()),
        withdrawn=tuple(_withdrawn(desk, names)),
    )


def _withdrawn(desk: Desk, names: Names) -> Iterator[str]:
    """Name the items that are withdrawn, and of the others the lines that are."""
    for item in desk.package.items:
        if item.withdrawn:
            yield f"{item.number} {item.title}"
            continue
        for line in desk.package.withdrawn_lines.get(item.number, ()):
            yield f"{item.number}.{line.line} {in_full(item.title, names.words(line.text))}"


def _rule(desk: Desk) -> str:
    parts = (f"– {words}" for words in parts_counted(desk))
    return "\n".join((BEGINS, *parts, *afterwards(desk), desk.plain(desk.tender.award.evaluated)))


def asked_of_the_dock() -> tuple[tuple[str, tuple[FormFigure, ...]], ...]:
    """Give what is asked of the dock, group by group, in the units that are told in."""
    return tuple((group, tuple(map(_figure, figures))) for group, figures in FIGURES)


def _figure(figure: DockFigure) -> FormFigure:
    form: Literal["text", "number", "day", "choice"] = "number"
    if figure.form in (TEXT, GRADIENT):
        form = "text"
    elif figure.form in (DAY, KIND):
        form = "day" if figure.form == DAY else "choice"
    return FormFigure(figure.path, figure.label, figure.hint, figure.unit, form, KINDS if form == "choice" else ())


def _tables(desk: Desk) -> Iterator[FormTable]:
    """Give the tables of which the yard fills cells with the tender."""
    for item in desk.package.items:
        for table in item.tables if not item.withdrawn else ():
            if any(column.filled == WITH_TENDER for column in table.columns):
                yield _form_table(desk, item, table)


def _form_table(desk: Desk, item: Item, table: ItemTable) -> FormTable:
    shown = [place for place, column in enumerate(table.columns) if column.filled in ("", WITH_TENDER)]
    name = f"{item.number}.{table.table}"
    return FormTable(
        name,
        f"{item.number} {item.title}: {table.title}",
        tuple((heading_of(one), bool(one.filled), one.unit) for one in (table.columns[place] for place in shown)),
        tuple(
            (f"{name}.{row.row}", tuple(cell_text(desk, row.cells[place]) for place in shown))
            for row in rows_of(desk.package, item, table)
        ),
    )


def _section(desk: Desk, section: Section, of: Mapping[str, tuple[str, ...]], names: Names) -> FormSection:
    counted = section.counted(desk.tender.award.components)
    lines = tuple(_lines(desk, section, of, names))
    return FormSection(section.code, section.title, section.note, section.in_base, counted, lines)


def _lines(desk: Desk, section: Section, of: Mapping[str, tuple[str, ...]], names: Names) -> list[FormLine]:
    found = []
    for item in desk.package.items:
        if item.withdrawn:
            continue
        for line in item.lines:
            if section_of(item, line, desk.tender) is section:
                found.append(_line(desk, item, line, section, of.get(f"{item.number}.{line.line}", ()), names))
    return found


def _line(desk: Desk, item: Item, line: Line, section: Section, of: tuple[str, ...], names: Names) -> FormLine:
    quantity = line_quantity(line, desk.record)
    if line.price == "markup" and line.amount is not None:
        quantity = LineQuantity(line.amount, desk.tender.currency, line.basis)
    number = f"{item.number}.{line.line}"
    kind = _KINDS[form_of(line, section)]
    return FormLine(
        number=number,
        item=item.number,
        title=item.title,
        text=names.words(words(line)),
        written=words(line),
        kind=kind,
        quantity=quantity.number if quantity else Decimal(0),
        unit=_unit(desk, line, quantity),
        basis=quantity.basis if quantity else TO_BE_WRITTEN.lower(),
        fixed_amount=line.amount if line.price == "fixed" else None,
        of=of,
    )


def _unit(desk: Desk, line: Line, quantity: LineQuantity | None) -> str:
    if line.price == "markup":
        return desk.tender.currency
    return quantity.unit if quantity else ""


def _issue(desk: Desk) -> list[Any]:
    """Give what else ties a form to its tender: number, currency, cost of a day, and the revision as far as addenda."""
    tender = desk.tender
    addenda = [[one.number, str(one.date)] for one in tender.addenda]
    return [tender.tender.number, tender.currency, str(tender.award.day_cost), addenda]


def _hash(issue: list[Any], sections: tuple[FormSection, ...], tables: tuple[FormTable, ...]) -> str:
    """Tie a returned form to its tender and lines: a digest of number, currency, revision, lines and tables."""
    rows: list[Any] = [
        issue,
        *(
            [section.code, line.number, told, str(line.quantity), line.unit, line.kind, str(line.fixed_amount)]
            for section in sections
            for line in section.lines
            for told in (in_full(line.title, line.written),)
        ),
        *([table.name, table.title, table.columns, table.rows] for table in tables),
    ]
    return hashlib.sha256(json.dumps(rows, ensure_ascii=False).encode()).hexdigest()[:16]
