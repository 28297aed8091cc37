"""A work item and its parts."""

from collections.abc import Mapping
from typing import Annotated, Any, ClassVar

from msgspec import field

from tenderwright.model.build import Name, Prose
from tenderwright.model.common import Extent
from tenderwright.model.item_parts import Access, Decision, Heritage, PlacePicture
from tenderwright.model.item_points import Hold, Report, Test
from tenderwright.model.item_table import ItemTable
from tenderwright.model.kinds import (
    PRICED,
    AnodeRef,
    AnyQuantity,
    DayFromEvent,
    DayOrDate,
    DrawingRef,
    Fraction,
    ItemRef,
    LineName,
    LinesName,
    Money,
    OpeningRef,
    Phase,
    PricedKind,
    SchemeRef,
    Service,
    Side,
    StrakeRef,
    TankRef,
    Time,
    ValueRef,
    ZoneRef,
)
from tenderwright.model.marks import Form, Key, MayWait, Needs, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

FOR_THE_RECORD = ("revision", "system", "does", "deferral", "photographs")
"""Keys of an item whose values ask nothing of the yard."""


class Where(Noun, frozen=True, kw_only=True):
    """Where an item is."""

    text: Annotated[
        Prose | None, Key("Where the work is, in words.", "Shell below the light waterline, both sides")
    ] = None
    extent: Annotated[Extent | None, Key("Where it reaches along the ship.")] = None
    side: Side = ""
    tanks: Annotated[
        tuple[Annotated[TankRef, Key("A tank.", "forepeak")], ...], Key("Tanks in which the work is."), MayWait()
    ] = ()
    boundary_of: Annotated[
        tuple[Annotated[TankRef, Key("A tank of hers.", "forepeak")], ...],
        Key("Tanks on whose boundary the work lies; for hot work and gas-free checks."),
        MayWait(),
    ] = ()
    zones: Annotated[
        tuple[Annotated[ZoneRef, Key("A zone.", "underwater")], ...],
        Key("Coating zones on which the work is."),
        MayWait(),
    ] = ()
    openings: Annotated[
        tuple[Annotated[OpeningRef, Key("An opening of the hull.", "sea-chest-main")], ...],
        Key("Openings of the hull at which the work is."),
        MayWait(),
    ] = ()
    strakes: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "A")], ...],
        Key("Strakes of the shell on which the work is."),
        MayWait(),
    ] = ()
    anodes: Annotated[
        tuple[Annotated[AnodeRef, Key("An anode of the hull.", "p1")], ...],
        Key("Anodes that the work concerns."),
        MayWait(),
    ] = ()


class OwnerFurnished(Noun, frozen=True, kw_only=True):
    """Something furnished by the owner."""

    what: Annotated[str, Key("What the owner brings.", "Antifouling paint, red")]
    quantity: Annotated[AnyQuantity, Key("How much of it the owner brings.", "24 each")]
    delivered: Annotated[
        DayOrDate | None, Key("Day on which it is at the yard: a date or a day counted from an event.", "docking + 3 d")
    ]
    where: Annotated[str, Key("Where it is handed over.", "yard store")] = ""
    here: Place


class YardFurnished(Noun, frozen=True, kw_only=True):
    """Something furnished by the yard."""

    what: Annotated[str, Key("What the yard brings.", "Docking plugs, bronze")]
    quantity: Annotated[AnyQuantity | None, Key("How much of it the yard brings.", "12 each")] = None
    standard: Annotated[str, Key("Standard by which the yard tests, where there is one.", "ISO 4624")] = ""


class Line(Noun, frozen=True, kw_only=True):
    """One line that the yard prices."""

    line: Annotated[
        str, Key("Letter, unique in the item and never reused.", "a"), Form("^[a-z]{1,2}$", "Letter of a line")
    ]
    text: Annotated[str, Key("What the yard prices on the line.", "Spot blast to Sa 2 1/2")]
    withdrawn: Annotated[
        bool, Key("Whether the line is withdrawn: it is printed as such and not priced, and its letter stays taken.")
    ] = False
    kind: Annotated[PricedKind, Key("Kind, where it differs from the item's.")] = ""
    price: Annotated[
        str,
        Key(
            "Form of price: lump sum; rate for the quantity; rate for a day; rate for an hour; the owner's fixed sum; percentage added to materials; percentage of what other lines come to."
        ),
        OneOf("lump", "rate", "day", "hours", "fixed", "markup", "percent"),
    ]
    of: Annotated[
        tuple[
            Annotated[LinesName, Key("A line, or all lines of an item that are no percentages.", "310.a", "315.*")], ...
        ],
        Key("Lines of whose amounts it is a percentage."),
    ] = ()
    quantity: Annotated[
        AnyQuantity | None, Key("Quantity with its unit; left out for a lump sum.", "120 m2", "35 each", "400 h")
    ] = None
    takes: Annotated[
        ValueRef | None, Key("Takes its quantity from a calculated value.", "coating.underwater-spot.area")
    ] = None
    takes_line: Annotated[
        LineName | None, Key("Takes its quantity from that of another line, whatever that rests on.", "310.a")
    ] = None
    share: Annotated[
        Fraction | None, Key("How much of the value, or of the other line, is taken as the quantity.", "100 %")
    ] = None
    round_up: Annotated[AnyQuantity | None, Key("Rounds the quantity up to a whole number of these.", "5 m2")] = None
    unit: Annotated[str, Key("Unit in which a taken value is shown.", "m2")] = ""
    basis: Annotated[
        str, Key("How the quantity is known."), OneOf("surveyed", "drawing", "calculated", "assumed", "owner's")
    ] = ""
    amount: Annotated[Money | None, Key("The owner's fixed sum, or the materials allowance for a markup.", 12000)] = (
        None
    )
    where: Annotated[
        str, Key("Where, for contingent quantities; or who chooses.", "any two places, at the owner's choice")
    ] = ""
    adds_to: Annotated[
        tuple[Annotated[LinesName, Key("A line, or all lines of an item.", "310.a", "315.*")], ...],
        Key(
            "Lines to whose rate it is added, for as much of their quantity as its own says: curved plate, a hard place."
        ),
    ] = ()
    instead_of: Annotated[
        tuple[Annotated[LinesName, Key("A line, or all lines of an item.", "310.b", "335.*")], ...],
        Key("Lines in whose place it is ordered: of the two only one will be, as the owner chooses."),
    ] = ()
    counts: Annotated[
        str,
        Key(
            "Which of the two counts in the evaluated price: this line, as the owner's stated choice; that, which it stands instead of; or the dearer of the two in each bid. Left out, the dearer."
        ),
        OneOf("this", "that", "dearer"),
    ] = ""
    each_row_of: Annotated[
        Name | None,
        Key(
            "Table of the item for each of whose rows the line is priced, numbered as in 520.a.suction-fire.", "valves"
        ),
    ] = None
    here: Place


class Item(Noun, frozen=True, kw_only=True):
    """One work item: what is done where, what it must satisfy, and the lines that yards price."""

    rules: ClassVar = (Needs("lines", where="kind", among=PRICED),)

    item: Annotated[
        int, Key("Number; never changed or reused after issue. Leave gaps.", 420), Within(least=1, most=9999)
    ]
    title: Annotated[
        str, Key("What is worked on, then what is done, as a heading.", "Underwater shell, blast and coat")
    ]
    revision: Annotated[int, Key("Revision of the item.", 0), Within(most=999)] = 0
    withdrawn: Annotated[bool, Key("Whether the item is withdrawn; its number stays taken.")] = False
    kind: Annotated[
        str,
        Key(
            "definite: fully described, one price. measured: quantity times rate, measured again. contingent: only on instruction, priced in competition. option: exercised or not by a date. provisional: the owner's fixed sum. credit: money back. owner: the owner's own work, not priced. information: nothing is done."
        ),
        OneOf("definite", "measured", "contingent", "option", "provisional", "credit", "owner", "information"),
    ]
    phase: Annotated[Phase, Key("When it is done, or begins.", "dry")]
    ends: Annotated[Phase, Key("When it ends, where that is another time.", "after undocking")] = ""
    begins_on: Annotated[DayFromEvent | None, Key("Day on which it may begin at the earliest.", "docking + 2 d")] = None
    ends_on: Annotated[DayFromEvent | None, Key("Day by which it must be done.", "undocking - 3 d")] = None
    duration: Annotated[
        Time | None, Key("Time that it will most likely take; the owner's programme takes it from here.", "6 d")
    ] = None
    system: Annotated[
        str,
        Key("Part of the ship."),
        OneOf(
            "services",
            "hull",
            "coating",
            "sea connections",
            "shafting",
            "rudder",
            "cathodic protection",
            "tanks",
            "outfit",
            "administration",
        ),
    ] = ""
    services: Annotated[
        tuple[Service, ...],
        Key("Services of the checklist that the item holds, each in one item; package.yaml then need not name them."),
    ] = ()
    safety: Annotated[bool, Key("Whether it is needed for safety or to keep her afloat.")] = False
    where: Annotated[Where, Key("Where in the ship the work is.")] = field(default_factory=Where)
    references: Annotated[
        tuple[Annotated[DrawingRef, Key("A reference document.", "d-12")], ...],
        Key("Documents the item rests on."),
        MayWait(),
    ] = ()
    depends_on: Annotated[
        tuple[Annotated[ItemRef, Key("An item that must be done first.", "410")], ...],
        Key("Items that must be done before this one begins."),
        MayWait(orders=True),
    ] = ()
    scope: Annotated[
        Prose,
        Key(
            "What is done and why, in a short paragraph.",
            "Blast the underwater shell where the old coating is broken, and coat it anew.",
        ),
    ]
    requirements: Annotated[
        tuple[Annotated[Prose, Key("A requirement of one step.", "Close the containment of <item:150>.")], ...],
        Key("Numbered requirements, one step each."),
    ] = ()
    access: Annotated[Access | None, Key("Access and what is in the way.")] = None
    schemes: Annotated[
        tuple[Annotated[SchemeRef, Key("A coating scheme.", "underwater-spot")], ...],
        Key("Coating schemes applied, printed in full in the item."),
        MayWait(),
    ] = ()
    owner_furnished: Annotated[tuple[OwnerFurnished, ...], Key("Furnished by the owner."), MayWait()] = ()
    yard_furnished: Annotated[tuple[YardFurnished, ...], Key("Furnished by the yard."), MayWait()] = ()
    does: Annotated[
        tuple[
            Annotated[
                str,
                Key("What the work does, for the trade checks."),
                OneOf(
                    "disturbs coating",
                    "opens hull",
                    "closes hull",
                    "hot work",
                    "cleans tank",
                    "certifies gas-free",
                    "tests tightness",
                    "enters confined space",
                    "tests coating for lead or pcb",
                    "changes weight",
                    "blanks opening",
                    "removes plug",
                    "coats",
                ),
            ],
            ...,
        ],
        Key("What the work does, for the trade checks."),
    ] = ()
    hazards: Annotated[
        tuple[
            Annotated[
                str,
                OneOf(
                    "hot work",
                    "confined space",
                    "coating disturbed",
                    "lead",
                    "pcb",
                    "asbestos",
                    "working at height",
                    "lifting",
                    "pressure test",
                    "oil residue",
                    "high-pressure water",
                    "abrasive blasting",
                    "electrical",
                    "diving",
                    "solvents",
                ),
            ],
            ...,
        ],
        Key("Hazards; each is named in the item, with the clause that holds its precautions."),
    ] = ()
    precautions: Annotated[Prose | None, Key("Precautions special to this item.", "The tank has held oil.")] = None
    heritage: Annotated[Heritage | None, Key("What is significant in it, and how that is treated.")] = None
    tests: Annotated[tuple[Test, ...], Key("The tests, and what passes each."), MayWait()] = ()
    holds: Annotated[tuple[Hold, ...], Key("Points at which the work stops, or may be watched."), MayWait()] = ()
    reports: Annotated[tuple[Report, ...], Key("What the yard hands over on paper, and when."), MayWait()] = ()
    decision: Annotated[Decision | None, Key("The gate at which it is decided whether the work is done.")] = None
    option_until: Annotated[DayFromEvent | None, Key("Last day to exercise an option.")] = None
    deferral: Annotated[Prose | None, Key("What follows if it is put off.", "The plate wastes on.")] = None
    tables: Annotated[tuple[ItemTable, ...], Key("Tables, printed as ruled forms.")] = ()
    lines: Annotated[tuple[Line, ...], Key("The lines that the yard prices.")] = ()
    photographs: Annotated[
        tuple[Annotated[str, Key("A photograph or a set of them.", "335-strake-c.jpg")], ...],
        Key("Photographs in photographs/ that show the place, printed with the item."),
    ] = ()
    pictures: Annotated[
        tuple[PlacePicture, ...], Key("Pictures of the places, printed small on the page of the item and sent along.")
    ] = ()
    here: Place

    @property
    def number(self) -> str:
        """Give the item number as printed."""
        return str(self.item)

    def written(self, line: Line) -> int:
        """Give the place of a line among those written, of which one priced by row stands for several, or for none."""
        source, at = self.scope.source, (line.here.line, line.here.column)
        places = [source.place(("lines", number)) for number in range(len(source.data["lines"]))]
        return [(place.line, place.column) for place in places].index(at)

    @property
    def last_phase(self) -> str:
        """Give when it ends."""
        return self.ends or self.phase

    def kind_of(self, line: Line) -> str:
        """Give the kind of a line: its own, or the item's."""
        return line.kind or self.kind


def said(data: Mapping[str, Any]) -> dict[str, Any]:
    """Give what the data of an item asks of the yard."""
    return {key: value for key, value in data.items() if key not in FOR_THE_RECORD}
