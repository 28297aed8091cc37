"""The one failure of the write stage."""

from __future__ import annotations


class WritingError(Exception):
    """Says that an output could not be made as it should be, so that nothing is written."""
