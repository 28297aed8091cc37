"""The law: what is broken is told once, at its place, and nothing is told only since something else is broken."""

from __future__ import annotations

from tenderwright.notices.codes import CHECK_CODES, OWNER_CHECK_CODES
from tests.fuzz.breaks import Break
from tests.fuzz.broken_package import BrokenPackage, Told

_TRADE = frozenset((*CHECK_CODES, *OWNER_CHECK_CODES))
_MOST_OF_TRADE = 3

TRULY_SEVERAL: dict[frozenset[str], str] = {}
"""Codes beyond those of the trade checks that may stand side by side after one break, and why."""


def fault_of(told: Told) -> str:
    """Say how the notices after one break are not one for the cause; empty where they are.

    A cause is one break. Where it leaves a package that cannot be read or linked, that is one mistake, with all the
    places that name what is gone folded into it, and nothing is told beside it. Where the package still reads and
    links, it is another package, no broken one: a dependence taken away may have carried two safeguards, and each
    trade check that then speaks finds a danger of its own. A few of those may stand side by side.
    """
    codes = frozenset(notice.code for notice in told.notices)
    if len(told.notices) <= 1 or any(codes <= several for several in TRULY_SEVERAL):
        return ""
    if codes <= _TRADE and len(told.notices) <= _MOST_OF_TRADE:
        return ""
    return f"{len(told.errors)} mistakes and {len(told.warnings)} warnings for one cause"


def fault_of_two(package: BrokenPackage, one: Break, other: Break) -> str:
    """Say how two breaks at once bring more than each of them alone; empty where they do not."""
    both = len(package.told(one, other).errors)
    if one.path == other.path:
        return ""  # the second line may stand elsewhere after the first break
    alone = sum(len(package.told(each).errors) for each in (one, other))
    return f"{both} mistakes for two breaks that bring {alone} one by one" if both > alone else ""
