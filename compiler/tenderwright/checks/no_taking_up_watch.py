"""Somebody watches and pumps a hull of wood after she is floated, until she has taken up.

Ground: dry planking leaks until it swells, one to seven days (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import wood
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn where no item holds the watch after floating."""
    timber = context.found(wood)
    if timber is None or (timber.practice is not None and timber.practice.watch is not None):
        return
    at = timber.practice.here if timber.practice is not None else timber.here
    message = "no item watches and pumps her after she is floated, until the planking has taken up"
    hint = "write an item that watches and pumps her, and name it under `watch` of `practice`"
    yield Notice("no-taking-up-watch", at, message, hints=(hint,))
