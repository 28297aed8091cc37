"""Copy a thing with some of its fields changed: a noun of the format, or a dataclass."""

from __future__ import annotations

import dataclasses
from typing import Any

from msgspec import Struct, structs


def replace(thing: Any, **changes: Any) -> Any:
    """Give the thing with these fields changed."""
    return structs.replace(thing, **changes) if isinstance(thing, Struct) else dataclasses.replace(thing, **changes)
