"""Both sides of the bench of readings do what they say."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from tenderwright.calculations.ship.survey_readings import read_surveys
from tenderwright.documents.edition import Figure
from tenderwright.model.survey import Survey
from tenderwright.notices import Place
from tests.bench.readings import COLUMNS, by_numpy, ours, ship, write_surveys
from tests.replacing import replace


def test_both_readers_find_the_same_thicknesses(tmp_path: Path) -> None:
    files = write_surveys(tmp_path, 2000)
    package = ship()
    surveys = tuple(Survey(file.stem, file.read_text("utf-8"), Place(file.name)) for file in files)
    found, notices = read_surveys(replace(package, surveys=surveys))
    assert notices == []
    assert found is not None
    theirs = [np.loadtxt(file, delimiter=",", skiprows=1, dtype=COLUMNS)["measured_mm"] for file in files]
    assert found.plate.measured * 1e3 == pytest.approx(np.concatenate(theirs))
    assert len(found.plate) == 2000


def test_the_work_ends_in_a_drawing(tmp_path: Path) -> None:
    package = ship()
    files = write_surveys(tmp_path, 2000)
    assert isinstance(ours(package, files)(), Figure)
    assert len(by_numpy(files)()) == 2  # type: ignore[arg-type]
