"""Mistakes in the papers from the dock: they stop only what rests on those papers."""

from __future__ import annotations

import sys
from collections.abc import Iterable

from tenderwright.notices import Notice, sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.reading.package import Files

FROM_THE_DOCK = ("owner/award.yaml", "owner/in-dock/")
"""The award, and what came after it."""


def stopping(notices: Iterable[Notice]) -> list[Notice]:
    """Give the mistakes that stop a paper which does not rest on the award and what came after it."""
    return [one for one in notices if one.severity == "error" and not _from_the_dock(one)]


def tell_dock_mistakes(notices: Iterable[Notice], files: Files) -> None:
    """Tell the mistakes in the papers from the dock, where a paper is written all the same."""
    found = sort_notices(one for one in notices if one.severity == "error" and _from_the_dock(one))
    if found:
        sys.stderr.write(as_text(found, files.texts))
        say_not_rested_on(found)


def say_not_rested_on(notices: Iterable[Notice]) -> None:
    """Say that mistakes in the papers from the dock stop nothing here, where there are any."""
    found = [one for one in notices if one.severity == "error" and _from_the_dock(one)]
    if found:
        print(f"{summary(found)} in the papers from the dock, on which this does not rest", file=sys.stderr)


def _from_the_dock(notice: Notice) -> bool:
    return notice.place.path.startswith(FROM_THE_DOCK)
