from __future__ import annotations

import pytest

from tenderwright.reading.package import Files
from tenderwright.starter.write import write_starter
from tests.model.packages import put, read

PROGRAMME = """week: 6
activities:
  - { activity: dock, item: "110", kind: docking, likely: 1 d }
  - { activity: clean, item: "140", likely: 2 d }
  - { activity: wash, item: "210", likely: 1 d }
  - { activity: rivet, item: "320", low: 1 d, likely: 2 d, high: 6 d }
  - { activity: coat, item: "420", likely: 4 d, outdoors: true }
  - { activity: cure, item: "420", kind: cure, likely: 2 d, after: [coat] }
  - { activity: undock, item: "110", kind: undocking, likely: 1 d }
"""


@pytest.fixture(scope="session")
def starter(tmp_path_factory: pytest.TempPathFactory) -> Files:
    root = tmp_path_factory.mktemp("starter") / "package"
    write_starter(root)
    return read(root)


@pytest.fixture(scope="session")
def planned(starter: Files) -> Files:
    return put(starter, "owner/programme.yaml", PROGRAMME)
