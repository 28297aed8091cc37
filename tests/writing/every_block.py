"""A made-up edition of few pages with every kind of block, and prose with every kind of CommonMark."""

from __future__ import annotations

from dataclasses import replace

from markdown_it import MarkdownIt

from tenderwright.documents.edition import (
    Beside,
    Block,
    Bullets,
    Caution,
    Column,
    Edition,
    Facts,
    Figure,
    Heading,
    Paragraph,
    Part,
    Prose,
    Row,
    Span,
    Step,
    Steps,
    Table,
    inline,
)

from .sample import cells, prose, sample_edition, tank_plan

_TABLES = MarkdownIt("commonmark", {"html": False}).enable("table")

RICH = """
# Of the shell

She was built with **riveted *laps* and butts**; see [the tank plan](#plan), [nothing](#gone)
and [the society](https://example.org/a_(b)?c=1&d=2 "a title").\\
A second line with `code` and ![the *stern*](stern.png).

1. Wash.
2. Measure:
   - at frames,
   - between frames;

     and write it down.
3. Report.

> Quoted words
> of the surveyor.

```text
fr  31  9.5
```

---

| Place | mm |
|:------|---:|
| Fr 31 | 9.5 |
| Fr 32 | [8.1](#quantities) |
"""


def rich_prose() -> Prose:
    return Prose(tuple(_TABLES.parse(RICH)))


def quantities() -> Table:
    return Table(
        (
            Column("Line", width=0.7),
            Column("Description", width=3),
            Column("Quantity", "decimal", 1),
            Column("Amount", "right", 1),
            Column("Unit", "centre", 0.6),
        ),
        (
            Row(cells("Measured | lines"), "group"),
            Row(cells("420.a", "Plating, Fr 31 to 33", "12.5", "1,200.00", "m2"), anchor="line-420-a"),
            Row(cells("420.b", "# 1. + a < b > c &amp; *d* _e_", "1,240", "included", "m2")),
            Row(cells("420.c", "Short row", "0.375")),
            Row(cells("", "Sub-total", "1,252.875", "1,200.00", "m2"), "subtotal"),
            Row(cells("", "Total", "1,252.875", "1,200.00", "m2"), "total"),
        ),
        caption="Quantities of item 420",
        anchor="quantities",
        note=inline("Remeasured; see ", Span("requirements", target="requirements"), "."),
    )


def every_block() -> Edition:
    steps = Steps(
        (
            Step("420.1", "item-420-1", prose("Open the tank. See [plan](#plan) and [clause](#clause-hot-work).")),
            Step("420.2", "item-420-2", prose("Wash:\n\n- at 200 bar;\n- with fresh water."), "HOLD H1"),
        )
    )
    front: tuple[Block, ...] = (
        Paragraph(inline("Read ", Span("item 420", target="item-420"), ", ", Span("line a", target="line-420-a"), ".")),
        Paragraph(inline(Span("Strong: ", strong=True), Span("faint", faint=True), " and ", Span("code", code=True))),
        Facts((("Where", inline("Fr 31 to Fr 44")), ("Drawing", inline(Span("D-12", target="plan"))))),
        Bullets((inline("one"), inline(Span("gone", target="no-such-part")))),
        Bullets((inline("another list"),)),
        Heading("Requirements", 2, "requirements"),
        steps,
        Caution("Before entry", (inline("The tank may lack oxygen."), inline(Span("No entry", strong=True), "."))),
        Heading("Hot work", 3, "clause-hot-work"),
        rich_prose(),
        quantities(),
        quantities_small(),
        Beside(((Heading("Beside", 3), quantities_small()), (Bullets((inline("beside"),), abreast=True),))),
    )
    figure = Figure("tank-plan", tank_plan(), "Tank plan. Scale 1:250.", "Plan of the double bottom tanks.", "plan")
    return replace(
        sample_edition(0),
        parts=(
            Part("cover", "", "Cover", "cover", "", (Paragraph(inline("Words on the cover.")),)),
            Part("contents", "", "Contents", "contents", "", ()),
            Part("item-420", "420", "Tanks", "item", "Work items", front, caution=True, revision="Revision B"),
            Part("drawing", "D-12", "Tank plan", "drawing", "Drawings", (figure,), landscape=True),
        ),
    )


def quantities_small() -> Table:
    columns = (Column("Frame"), *(Column(f"WL {line}", "decimal") for line in range(6)))
    rows = tuple(Row(cells(f"Fr {frame}", *(f"{frame * 0.3 + line:.3f}" for line in range(6)))) for frame in range(4))
    return Table(columns, rows, small=True)
