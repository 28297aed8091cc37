"""Where the money may come from, and what the work is worth."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    Confidence,
    Date,
    Fraction,
    Identifier,
    IdentifierName,
    ItemRef,
    LineNumber,
    Money,
    OfTender,
    PricedKind,
    WorkName,
)
from tenderwright.model.marks import Count, Form, Key, Keys, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Granted(Noun, frozen=True, kw_only=True):
    """What a source has granted for one item or line, so that nobody else pays it again."""

    work: Annotated[WorkName, Key("The item or line that it is granted for.", "310", "310.a")]
    amount: Annotated[Money, Key("How much of it is granted.", 40000)]
    here: Place


class MatchLimit(Noun, frozen=True, kw_only=True):
    """Sources of which together no more than a share of the match counts."""

    sources: Annotated[
        tuple[Annotated[IdentifierName, Key("A source, by its identifier.", "county-fund")], ...],
        Key("Sources whose money counts together; each stands in one limit.", ["county-fund", "lottery-fund"]),
        Count(1),
    ]
    share: Annotated[Fraction, Key("How much of the match their money may be.", "50 %")]
    here: Place


class MatchRule(Noun, frozen=True, kw_only=True):
    """What a source counts as match; without one it counts the money of all others, and all that is given in kind."""

    statuses: Annotated[
        tuple[
            Annotated[str, Key("How sure the money is."), OneOf("in hand", "promised", "applied for", "hoped for")], ...
        ],
        Key("Money of which status counts; left out, any."),
    ] = ()
    excludes: Annotated[
        tuple[Annotated[IdentifierName, Key("A source, by its identifier.", "county-fund")], ...],
        Key("Sources whose money does not count."),
    ] = ()
    limits: Annotated[
        tuple[MatchLimit, ...], Key("Sources whose money counts up to a share of the match, such as other grants.")
    ] = ()
    in_kind: Annotated[
        Fraction | None, Key("How much of the match may be given in kind; left out, all of it.", "25 %")
    ] = None
    otherwise: Annotated[
        str,
        Key(
            "What else its rules say of match, in words; drafts of applications name it as not worked out.",
            "Money of the state counts only if it was granted in the same year.",
        ),
    ] = ""
    here: Place


class FundingSource(Noun, frozen=True, kw_only=True):
    """One source of money."""

    source: Annotated[Identifier, Key("Identifier, by which applications name the source.", "national-fund")]
    name: Annotated[str, Key("Name of the giver as the papers print it.", "National maritime fund")]
    amount: Annotated[Money, Key("The most that it gives.", 250000)]
    status: Annotated[
        str, Key("How sure the money is.", "applied for"), OneOf("in hand", "promised", "applied for", "hoped for")
    ] = ""
    likelihood: Annotated[Fraction | None, Key("How likely it is to come.", "60 %")] = None
    only: Annotated[
        tuple[Annotated[ItemRef, Key("An item that it may pay for.", "310")], ...], Key("Items it may pay for.")
    ] = ()
    match: Annotated[
        Fraction | None, Key("Money of others wanted for each unit of this: 100 % is one for one.", "100 %")
    ] = None
    match_rule: Annotated[MatchRule | None, Key("What it counts as match, where not everything.")] = None
    spend_by: Annotated[Date | None, Key("Last day on which its money may be spent.", "2028-03-31")] = None
    notes: Annotated[
        Prose | None, Key("What else was said or agreed.", "Pays after the work, on the surveyor's certificate.")
    ] = None
    kept_back: Annotated[Money, Key("What is kept back of it for something else.", 5000)] = Decimal(0)
    eligible: Annotated[
        tuple[Annotated[PricedKind, Key("A kind of work.")], ...], Key("Kinds of work it may pay for, where not all.")
    ] = ()
    public: Annotated[str, Key("The name under which it may stand on the donors' page.", "The friends of the ship")] = (
        ""
    )
    decided: Annotated[Date | None, Key("Day on which it is decided.", "2027-03-08")] = None
    granted: Annotated[
        tuple[Granted, ...],
        Key(
            "What of it is granted for which item or line. Applications to others leave it out of what they ask for, and do not count it as match."
        ),
    ] = ()
    here: Place


class Funding(Noun, frozen=True, kw_only=True):
    """Where the money may come from."""

    tender: OfTender = ""
    sources: Annotated[
        tuple[FundingSource, ...], Key("The sources of money, in the order in which they would be spent.")
    ]


class Weights(Noun, frozen=True, kw_only=True):
    """Weights of the three scores of an item."""

    risk: Annotated[int, Key("Weight of the risk if it is put off.", 5), Within(least=0, most=100)]
    preservation: Annotated[int, Key("How much preservation weighs beside the others.", 3), Within(least=0, most=100)]
    safety: Annotated[int, Key("How much safety weighs beside the others.", 4), Within(least=0, most=100)]


class Worth(Noun, frozen=True, kw_only=True):
    """The owner's judgement of one item."""

    must: Annotated[bool, Key("Whether it is done whatever the money.")] = False
    risk: Annotated[int, Key("Risk if it is put off, 0 to 5.", 4), Within(least=0, most=5)] = 0
    preservation: Annotated[int, Key("What it preserves, 0 to 5."), Within(least=0, most=5)] = 0
    safety: Annotated[int, Key("What it does for safety, 0 to 5."), Within(least=0, most=5)] = 0
    needs: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...], Key("Items that have to be bought with it.")
    ] = ()
    excludes: Annotated[
        tuple[Annotated[ItemRef, Key("An item.", "310")], ...], Key("Items that are not done together with it.")
    ] = ()
    before_bottom: Annotated[
        str,
        Key(
            "Why work on the topsides may be bought before bottom and anodes; left out, it may not.",
            "the maker of the paint gives it for this year",
        ),
    ] = ""
    public: Annotated[
        str, Key("A sentence for donors, who see only what has one.", "Renew the wasted plates of the bottom")
    ] = ""
    publish_cost: Annotated[bool, Key("Whether its cost may stand on the donors' page.")] = False
    here: Place


class Gift(Noun, frozen=True, kw_only=True):
    """What a gift does on the donors' page: a unit of a line, in words of its own."""

    line: Annotated[LineNumber, Key("The line of which a gift pays units.", "420.a")]
    one: Annotated[
        str, Key("One unit of it in words.", "a square metre of her bottom, coated for the next fifteen years")
    ]
    many: Annotated[
        str,
        Key(
            "The words that follow a number of units.", "square metres of her bottom, coated for the next fifteen years"
        ),
    ]
    here: Place


class Scope(Noun, frozen=True, kw_only=True):
    """The owner's judgement of each item, for the funding ladder: what must be done, what it is worth, and what goes with what. An item that is left out has no worth of its own and is bought only where another needs it."""

    tender: OfTender = ""
    weights: Annotated[Weights, Key("Weights of the three scores.")]
    items: Annotated[
        Mapping[str, Worth],
        Key("The owner's judgement, by the number of the item."),
        Keys(Form("^[0-9]+$", "Number of an item", "310")),
    ]
    confidence: Annotated[Confidence, Key("At which confidence the money is asked for.")] = "P80"
    gifts: Annotated[
        tuple[Gift, ...],
        Key("What gifts do, for the donors' page; what a unit comes to stands there, rounded up."),
    ] = ()
    publish_total: Annotated[
        bool,
        Key(
            "Whether what the whole docking comes to, and how much of it is still wanted, may stand on the donors' page."
        ),
    ] = False
    steps: Annotated[int, Key("How many further steps of the ladder are worked out."), Within(least=0, most=12)] = 5
    here: Place
