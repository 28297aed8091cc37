"""Pins the date that libraries stamp into their output."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

_VARIABLE = "SOURCE_DATE_EPOCH"


@contextmanager
def source_date(timestamp: int) -> Iterator[None]:
    """Set SOURCE_DATE_EPOCH to a timestamp in seconds since 1970 UTC, and restore what was there before."""
    before = os.environ.get(_VARIABLE)
    os.environ[_VARIABLE] = str(timestamp)
    try:
        yield
    finally:
        if before is None:
            del os.environ[_VARIABLE]
        else:
            os.environ[_VARIABLE] = before


def iso_time(timestamp: int) -> str:
    """Give a timestamp as ISO 8601 in UTC, such as `2026-03-01T00:00:00Z`."""
    return datetime.fromtimestamp(timestamp, UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
