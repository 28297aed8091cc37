"""A coating names a grade of preparation that a standard knows, and the profile of a blast.

Ground: grades of ISO 8501-1, ISO 8501-4 and SSPC, by which preparation is accepted; profile as in ISO 8503-1 (from
memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.coatings.grades import preparation_grade
from tenderwright.calculations.method import OutOfRange
from tenderwright.checks.context import Context
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Scheme
from tenderwright.notices import Notice

CODE = "coating-without-preparation"
_PROFILED = ("Sa 2", "Sa 2 1/2", "Sa 3")
"""Blasts that make a profile for the coating to key into."""


def check(context: Context) -> Iterator[Notice]:
    """Report schemes in use whose preparation nobody could accept or reject."""
    for scheme in context.package.schemes:
        if appliers(context.package, scheme):
            yield from _preparation(scheme)


def _preparation(scheme: Scheme) -> Iterator[Notice]:
    preparation = scheme.preparation
    try:
        grade = preparation_grade(preparation.grade)
    except OutOfRange:
        message = (
            f"scheme `{scheme.scheme}` asks for preparation `{preparation.grade}`, which is not a grade of a standard"
        )
        hint = "write one grade, as in `Sa 2 1/2`, `St 3`, `SSPC-SP 10` or `Wa 2 1/2`"
        yield Notice(CODE, preparation.here, message, hints=(hint,))
        return
    if grade.iso in _PROFILED and (preparation.profile_low is None or preparation.profile_high is None):
        message = f"scheme `{scheme.scheme}` asks for a blast to {preparation.grade} and states no profile"
        yield Notice(CODE, preparation.here, message, hints=("add `profile_low: 50 um` and `profile_high: 85 um`",))
