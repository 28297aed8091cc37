"""An invented tender, large enough to show every kind of block: the lighthouse tender Marram."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

from markdown_it import MarkdownIt

from tenderwright.documents.edition import (
    Block,
    Bullets,
    Caution,
    Column,
    Edition,
    Facts,
    Figure,
    Heading,
    Inline,
    Part,
    Prose,
    Row,
    Span,
    Stamp,
    Step,
    Steps,
    Table,
    inline,
)
from tenderwright.documents.price_form import FormLine, FormSection, PriceForm

_PARSER = MarkdownIt("commonmark", {"html": False})

CAUTION = (
    "This is a planning and tender document. The docking plan, stability and strength are for a naval "
    "architect and the dockmaster; entry and hot work are for the yard's competent person or marine "
    "chemist; the law of the yard's place governs."
)


def prose(text: str) -> Prose:
    return Prose(tuple(_PARSER.parse(text)))


def cells(*texts: str) -> tuple[Inline, ...]:
    return tuple(inline(text) for text in texts)


def tank_plan(width: float = 160) -> str:
    """Draw a profile with a hatched tank, `width` millimetres wide."""
    return f"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 160 48"
 width="{width}mm" height="{width * 0.3}mm">
<defs><pattern id="hatch" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
<line x1="0" y1="0" x2="0" y2="2" stroke="#000" stroke-width=".25"/></pattern></defs>
<path d="M4 12 L150 10 L156 8 L148 40 L12 40 L8 30 Z" fill="none" stroke="#000" stroke-width=".5"/>
<rect x="40" y="30" width="26" height="10" fill="url(#hatch)" stroke="#000" stroke-width=".35"/>
<rect x="80" y="30" width="26" height="10" fill="none" stroke="#000" stroke-width=".35"/>
<line x1="20" y1="44" x2="60" y2="44" stroke="#000" stroke-width=".4"/>
<text x="20" y="47.5" font-size="3" font-family="Tender Sans">0</text>
<text x="57" y="47.5" font-size="3" font-family="Tender Sans">10 m</text>
<text x="42" y="28" font-size="3" font-family="Tender Sans">No. 2 DB port</text></svg>"""


def _steps(number: str) -> Steps:
    texts = (
        (
            "Open the tank and make it safe to enter. Do not begin before the certificate of "
            "[confined spaces](#general-requirements) is posted at the manhole.",
            "",
        ),
        ("Wash all surfaces with fresh water at not less than 200 bar.", "HOLD H1"),
        (
            "Report within one working day:\n\n- plating thinner than 75 % of that built;\n- "
            "rivets that weep;\n"
            "- loose or missing fastenings, each with its frame and strake.\n\n"
            "The owner answers within two days.",
            "",
        ),
        (
            "Prepare and coat as the schedule says. See <https://example.org/a/very/long/address/that/cannot/"
            "be/broken/at/a/space/and/must/not/run/off/the/page/of/the/document/at/all.html> "
            "for the data sheet.",
            "WITNESS W2",
        ),
        (
            "Close up with new gaskets. Test with air at 0.14 bar for 30 minutes; soap all seams and rivets, "
            "and mark every leak for the owner to see.",
            "HOLD H3",
        ),
    )
    return Steps(
        tuple(
            Step(f"{number}.{index}", f"item-{number}-{index}", prose(text), hold)
            for index, (text, hold) in enumerate(texts, start=1)
        )
    )


def _quantities(number: str, rows: int) -> Table:
    figures = ("12.5", "1,240", "0.375", "included", "86", "-3.25", "—")
    body = tuple(
        Row(
            cells(
                f"{number}.{chr(97 + index % 26)}",
                f"Plating between Fr {index} and Fr {index + 2}, port side",
                figures[index % 7],
                "m2",
                "surveyed",
            )
        )
        for index in range(rows)
    )
    return Table(
        (
            Column("Line", width=0.7),
            Column("Description", width=3.4),
            Column("Quantity", "decimal", 1),
            Column("Unit", width=0.6),
            Column("Basis", width=1),
        ),
        (
            Row(cells("Measured lines"), "group"),
            *body,
            Row(cells("", "Sub-total", "1,335.625", "m2", ""), "subtotal"),
            Row(cells("", "Total of the item", "1,335.625", "m2", ""), "total"),
        ),
        caption=f"Quantities of item {number}",
        anchor=f"quantities-{number}",
        note=inline(
            "Quantities are remeasured; see ",
            Span("general requirements", target="general-requirements"),
            ".",
        ),
    )


def item(number: str, title: str, rows: int = 5) -> Part:
    """Make one work item with every usual block."""
    blocks: tuple[Block, ...] = (
        Facts(
            (
                (
                    "Where",
                    inline("Double bottom, ", Span("Fr 31 to Fr 44", target="frames"), ", port and starboard"),
                ),
                ("Kind", inline("Measured, on the owner's instruction")),
                (
                    "Drawings",
                    inline(Span("D-12", target="drawing-d-12"), " rev. C, verified as fitted 2025-10-04"),
                ),
            )
        ),
        Heading("Requirements", 2),
        _steps(number),
        Caution(
            "Before entry",
            (
                inline(
                    "The tank may hold vapour and may lack oxygen. ",
                    Span("No entry", strong=True),
                    " without a certificate.",
                ),
            ),
        ),
        Heading("Quantities", 2),
        _quantities(number, rows),
        Heading("Referred to by", 2),
        Bullets((inline(Span("General requirements", target="general-requirements")),)),
    )
    return Part(f"item-{number}", number, title, "item", "Work items", blocks, caution=True, revision="Revision B")


def _offsets() -> Part:
    columns = (Column("Frame", width=1.2), *(Column(f"WL {line}", "decimal") for line in range(16)))
    rows = tuple(
        Row(cells(f"Fr {frame}", *(f"{(frame % 9) * 0.31 + line * 0.207:.3f}" for line in range(16))))
        for frame in range(70)
    )
    table = Table(columns, rows, caption="Half-breadths, m", small=True, note=inline("Lifted from the lines plan."))
    return Part("frames", "B2", "Offsets and frames", "data", "Ship's data", (table,), landscape=True)


def _requirements() -> Part:
    clause = (
        "The yard shall keep the ship safe, dry and guarded from the time she crosses the sill until she "
        "leaves. Every cost of doing so is in the lump sum of *docking*, and none is paid again.\n\n"
        "1. A fire watch stands for 60 minutes after hot work.\n2. Waste is the yard's to remove.\n"
    )
    blocks: list[Block] = []
    for title in (
        "Meaning of words",
        "Order of precedence",
        "Hot work",
        "Confined spaces",
        "Hazardous materials",
        "Reports",
    ):
        blocks += [Heading(title, 2, f"clause-{title.lower().replace(' ', '-')}"), prose(clause * 2)]
    return Part("general-requirements", "A1", "General requirements", "clauses", "Terms", tuple(blocks), caution=True)


def _drawing() -> Part:
    wide = Figure("profile", tank_plan(240), "Profile, drawn too wide for the page.", "Profile of the ship with tanks.")
    true = Figure("tank-plan", tank_plan(), "Tank plan. Scale 1:250 on A4.", "Plan of the double bottom tanks.", "plan")
    return Part("drawing-d-12", "D-12", "Tank plan", "drawing", "Drawings", (true, wide), caution=True)


_ITEMS = (
    ("105", "Dock and undock the ship"),
    ("110", "Supply shore services while in dock"),
    ("205", "Wash and scrape the underwater hull"),
    ("210", "Measure shell plating by ultrasound"),
    (
        "305",
        "Blast and coat the underwater hull, including the rudder, the keel cooler recesses and sea chests",
    ),
    ("405", "Renew wasted shell plates"),
    ("410", "Renew rivets"),
    ("420", "Clean and inspect double bottom tanks"),
    ("505", "Overhaul sea valves"),
    ("510", "Renew sacrificial anodes"),
    ("605", "Draw the tail shaft for survey"),
    ("705", "Overhaul the windlass"),
)


def sample_edition(items: int = 12) -> Edition:
    """Make the sample edition with some of its items."""
    cover = Part("cover", "", "Cover", "cover", "", ())
    contents = Part("contents", "", "Contents", "contents", "", ())
    record = Table(
        (Column("Revision", width=0.6), Column("Date", width=0.8), Column("What changed", width=4)),
        (
            Row(cells("A", "2026-01-12", "First issue")),
            Row(cells("B", "2026-02-02", "Item 420: quantities corrected")),
        ),
    )
    front = Part("revisions", "", "Record of revisions", "front", "Terms", (record,))
    parts = (
        cover,
        contents,
        front,
        _requirements(),
        _offsets(),
        *(item(number, title, rows=48 if number == "420" else 5) for number, title in _ITEMS[:items]),
        *(() if items > 7 else (Part("item-420", "420", "Reserved", "item", "Work items", ()),)),
        _drawing(),
    )
    return Edition(
        name="yard",
        title="Docking of the lighthouse tender Marram",
        subtitle="Specification for docking, survey and repair of the underwater hull, 2026",
        tender="HP-2026-01",
        owner="Harrow Point Lighthouse Tender Trust",
        stamp=Stamp("issued", "Commit 1a2b3c4", "1a2b3c4"),
        issued=date(2026, 2, 2),
        page_size="A4",
        parts=parts,
        caution=CAUTION,
        facts=(
            ("Place", "Harrow Point"),
            ("Issued", "2 February 2026"),
            ("Tenders close", "16 March 2026, 12:00"),
            ("Ship in dock", "4 May to 12 June 2026"),
        ),
    )


def draft_edition() -> Edition:
    """Make the owner's confidential draft."""
    edition = sample_edition(7)
    return replace(
        edition,
        name="owner",
        stamp=Stamp("draft", "DRAFT, uncommitted changes"),
        confidential=True,
        page_size="Letter",
    )


def line(number: str, kind: str, quantity: str, unit: str, text: str = "", **more: object) -> FormLine:
    values: dict[str, object] = {
        "number": number,
        "item": number.partition(".")[0],
        "title": f"Work of item {number.partition('.')[0]}",
        "text": text or f"Work of line {number}",
        "written": text or f"Work of line {number}",
        "kind": kind,
        "quantity": Decimal(quantity),
        "unit": unit,
        "basis": "surveyed",
    }
    return FormLine(**(values | more))  # type: ignore[arg-type]


def sample_form() -> PriceForm:
    """Make a price form with every kind of line."""
    sections = (
        FormSection(
            "A",
            "Docking and services",
            "Lump sums for the dock.",
            True,
            True,
            (
                line("105.a", "lump", "1", "lump", "Dock and undock, including ten lay days"),
                line(
                    "110.a",
                    "fixed",
                    "1",
                    "sum",
                    "Provisional sum: shore power",
                    fixed_amount=Decimal("2500.00"),
                ),
            ),
        ),
        FormSection(
            "C",
            "Measured work",
            "Quantity times rate; remeasured.",
            True,
            True,
            (
                line("305.a", "rate", "612.5", "m2", "=Blast to Sa 2½ and coat; -3 coats @ 125 µm"),
                line("420.a", "rate", "86", "m2", "+Clean double bottom tanks"),
            ),
        ),
        FormSection(
            "D",
            "Contingent work",
            "Only on the owner's written instruction, and a price for each further day.",
            False,
            True,
            (
                line("105.b", "day", "4", "day", "Each further lay day in dock"),
                line("410.a", "rate", "120", "each", "Renew rivet, 22 mm", basis="assumed"),
            ),
        ),
        FormSection(
            "E",
            "Hours pool and mark-up",
            "",
            False,
            True,
            (
                line("900.a", "hours", "200", "h", "Labour, all trades"),
                line("900.b", "markup", "15000.00", "GBP", "Mark-up on materials at cost"),
            ),
        ),
        FormSection("F", "Options", "", False, True, (line("705.a", "lump", "1", "lump", "Overhaul the windlass"),)),
        FormSection(
            "G",
            "Credits",
            "Enter as positive amounts.",
            True,
            True,
            (line("405.z", "credit", "3.2", "t", "Scrap steel to the yard"),),
        ),
    )
    return PriceForm(
        tender="HP-2026-01",
        title="Docking of the lighthouse tender Marram",
        ship="Marram",
        owner="Harrow Point Lighthouse Tender Trust",
        currency="GBP",
        issued=date(2026, 2, 2),
        closing=date(2026, 3, 16),
        stamp="Commit 1a2b3c4",
        edition_hash="5f0c2d" * 10 + "abcd",
        sections=sections,
        evaluated_rule="Base price, plus options, plus contingent quantities at the rates tendered, plus the "
        "hours pool at the labour rate, plus further days, plus mark-up on the materials "
        "allowance, less credits.",
        addenda=("Addendum 1, 9 February 2026", "Addendum 2, 20 February 2026"),
        yard_questions=(
            ("Docking hours", "From when to when the dock works"),
            ("Capacity", "Tonnes; tonnes per metre"),
        ),
        caution=CAUTION,
    )
