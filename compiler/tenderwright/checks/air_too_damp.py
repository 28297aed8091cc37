"""The air of a dry space does not stay over 50 % relative humidity for two weeks.

Ground: inactive dry spaces are kept near 35 % (MIL-HDBK-1130), and steel rusts fast above 60 % (from memory); the limit
of 50 % and the two weeks are common practice, no source. Judged by the last readings of each space, never by the day
of the check.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.care import DAMP, damp_spaces
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of each space that was damp for two weeks up to its last reading."""
    for one in context.found(damp_spaces) or ():
        message = (
            f"the air in {one.place} was over {DAMP:.0%} from {one.first} to {one.last}, up to {one.highest:.0%}, and "
            "nothing was done about it"
        )
        hint = (
            "dry it and find where the damp comes in, then write what was done as a row of kind `action` for the place"
        )
        yield Notice("air-too-damp", one.here, message, hints=(hint,))
