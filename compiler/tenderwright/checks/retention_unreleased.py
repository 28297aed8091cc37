"""What is held back is paid at an event, and all of it.

Rule: each part of the retention names a day counted from an event or an item, and the parts add up to 100 %. Ground: a
retention without an event is argued about when both sides have least interest in it (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "retention-unreleased"
_EQUAL = 1e-6


def check(context: Context) -> Iterator[Notice]:
    """Report parts of the retention that no event releases, and parts that do not add up."""
    retention = context.package.contract.retention if context.package.contract is not None else None
    if retention is None:
        return
    for one in retention.releases:
        if one.at is None and one.item is None:
            message = f"{one.share} of what is held back is paid at no event"
            hint = "name under `at` the event that releases it, such as `redelivery + 365 d`, or the `item` accepted"
            yield Notice(CODE, one.here, message, hints=(hint,))
    whole = sum(one.share.si for one in retention.releases)
    if abs(whole - 1.0) > _EQUAL:
        message = f"{100 * whole:.4g} % of what is held back is ever paid, and not the whole of it"
        hint = "let the shares of `releases` add up to 100 %"
        yield Notice(CODE, retention.releases[0].share.at, message, hints=(hint,))
