from __future__ import annotations

import pytest

from tests.pricing.in_dock.conftest import Docked
from tests.pricing.in_dock.sandling import compiled, write_docked


@pytest.fixture(scope="session")
def docked(tmp_path_factory: pytest.TempPathFactory) -> Docked:
    return compiled(write_docked(tmp_path_factory.mktemp("docked") / "sandling"))
