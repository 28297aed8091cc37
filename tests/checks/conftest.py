from __future__ import annotations

import pytest

from tenderwright.reading.package import Files
from tenderwright.starter.write import write_starter
from tests.model.packages import read


@pytest.fixture(scope="session")
def starter(tmp_path_factory: pytest.TempPathFactory) -> Files:
    root = tmp_path_factory.mktemp("starter") / "package"
    write_starter(root)
    return read(root)
