"""The checklist of the contract: how each matter is answered, by the data or in words, and which are gaps."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from tenderwright.model.contract import BID_SECURITY, PAYMENT_BOND, PERFORMANCE, REFUND, Contract, MatterAnswer
from tenderwright.model.matters import (
    ADVANCE,
    AGREEMENT,
    BY_WORK,
    DAMAGES,
    LEFT_OUT,
    MATTERS,
    NOT_SETTLED,
    RETENTION,
    SETTLED,
    TERMINATION,
    Matter,
)
from tenderwright.model.matters import BID as BID_MATTER
from tenderwright.model.matters import PAYMENT as PAYMENT_MATTER
from tenderwright.model.matters import PERFORMANCE as PERFORMANCE_MATTER
from tenderwright.model.matters import REFUND as REFUND_MATTER
from tenderwright.model.tender import Tender

NOT_ANSWERED = "not answered"
SECURITY_OF = {
    BID_MATTER: BID_SECURITY,
    PERFORMANCE_MATTER: PERFORMANCE,
    PAYMENT_MATTER: PAYMENT_BOND,
    REFUND_MATTER: REFUND,
}


class Answered(Struct, frozen=True):
    """A matter with how it is answered."""

    matter: Matter
    state: str
    data: str = ""
    """What the data of the package answer, in words; what is missing, where they answer it in part."""
    said: MatterAnswer | None = None

    @property
    def gap(self) -> bool:
        """Tell whether it is still open."""
        return self.state in (NOT_SETTLED, NOT_ANSWERED)


def answered(contract: Contract, tender: Tender) -> tuple[Answered, ...]:
    """Give every matter of the checklist, in its order."""
    found = dict(_by_data(contract, tender))
    made = []
    for matter in MATTERS:
        state, words = found.get(matter.key, ("", ""))
        said = contract.matters.get(matter.key)
        told = state or (said.answer if said is not None else NOT_ANSWERED)
        if said is not None and said.answer == NOT_SETTLED:
            told = NOT_SETTLED
        made.append(Answered(matter, told, words, said))
    return tuple(made)


def _by_data(contract: Contract, tender: Tender) -> Iterator[tuple[str, tuple[str, str]]]:
    """Yield what the data answer: by matter, whether that settles it, and the words."""
    if contract.agreement:
        yield AGREEMENT, (SETTLED, contract.agreement)
    for matter, kind in SECURITY_OF.items():
        if found := contract.securities_of(kind):
            yield matter, (SETTLED, "; ".join(f"{one.share}, {one.form}" for one in found))
    ahead = [one for one in contract.payments if one.ahead]
    if ahead:
        yield ADVANCE, (SETTLED, "; ".join(f"{one.share} at {one.event}" for one in ahead))
    elif contract.payments:
        yield ADVANCE, (LEFT_OUT, "Nothing is paid before work is done")
        if not contract.securities_of(REFUND):
            yield REFUND_MATTER, (LEFT_OUT, "There is no advance")
    if contract.retention is not None:
        yield RETENTION, (SETTLED, f"{contract.retention.share} of each payment")
    if contract.payments:
        timed = [one.stage for one in contract.payments if not one.event and one.item is None]
        count = f"{len(contract.payments)} payments"
        words = f"{count}, of which these wait for no work: {', '.join(timed)}" if timed else count
        yield BY_WORK, (NOT_SETTLED if timed else SETTLED, words)
    if tender.damages is not None:
        days = f"from {tender.damages.after} d after the contract day"
        most = f", at most {tender.damages.most}" if tender.damages.most is not None else "; how far they go is open"
        state = SETTLED if tender.damages.most is not None else NOT_SETTLED
        yield DAMAGES, (state, f"{tender.currency} {tender.damages.a_day:,} a day {days}{most}")
    yield from _end(contract)


def _end(contract: Contract) -> Iterator[tuple[str, tuple[str, str]]]:
    """Yield how the early end is answered: it takes the hours until she can float, and words on when."""
    said = contract.says(TERMINATION)
    if contract.floatable is not None and said is not None:
        yield TERMINATION, (SETTLED, f"Fit to float within {contract.floatable}")
    elif contract.floatable is not None:
        yield TERMINATION, (NOT_SETTLED, f"Fit to float within {contract.floatable}; who may end it, and when, is open")
    elif said is not None:
        yield TERMINATION, (NOT_SETTLED, "The hours within which she is made fit to float are open")
