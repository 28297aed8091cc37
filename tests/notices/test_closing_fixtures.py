"""What only `close` can see: findings that come to something else than the papers from the dock."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.starter.write import write_starter
from tests.closing.conftest import SMALL, compiled
from tests.closing.docked import WEEK, put_papers

CLOSED: dict[str, tuple[tuple[str, str, str], ...]] = {
    "account-differs": (
        ("quantity: 31 each", "quantity: 30 each", "CO-1"),
        ("quantity: 48 m2", "quantity: 47 m2", "420.a"),
    )
}
"""For each code, what is changed in the papers from the dock, and what stands on the line of the findings."""


@pytest.mark.parametrize(("code", "case"), [(code, n) for code, cases in CLOSED.items() for n in range(len(cases))])
def test_the_difference_is_told_at_its_line(code: str, case: int, tmp_path: Path) -> None:
    old, new, words = CLOSED[code][case]
    write_starter(tmp_path / "package")
    tendered = compiled(put_papers(tmp_path / "package", WEEK.replace(old, new)))
    (notice,) = tendered.check(SMALL).notices
    assert notice.code == code
    assert words in SMALL.read_text("utf-8").splitlines()[notice.place.line - 1]


OPEN = {"still-todo": ("found: Seat worn.", "found: todo")}
"""For each code, what is changed in the findings."""


@pytest.mark.parametrize("code", OPEN)
def test_what_is_open_in_the_findings_is_told_at_its_line(code: str, tmp_path: Path) -> None:
    old, new = OPEN[code]
    findings = tmp_path / "findings.yaml"
    findings.write_text(SMALL.read_text("utf-8").replace(old, new), "utf-8")
    write_starter(tmp_path / "package")
    tendered = compiled(put_papers(tmp_path / "package", WEEK))
    (notice,) = tendered.check(findings).notices
    assert notice.code == code
    assert new in findings.read_text("utf-8").splitlines()[notice.place.line - 1]
