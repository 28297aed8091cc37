from __future__ import annotations

import pytest

from .run import Runner


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)
