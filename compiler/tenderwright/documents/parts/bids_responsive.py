"""What the tender asks beside prices: each point met, missed, waived, not known or to be judged, and the docks."""

from __future__ import annotations

from datetime import date

from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.parts.bids_words import DASH, GROUP
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.responsive import Point
from tenderwright.pricing.dock_figures import ALL, stated
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import written_as
from tenderwright.quantities.quantity import Quantity


def bids_responsive(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the part."""
    blocks: list[Block] = [
        Paragraph(inline(_WORDS)),
        _points(comparison),
        *_docks(comparison),
        *_criteria(comparison),
        *_answers(comparison),
        *_filled(comparison),
    ]
    return Part("bids-responsive", "", "Beside the price", "schedule", GROUP, tuple(blocks), landscape=True)


_WORDS = (
    "What is missed is for the owner to waive with a reason, or not; under most rules only what has no effect on "
    "price, quantity or time may be waived (FAR 14.405). What the owner writes in owner/evaluation.yaml stands in the "
    "place of what was found here."
)


def _points(comparison: BidComparison) -> Table:
    names: dict[str, None] = {}
    for bid in comparison.bids:
        names |= {one.name: None for one in comparison.points[bid.name] if not one.criterion}
    rows = [
        Row((inline(capital(name)), *(_cell(name, comparison.points[bid.name]) for bid in comparison.bids)))
        for name in names
    ]
    return Table((Column("Point", width=1.3), *(Column(bid.label, width=3) for bid in comparison.bids)), tuple(rows))


def _cell(name: str, points: tuple[Point, ...]) -> Inline:
    one = next((point for point in points if point.name == name), None)
    if one is None:
        return inline(DASH)
    words = "; ".join(word for word in (one.words, one.why) if word)
    return inline(Span(capital(one.state), strong=one.state in ("missed", "not known")), f": {words}" if words else "")


def _docks(comparison: BidComparison) -> list[Block]:
    rows = []
    for bid in comparison.bids:
        fit = comparison.fits[bid.name]
        state = Span(_FITS[fit.state], strong=fit.state != "pass")
        why = "; ".join(filter(None, (fit.why, *fit.differs)))
        cells = (inline(bid.label), inline(fit.facility or DASH), inline(state), inline(fit.deciding or DASH))
        rows.append(Row((*cells, inline(why or DASH))))
    columns = (
        Column("Bid", width=2),
        Column("Dock", width=2.5),
        Column("Takes her", width=1),
        Column("What decides", width=1.5),
        Column("What is passed, missing, or not as in facilities/", width=4),
    )
    note = inline(
        "By the facility calculations in the docking condition, from the figures that the yard wrote into its form, or "
        "where it wrote none from facilities/. The dockmaster has the last word."
    )
    return [Heading("Docks offered"), Table(columns, tuple(rows), note=note), *_figures(comparison)]


_FITS = {"pass": "fits", "fail": "does not fit", "not known": "not known"}


def _figures(comparison: BidComparison) -> list[Block]:
    """Set the figures that the yards gave of their docks side by side."""
    docks = [bid.bid.dock for bid in comparison.bids]
    rows = []
    for figure in ALL:
        given = [stated(dock, figure) if dock is not None else None for dock in docks]
        if any(one is not None for one in given):
            rows.append(Row((inline(figure.label), *(inline(DASH if one is None else _told(one)) for one in given))))
    columns = (Column("Of the dock", width=2), *(Column(bid.label, width=2) for bid in comparison.bids))
    note = inline("As the yards stated them.")
    return [Table(columns, tuple(rows), note=note, small=True)] if rows else []


def _told(figure: object) -> str:
    if isinstance(figure, Quantity):
        return written_as(figure)
    return day(figure) if isinstance(figure, date) else str(figure)


def _criteria(comparison: BidComparison) -> list[Block]:
    first = comparison.points[comparison.bids[0].name] if comparison.bids else ()
    criteria = [one for one in first if one.criterion]
    rows = []
    for one in criteria:
        cells = [_judged(one.name, comparison.points[bid.name]) for bid in comparison.bids]
        rows.append(Row((inline(str(one.criterion)), inline(one.words), *cells)))
    columns = (
        Column("No.", width=0.5),
        Column("Criterion", width=4),
        *(Column(bid.label, width=2) for bid in comparison.bids),
    )
    return [Heading("Criteria of the tender"), Table(columns, tuple(rows), small=True)] if rows else []


def _judged(name: str, points: tuple[Point, ...]) -> Inline:
    one = next(point for point in points if point.name == name)
    state = "not met" if one.state == "missed" else one.state
    return inline(Span(state, strong=one.state == "missed"), f": {one.why}" if one.why else "")


def _answers(comparison: BidComparison) -> list[Block]:
    asked: dict[str, None] = {}
    for bid in comparison.bids:
        asked |= {one.ask: None for one in bid.bid.answers}
    rows = []
    for ask in asked:
        given = [next((a.answer for a in bid.bid.answers if a.ask == ask), DASH) for bid in comparison.bids]
        rows.append(Row(tuple(inline(cell) for cell in (ask, *given))))
    columns = (Column("Asked", width=2), *(Column(bid.label, width=3) for bid in comparison.bids))
    return [Heading("What the yards say of themselves"), Table(columns, tuple(rows), small=True)] if rows else []


def _filled(comparison: BidComparison) -> list[Block]:
    """Set side by side what the yards filled into the tables of the price form."""
    asked = dict.fromkeys(
        (row, heading) for bid in comparison.bids for row, cells in bid.bid.tables.items() for heading in cells
    )
    rows = []
    for row, heading in asked:
        given = [bid.bid.tables.get(row, {}).get(heading, DASH) for bid in comparison.bids]
        rows.append(Row(tuple(inline(cell) for cell in (row, heading, *given))))
    columns = (
        Column("Row", width=2),
        Column("Asked", width=1.6),
        *(Column(bid.label, width=2) for bid in comparison.bids),
    )
    return [Heading("Tables filled with the tender"), Table(columns, tuple(rows), small=True)] if rows else []
