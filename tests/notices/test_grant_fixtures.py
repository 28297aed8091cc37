"""Mistakes of applications for grants that only `grant` can see, since they rest on the trials."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.commands.grant import application_desk, chosen_grant, unmatched
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.starter.write import write_starter

FUNDING = "sources:\n  - { source: county, name: County fund, amount: 9000, match: 100 % }\n"
GRANT = 'profile: capital-activity\ntitle: Rivets\nsource: county\nitems: ["320"]\n'

APPLIED: dict[str, tuple[tuple[str, int], ...]] = {"grant-unmatched": (("asked: 8000\n", 5), ("asked: 9000.01\n", 5))}
"""For each code, what is written below an application, and the line on which it is told."""


@pytest.mark.parametrize(("code", "case"), [(code, n) for code, cases in APPLIED.items() for n in range(len(cases))])
def test_the_mistake_is_told_at_its_line(code: str, case: int, tmp_path: Path) -> None:
    written, line = APPLIED[code][case]
    root = tmp_path / "package"
    write_starter(root)
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    (root / "owner" / "grants" / "county.yaml").write_text(GRANT + written, "utf-8")
    files = read(root)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    assert [notice for notice in owner.notices if notice.severity == "error"] == []
    desk = application_desk(*chosen_grant("county", owner), compiled, owner)
    told = unmatched(desk.applied, files)
    assert [(notice.code, notice.place.path, notice.place.line) for notice in told] == [
        (code, "owner/grants/county.yaml", line)
    ]
    assert "9 000.00" in told[0].message
