"""Coating conditions: when paint may be put on, what is asked of the steel, and how often a month allows it."""

from __future__ import annotations

from calendar import month_name

from tenderwright.calculations.climate.paint_window import HUMIDITY_LIMIT, HUMIDITY_SOURCE, MARGINS
from tenderwright.calculations.climate.workable_hours import HUMIDITY_SPREAD, LEAST_STEEL, STEEL_OFFSET, WIND_LIMIT
from tenderwright.calculations.ship.climate import climate, docking_month, month_outlooks
from tenderwright.calculations.ship.timber import of_wood
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Coat, Scheme
from tenderwright.model.ship_condition import Climate
from tenderwright.quantities.display import decimals, head, in_column, plainly, show


def coating_conditions(desk: Desk) -> Part | None:
    """Compose the conditions for coating; None where nothing is coated and the package gives no climate."""
    written = desk.calculated.outcome(climate)
    if isinstance(written, Absent) and not desk.package.schemes:
        return None
    margin, source = MARGINS["3 K"]
    surface = _surface(desk)
    asked = (
        f"The {surface} is {plainly(margin, 'temperature difference')} or more above the dew point ({source}), "
        "and the relative humidity is at most "
        f"{100 * HUMIDITY_LIMIT:.0f} % ({HUMIDITY_SOURCE}). Both are read at the {surface} before and during "
        "each coat, every four hours at most. The form of five degrees Fahrenheit and rising "
        f"({MARGINS['5 degF'][1].title}) is "
        f"{show(MARGINS['5 degF'][0], 'temperature difference')} and does not meet this."
    )
    blocks: list[Block] = [
        Paragraph(inline(asked)),
        Heading("What a month allows"),
        *([not_calculated(written)] if isinstance(written, Absent) else _months(desk, written)),
        *_windows(desk),
    ]
    title = "Coating conditions"
    return Part("coating-conditions", "", title, "data", "The ship", tuple(blocks), caution=True, audience="yard")


def _surface(desk: Desk) -> str:
    """Name what is painted."""
    return "wood" if of_wood(desk.package.particulars) else "steel"


def _months(desk: Desk, written: Climate) -> list[Block]:
    months, docking = desk.calculated.outcome(month_outlooks), desk.calculated.outcome(docking_month)
    said: list[Block] = [not_calculated(docking)] if isinstance(docking, Absent) else []
    if isinstance(months, Absent):
        return said or [not_calculated(months)]
    rows = []
    for one in months:
        month = one.month
        cells = (
            month_name[month.month],
            in_column(month.mean.si, "temperature"),
            in_column(month.range, "temperature difference"),
            decimals(100 * month.humidity.si, 0),
            decimals(month.rain.si / 3600.0, 0),
            in_column(month.wind.si, "wind speed", more=1),
            in_column(one.dew_point, "temperature"),
            f"{decimals(100 * one.open.share, 0)} %",
            decimals(one.open.hours, 0),
            f"{decimals(100 * one.cover.share, 0)} %",
        )
        rows.append(Row(tuple(inline(cell) for cell in cells), "subtotal" if month == docking else "normal"))
    columns = (
        Column("Month", width=1.3),
        Column(head("Mean", "temperature"), "right"),
        Column(head("Range", "temperature difference"), "right"),
        Column("Humidity, %", "right"),
        Column("Rain, h", "right"),
        Column(head("Wind", "wind speed"), "right"),
        Column(head("Dew point", "temperature"), "right"),
        Column("Workable", "right"),
        Column("Hours", "right"),
        Column("Under cover", "right"),
    )
    surface = _surface(desk)
    note = inline(
        f"{written.place}: {written.source}. Share of the hours from {written.day_begins:g} to {written.day_ends:g} h "
        f"in which margin, humidity, {surface}, rain and wind all allow paint in the open; under cover neither rain "
        f"nor wind counts. A model for planning (derived): the day is a sinusoid and its vapour keeps; the {surface} "
        f"stands {plainly(abs(STEEL_OFFSET), 'temperature difference')} below the air at the coldest hour; daily "
        "humidity spreads by "
        f"{100 * HUMIDITY_SPREAD:.0f} %; least {surface} {plainly(LEAST_STEEL, 'temperature')}; wind up to "
        f"{plainly(WIND_LIMIT, 'wind speed')}. Those figures are common practice, no source."
    )
    return [Table(columns, tuple(rows), note=note, small=True), *said]


def _windows(desk: Desk) -> list[Block]:
    """Say where the times between coats stand, and give those of schemes that no item applies."""
    if not any(coat.overcoat_least or coat.overcoat_most for one in desk.package.schemes for coat in one.coats):
        return []
    applied = {one.scheme for one in desk.package.schemes if appliers(desk.package, one)}
    rows = [
        _window(desk, scheme, coat)
        for scheme in desk.package.schemes
        for coat in scheme.coats
        if scheme.scheme not in applied and (coat.overcoat_least or coat.overcoat_most)
    ]
    said = "The least and the most between coats stand with each coat, in the item that applies it. " if applied else ""
    words = Paragraph(
        inline(f"{said}Times are at the temperature of the data sheet; later, the coat is abraded first.")
    )
    columns = (
        Column("Scheme", width=3),
        Column("Coat", "right", 0.6),
        Column("Product", width=3),
        Column("Not before", "right", 1),
        Column("Not after", "right", 1),
    )
    table = [Table(columns, tuple(rows), small=True)] if rows else []
    return [Heading("Time to the next coat"), words, *table]


def _window(desk: Desk, scheme: Scheme, coat: Coat) -> Row:
    return Row(
        (
            inline(scheme.name or scheme.scheme),
            inline(str(coat.coat)),
            inline(coat.product),
            inline(desk.quantity(coat.overcoat_least, "–")),
            inline(desk.quantity(coat.overcoat_most, "–")),
        )
    )
