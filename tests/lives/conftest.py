from __future__ import annotations

from pathlib import Path

import pytest

from .life import lay, stages


@pytest.fixture(scope="session")
def life(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Marram's life as a repository."""
    return lay(tmp_path_factory.mktemp("life") / "marram", stages())
