"""Mistakes of applications for grants that only `grant` can see, since they rest on the trials."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.commands.grant import application_desk, chosen_grant, not_final, too_much_asked
from tenderwright.documents.grant_headings import lengths, under_headings
from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.starter.write import write_starter

FUNDING = "sources:\n  - { source: county, name: County fund, amount: 9000, match: 100 % }\n"
GRANT = 'profile: capital-activity\ntitle: Rivets\nsource: county\nitems: ["320"]\n'
_OTHERS = "  after: We look.\n  risks: Few.\n  supporting-documents: All.\n"
_WRITTEN = f"headings:\n  project: Rivets.\n  activity: People look on.\n{_OTHERS}"

APPLIED: dict[str, tuple[tuple[str, int], ...]] = {
    "grant-unmatched": ((f"asked: 8000\n{_WRITTEN}", 5), (f"asked: 9000.01\n{_WRITTEN}", 5)),
    "heading-empty": (("headings:\n  project: Rivets.\n  activity: todo\n" + _OTHERS, 7),),
    "heading-too-long": ((f"limits: {{ activity: {{ most: 2, of: words }} }}\n{_WRITTEN}", 8),),
}
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
    headings = under_headings(desk)
    told = too_much_asked(desk.applied, files)
    told += not_final(desk.applied.grant, headings, lengths(desk, headings, {}), files)
    assert [(notice.code, notice.place.path, notice.place.line) for notice in told] == [
        (code, "owner/grants/county.yaml", line)
    ]
    if code == "grant-unmatched":
        assert "9 000.00" in told[0].message
