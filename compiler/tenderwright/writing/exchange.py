"""Lets two folders change places in one step, where the system can."""

from __future__ import annotations

import ctypes
import os
import sys
from pathlib import Path

_FROM_HERE = -100
"""Paths are taken from the working folder (AT_FDCWD of Linux)."""
_EXCHANGE = 2
"""RENAME_EXCHANGE of Linux, RENAME_SWAP of macOS."""


def exchange(one: Path, other: Path) -> bool:
    """Let two folders change places, so that no moment has neither; False, touching nothing, where that cannot be."""
    if sys.platform not in ("linux", "darwin"):
        return False
    names = os.fsencode(one), os.fsencode(other)
    library = ctypes.CDLL(None)
    if sys.platform == "darwin":
        call = getattr(library, "renamex_np", None)
        return call is not None and call(*names, _EXCHANGE) == 0
    call = getattr(library, "renameat2", None)
    return call is not None and call(_FROM_HERE, names[0], _FROM_HERE, names[1], _EXCHANGE) == 0
