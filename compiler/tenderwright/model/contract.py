"""The contract: what bidders must know of payment, security and the matters that an agreement settles."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    ClauseRef,
    DayFromEvent,
    DayOrDate,
    Fraction,
    ItemRef,
    LineNumber,
    Money,
    OfTender,
    Time,
)
from tenderwright.model.marks import Count, Key, Keys, OneOf
from tenderwright.model.matters import MATTERS, SETTLED, STATES
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

EVENTS = OneOf("award", "arrival", "docking", "undocking", "redelivery")
BEFORE_WORK = ("award", "arrival")
"""The events at which nothing of the work is done yet."""
BID_SECURITY, PERFORMANCE, PAYMENT_BOND, REFUND = (
    "bid security",
    "performance security",
    "payment bond",
    "refund guarantee",
)
OFFER, SECURITY, DECLARATION = "offer", "security", "declaration"
SignedForm = Annotated[str, OneOf(OFFER, SECURITY, DECLARATION), Key("A form to sign.", "offer")]


class Stage(Noun, frozen=True, kw_only=True):
    """A payment: what share of the contract price falls due, and what must have been reached."""

    stage: Annotated[str, Key("What has been reached when it falls due.", "She is on the blocks and washed")]
    share: Annotated[Fraction, Key("Its share of the contract price.", "25 %")]
    event: Annotated[
        str, Key("The event of the programme that it waits for, where it waits for one.", "undocking"), EVENTS
    ] = ""
    item: Annotated[
        ItemRef | None, Key("The item whose work must be done, or whose question answered, first.", "235")
    ] = None
    on: Annotated[
        DayOrDate | None,
        Key(
            "A day on which it is paid whatever the work has reached; left out where it waits for an event or an item.",
            "2027-05-20",
        ),
    ] = None
    here: Place

    @property
    def ahead(self) -> bool:
        """Tell whether it is paid before any of the work is done."""
        return self.event in BEFORE_WORK and self.item is None


class Security(Noun, frozen=True, kw_only=True):
    """A promise by a third party to pay the owner where the yard does not perform."""

    kind: Annotated[
        str,
        Key("What it secures: the bid, the performance, the payment of subcontractors, or the return of an advance."),
        OneOf(BID_SECURITY, PERFORMANCE, PAYMENT_BOND, REFUND),
    ]
    share: Annotated[
        Fraction, Key("Its sum as a share of the contract price, or of the bid for a bid security.", "10 %")
    ]
    form: Annotated[
        str,
        Key("Whether it is paid when the owner asks, or once the yard's default is shown."),
        OneOf("on demand", "conditional"),
    ]
    issuer: Annotated[str, Key("Who may give it.", "A bank with a seat in the owner's country")]
    released: Annotated[DayFromEvent, Key("When the owner gives it back.", "docking")]
    valid_to: Annotated[DayOrDate, Key("Last day on which it can be drawn.", "docking + 30 d", "2027-07-15")]
    here: Place


class Release(Noun, frozen=True, kw_only=True):
    """When a part of what is held back is paid."""

    share: Annotated[Fraction, Key("Its share of what is held back.", "50 %")]
    at: Annotated[DayFromEvent | None, Key("The day on which it is paid.", "redelivery", "redelivery + 365 d")] = None
    item: Annotated[ItemRef | None, Key("The item whose work or report must be accepted first.", "240")] = None
    here: Place


class Retention(Noun, frozen=True, kw_only=True):
    """What is held back of each payment, and when it is paid."""

    share: Annotated[Fraction, Key("The share that is held back of each payment.", "5 %")]
    releases: Annotated[tuple[Release, ...], Key("When it is paid, part by part."), Count(1)]
    here: Place


class MatterAnswer(Noun, frozen=True, kw_only=True):
    """How a matter of the contract is answered."""

    answer: Annotated[
        str,
        Key(
            "settled: in the words, or in the clause named. left out: on purpose, and the words say why. not settled: the words say what it would take."
        ),
        OneOf(*STATES),
    ]
    words: Annotated[
        Prose,
        Key(
            "The answer in a sentence or two; where a clause holds it, what the clause says of it, without its figures.",
            "Whoever asks is answered by the named expert; the work goes on meanwhile.",
        ),
    ]
    clause: Annotated[ClauseRef | None, Key("The clause that holds it, where one does.", "price-and-payment")] = None
    here: Place


class Contract(Noun, frozen=True, kw_only=True):
    """What bidders must know of the contract. It is printed with the rules of the tender, and on the owner's checklist of the contract; the tool gives no legal advice. Damages for late redelivery stand in package.yaml."""

    agreement: Annotated[
        str, Key("The form of agreement that is signed.", "The owner's own form of agreement, two pages")
    ] = ""
    payments: Annotated[tuple[Stage, ...], Key("When which share of the contract price falls due, in order.")] = ()
    securities: Annotated[tuple[Security, ...], Key("What third parties promise in the yard's place.")] = ()
    retention: Annotated[Retention | None, Key("What is held back of each payment; left out where nothing is.")] = None
    floatable: Annotated[
        Time | None,
        Key("Within which time the yard makes her fit to float where the contract ends early.", "72 h"),
    ] = None
    forms: Annotated[
        tuple[SignedForm, ...],
        Key(
            "The forms that bidders sign and return with the price form; each goes out with the tender as a Word document."
        ),
    ] = ()
    matters: Annotated[
        Mapping[str, MatterAnswer],
        Key(
            "The checklist of the contract: how each matter is answered that the keys above and `damages` of package.yaml do not answer."
        ),
        Keys(OneOf(*(one.key for one in MATTERS))),
    ] = field(default_factory=dict)
    here: Place

    def securities_of(self, kind: str) -> tuple[Security, ...]:
        """Give the securities of a kind."""
        return tuple(one for one in self.securities if one.kind == kind)

    def says(self, matter: str) -> MatterAnswer | None:
        """Give how a matter is settled in words, where it is."""
        found = self.matters.get(matter)
        return found if found is not None and found.answer == SETTLED else None

    @property
    def to_sign(self) -> tuple[str, ...]:
        """Name the forms that bidders sign; none of security where the contract asks for no security."""
        return tuple(one for one in dict.fromkeys(self.forms) if one != SECURITY or self.securities)


class TakenAway(Noun, frozen=True, kw_only=True):
    """What it costs the owner to take her away where the contract ends early. From it, the programme and the estimate follows what the owner stands to lose at the worst moment; days of dock meanwhile are priced by the estimate."""

    tender: OfTender = ""
    refloat: Annotated[Money, Key("What it costs to make her fit to float, and to float her.", 18000)]
    refloat_basis: Annotated[str, Key("Where that sum is from.", "The ship manager's list of openings, priced")] = ""
    tow: Annotated[Money, Key("What it costs to tow her to a berth where she can lie.", 24000)]
    tow_basis: Annotated[str, Key("Where that sum is from.", "tow master's letter, 2027-02")] = ""
    dock_day: Annotated[
        LineNumber | None,
        Key(
            "The line that prices a further day on the blocks, where `day_lines` of owner/programme.yaml do not name it.",
            "115.a",
        ),
    ] = None
    here: Place
