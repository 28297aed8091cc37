"""The inspection points of all items to sign, by the time of the work, and the reports by the day they are due."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Row, Span, Table, inline
from tenderwright.documents.parts.item_head import where_of
from tenderwright.model.item import Item
from tenderwright.planning.due import reports_due
from tenderwright.planning.inspection.points import Point
from tenderwright.quantities.customs import day

CODES = (
    ("P", "The yard performs it, records the result and signs. It performs all of this plan."),
    ("H", "Hold: work stops there until it is released in writing; where who attends is late, the yard waits."),
    ("W", "Witness: the yard gives notice, and may go on when the notice has run out and nobody has come."),
    ("R", "Review: the yard hands a paper over, and the owner reads it."),
)
_PHASES = {
    "before docking": "Before docking",
    "dry": "In dock, dry",
    "after undocking": "After undocking",
    "any": "As the work goes",
}
COLUMNS = (
    Column("Point", width=13),
    Column("What", width=52),
    Column("Passes", width=60),
    Column("Who", width=35),
    Column("Place and result", width=38),
    Column("Day", width=13),
    Column("Yard", width=17),
    Column("Owner", width=17),
)


def codes() -> Table:
    """Explain the letters of the plan."""
    columns = (Column("Code", width=0.5), Column("What it means", width=9))
    return Table(columns, tuple(Row((inline(Span(code, strong=True)), inline(words))) for code, words in CODES))


def points_by_phase(desk: Desk, points: Iterable[Point]) -> list[Block]:
    """Compose a form for each time of the work, item by item."""
    by_phase: dict[str, list[Point]] = {phase: [] for phase in _PHASES}
    for point in points:
        if point.code != "R":
            by_phase[point.item.phase].append(point)
    blocks: list[Block] = []
    for phase, found in by_phase.items():
        if found:
            blocks += [Heading(_PHASES[phase]), Table(COLUMNS, _rows(desk, found), small=True, ruled=True)]
    return blocks


def _rows(desk: Desk, points: Sequence[Point]) -> tuple[Row, ...]:
    rows: list[Row] = []
    item: Item | None = None
    for point in points:
        if point.item is not item:
            item = point.item
            rows.append(Row((headed(desk, item),), "group"))
        rows.append(Row((*told(desk, point), (), (), (), ())))
    return tuple(rows)


def headed(desk: Desk, item: Item) -> Inline:
    """Give an item and its place as the heading over its points."""
    place = where_of(desk, item)
    return (*inline(f"{item.number} {item.title}"), *(inline(": ") if place else ()), *place)


def told(desk: Desk, point: Point) -> tuple[Inline, ...]:
    """Give the cells that say what a point is: its number, what is seen, what passes, and who attends."""
    more = f" ({point.when[:1].lower()}{point.when[1:]})" if point.when else ""
    accept = desk.words(point.accept) if point.accept is not None else inline("–")
    return (inline(point.name), inline(f"{capital(point.what)}{more}"), accept, inline(who(desk, point)))


def who(desk: Desk, point: Point) -> str:
    """Say by which code who attends, and at what notice."""
    words = f"{point.code} {joined(list(point.who))}" if point.who else f"{point.code} yard"
    return f"{words}, {desk.quantity(point.notice)} notice" if point.notice is not None else words


def reports(desk: Desk, numbers: Mapping[tuple[str, str], str]) -> list[Block]:
    """Compose the reports by the day they are due, to tick as they come; `numbers` by item and words."""
    rows = tuple(
        Row(
            (
                inline(numbers.get((due.item.number, due.what), due.item.number)),
                inline(capital(due.what)),
                inline(f"{capital(str(due.day))} ({day(due.date)})" if due.date else capital(str(due.day))),
                inline(due.more or "–"),
                (),
                (),
            )
        )
        for due in reports_due(desk.package)
    )
    columns = (
        Column("Report", width=1),
        Column("What the yard hands over", width=5),
        Column("Due", width=2.9),
        Column("Form", width=2),
        Column("Came", width=1.2),
        Column("Read, owner", width=1.6),
    )
    if not rows:
        return [Paragraph(inline("No item asks for a report."))]
    return [Paragraph(inline("Code R.")), Table(columns, rows, small=True, ruled=True)]
