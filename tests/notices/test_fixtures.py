"""Mistakes of reading, shape, model, links, calculation and price are reported at their lines."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.fixtures.overlay import all_notices_of, cases, expected, lay_over_starter, name_of, places
from tests.notices.said import well_said


@pytest.mark.parametrize("case", cases("notices"), ids=name_of)
def test_the_mistake_is_reported_at_its_line(case: Path, tmp_path: Path) -> None:
    wanted = expected(case)
    assert {code for _, _, code in wanted} == {case.parent.name}
    notices = all_notices_of(lay_over_starter(case, tmp_path / "package"))
    assert places(notices) == wanted
    well_said(notices)
