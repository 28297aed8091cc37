"""An edition: a compiled document set for one reader, as numbered parts made of blocks that writers only render."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import Literal

from markdown_it.token import Token

from tenderwright.calculations.value import Record
from tenderwright.documents.audience import Audience, hold


@dataclass(frozen=True)
class Span:
    """A run of inline text, perhaps linked to an anchor of the edition, perhaps stressed."""

    text: str
    target: str = ""
    """An anchor such as `item-420`, without the hash; empty for no link."""
    strong: bool = False
    faint: bool = False
    code: bool = False
    inserted: bool = False
    """Words that an addendum put in: underlined."""
    deleted: bool = False
    """Words that an addendum took out: struck through."""
    file: str = ""
    """The path of a file that goes along with the edition; a page on the screen links to it."""


Inline = tuple[Span, ...]


def inline(*pieces: str | Span) -> Inline:
    """Make inline text from strings and spans."""
    return tuple(Span(piece) if isinstance(piece, str) else piece for piece in pieces if piece != "")


def plain(text: Inline) -> str:
    """Give inline text without links or stress."""
    return "".join(span.text for span in text)


@dataclass(frozen=True)
class Heading:
    """A heading inside a part: level 2 below the part's own title, level 3 below that."""

    text: str
    level: Literal[2, 3] = 2
    anchor: str = ""
    in_margin: bool = False
    """A short label that paper and screen set in the margin, on the first line of what follows it."""


@dataclass(frozen=True)
class Paragraph:
    """A paragraph of inline text."""

    text: Inline
    anchor: str = ""
    as_note: bool = False
    """Set as the note of the table before it."""


@dataclass(frozen=True)
class Prose:
    """CommonMark from the package, parsed, with every reference already turned into `#anchor` and label."""

    tokens: Sequence[Token]


@dataclass(frozen=True)
class Step:
    """One numbered requirement; `label` is its printed number (`420.3`), `anchor` where references land."""

    label: str
    anchor: str
    body: Prose
    hold: str = ""
    """A short mark for the margin when the step is a hold point, such as `HOLD H2`."""
    changed: bool = False
    """Whether a bar stands beside it, since an addendum changed it."""


@dataclass(frozen=True)
class Steps:
    """Numbered requirements."""

    steps: tuple[Step, ...]


@dataclass(frozen=True)
class Column:
    """A column of a table: its title, how cells line up, and its share of the width."""

    title: str
    align: Literal["left", "right", "decimal", "centre"] = "left"
    width: float = 1.0


@dataclass(frozen=True)
class Row:
    """A row of a table; a weight of `group` spans the table as a sub-heading (one cell)."""

    cells: tuple[Inline, ...]
    weight: Literal["normal", "subtotal", "total", "group"] = "normal"
    anchor: str = ""
    changed: bool = False
    """Whether a bar stands beside it, since an addendum changed it."""
    runs_on: bool = False
    """Whether its last cell takes the room of those that are not there, in pages and on the screen."""


@dataclass(frozen=True)
class Table:
    """A table of fixed layout; decimal columns line up on the point."""

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    caption: str = ""
    anchor: str = ""
    note: Inline = ()
    small: bool = False
    """Set in smaller type, for long tables of figures."""
    ruled: bool = False
    """A form with cells to fill by hand: every cell is boxed, and rows are high enough to write in."""
    audience: Audience | None = None
    """Who may read it; None is whoever reads the part."""


@dataclass(frozen=True)
class Facts:
    """Short facts as term and description, set in two columns of label and text."""

    pairs: tuple[tuple[str, Inline], ...]
    anchor: str = ""
    changed: tuple[int, ...] = ()
    """Which pairs an addendum changed, counted from 0; a bar stands beside them."""


@dataclass(frozen=True)
class Bullets:
    """An unnumbered list."""

    entries: tuple[Inline, ...]
    abreast: bool = False
    """Set in two columns on paper, for long lists of short notes."""


@dataclass(frozen=True)
class Figure:
    """A drawing: SVG of our own with its caption and text alternative."""

    name: str
    """File stem, such as `tank-plan`; unique in the edition."""
    svg: str
    caption: str
    alternative: str
    anchor: str = ""
    title: str = ""
    """A few words, for contents and running heads."""
    audience: Audience | None = None
    """Who may read it; None is whoever reads the part."""


@dataclass(frozen=True)
class Picture:
    """A picture of a place, as it is in its file."""

    path: str
    """Among the files that go along with the edition."""
    content: bytes
    caption: str
    alternative: str
    label: str = ""
    """A number that stands before the caption."""

    @property
    def words(self) -> str:
        """Give the caption after its label."""
        return f"{self.label} {self.caption}".strip()

    @property
    def address(self) -> str:
        """Give the picture as an address that holds its bytes, so that a page loads nothing."""
        kind = "png" if self.path.lower().endswith(".png") else "jpeg"
        return f"data:image/{kind};base64,{b64encode(self.content).decode('ascii')}"


@dataclass(frozen=True)
class Pictures:
    """Pictures set small, two or three to a row."""

    pictures: tuple[Picture, ...]
    large: bool = False
    """Set as wide as their column, two to a row, with the caption under each."""


@dataclass(frozen=True)
class Caution:
    """A caution set apart from the text."""

    title: str
    paragraphs: tuple[Inline, ...]


@dataclass(frozen=True)
class Beside:
    """Short stacks of blocks that stand side by side, so many abreast; each stack stays whole on its page."""

    stacks: tuple[tuple[Block, ...], ...]
    across: Literal[2, 3, 4] = 2


def each_block(blocks: Iterable[Block]) -> Iterator[Block]:
    """Yield blocks, and after those that stand side by side what is in their stacks."""
    for block in blocks:
        yield block
        if isinstance(block, Beside):
            for stack in block.stacks:
                yield from each_block(stack)


Block = Heading | Paragraph | Prose | Steps | Table | Facts | Bullets | Figure | Pictures | Caution | Beside

PartKind = Literal[
    "cover",
    "asked",
    "contents",
    "front",
    "clauses",
    "data",
    "item",
    "drawing",
    "schedule",
    "record",
    "statement",
    "brief",
    "donors",
    "wall",
]


@dataclass(frozen=True)
class Part:
    """A part of an edition: it starts a page and counts its own pages, so that it can be replaced alone."""

    anchor: str
    """Unique, such as `item-420` or `general-requirements`."""
    number: str
    """As printed, such as `420` or `A2`; may be empty."""
    title: str
    kind: PartKind
    group: str
    """The heading under which the contents list it, such as `Work items`."""
    blocks: tuple[Block, ...]
    landscape: bool = False
    caution: bool = False
    """Whether the usual safety caution is printed at the foot of every page of the part."""
    caution_line: str = ""
    """A line in the place of that caution, where the document gives it in full elsewhere."""
    revision: str = ""
    changed: tuple[int, ...] = ()
    """Which blocks an addendum changed as a whole, counted from 0; a bar stands beside them. -1 is the title."""
    on_screen: tuple[Block, ...] = ()
    """What only the screen shows, after the blocks: ways back, which nobody follows on paper."""
    audience: Audience = "owner"
    """Who may read it; an edition for anybody else refuses it."""

    def cautioned(self, usual: str) -> str:
        """Give the caution for the foot of its pages, `usual` being that of its edition; nothing where it has none."""
        return (self.caution_line or usual) if self.caution and usual else ""

    def hold(self, reader: Audience) -> None:
        """Raise `NotForItsReader` where the part, or a table or figure of it, is not for the reader of an edition."""
        hold(reader, self.audience, f"the part `{self.anchor}`")
        for block in each_block((*self.blocks, *self.on_screen)):
            if isinstance(block, Table | Figure) and block.audience is not None:
                hold(reader, block.audience, f"something in the part `{self.anchor}`")


@dataclass(frozen=True)
class Stamp:
    """How the edition is marked: issued from a clean commit, draft, or compiled outside git."""

    state: Literal["issued", "draft", "no-git"]
    label: str
    """What every page says, such as `Commit 1a2b3c4` or `DRAFT, uncommitted changes`."""
    commit: str = ""


UNDATED = date(1980, 1, 1)
"""Marks the files of an edition whose day is not known yet: the first day that an archive can hold."""


@dataclass(frozen=True)
class DataTable:
    """Figures for a spreadsheet, written as CSV beside the edition."""

    header: tuple[str, ...]
    rows: tuple[tuple[str | int | Decimal | None, ...], ...]
    audience: Audience = "owner"


@dataclass(frozen=True)
class Event:
    """A day of a calendar, which may come again."""

    uid: str
    """The same from build to build, so that a calendar program changes the event and makes no second one."""
    day: date
    title: str
    text: str = ""
    every: int = 0
    """Days after which it comes again; 0 for never."""
    until: date | None = None
    """Last day on which it may come again."""


@dataclass(frozen=True)
class Calendar:
    """A calendar that is written beside an edition."""

    name: str
    events: tuple[Event, ...]


@dataclass(frozen=True)
class Edition:
    """A whole document set for one reader."""

    name: Literal[
        "yard", "owner", "report", "owner-report", "addendum", "diff", "owner-diff", "grant", "bids", "statement"
    ]
    title: str
    """Such as `Docking of the lighthouse tender Marram`."""
    subtitle: str
    tender: str
    """The tender number."""
    owner: str
    stamp: Stamp
    issued: date | None
    page_size: Literal["A4", "Letter"]
    parts: tuple[Part, ...]
    caution: str
    """The usual caution, printed at the foot of parts that ask for it."""
    confidential: bool = False
    language: str = "en-GB"
    facts: tuple[tuple[str, str], ...] = field(default=())
    """What the cover lists: place, dates, edition."""
    sheets: Mapping[str, Edition] = field(default_factory=dict)
    """Short document sets that are written as PDFs beside it, by file stem, such as `dock-sheet`."""
    forms: Mapping[str, Edition] = field(default_factory=dict)
    """Forms to sign, which are written as Word documents beside it, by file stem, such as `forms/offer`."""
    tables: Mapping[str, DataTable] = field(default_factory=dict)
    """Figures that are written as CSV beside it, by file stem."""
    files: Mapping[str, bytes] = field(default_factory=dict)
    """Files that go along with it as they are, by path: reference documents and pictures."""
    for_screen: bool = False
    """Whether, as a sheet beside another, it is written as a page for the screen too."""
    calendar: Calendar | None = None
    """Written as a file of its own beside it."""
    record: Record | None = None
    """The record of calculation, which is written as JSON beside it; it is the owner's."""
    audience: Audience = "owner"
    """Who reads it; it refuses whatever is not for that reader."""

    def __post_init__(self) -> None:
        """Raise `NotForItsReader` where anything in it is not for its reader."""
        for part in self.parts:
            part.hold(self.audience)
        for stem, sheet in {**self.sheets, **self.forms}.items():
            hold(self.audience, sheet.audience, f"the sheet `{stem}`")
        for stem, table in self.tables.items():
            hold(self.audience, table.audience, f"the table `{stem}`")
        if self.record is not None:
            hold(self.audience, "owner", "the record of calculation")
