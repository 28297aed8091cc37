"""What the owner adds to the returned bids so that they can be compared: confidential."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.kinds import Date, LineNumber, Money, OfTender, Price
from tenderwright.model.marks import Form, Key, Keys, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class StatedCost(Noun, frozen=True, kw_only=True):
    """A cost of the owner's that goes with one bid."""

    amount: Annotated[Money, Key("What it costs the owner.", 5880)]
    basis: Annotated[str, Key("Where it is from.", "tow master's letter, 2027-02")] = ""


class OwnersCosts(Noun, frozen=True, kw_only=True):
    """What choosing one bid costs the owner beside its prices."""

    towing: Annotated[StatedCost | None, Key("Towing to that yard and home.")] = None
    travel: Annotated[StatedCost | None, Key("Travel of the owner's people and surveyor.")] = None
    owner_days: Annotated[StatedCost | None, Key("All the owner's days together, in place of days times day cost.")] = (
        None
    )
    day_cost: Annotated[
        Money | None, Key("The owner's cost of a day at that yard, in place of the one published in package.yaml.", 910)
    ] = None
    days: Annotated[
        int | None,
        Key("Days from arrival to redelivery, in place of those in the bid.", 37),
        Within(least=0, most=1000),
    ] = None
    days_basis: Annotated[str, Key("Where those days are from.", "answered on 2027-02-22")] = ""
    here: Place


class Adder(Noun, frozen=True, kw_only=True):
    """One adder; it names an exclusion, lines, or both."""

    bid: Annotated[str, Key("The bid, by its file in owner/bids/ without `.yaml`.", "corve-harbour-dock")]
    exclusion: Annotated[
        str,
        Key(
            "The exclusion, assumption or alternative that it prices, in the yard's words or the beginning of them.",
            "Disposal of spent abrasive",
        ),
    ] = ""
    lines: Annotated[
        tuple[Annotated[LineNumber, Key("A line of the tender.", "420.a")], ...],
        Key("Lines that it prices; those of the exclusion where none are given."),
    ] = ()
    amount: Annotated[Money | None, Key("Amount added. Left out, the lines are brought to what `take` says.", 7200)] = (
        None
    )
    take: Annotated[
        str,
        Key(
            "Bring the lines to the rates of the one other bid that asks the most for all of them, or to the owner's estimate; left out, what `award.exclusions` in package.yaml says."
        ),
        OneOf("highest", "estimate"),
    ] = ""
    why: Annotated[str, Key("Why it is added, as the bidders may be told.", "Waste of blasting is left out")]
    here: Place


class ConfirmedRate(Noun, frozen=True, kw_only=True):
    """A clerical mistake that the bidder has confirmed."""

    bid: Annotated[str, Key("The bid, by its file in owner/bids/ without `.yaml`.", "corve-harbour-dock")]
    line: Annotated[LineNumber, Key("The line whose rate was confirmed.", "420.a")]
    rate: Annotated[
        Price,
        Key("The rate that was meant, to four decimals; for a mark-up, the percentage.", 84.5, 12.375),
    ]
    confirmed: Annotated[Date, Key("Day on which the bidder confirmed it.", "2027-02-19")]
    note: Annotated[str, Key("How the bidder confirmed it.", "letter of the yard manager")] = ""
    here: Place


class Finding(Noun, frozen=True, kw_only=True):
    """What the owner finds of one bid: something missed, and whether it is waived."""

    bid: Annotated[str, Key("The bid, by its file in owner/bids/ without `.yaml`.", "corve-harbour-dock")]
    missed: Annotated[
        str,
        Key("What the bid does not do."),
        OneOf(
            "addenda",
            "edition",
            "site visit",
            "closing day",
            "validity",
            "terms",
            "dates",
            "days",
            "facility",
            "criterion",
            "arithmetic",
            "answers",
            "signed forms",
        ),
    ]
    criterion: Annotated[
        int | None, Key("Which of the criteria in package.yaml, counted from 1.", 3), Within(least=1, most=100)
    ] = None
    waived: Annotated[bool, Key("Whether the owner lets it pass; otherwise it counts as missed.")] = False
    why: Annotated[str, Key("What was found, and on what ground it is waived.", "The page of dates came a day later")]
    here: Place


class SettledRemark(Noun, frozen=True, kw_only=True):
    """A remark by line, an assumption or an alternative of a bid, settled. It names lines whose remarks it settles, or begins with the words of an assumption or alternative."""

    bid: Annotated[str, Key("The bid, by its file in owner/bids/ without `.yaml`.", "corve-harbour-dock")]
    remark: Annotated[
        str, Key("The yard's words, or the beginning of them.", "Bay 2 is roofed: sheeting is offered to the deck edge")
    ] = ""
    lines: Annotated[
        tuple[Annotated[LineNumber, Key("A line of the tender.", "420.a")], ...],
        Key("Lines whose remarks are settled."),
    ] = ()
    by: Annotated[str, Key("Who settled it, by office.", "Ship manager, with the naval architect")]
    why: Annotated[
        str, Key("What it comes to, and by what that is known.", "No effect on the price; asked on 2027-02-24")
    ]
    here: Place


class JudgedCriterion(Noun, frozen=True, kw_only=True):
    """Whether one bid meets one criterion of award, as the owner judges."""

    bid: Annotated[str, Key("The bid, by its file in owner/bids/ without `.yaml`.", "corve-harbour-dock")]
    criterion: Annotated[
        int, Key("Which of the criteria in package.yaml, counted from 1.", 3), Within(least=1, most=100)
    ]
    met: Annotated[
        bool,
        Key(
            "Whether the bid meets it; one that it does not meet counts as missed, and may be waived under `responsive`."
        ),
    ]
    why: Annotated[str, Key("By what that is known.", "certificate 1182, valid until 2028-03-31")]
    here: Place


class SettledDoubt(Noun, frozen=True, kw_only=True):
    """A doubt that the reading of a returned form left to a person, settled."""

    bid: Annotated[str, Key("The bid, by its file in owner/bids/ without `.yaml`.", "corve-harbour-dock")]
    doubt: Annotated[
        str,
        Key("The doubt as it stands in the bid, or the beginning of it.", "`Price form!G57`: the price is struck out"),
    ]
    by: Annotated[str, Key("Who settled it, by office.", "Ship manager, with the treasurer")]
    why: Annotated[
        str, Key("On what ground, with the paper that shows it.", "Letter of the dock manager, 2027-02-24: 13.80")
    ]
    line: Annotated[LineNumber | None, Key("The line whose answer was settled.", "420.a")] = None
    rate: Annotated[
        Price | None, Key("The rate or price that the bidder meant; for a mark-up, the percentage.", 13.8)
    ] = None
    status: Annotated[
        str,
        Key("How that line is answered, where it has no rate."),
        OneOf("included", "no bid", "empty"),
    ] = ""
    here: Place


class Evaluation(Noun, frozen=True, kw_only=True):
    """What the owner adds to the returned bids so that `tenderwright bids compare` can compare them: costs that go with a yard, exclusions priced, mistakes that bidders confirmed, what is waived, and which criteria are met."""

    tender: OfTender = ""
    bids: Annotated[
        Mapping[str, OwnersCosts],
        Key("By bid, what choosing it costs the owner beside its prices."),
        Keys(Form("^\\S+$", "Name of a bid", "corve-harbour-dock")),
    ] = field(default_factory=dict)
    adders: Annotated[
        tuple[Adder, ...],
        Key(
            "What bids leave out, priced and added to them. Lines that are empty or not bid are priced without being listed here."
        ),
    ] = ()
    corrections: Annotated[
        tuple[ConfirmedRate, ...], Key("Clerical mistakes that the bidder has confirmed in writing.")
    ] = ()
    remarks: Annotated[
        tuple[SettledRemark, ...],
        Key(
            "Remarks by line, assumptions and alternatives, settled one by one; bids are ranked once all are. One that costs something is priced under `adders`."
        ),
    ] = ()
    responsive: Annotated[
        tuple[Finding, ...], Key("What bids miss beside price, as the owner finds, and whether it is waived.")
    ] = ()
    doubts: Annotated[
        tuple[SettledDoubt, ...],
        Key("Doubts of the reading of returned forms, settled one by one; until all are, the bids are not compared."),
    ] = ()
    criteria: Annotated[
        tuple[JudgedCriterion, ...],
        Key(
            "Whether bids meet the criteria in package.yaml, as the owner judges; one that is not listed is still to be judged."
        ),
    ] = ()
    here: Place
