"""What is told of earlier dockings holds together: nothing was put off until a year that was past.

Ground: derived.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "history-unlike"
_YEAR = re.compile(r"\b(1[5-9]|2[0-9])[0-9]{2}\b")


def check(context: Context) -> Iterator[Notice]:
    """Report what an earlier docking of this ship cannot have put off."""
    for docking in context.package.history:
        for index, one in enumerate(docking.deferred):
            years = [int(year.group()) for year in _YEAR.finditer(one.by)]
            if years and max(years) < docking.undocked.year:
                message = f"`{one.what}` was put off in {docking.undocked.year} until {one.by}"
                yield Notice(CODE, context.at(docking.here.path, "deferred", index, "by"), message)
