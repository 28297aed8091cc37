"""What an earlier docking cost, kept among the owner's papers: prices paid, or the final account line by line."""

from decimal import Decimal
from typing import Annotated

from tenderwright.model.build import Prose, Reference
from tenderwright.model.findings import Totals
from tenderwright.model.kinds import (
    AnyQuantity,
    Cause,
    Currency,
    DockingRef,
    ItemRef,
    LineNumber,
    Price,
    SignedMoney,
)
from tenderwright.model.marks import Kept, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

_ACCOUNT = Kept("a closed account is kept whole")


class CauseOfGrowth(Noun, frozen=True, kw_only=True):
    """What one cause made a price grow by."""

    cause: Annotated[Cause, Key("What kind of cause it was.", "condition found")]
    amount: Annotated[SignedMoney, Key("Amount; negative where it came out less.", 2310)]


class Paid(Noun, frozen=True, kw_only=True):
    """A price paid."""

    work: Annotated[str, Key("What was paid for at this price.", "Blast and coat the underwater shell")]
    item: Annotated[ItemRef | None, Key("The item of this package that it compares with.", "420")] = None
    quantity: Annotated[str, Key("How much of it was paid for, with its unit.", "42 m2")] = ""
    unit: Annotated[str, Key("Unit in which it was paid, where it was paid by quantity.", "m2")] = ""
    rate: Annotated[
        Price | None,
        Key("What was paid for a unit in the end, all changes included, to four decimals.", 46.5),
        Within(least=-(10**12)),
    ] = None
    amount: Annotated[
        SignedMoney, Key("Amount in the currency of that docking; negative where money came back.", 18450.5)
    ]
    growth: Annotated[SignedMoney | None, Key("How much of it was growth; negative where it came out less.", 2310)] = (
        None
    )
    growth_causes: Annotated[tuple[CauseOfGrowth, ...], Key("The growth by its causes.")] = ()
    here: Place


class AccountLine(Noun, frozen=True, kw_only=True):
    """What one line of an earlier tender came to."""

    line: Annotated[LineNumber, Key("Line of the tender of that docking.", "310.a")]
    work: Annotated[str, Key("What it was for.", "Shell plate, renew")]
    kind: Annotated[str, Key("Kind of the line in that tender.", "contingent")] = ""
    quantity: Annotated[AnyQuantity | None, Key("Quantity as measured at the end.", "1240 kg")] = None
    estimate: Annotated[SignedMoney | None, Key("The owner's estimate.", 17500), _ACCOUNT] = None
    bid: Annotated[SignedMoney | None, Key("What the yard bid for it.", 18200), _ACCOUNT] = None
    contract: Annotated[SignedMoney, Key("Its amount in the contract.", 18200)]
    changes: Annotated[SignedMoney, Key("All changes to it.", 2310)]
    final: Annotated[SignedMoney, Key("Paid in the end.", 20510)]
    rate: Annotated[
        Price | None,
        Key("What was paid for a unit in the end, all changes included, to four decimals.", 46.5),
        Within(least=-(10**12)),
    ] = None
    here: Place


class AccountChange(Noun, frozen=True, kw_only=True):
    """A change to the contract of an earlier docking."""

    change: Annotated[str, Key("Number of the change.", "CO-01")]
    line: Annotated[LineNumber, Key("The line that it changed.", "310.a")]
    cause: Annotated[Cause, Key("What kind of cause it had.", "condition found")]
    what: Annotated[str, Key("What the order changed.", "180 kg more plate in strake F"), _ACCOUNT] = ""
    amount: Annotated[SignedMoney, Key("Amount; negative where it took off.", 2310)]
    here: Place


class Closing(Noun, frozen=True, kw_only=True):
    """What one docking cost: its final account as `tenderwright close` writes it, or the prices that are known."""

    docking: Annotated[DockingRef, Key("The docking, as in its history entry.", "docking-2027")]
    tender: Annotated[
        str,
        Key(
            "Number of the tender of that docking: where it is not that of this package, the lines and items named here are of that tender.",
            "HPT-2027-01",
        ),
    ] = ""
    currency: Annotated[Currency, Key("Currency, by its three letters of ISO 4217.", "EUR")] = ""
    prices: Annotated[tuple[Paid, ...], Key("Prices paid, where there is no account line by line.")] = ()
    lines: Annotated[tuple[AccountLine, ...], Key("Lines of the account.")] = ()
    changes: Annotated[tuple[AccountChange, ...], Key("The log of changes to the contract.")] = ()
    totals: Annotated[Totals | None, Key("Sums as the yard states them, compared with the lines.")] = None
    remarks: Annotated[
        Prose | None,
        Key("What is to be said of that yard and its work.", "Kept its dates; its riveters came from elsewhere."),
    ] = None
    here: Place

    @property
    def paid(self) -> tuple[Paid, ...]:
        """Give the prices paid: those listed, and those of the lines of the account."""
        return (*self.prices, *(_paid(line, self.changes) for line in self.lines))

    @property
    def kinds(self) -> tuple[str, ...]:
        """Give the kind that each price paid had in its own tender; empty where that is not told."""
        return (*("" for _ in self.prices), *(line.kind for line in self.lines))


def _paid(line: AccountLine, changes: tuple[AccountChange, ...]) -> Paid:
    sums: dict[str, Decimal] = {}
    for change in changes:
        if change.line == line.line:
            sums[change.cause] = sums.get(change.cause, Decimal(0)) + change.amount
    causes = sorted(((cause, one) for cause, one in sums.items() if one), key=lambda one: (-abs(one[1]), one[0]))
    return Paid(
        work=line.work,
        item=Reference("item", line.line.partition(".")[0], line.here),
        quantity=line.quantity.text if line.quantity is not None else "",
        unit=line.quantity.unit if line.quantity is not None else "",
        rate=line.rate,
        amount=line.final,
        growth=line.changes,
        growth_causes=tuple(CauseOfGrowth(cause=cause, amount=amount) for cause, amount in causes),
        here=line.here,
    )
