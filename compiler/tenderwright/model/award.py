"""The award: which bid, for which work and amount, and who may sign changes to it."""

from typing import Annotated

from tenderwright.model.build import Name
from tenderwright.model.kinds import Date, Fraction, ItemRef, LineName, Money, OfTender, Time, WorkName
from tenderwright.model.marks import Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Authority(Noun, frozen=True, kw_only=True):
    """Who may sign changes."""

    who: Annotated[str, Key("By office, not by name.", "Ship manager")]
    up_to: Annotated[Money | None, Key("Greatest amount of one change; left out where there is no limit.", 5000)] = None
    here: Place


class RatesHold(Noun, frozen=True, kw_only=True):
    """How far the quantity of a line may be from that tendered while its rate holds."""

    from_: Annotated[Fraction, Key("The least share of the quantity tendered.", "85 %"), Within(most="100 %")]
    to: Annotated[Fraction, Key("The greatest share of it.", "115 %"), Within(least="100 %", most="1000 %")]


class Award(Noun, frozen=True, kw_only=True):
    """Which bid was awarded, for which work and amount, and who may sign changes to it."""

    tender: OfTender = ""
    bid: Annotated[Name, Key("Name of the awarded bid's file under owner/bids/, without .yaml.", "corve")]
    awarded: Annotated[Date, Key("Day of the award.", "2027-04-12")]
    amount: Annotated[
        Money,
        Key(
            "Contract amount as it was awarded: the base price of the bid, with the options taken up, without what is dropped. Contingent lines and the hours pool count only as they are ordered.",
            912000,
        ),
    ]
    options: Annotated[
        tuple[Annotated[ItemRef, Key("An option.", "830")], ...], Key("Options taken up with the award.")
    ] = ()
    dropped: Annotated[
        tuple[Annotated[WorkName, Key("An item or a line.", "750", "440.b")], ...],
        Key("Items or lines that were not awarded."),
    ] = ()
    alternatives: Annotated[
        tuple[Annotated[LineName, Key("A line of the tender.", "335.a")], ...],
        Key(
            "Alternatives that are ordered, in the place of the lines that they stand instead of, or that stand instead of them."
        ),
    ] = ()
    contingency: Annotated[
        Money | None, Key("What the owner keeps ready for changes, beyond the contract amount.", 85000)
    ] = None
    answer_within: Annotated[
        Time | None, Key("Time in which the owner answers a report, where it says nothing else.", "24 h")
    ] = None
    authority: Annotated[tuple[Authority, ...], Key("Who may sign changes, and up to which amount each.")] = ()
    rates_hold: Annotated[
        RatesHold | None,
        Key("The range about a tendered quantity within which its rate holds, as the clause of the contract gives it."),
    ] = None
    pool: Annotated[
        tuple[Annotated[LineName, Key("A line of the tender.", "165.a")], ...],
        Key("Lines of the hours pool; left out, those of that section of the price form."),
    ] = ()
    days_line: Annotated[
        LineName | None,
        Key("Line by which a further day in dock is paid; left out, that of the owner's programme.", "115.a"),
    ] = None
    here: Place

    def may_sign(self, who: str) -> Authority | None:
        """Find who may sign by name of the office; None where nobody of that name may."""
        return next((one for one in self.authority if one.who == who), None)
