"""What holds for every test: no clock decides, and in CI nothing is left to chance or skipped for want of a program."""

from __future__ import annotations

import os
import shutil

import pytest
from hypothesis import HealthCheck, settings

from .programs import IN_CI, lacking

settings.register_profile(
    "no-clock", deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=IN_CI, print_blob=True
)
settings.load_profile("no-clock")


@pytest.fixture(scope="session", autouse=True)
def _caches(tmp_path_factory: pytest.TempPathFactory) -> None:
    """Keep what commands keep for their user away from the user's own caches."""
    os.environ["XDG_CACHE_HOME"] = str(tmp_path_factory.mktemp("caches"))


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Look for the programs named by `@pytest.mark.needs(...)` before anything is set up."""
    for mark in item.iter_markers("needs"):
        for program in mark.args:
            if shutil.which(program) is None:
                lacking(program)
