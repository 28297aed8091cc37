"""Writes data as canonical JSON: the same data always gives the same bytes."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

Json = None | bool | int | float | str | Decimal | date | Sequence["Json"] | Mapping[str, "Json"]


def canonical_json(data: Json, *, keep_order: bool = False) -> bytes:
    """Write data as JSON with sorted keys, two-space indents, UTF-8 and a last newline.

    With `keep_order` keys stay in the order given, where that order says something.
    Decimals are written as strings, so that no digit is lost, and dates as ISO 8601. Raises `ValueError` for
    numbers that JSON has no way to write.
    """
    text = json.dumps(data, default=_plain, sort_keys=not keep_order, indent=2, ensure_ascii=False, allow_nan=False)
    return f"{text}\n".encode()


def strict(data: Any) -> Any:
    """Give data without what JSON has no word for: a figure that is none, or beyond all bounds, is null."""
    if isinstance(data, dict):
        return {str(key): strict(value) for key, value in data.items()}
    if isinstance(data, list):
        return [strict(value) for value in data]
    return None if isinstance(data, float) and not math.isfinite(data) else data


def _plain(value: object) -> str:
    if isinstance(value, Decimal):
        return format(value, "f")
    if isinstance(value, date):
        return value.isoformat()
    raise TypeError(f"{type(value).__name__} cannot be written as JSON")
