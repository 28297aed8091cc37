"""What takes long to make is made once for all tests that read it, also where several workers share them out."""

from __future__ import annotations

import fcntl
import os
import pickle
from collections.abc import Callable
from pathlib import Path
from tempfile import mkdtemp
from typing import TypeVar

import pytest

Made = TypeVar("Made")


def once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], Made]) -> Made:
    """Make something in a folder of its own, or take what another worker of this run made; tests only read it."""
    if "PYTEST_XDIST_WORKER" not in os.environ:
        return make(factory.mktemp(name))
    shared = factory.getbasetemp().parent  # each worker has a folder of its own in that of the run
    kept = shared / f"{name}.pickle"
    with (shared / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not kept.exists():
            kept.write_bytes(pickle.dumps(make(Path(mkdtemp(prefix=f"{name}-", dir=shared)))))
        made: Made = pickle.loads(kept.read_bytes())
    return made
