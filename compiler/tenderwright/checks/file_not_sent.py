"""Every file that is said to go along with the tender lies under references/.

Ground: a bidder prices what he can see, and a document that is named and not there holds up the tender (common
practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.travelling_files import sent
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean
from tenderwright.reading.travelling import FOLDER

CODE = "file-not-sent"


def check(context: Context) -> Iterator[Notice]:
    """Report each file that is named and cannot go along."""
    there = context.package.travelling
    for one in sent(context.package):
        if one.found is None:
            hints = did_you_mean(one.path, there) or (f"put the file itself into the package, under {FOLDER}",)
            yield Notice(CODE, one.here, f"{one.what}: `{one.path}` is not there, or cannot be read", hints=hints)
