"""The tender: package.yaml and the reference documents."""

from collections.abc import Mapping
from datetime import date
from typing import Annotated

from msgspec import field

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    SERVICES,
    SHA256,
    Currency,
    Date,
    DateOrNone,
    Days,
    Fraction,
    Identifier,
    ItemRef,
    Money,
    Time,
)
from tenderwright.model.marks import AbsentMeans, Count, Key, Keys, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.reading.layout import FORMAT


class TenderTitle(Noun, frozen=True, kw_only=True):
    """Number and title of the tender."""

    number: Annotated[str, Key("The owner's number for this tender; printed on every page.", "HPT-2027-01")]
    title: Annotated[
        str, Key("What is tendered, as it stands on the cover.", "Docking of the lighthouse tender Marram, 2027")
    ]
    subtitle: Annotated[str, Key("A second line for the cover.", "Dry docking, shell repairs and recoating")] = ""


class Owner(Noun, frozen=True, kw_only=True):
    """Who invites the tender."""

    name: Annotated[str, Key("Legal name of the owner.", "Harrow Point Lightvessel and Tender Trust")]
    place: Annotated[str, Key("Where the ship lies.", "Harrow Point")]
    address: Annotated[
        str, Key("Postal address, to which bids are sent.", "The Buoy Store, Tender Quay, Harrow Point")
    ] = ""
    representative: Annotated[
        str, Key("Role that speaks for the owner; a role, not a person's name.", "Ship manager")
    ] = "Owner's representative"
    contact: Annotated[str, Key("How to reach the representative.", "tender@harrow-point.example")] = ""


class SiteVisit(Noun, frozen=True, kw_only=True):
    """The visit aboard for bidders."""

    date: Annotated[Date, Key("Day of the visit.", "2027-02-10")]
    mandatory: Annotated[bool, Key("Whether those who do not attend may not bid.")]
    where: Annotated[
        str, Key("Where and at what time visitors meet.", "Aboard at Tender Quay, 10:00, in working clothes")
    ] = ""


class TenderDates(Noun, frozen=True, kw_only=True):
    """Dates of the tender."""

    issued: Annotated[Date | None, Key("Day on which the tender is issued.", "2027-01-25")]
    site_visit: Annotated[SiteVisit | None, Key("Visit aboard for bidders.")] = None
    questions_until: Annotated[Date | None, Key("Last day for questions.", "2027-03-05")] = None
    closing: Annotated[Date | None, Key("Last day on which bids are received.", "2027-03-26")]
    valid: Annotated[Time | None, Key("How long a bid stays open.", "120 d")] = None
    award: Annotated[Date | None, Key("Planned day of award.", "2027-04-12")] = None


class Programme(Noun, frozen=True, kw_only=True):
    """Planned days of the docking."""

    arrival: Annotated[Date, Key("Day on which the ship is handed to the yard.", "2027-05-03")]
    docking: Annotated[Date, Key("Day on which the ship is landed on blocks.", "2027-05-05")]
    undocking: Annotated[Date, Key("Day on which the ship is afloat again.", "2027-06-02")]
    redelivery: Annotated[Date, Key("Day on which the ship is handed back.", "2027-06-05")]
    dock_days: Annotated[
        Days | None, Key("Days on blocks included in the price; further days are priced as a day line.", 28)
    ] = None
    here: Place


CONTINGENT, POOL, OPTIONS, DAYS, TOWING, TRAVEL = (
    "contingent lines",
    "hours pool",
    "options",
    "owner's days",
    "towing",
    "travel",
)
"""What may be counted in the evaluated price beside the base price."""
ONE_BIDDER, ESTIMATE = "highest of one bidder", "owner's estimate"
"""At which figure what a bid leaves out may be priced."""


class Award(Noun, frozen=True, kw_only=True):
    """Rules of award, published to all."""

    arithmetic: Annotated[
        str, Key("What governs where extension and rate disagree."), OneOf("unit price governs", "total absolute")
    ]
    counts: Annotated[
        tuple[
            Annotated[
                str, Key("A part of the evaluated price."), OneOf(CONTINGENT, POOL, OPTIONS, DAYS, TOWING, TRAVEL)
            ],
            ...,
        ]
        | None,
        Key(
            "What is counted in the evaluated price beside the base price. The sentences of the rule that bidders read are written from it, and bids are ranked only once each part has a figure for each of them. Left out: contingent lines, hours pool and options, and the owner's days where `day_cost` is given."
        ),
        AbsentMeans("contingent lines, hours pool and options"),
    ] = None
    exclusions: Annotated[
        str,
        Key(
            "At which figure what a bid leaves out is priced: that of the one other bidder who asks the most for all of that work, or the owner's estimate."
        ),
        OneOf(ONE_BIDDER, ESTIMATE),
    ] = ONE_BIDDER
    evaluated: Annotated[
        Prose,
        Key(
            "What the rule says beside the sentences that are written from `counts`: which bid is chosen, and how a cost of the owner's is found.",
            "The lowest evaluated price of a bid that passes the criteria is chosen.",
        ),
    ]
    day_cost: Annotated[Money | None, Key("The owner's cost of each day, counted in the evaluated price.", 850)] = None
    criteria: Annotated[
        tuple[
            Annotated[str, Key("A criterion that passes or fails before price.", "Dock certificate valid at docking")],
            ...,
        ],
        Key("What a bid passes or fails before its price is looked at."),
    ] = ()

    @property
    def components(self) -> frozenset[str]:
        """Give what is counted beside the base price."""
        if self.counts is not None:
            return frozenset(self.counts)
        return frozenset((CONTINGENT, POOL, OPTIONS, *((DAYS,) if self.day_cost is not None else ())))


class Damages(Noun, frozen=True, kw_only=True):
    """What the yard pays for redelivery after the contract day."""

    a_day: Annotated[Money, Key("What is paid for a day; a forecast of the owner's own cost, not a penalty.", 850)]
    after: Annotated[Days, Key("Days after the contract day of redelivery for which nothing is paid yet.", 10)] = 0
    most: Annotated[Fraction | None, Key("The most that is paid, as a share of the contract price.", "10 %")] = None
    here: Place


class NumberBlock(Noun, frozen=True, kw_only=True):
    """A block of item numbers."""

    from_: Annotated[int, Key("First item number of the block.", 100), Within(most=9999)]
    to: Annotated[int, Key("Last item number of the block.", 199), Within(most=9999)]
    title: Annotated[str, Key("Heading under which its items stand.", "Docking and services")]


class Addendum(Noun, frozen=True, kw_only=True):
    """An addendum already issued."""

    number: Annotated[int, Key("Number of the addendum, from 1."), Within(least=1, most=99)]
    date: Annotated[Date, Key("Day on which the addendum is issued.", "2027-02-22")]
    summary: Annotated[
        str, Key("What it changes, in a sentence.", "Answers eight questions; the bulwark is 0.9 m high, not 1.1 m.")
    ]


class YardQuestion(Noun, frozen=True, kw_only=True):
    """Something the yard tells of itself on the price form."""

    ask: Annotated[str, Key("What the yard is asked of itself.", "Dock certificate and its date")]
    hint: Annotated[str, Key("Help for the answer, printed beside the question.", "Attach a copy.")] = ""


class ServiceAnswer(Noun, frozen=True, kw_only=True):
    """The answer for one service of the checklist."""

    answer: Annotated[
        str,
        Key("yes: in an item of this tender. no: left out on purpose. not applicable."),
        OneOf("yes", "no", "not applicable"),
    ]
    item: Annotated[ItemRef | None, Key("The item that holds it, for yes.", "110")] = None
    why: Annotated[str, Key("Why not, for no and not applicable.", "The owner's tug brings her.")] = ""
    here: Place


class Tender(Noun, frozen=True, kw_only=True):
    """The tender: number, title, owner, dates, programme, rules of award, and the checklist of services."""

    format: Annotated[
        int,
        Key("Version of the format in which the package is written. One of another version is not read.", FORMAT),
        Within(least=FORMAT, most=FORMAT),
    ] = FORMAT
    tender: Annotated[TenderTitle, Key("The tender by number and title.")]
    ship: Annotated[str, Key("The ship's name, without a prefix.", "Marram")]
    owner: Annotated[Owner, Key("Who invites the tender.")]
    dates: Annotated[TenderDates, Key("Dates of the tender.")]
    programme: Annotated[Programme | None, Key("Planned days of the docking, from which report days are counted.")]
    currency: Annotated[Currency, Key("Currency of all prices, by its three letters of ISO 4217.", "EUR")]
    page_size: Annotated[str, Key("Paper of the editions."), OneOf("A4", "Letter")] = "A4"
    units: Annotated[str, Key("How quantities are shown."), OneOf("metric", "us", "both")] = "metric"
    web_links: Annotated[
        bool,
        Key(
            "Whether web and mail addresses in prose are live links. Unsaid, the address is printed as text: what bidders open should lead nowhere that you have not thought of.",
            True,
        ),
    ] = False
    award: Annotated[Award, Key("Rules of award, published to all.")]
    damages: Annotated[Damages | None, Key("Damages for late redelivery; left out where none are asked.")] = None
    sections: Annotated[tuple[NumberBlock, ...], Key("The blocks of item numbers and their headings.")]
    owner_papers: Annotated[
        str,
        Key(
            "Says that owner/ is meant to be kept in the same repository as the rest, since all who can read that may read the owner's papers too."
        ),
        OneOf("in this repository"),
    ] = ""
    addenda: Annotated[tuple[Addendum, ...], Key("Addenda issued so far.")] = ()
    yard_questions: Annotated[tuple[YardQuestion, ...], Key("What the yard tells of itself.")] = ()
    services: Annotated[
        Mapping[str, ServiceAnswer],
        Key(
            "The checklist of services that are often forgotten: those that no item names under its own `services`, each answered once."
        ),
        Keys(SERVICES),
    ] = field(default_factory=dict)
    here: Place

    @property
    def dock_days(self) -> int | None:
        """Give the days on blocks that the price includes."""
        return self.programme.dock_days if self.programme is not None else None

    @property
    def stay(self) -> int | None:
        """Give the days from arrival to redelivery."""
        return (self.programme.redelivery - self.programme.arrival).days if self.programme is not None else None

    @property
    def events(self) -> dict[str, date | None]:
        """Give the dates from which days are counted."""
        plan = self.programme
        if plan is None:
            return {"award": self.dates.award}
        return {
            "award": self.dates.award,
            "arrival": plan.arrival,
            "docking": plan.docking,
            "undocking": plan.undocking,
            "redelivery": plan.redelivery,
        }


class Drawing(Noun, frozen=True, kw_only=True):
    """A reference document."""

    drawing: Annotated[Identifier, Key("Identifier, by which items name the document.", "d-12")]
    title: Annotated[str, Key("Title on the document.", "Shell expansion")]
    revision: Annotated[str, Key("Its revision, or its date.", "B")]
    date: Annotated[Date | None, Key("Date of the document.", "1934-02-17")] = None
    verified: Annotated[
        DateOrNone, Key("Day on which it was found to agree with the ship, or `none`.", "2026-05-20", "none")
    ]
    kind: Annotated[
        str,
        Key("What kind of document it is.", "drawing"),
        OneOf("drawing", "report", "photograph set", "certificate", "manual"),
    ] = "drawing"
    holder: Annotated[str, Key("Who holds the document.", "the owner's archive")] = ""
    file: Annotated[
        str,
        Key(
            "The document itself, which goes along with the tender: PDF, TIFF, PNG or DXF under references/.",
            "references/d-12.pdf",
        ),
    ] = ""
    sha256: Annotated[
        str,
        Key("Checksum of the file; a notice proposes it.", "0f3c" * 16),
        SHA256,
    ] = ""
    seen: Annotated[
        Prose | None,
        Key(
            "Where and when it can be seen, where the file does not go along.", "At the owner's office, by appointment."
        ),
    ] = None
    here: Place


class Drawings(Noun, frozen=True, kw_only=True):
    """Drawings and reports that items refer to."""

    drawings: Annotated[tuple[Drawing, ...], Key("The documents, in the order in which they are listed."), Count(1)]
