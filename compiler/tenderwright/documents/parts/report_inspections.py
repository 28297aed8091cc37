"""What the inspection plan and the register of openings came to: what was open at the end first, then each result."""

from __future__ import annotations

from tenderwright.documents.closing_desk import ClosedDocking
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.report_summary import GROUP
from tenderwright.planning.inspection.in_words import row_name, words_for
from tenderwright.planning.inspection.results import PointResult, RowResult
from tenderwright.quantities.customs import day


def inspections(desk: Desk, closed: ClosedDocking) -> Part | None:
    """Compose the part; None where nothing is recorded of inspections and openings."""
    found = closed.inspected
    if found is None:
        return None
    left = [words_for(desk.package, one) for one in found.still_open]
    blocks: list[Block] = [Heading("Open when the docking was closed")]
    if left:
        blocks.append(Bullets(tuple(inline(capital(one)) for one in left), abreast=True))
    else:
        blocks.append(Paragraph(inline("Nothing: every point came up and passed, and every row was signed twice.")))
    points = tuple(_point(one) for one in found.points if one.told)
    rows = tuple(_row(desk, one) for one in found.rows if one.told)
    if points:
        columns = (Column("Point", width=0.8), Column("What", width=5), Column("Day", width=1.4), _RESULT)
        blocks += [Heading("Inspections and tests"), Table(columns, points, small=True)]
    if rows:
        dates = (Column(name, width=1.4) for name in ("Opened", "Closed", "Tested"))
        blocks += [Heading("Openings"), Table((Column("Row", width=4), *dates, _RESULT), rows, small=True)]
    title = "Inspections and openings"
    return Part("inspections", "10", title, "data", GROUP, tuple(blocks), caution=True, audience="yard")


_RESULT = Column("How it stands", width=3)


def _point(one: PointResult) -> Row:
    last = one.told[-1]
    words = "; ".join(filter(None, (one.state, str(last.value) if last.value is not None else "", last.note)))
    return Row(tuple(inline(cell) for cell in (one.point.name, capital(one.point.what), day(last.day), words)))


def _row(desk: Desk, one: RowResult) -> Row:
    hole = f", no. {one.hole}" if one.hole else ""
    dates = (one.said("opened"), one.said("closed"), one.said("tested"))
    cells = (capital(f"{row_name(desk.package, one.row)}{hole}"), *(day(each) if each else "–" for each in dates))
    return Row(tuple(inline(cell) for cell in (*cells, one.state)))
