"""Inputs as plain data in SI, as a person could write them into a file for `reckon`."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Protocol, runtime_checkable

import numpy as np


@runtime_checkable
class Built(Protocol):
    """A thing that a kernel takes ready built, and that can say what it was built from."""

    def as_input(self) -> Any:
        """Give what it was built from, as the kernel takes it too."""


_PLAIN = frozenset({float, int, str, bool})


def plain(value: Any) -> Any:
    """Turn an input of a kernel into numbers, texts, lists and mappings."""
    if value is None or type(value) in _PLAIN:
        return value
    if type(value) not in (dict, list, tuple) and isinstance(value, Built):
        return plain(value.as_input())
    if isinstance(value, Mapping):
        return {key: plain(entry) for key, entry in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain(entry) for entry in value]
    if isinstance(value, (np.ndarray, np.generic)):
        return plain(value.tolist())
    return value
