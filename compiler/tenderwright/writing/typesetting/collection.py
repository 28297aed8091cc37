"""When the garbage collector walks over what was laid out."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def paused_collection() -> Iterator[None]:
    """Keep the garbage collector from walking over all that is laid out again and again while more is made."""
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_enabled:
            gc.enable()
