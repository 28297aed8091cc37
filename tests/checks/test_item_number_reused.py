"""A number stays with its work from the first issue on, whatever happens to the files."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.notices import Notice
from tenderwright.pipeline import compile_package
from tenderwright.reading.package import read_package
from tests.fixtures.issue import issue
from tests.fixtures.overlay import notices_of
from tests.pipeline.packages import edit, starter

WASH = "items/210-hull-wash.yaml"
RIVETS = "items/320-rivets-renew.yaml"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    root = starter(tmp_path / "sandling")
    (root / "items" / "330-anodes-fit.yaml").write_text(
        "item: 330\ntitle: Anodes, fit\nkind: definite\nphase: dry\nscope: Fit the owner's anodes.\n"
        "lines:\n  - { line: a, text: Fit all anodes, price: lump }\n",
        "utf-8",
    )
    issue(root, "issue-1")
    return root


def _reused(root: Path) -> list[Notice]:
    return [notice for notice in notices_of(root) if notice.code == "item-number-reused"]


def test_nothing_is_said_of_what_stays(root: Path) -> None:
    assert notices_of(root) == []


def test_an_item_that_is_gone_is_told_at_the_tender(root: Path) -> None:
    (root / "items" / "330-anodes-fit.yaml").unlink()
    (notice,) = notices_of(root)
    assert notice.code == "issued-work-gone"
    line = (root / "package.yaml").read_text("utf-8").splitlines()[notice.place.line - 1]
    assert line.strip().startswith("number: BWT-2028-01")
    assert notice.message == "item 330 of issue `issue-1` is gone"
    assert "bring `items/330-anodes-fit.yaml` back" in notice.hints[0]


def test_an_item_that_is_gone_for_two_issues_is_told_of_the_last_that_held_it(root: Path) -> None:
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    issue(root, "issue-2", 2)
    (root / "items" / "330-anodes-fit.yaml").unlink()
    issue(root, "issue-3", 3)
    (notice,) = notices_of(root)
    assert notice.message == "item 330 of issue `issue-2` is gone"


def test_an_item_with_a_mistake_is_not_gone(root: Path) -> None:
    edit(root, "items/330-anodes-fit.yaml", "phase: dry", "phase: drie")
    assert [notice.code for notice in notices_of(root)] == ["wrong-choice"]
    edit(root, "items/330-anodes-fit.yaml", "phase: drie", "phase: [")
    assert [notice.code for notice in notices_of(root)] == ["yaml-syntax"]


def test_a_file_may_have_another_name_and_a_title_other_words(root: Path) -> None:
    (root / "items" / "330-anodes-fit.yaml").rename(root / "items" / "330-anode-renew.yaml")
    edit(root, "items/330-anode-renew.yaml", "title: Anodes, fit", "title: Anode of the rudder, renew")
    edit(root, "items/330-anode-renew.yaml", "kind: definite", "kind: option\noption_until: undocking - 4 d")
    assert _reused(root) == []


def test_other_work_is_told_once_and_not_at_its_lines_too(root: Path) -> None:
    edit(root, "items/330-anodes-fit.yaml", "title: Anodes, fit", "title: Draft marks, paint")
    edit(root, "items/330-anodes-fit.yaml", "kind: definite", "kind: owner")
    edit(root, "items/330-anodes-fit.yaml", "text: Fit all anodes", "text: Paint white")
    (notice,) = _reused(root)
    assert notice.message == "item 330 was `Anodes, fit` in issue `issue-1`, and is other work now"


def test_a_title_that_is_new_is_not_other_work_while_the_kind_and_the_lines_stay(root: Path) -> None:
    edit(root, "items/330-anodes-fit.yaml", "title: Anodes, fit", "title: Cathodic protection, renew")
    assert _reused(root) == []


def test_a_number_given_to_other_work_of_the_same_kind_is_told_at_its_line(root: Path) -> None:
    edit(root, "items/330-anodes-fit.yaml", "title: Anodes, fit", "title: Draft marks, paint")
    edit(root, "items/330-anodes-fit.yaml", "text: Fit all anodes", "text: Paint all in white")
    (notice,) = _reused(root)
    assert notice.message == "line 330.a was `Fit all anodes` in issue `issue-1`, and is other work now"
    edit(root, "items/330-anodes-fit.yaml", "line: a", "line: b")
    (notice,) = (one for one in notices_of(root) if one.code == "issued-work-gone")
    assert notice.message == "line 330.a of issue `issue-1` is gone"


def test_lines_of_a_withdrawn_item_are_not_looked_at(root: Path) -> None:
    edit(root, "items/330-anodes-fit.yaml", "kind: definite", "kind: definite\nwithdrawn: true")
    edit(root, "items/330-anodes-fit.yaml", "line: a", "line: b")
    assert _reused(root) == []


def test_the_next_tender_begins_anew(root: Path) -> None:
    (root / "items" / "330-anodes-fit.yaml").unlink()
    edit(root, "package.yaml", "number: BWT-2028-01", "number: BWT-2028-02")
    assert notices_of(root) == []


def test_without_the_history_nothing_is_said(root: Path) -> None:
    (root / "items" / "330-anodes-fit.yaml").unlink()
    assert compile_package(read_package(root)).notices == ()
