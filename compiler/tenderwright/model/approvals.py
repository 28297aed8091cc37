"""The register of approvals: which consent holds up what, who gives it, and how far each is."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import Date, DayOrDate, Identifier, IdentifierName, ItemRef, OfTender, Time
from tenderwright.model.marks import Count, Key, MayWait, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

ISSUE, AWARD, DEPARTURE, ENTER_DOCK, START, OPEN_FABRIC, FLOODING, DEPARTURE_HOME, PAYMENT, CLAIM, CLOSE, INFORM = (
    "issue",
    "award",
    "departure",
    "enter dock",
    "start",
    "open fabric",
    "flooding",
    "departure home",
    "payment",
    "claim",
    "close",
    "inform",
)
"""What an approval may hold up, in the order in which it comes; `inform` holds up nothing."""
GATES = OneOf(
    ISSUE, AWARD, DEPARTURE, ENTER_DOCK, START, OPEN_FABRIC, FLOODING, DEPARTURE_HOME, PAYMENT, CLAIM, CLOSE, INFORM
)
Gate = Annotated[str, GATES]


class ApprovalCondition(Noun, frozen=True, kw_only=True):
    """What an approval asks to be done, and before what."""

    what: Annotated[str, Key("What the condition asks for.", "The riveting trial is shown to the monuments office")]
    before: Annotated[Gate, Key("What it has to be met before.", "start")]
    items: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...],
        Key("Items before whose start it has to be met; left out, those of the approval."),
    ] = ()
    met: Annotated[Date | None, Key("Day on which it was met; left out, it is still open.", "2027-04-20")] = None
    paper: Annotated[
        str, Key("What shows that it was met: a file under owner/documents/, or its reference.", "Minute of 2027-04-20")
    ] = ""
    here: Place


class NotNeeded(Noun, frozen=True, kw_only=True):
    """Who decided, and why, that an approval is not needed."""

    why: Annotated[str, Key("Why it is not needed.", "No passage in the open sea")]
    by: Annotated[str, Key("Who says so: an office and, where it is another's word, whose.", "Harbour master")]
    day: Annotated[Date, Key("Day on which it was said.", "2026-11-10")]


class Approval(Noun, frozen=True, kw_only=True):
    """A consent, permission, cover or survey that somebody has to give before something may go on."""

    approval: Annotated[Identifier, Key("Identifier of the approval.", "monuments-consent")]
    title: Annotated[str, Key("What is asked for, as the papers print it.", "Consent to the work on hull and fittings")]
    kind: Annotated[
        str,
        Key("On whose side it stands.", "heritage"),
        OneOf(
            "heritage",
            "flag",
            "harbour",
            "insurer",
            "environment",
            "hazardous waste",
            "lender",
            "funder",
            "landlord",
            "survey",
            "customs",
            "other",
        ),
    ]
    gates: Annotated[
        tuple[Annotated[Gate, Key("What it holds up.")], ...],
        Key(
            "What may not go on without it: `issue` of the tender, `award`, `departure` for the yard, `enter dock`, `start` of items, `open fabric` of items, `flooding`, `departure home`, `payment`, `claim` of a grant, `close`; or `inform`, where somebody is only told.",
            ["issue", "start"],
        ),
        Count(1),
    ]
    items: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...],
        Key(
            "Items that it is about; left out, those that the money of its source may pay for, and without a source all of them."
        ),
    ] = ()
    given_by: Annotated[str, Key("Who gives it, by office.", "Monuments office of the province")]
    source: Annotated[
        IdentifierName | None,
        Key(
            "The source of owner/funding.yaml whose word it is, such as that no work may begin before its grant. The day on which it decides is taken from there.",
            "national-fund",
        ),
    ] = None
    lead: Annotated[
        Time | None,
        Key("How long the answer takes from the day it is asked for, in calendar days or weeks.", "60 d"),
        Within(most="3650 d"),
    ] = None
    lead_source: Annotated[
        str,
        Key(
            "Who says how long it takes; left out, the papers print `common practice, no source`.",
            "its letter of 2026-09-03",
        ),
    ] = ""
    needed: Annotated[
        DayOrDate | None,
        Key(
            "Day on which it is needed, for a payment that is not the first, a claim that is made before the last day to spend its money, the close after redelivery, or whoever is only told.",
            "redelivery + 30 d",
        ),
    ] = None
    asked: Annotated[Date | None, Key("Day on which it was asked for.", "2026-09-14")] = None
    granted: Annotated[Date | None, Key("Day on which it was given.", "2026-11-20")] = None
    refused: Annotated[Date | None, Key("Day on which it was refused, until it is given after all.", "2026-11-20")] = (
        None
    )
    expires: Annotated[Date | None, Key("Last day on which it holds.", "2027-12-31")] = None
    conditions: Annotated[tuple[ApprovalCondition, ...], Key("What it asks to be done, and before what.")] = ()
    paper: Annotated[
        str,
        Key(
            "The letter or certificate: a file under owner/documents/, or its reference.",
            "owner/documents/monuments-consent.pdf",
        ),
    ] = ""
    not_needed: Annotated[NotNeeded | None, Key("Why it is not needed after all, who says so, and when.")] = None
    afterwards: Annotated[
        str,
        Key(
            "What whoever gives it said of what was done before it was given.",
            "Letter of 2027-05-20: accepted, with photographs of the plates",
        ),
    ] = ""
    notes: Annotated[Prose | None, Key("What else was said or agreed.", "The office sits on the first Monday.")] = None
    here: Place


class Approvals(Noun, frozen=True, kw_only=True):
    """The register of consents, permissions and conditions: what each holds up, who gives it, how long that takes, and how far it is. The authority decides; the register lists and plans."""

    tender: OfTender = ""
    until: Annotated[
        Date | None,
        Key(
            "Day up to which the register is kept. What is late is judged on it, or on the last day that this or any other paper under owner/ records.",
            "2027-02-01",
        ),
    ] = None
    approvals: Annotated[tuple[Approval, ...], Key("The approvals, in any order."), Count(1), MayWait()]
    here: Place
