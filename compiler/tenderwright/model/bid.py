"""A bid as read: what a yard wrote into the price form, before anything is corrected or compared."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.contract import SignedForm
from tenderwright.model.facility import Cars, Certificate, FacilityLimits, Hoists, Slope
from tenderwright.model.kinds import (
    LINE,
    Date,
    Density,
    DockType,
    FacilityRef,
    Length,
    LineNumber,
    OfTender,
    Price,
    SignedMoney,
)
from tenderwright.model.marks import AbsentMeans, Form, Key, Keys, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

NOWHERE = Place("")

"""The place of what was made and not read from a package."""


class BidLine(Noun, frozen=True, kw_only=True):
    """What the yard wrote for one line."""

    rate: Annotated[
        Price | None,
        Key(
            "Rate or lump sum as tendered, to four decimals; for a mark-up, the percentage. Credits are positive too.",
            84.5,
            12.375,
        ),
    ] = None
    status: Annotated[
        str,
        Key("How the line is answered: empty, 0, included and no bid are four different things."),
        OneOf("priced", "zero", "included", "no bid", "empty"),
    ] = ""
    extension: Annotated[SignedMoney | None, Key("The amount that stood in the row, right or wrong.", 4357, -350.5)] = (
        None
    )
    note: Annotated[str, Key("What the yard remarks on the line.", "Subject to sight of the plate")] = ""
    as_written: Annotated[
        str,
        Key("What stood in the cell of the price, where it was not a plain number.", "EUR 1 234,50", "incl. in 110.a"),
    ] = ""
    here: Place = NOWHERE


class Exclusion(Noun, frozen=True, kw_only=True):
    """Something that a yard leaves out, assumes, or offers instead."""

    text: Annotated[str, Key("In the yard's words.", "Disposal of spent abrasive")]
    lines: Annotated[
        tuple[Annotated[LineNumber, Key("A line of the tender.", "420.a")], ...], Key("Lines that it bears on.")
    ] = ()
    kind: Annotated[str, Key("Which of the three it is."), OneOf("exclusion", "assumption", "alternative")] = (
        "exclusion"
    )
    effect: Annotated[
        str, Key("Its effect on the price, in the yard's words; never counted in.", "adds some 2 % to section 300")
    ] = ""
    here: Place = NOWHERE


class BidAnswer(Noun, frozen=True, kw_only=True):
    """What a yard answers to one of the owner's questions."""

    ask: Annotated[str, Key("The owner's question, as it stands on the price form.", "Dock certificate and its date")]
    answer: Annotated[str, Key("What the yard wrote in answer to it.", "Certificate 118/26, valid until 2029-03-31")]


class DockOffered(Noun, frozen=True, kw_only=True):
    """The dock that a yard offers, in the figures that it wrote into the price form."""

    name: Annotated[str, Key("Name of the dock.", "Shiplift of Sallow Haven, transfer bay 2")] = ""
    kind: Annotated[DockType | None, Key("What kind of dock it is.", "shiplift")] = None
    limits: Annotated[FacilityLimits | None, Key("Limits of the dock.")] = None
    block_spacing: Annotated[Length | None, Key("From one keel block to the next, centre to centre.", "1.2 m")] = None
    density: Annotated[
        Density | None,
        Key("Density of the water at the dock.", "1.020 t/m3"),
        Within(least="950 kg/m3", most="1100 kg/m3"),
    ] = None
    cars: Annotated[Cars | None, Key("Rail cars that carry the ship.")] = None
    hoists: Annotated[Hoists | None, Key("Hoists of a shiplift.")] = None
    slope: Annotated[Slope | None, Key("Slope of a slipway.")] = None
    certificate: Annotated[Certificate | None, Key("Certificate of the dock.")] = None
    lacking: Annotated[
        tuple[Annotated[str, Key("One figure.", "Depth of water over the sill")], ...],
        Key("What the yard was asked of a dock of this kind and left out."),
    ] = ()
    here: Place = NOWHERE


class Bid(Noun, frozen=True, kw_only=True):
    """A bid as it was returned, before anything is corrected or compared. `tenderwright bids read` writes one from the price form."""

    tender: OfTender = ""
    yard: Annotated[str, Key("Name of the yard that bids.", "Corve Harbour Dock Trust")]
    facility: Annotated[
        FacilityRef | None, Key("Dock that is offered, if it is one of facilities/.", "corve-graving-dock")
    ] = None
    dock: Annotated[DockOffered | None, Key("The dock that is offered, in the yard's own figures.")] = None
    received: Annotated[Date, Key("Day on which the bid was received.", "2027-03-26")]
    file: Annotated[str, Key("Name of the workbook that it was read from.", "price-form-corve.xlsx")] = ""
    sha256: Annotated[
        str,
        Key("Checksum of that workbook.", "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"),
        Form("^[0-9a-f]{64}$", "SHA-256 digest"),
    ] = ""
    edition: Annotated[str, Key("Edition hash on the form that was returned.", "2ffdc6695ecccac6")] = ""
    currency: Annotated[str, Key("Currency of the form.", "EUR")] = ""
    valid_until: Annotated[Date | None, Key("Last day on which the offer stands.", "2027-06-15")] = None
    lines: Annotated[
        Mapping[str, BidLine],
        Key("By line, such as 420.a."),
        Keys(LINE),
    ]
    section_totals: Annotated[
        Mapping[str, Annotated[SignedMoney, Key("Sub-total that the yard states for the section.", 4357, -350.5)]],
        Key("Sub-total of each section of the price form as it stood there."),
        Keys(Form("^[A-Z]$", "Letter of a section", "C")),
    ] = field(default_factory=dict)
    base_total: Annotated[SignedMoney | None, Key("Base price as it stood on the form.", 4357, -350.5)] = None
    total: Annotated[
        SignedMoney | None, Key("Evaluated total as it stood on the form, without the owner's days.", 4357, -350.5)
    ] = None
    exclusions: Annotated[tuple[Exclusion, ...], Key("What the yard leaves out, assumes, or offers instead.")] = ()
    addenda: Annotated[
        tuple[Annotated[int, Key("An addendum that the bid acknowledges.", 1), Within(least=1)], ...],
        Key("Numbers of the addenda acknowledged."),
    ] = ()
    site_visit: Annotated[bool | None, Key("Whether the yard says that it visited the ship.")] = None
    terms_accepted: Annotated[bool | None, Key("Whether the yard accepts the terms of the tender.")] = None
    signed: Annotated[
        tuple[SignedForm, ...] | None,
        Key("The signed forms that came back with the price form; left out where nobody has looked."),
        AbsentMeans("nobody has looked"),
    ] = None
    dates_accepted: Annotated[bool | None, Key("Whether the yard accepts the dates of the tender.")] = None
    earliest_docking: Annotated[
        Date | None, Key("Earliest day in dock, where the yard names another.", "2027-05-10")
    ] = None
    days: Annotated[
        int | None, Key("Days from arrival to redelivery, by the yard's programme.", 37), Within(least=0, most=1000)
    ] = None
    dock_days: Annotated[int | None, Key("Days in dock, by the yard's programme.", 28), Within(least=0, most=1000)] = (
        None
    )
    answers: Annotated[tuple[BidAnswer, ...], Key("What the yard answers to the owner's questions.")] = ()
    tables: Annotated[
        Mapping[
            str,
            Annotated[
                Mapping[str, Annotated[str, Key("What the yard wrote.", "6")]],
                Key("What stands in its cells, by heading."),
            ],
        ],
        Key("What the yard filled into the tables of the form, by row."),
        Keys(Form(r"^[0-9]+(\.[a-z0-9]+(-[a-z0-9]+)*){2}$", "Row of a table", "520.valves.suction-fire")),
    ] = field(default_factory=dict)
    doubts: Annotated[
        tuple[Annotated[str, Key("A doubt, in words.", "E14: a comment says `subject to survey`")], ...],
        Key("What the reading left to a person. Each is settled under `doubts` in owner/evaluation.yaml."),
    ] = ()
    here: Place
