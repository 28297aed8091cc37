"""The final account of an earlier docking, kept among the owner's papers."""

from typing import Annotated

from tenderwright.model.findings import Totals
from tenderwright.model.kinds import AnyQuantity, Cause, Currency, DockingRef, LineNumber, Price, SignedMoney
from tenderwright.model.marks import Kept, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

_ACCOUNT = Kept("a closed account is kept whole, and its sums are held against its lines")


class AccountLine(Noun, frozen=True, kw_only=True):
    """What one line of an earlier tender came to."""

    line: Annotated[LineNumber, Key("Line of the tender of that docking.", "310.a")]
    work: Annotated[str, Key("What it was for.", "Shell plate, renew"), _ACCOUNT]
    kind: Annotated[str, Key("Kind of the line in that tender.", "contingent"), _ACCOUNT] = ""
    quantity: Annotated[AnyQuantity | None, Key("Quantity as measured at the end.", "1240 kg"), _ACCOUNT] = None
    estimate: Annotated[SignedMoney | None, Key("The owner's estimate.", 17500), _ACCOUNT] = None
    bid: Annotated[SignedMoney | None, Key("What the yard bid for it.", 18200), _ACCOUNT] = None
    contract: Annotated[SignedMoney, Key("In the contract.", 18200)]
    changes: Annotated[SignedMoney, Key("All changes to it.", 2310)]
    final: Annotated[SignedMoney, Key("Paid in the end.", 20510)]
    rate: Annotated[
        Price | None,
        Key("What was paid for a unit in the end, all changes included, to four decimals.", 46.5),
        Within(least=-(10**12)),
        _ACCOUNT,
    ] = None
    here: Place


class AccountChange(Noun, frozen=True, kw_only=True):
    """A change to the contract of an earlier docking."""

    change: Annotated[str, Key("Number of the change.", "CO-01")]
    line: Annotated[LineNumber, Key("Line it changed.", "310.a")]
    cause: Annotated[Cause, Key("What kind of cause it had.", "condition found"), _ACCOUNT]
    what: Annotated[str, Key("What was changed."), _ACCOUNT] = ""
    amount: Annotated[SignedMoney, Key("Amount; negative where it took off.", 2310)]
    here: Place


class Closing(Noun, frozen=True, kw_only=True):
    """The final account of one docking, written by `tenderwright close` where prices are not published."""

    docking: Annotated[DockingRef, Key("The docking, as in its history entry.", "docking-2027"), _ACCOUNT]
    currency: Annotated[Currency, Key("Currency, by its three letters of ISO 4217.", "EUR"), _ACCOUNT]
    lines: Annotated[tuple[AccountLine, ...], Key("Lines of the account.")]
    changes: Annotated[tuple[AccountChange, ...], Key("The log of changes to the contract.")] = ()
    totals: Annotated[Totals | None, Key("Sums as the yard states them, held against the lines.")] = None
    here: Place
