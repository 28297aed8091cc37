"""What was found, changed, measured and done in dock: one file for each week or day."""

from typing import Annotated

from msgspec import field

from tenderwright.model.build import Name, Prose
from tenderwright.model.inspected import InspectionResult, RegisterEntry
from tenderwright.model.kinds import (
    AnyQuantity,
    Cause,
    Date,
    Fraction,
    ItemRef,
    LineName,
    Money,
    OfTender,
    SignedAnyQuantity,
    SignedMoney,
    Time,
    WorkName,
)
from tenderwright.model.marks import Form, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

WAITING = "waiting"


class ConditionReport(Noun, frozen=True, kw_only=True):
    """A condition-found report. It is priced by the quantity of its line, else by hours of a line of the pool, else by the amount that the yard asks."""

    report: Annotated[Name, Key("Number of the report, which changes name.", "CF-01")]
    day: Annotated[Date, Key("Day on which it was found.", "2027-05-12")]
    hour: Annotated[
        str,
        Key("Hour at which the report was handed over.", "15:30"),
        Form("^([01][0-9]|2[0-3]):[0-5][0-9]$", "Time of day"),
    ] = ""
    item: Annotated[ItemRef | None, Key("The item of the tender that it belongs to.", "310")] = None
    line: Annotated[LineName | None, Key("Line of the contract by which the repair is priced.", "310.b")] = None
    quantity: Annotated[AnyQuantity | None, Key("How much of that line the repair takes.", "180 kg")] = None
    where: Annotated[str, Key("Where in the ship it was found.", "strake F, starboard, Fr 51 to Fr 53")]
    extent: Annotated[str, Key("How much, with unit.", "1.4 m2")] = ""
    found: Annotated[Prose, Key("What was found there.", "Plate wasted to 5.1 mm along the limber.")]
    cause: Annotated[Prose | None, Key("Why it came about.", "Water stood under the cement.")] = None
    repair: Annotated[Prose | None, Key("What the yard recommends.", "Crop and renew 1.4 m2.")] = None
    hours: Annotated[Time | None, Key("Hours of the pool that the repair takes, by its line.", "24 h")] = None
    materials: Annotated[Money | None, Key("Materials at cost, to which the mark-up of the bid is added.", 640)] = None
    amount: Annotated[Money | None, Key("The price that the yard asks.", 2350)] = None
    days: Annotated[int, Key("Days that it adds to the contract.", 2), Within(least=0, most=1000)] = 0
    answer_by: Annotated[
        str,
        Key(
            "Last day or hour for the answer; left out, the answering time of the award from the report.",
            "2027-05-12",
            "2027-05-12 16:00",
        ),
        Form("^[0-9]{4}-[0-9]{2}-[0-9]{2}( ([01][0-9]|2[0-3]):[0-5][0-9])?$", "Day, or day and time"),
    ] = ""
    decision: Annotated[
        str,
        Key("What the owner decided; left out, it waits for an answer."),
        OneOf("accepted", "rejected", "deferred", "waiting"),
    ] = WAITING
    decided: Annotated[Date | None, Key("Day on which the owner decided.", "2027-05-13")] = None
    by: Annotated[Name | None, Key("Who decided, by an office that the award names.", "Ship manager")] = None
    note: Annotated[str, Key("What is to be said of the decision.", "Riveted, since it shows.")] = ""
    here: Place


class ChangeOrder(Noun, frozen=True, kw_only=True):
    """A change to one line of the contract, priced in one way: a lump sum as bid, a `quantity` at the unit rate, `hours` or `materials` of the pool, or a `negotiated` amount."""

    change: Annotated[Name, Key("Number of the change order.", "CO-01")]
    day: Annotated[Date, Key("Day on which it was written.", "2027-05-12")]
    line: Annotated[LineName, Key("Line of the contract that it changes.", "310.b")]
    item: Annotated[ItemRef | None, Key("Item that it belongs to, where its line does not say.", "310")] = None
    quantity: Annotated[
        SignedAnyQuantity | None,
        Key("How much more of the line, at its rate in the bid; less than nothing where it takes off.", "180 kg"),
    ] = None
    hours: Annotated[Time | None, Key("Hours of a line of the pool.", "24 h")] = None
    materials: Annotated[Money | None, Key("Materials at cost, to which the mark-up of the bid is added.", 640)] = None
    negotiated: Annotated[
        SignedMoney | None,
        Key("An amount agreed, where neither a rate nor the pool fits; less than nothing where it takes off.", 1800),
    ] = None
    no_rate_fits: Annotated[
        str, Key("Why no unit rate of the item covers the work.", "the rates are for plate, and this is cement")
    ] = ""
    cause: Annotated[Cause, Key("What kind of cause it has.", "condition found")]
    what: Annotated[str, Key("What the change order changes.", "180 kg more plate in strake F")]
    days: Annotated[int, Key("Days that it adds to the contract.", 2), Within(least=0, most=1000)] = 0
    condition: Annotated[Name | None, Key("The condition-found report that it answers.", "CF-01")] = None
    by: Annotated[Name | None, Key("Who signed it, by office.", "Ship manager")] = None
    signed: Annotated[Date | None, Key("Day signed; left out while it waits for a signature.", "2027-05-12")] = None
    here: Place


class Measured(Noun, frozen=True, kw_only=True):
    """All that was done by one line up to a day."""

    line: Annotated[LineName, Key("The line that was measured.", "310.b")]
    quantity: Annotated[AnyQuantity, Key("All of it that was done.", "640 kg")]
    day: Annotated[Date | None, Key("Day measured; left out, the last that the file tells of.", "2027-05-12")] = None
    rate_agreed: Annotated[
        str,
        Key(
            "What was agreed of its rate, where the quantity lies outside the range within which it holds.",
            "stays, by the measuring sheet of 2027-05-07",
        ),
    ] = ""
    here: Place


class LeftOut(Noun, frozen=True, kw_only=True):
    """An item or a line taken out of the contract, or put off."""

    work: Annotated[WorkName, Key("An item or a line.", "750", "440.b")]
    day: Annotated[Date, Key("Day on which it was decided.", "2027-05-12")]
    why: Annotated[str, Key("Why it is left out or put off.", "No dry days left for it")]
    by: Annotated[Name, Key("Who decided it, by office.", "Trustees")]
    paid: Annotated[Money | None, Key("What is paid for it all the same, such as material already bought.", 420)] = None
    until: Annotated[str, Key("When it is to be done.", "next docking")] = ""
    here: Place


class Restored(Noun, frozen=True, kw_only=True):
    """An item or a line that is in the contract again."""

    work: Annotated[WorkName, Key("An item or a line.", "750", "440.b")]
    day: Annotated[Date, Key("Day on which it was decided.", "2027-05-12")]
    why: Annotated[str, Key("Why it is in the contract again.", "The plate was found thinner than the survey said")]
    by: Annotated[Name, Key("Who decided it, by office.", "Trustees")]
    here: Place


class Progress(Noun, frozen=True, kw_only=True):
    """How far an item is."""

    item: Annotated[ItemRef, Key("The item whose progress it is.", "310")]
    done: Annotated[Fraction, Key("Share that is done.", "60 %")]
    here: Place


class ActualDays(Noun, frozen=True, kw_only=True):
    """Days of the docking as they came."""

    arrived: Annotated[Date | None, Key("Day of arrival at the yard.", "2027-05-03")] = None
    docked: Annotated[Date | None, Key("Day on which she landed on the blocks.", "2027-05-05")] = None
    dry: Annotated[Date | None, Key("Day the dock was dry.", "2027-05-05")] = None
    undocked: Annotated[Date | None, Key("Day on which she floated again.", "2027-06-02")] = None
    departed: Annotated[Date | None, Key("Day she left the yard.", "2027-06-09")] = None


class InDock(Noun, frozen=True, kw_only=True):
    """What was found, changed, measured and done in dock: a file for each week or day, compared with the awarded bid of owner/award.yaml."""

    tender: OfTender = ""
    until: Annotated[Date, Key("Last day that this file tells of.", "2027-05-12")]
    days: Annotated[ActualDays, Key("Days of the docking as they came; a later file goes before an earlier one.")] = (
        field(default_factory=ActualDays)
    )
    conditions: Annotated[tuple[ConditionReport, ...], Key("The condition-found reports of these days.")] = ()
    changes: Annotated[tuple[ChangeOrder, ...], Key("The change orders of these days.")] = ()
    measured: Annotated[
        tuple[Measured, ...], Key("Quantities measured on the ship, all that was done by a line up to that day.")
    ] = ()
    deleted: Annotated[tuple[LeftOut, ...], Key("Work taken out of the contract.")] = ()
    deferred: Annotated[
        tuple[LeftOut, ...], Key("Work put off to another time, and so taken out of the contract.")
    ] = ()
    restored: Annotated[
        tuple[Restored, ...], Key("Work that was taken out or put off, and is in the contract again.")
    ] = ()
    progress: Annotated[tuple[Progress, ...], Key("How far the items are on the last day of the file.")] = ()
    inspections: Annotated[
        tuple[InspectionResult, ...], Key("What inspections, tests and reports of the inspection plan came to.")
    ] = ()
    openings: Annotated[
        tuple[RegisterEntry, ...],
        Key("What became of rows of the register of openings: opened, closed, tested, signed."),
    ] = ()
    here: Place
