"""What floating waits for is signed by two people, one of the yard and one of the owner.

Ground: who did the work is not the only one who looks whether it is done (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.inspected import InspectionResult, RegisterEntry
from tenderwright.notices import Notice
from tenderwright.planning.inspection.in_words import words_for
from tenderwright.planning.inspection.results import PointResult, RowResult


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each hold that passed, and each row that was closed, with the signature of one person."""
    found = context.inspected
    both: list[PointResult | RowResult] = [*found.points, *found.rows]
    for result in both:
        if result.state == "signed once" and (last := result.told[-1]):
            message = f"{words_for(context.package, result)}: {_why(last)}"
            hint = "let the other side look and sign, and add the name under `yard:` or `owner:`"
            yield Notice("signed-by-one", last.here, message, hints=(hint,))


def _why(last: InspectionResult | RegisterEntry) -> str:
    if last.yard and last.owner:
        return f"`{last.yard}` signs for both sides"
    return "the owner's signature is missing" if last.yard else "the yard's signature is missing"
