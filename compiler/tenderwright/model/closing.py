"""The final account of an earlier docking, kept among the owner's papers."""

from typing import Annotated

from tenderwright.model.findings import Totals
from tenderwright.model.kinds import AnyQuantity, Cause, Currency, DockingRef, LineNumber, Price, SignedMoney
from tenderwright.model.marks import KEPT, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class AccountLine(Noun, frozen=True, kw_only=True):
    """What one line of an earlier tender came to."""

    line: Annotated[LineNumber, Key("Line of the tender of that docking.", "310.a")]
    work: Annotated[str, Key("What it was for."), KEPT]
    kind: Annotated[str, Key("Kind of the line in that tender.", "contingent"), KEPT] = ""
    quantity: Annotated[AnyQuantity | None, Key("Quantity as measured at the end.", "1240 kg"), KEPT] = None
    estimate: Annotated[SignedMoney | None, Key("The owner's estimate.", 17500), KEPT] = None
    bid: Annotated[SignedMoney | None, Key("What the yard bid for it.", 18200), KEPT] = None
    contract: Annotated[SignedMoney, Key("In the contract.", 18200)]
    changes: Annotated[SignedMoney, Key("All changes to it.", 2310)]
    final: Annotated[SignedMoney, Key("Paid in the end.", 20510)]
    rate: Annotated[
        Price | None,
        Key("What was paid for a unit in the end, all changes included, to four decimals.", 46.5),
        Within(least=-(10**12)),
        KEPT,
    ] = None
    here: Place


class AccountChange(Noun, frozen=True, kw_only=True):
    """A change to the contract of an earlier docking."""

    change: Annotated[str, Key("Number of the change.", "CO-01")]
    line: Annotated[LineNumber, Key("Line it changed.", "310.a")]
    cause: Annotated[Cause, Key("What kind of cause it had.", "condition found"), KEPT]
    what: Annotated[str, Key("What was changed."), KEPT] = ""
    amount: Annotated[SignedMoney, Key("Amount; negative where it took off.", 2310)]
    here: Place


class Closing(Noun, frozen=True, kw_only=True):
    """The final account of one docking, written by `tenderwright close` where prices are not published."""

    docking: Annotated[DockingRef, Key("The docking, as in its history entry.", "docking-2027"), KEPT]
    currency: Annotated[Currency, Key("ISO 4217 code.", "EUR"), KEPT]
    lines: Annotated[tuple[AccountLine, ...], Key("Lines of the account.")]
    changes: Annotated[tuple[AccountChange, ...], Key("The log of changes to the contract.")] = ()
    totals: Annotated[Totals | None, Key("Sums as the yard states them, held against the lines.")] = None
    here: Place
