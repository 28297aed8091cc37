"""An application for a grant: what is asked of whom, for which items, and what the owner says under each heading."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.build import Name, Prose
from tenderwright.model.kinds import (
    AnyQuantity,
    ClauseRef,
    Confidence,
    Date,
    Identifier,
    IdentifierName,
    ItemRef,
    LineName,
    Money,
    OfTender,
    Time,
)
from tenderwright.model.marks import Count, Form, Key, Keys
from tenderwright.model.noun import Noun
from tenderwright.model.profile import LengthLimit
from tenderwright.notices import Place


class GrantPhase(Noun, frozen=True, kw_only=True):
    """A phase of an application, with its own items, days and sums; the phases add up to the whole."""

    phase: Annotated[Identifier, Key("Identifier of the phase.", "shell")]
    title: Annotated[str, Key("Title as the paper prints it.", "Shell and rivets")]
    items: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...],
        Key("Items of this phase; each stands in one."),
        Count(1),
    ]
    begins: Annotated[
        Date | None, Key("Day on which it begins; left out, that of its first item by the programme.", "2027-05-05")
    ] = None
    ends: Annotated[
        Date | None, Key("Day on which it ends; left out, that of its last item by the programme.", "2027-05-28")
    ] = None
    asked: Annotated[
        Money | None,
        Key("Money asked for this phase, in every phase or in none; left out, shared by what is eligible.", 120000),
    ] = None
    here: Place


class GrantAlternative(Noun, frozen=True, kw_only=True):
    """One of the things that the application asks for, either or; the first is the one that the owner prefers."""

    title: Annotated[str, Key("Title as the paper prints it.", "Plates renewed, riveted")]
    items: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...],
        Key("Items of this alternative, beside those of the application, which all have in common."),
        Count(1),
    ]
    asked: Annotated[
        Money | None, Key("Money asked for this alternative; left out, the most that may be asked.", 180000)
    ] = None
    words: Annotated[
        Prose | None,
        Key(
            "What it means for the ship to choose this one.",
            "The old plate is lost; the shell is sound for twenty years.",
        ),
    ] = None
    here: Place


class OutsideCost(Noun, frozen=True, kw_only=True):
    """A cost outside the tender, such as a naval architect or the tow."""

    what: Annotated[str, Key("What the cost is for.", "Naval architect")]
    category: Annotated[
        Name, Key("Category: its identifier in the profile, or a word that the category takes.", "professional fees")
    ]
    amount: Annotated[Money, Key("What it costs, in the currency of the package.", 9500)]
    basis: Annotated[str, Key("What the amount rests on.", "letter of 2026-09-30")]
    eligible: Annotated[bool, Key("Whether the funder may pay for it; yes where left out.")] = True
    phase: Annotated[
        IdentifierName | None, Key("Phase to which it belongs; left out, it is of no one phase.", "shell")
    ] = None
    here: Place


class InKind(Noun, frozen=True, kw_only=True):
    """Work given, valued by the hour."""

    what: Annotated[str, Key("Who works, and at what.", "Volunteers who list and photograph rivets")]
    hours: Annotated[Time, Key("How many hours are given.", "420 h")]
    rate: Annotated[Money, Key("What an hour of it is counted as being worth.", 14.5)]
    category: Annotated[
        Name, Key("Category: its identifier in the profile, or a word that the category takes.", "professional fees")
    ]
    basis: Annotated[str, Key("What the value rests on.", "the fund's rate for unskilled work")]
    phase: Annotated[
        IdentifierName | None, Key("Phase to which it belongs; left out, it is of no one phase.", "shell")
    ] = None
    here: Place


class GrantOutput(Noun, frozen=True, kw_only=True):
    """Something measurable that the money brings: a quantity as written, or the sum of some lines."""

    output: Annotated[str, Key("What the money brings, as a funder would count it.", "Rivets renewed")]
    quantity: Annotated[AnyQuantity | None, Key("How much of it, where lines do not say.", "600 each")] = None
    lines: Annotated[
        tuple[Annotated[LineName, Key("A line of the tender.", "315.a")], ...],
        Key("Lines whose quantities are summed up."),
        Count(1),
    ] = ()
    here: Place


class Grant(Noun, frozen=True, kw_only=True):
    """What is asked of whom for which items, and what the owner says under each heading of the funder's form. `tenderwright grant` makes a paper of it that stands by itself."""

    tender: OfTender = ""
    profile: Annotated[
        IdentifierName,
        Key(
            "Profile of the funder's form: one of owner/profiles/, or `object-classes` or `capital-activity`.",
            "capital-activity",
        ),
    ]
    title: Annotated[str, Key("Title of the application.", "Marram: steel and shell")]
    source: Annotated[
        IdentifierName | None,
        Key(
            "Source of owner/funding.yaml that is asked; without one all items are eligible, and nothing is asked.",
            "national-fund",
        ),
    ] = None
    asked: Annotated[
        Money | None,
        Key(
            "Money asked for; left out, the amount of the source, and no more than the costs and the match allow.",
            180000,
        ),
    ] = None
    items: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...],
        Key("Items that it is for; left out, those that the source may pay for."),
        Count(1),
    ] = ()
    phases: Annotated[
        tuple[GrantPhase, ...],
        Key("Phases, each with its own sums and days; their items need not stand under `items`."),
    ] = ()
    alternatives: Annotated[
        tuple[GrantAlternative, ...],
        Key("What is asked for either or: each is worked out by itself, the first as the paper's own sums."),
    ] = ()
    confidence: Annotated[Confidence, Key("Confidence up to which contingency is asked for; P80 where left out.")] = (
        "P80"
    )
    dated: Annotated[
        Date | None, Key("Day of the paper; the day of issue of the tender where left out.", "2026-12-14")
    ] = None
    headings: Annotated[
        Mapping[str, Annotated[Prose, Key("Text under the heading.")]],
        Key("What the owner says under each heading of the profile, by heading."),
        Keys(Form("^[a-z0-9]+(-[a-z0-9]+)*$", "Identifier", "need")),
    ] = field(default_factory=dict)
    limits: Annotated[
        Mapping[str, LengthLimit],
        Key("How long what stands under a heading may be, by heading, where the profile does not say it so."),
        Keys(Form("^[a-z0-9]+(-[a-z0-9]+)*$", "Identifier", "need")),
    ] = field(default_factory=dict)
    limit: Annotated[
        LengthLimit | None,
        Key("How long all headings together may be, where the profile does not say it so."),
    ] = None
    categories: Annotated[
        Mapping[
            str,
            Annotated[
                Name,
                Key("Category: its identifier in the profile, or a word that the category takes.", "professional fees"),
            ],
        ],
        Key("Categories other than by the rules of the profile, by item or line."),
        Keys(Form("^[0-9]+([.][a-z]{1,2})?$", "Number of an item or of a line", "220", "310.a")),
    ] = field(default_factory=dict)
    costs: Annotated[tuple[OutsideCost, ...], Key("Costs outside the tender.")] = ()
    in_kind: Annotated[tuple[InKind, ...], Key("Work given, which counts as match.")] = ()
    outputs: Annotated[
        tuple[GrantOutput, ...], Key("What the money brings that can be measured, beside the lines themselves.")
    ] = ()
    photographs: Annotated[
        tuple[Annotated[str, Key("Photograph or set.", "starboard profile afloat, 2026")], ...],
        Key("Photographs, beside those that the items list."),
    ] = ()
    standards: Annotated[
        tuple[Annotated[ClauseRef, Key("A clause of the tender.", "heritage")], ...],
        Key("Clauses that say which standards of conservation are followed; they are printed."),
    ] = ()
    risks: Annotated[
        tuple[Annotated[IdentifierName, Key("A risk, by its identifier.", "thin-plate")], ...] | None,
        Key("Risks of owner/risks.yaml that are told; left out, those of the chosen items."),
    ] = None
    here: Place
