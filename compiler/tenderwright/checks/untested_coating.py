"""Old coating is tested for lead and polychlorinated biphenyls before work disturbs it.

Ground: 29 CFR 1915.1025 (lead in shipyards, from memory); 40 CFR 761.3 and 761.62 (dried paint with 50 ppm or more of
PCB is PCB bulk product waste).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.doer import depend_on
from tenderwright.checks.item_place import place_of_word
from tenderwright.notices import Notice

TESTS = "tests coating for lead or pcb"


def check(context: Context) -> Iterator[Notice]:
    """Report each item that disturbs old coating with no test of it before or in the item."""
    testers = {item.number for item in context.live_items if TESTS in item.does}
    for item in context.live_items:
        if item.number in testers or testers & context.before(item) or context.rests_on_broken(item):
            continue
        for key, word in (("does", "disturbs coating"), ("hazards", "coating disturbed")):
            if word in getattr(item, key):
                message = f"item {item.number} disturbs old coating, and nothing before it tests for lead or PCB"
                hint = depend_on(context, TESTS, "old-coating-sample")
                yield Notice("untested-coating", place_of_word(item, key, word), message, hints=(hint,))
                break
