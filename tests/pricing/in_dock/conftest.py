from __future__ import annotations

import pytest

from tenderwright.pipeline import Compiled, OwnersSide
from tenderwright.pricing.in_dock.ledger import Ledger

from .sandling import compiled, write_docked

Docked = tuple[Compiled, OwnersSide]


@pytest.fixture(scope="session")
def docked(tmp_path_factory: pytest.TempPathFactory) -> Docked:
    return compiled(write_docked(tmp_path_factory.mktemp("docked") / "sandling"))


@pytest.fixture(scope="session")
def ledger(docked: Docked) -> Ledger:
    assert docked[1].ledger is not None
    return docked[1].ledger
