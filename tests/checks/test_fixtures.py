"""Every trade check finds the mistakes of its fixtures where they stand, and nothing in packages that are right."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import get_type_hints

import pytest

import tenderwright.checks
from tenderwright.checks.context import Context
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.checks.owner.registry import OWNER_CHECKS
from tenderwright.checks.registry import CHECKS
from tenderwright.notices import Notice
from tenderwright.notices.codes import CHECK_CODES, OWNER_CHECK_CODES
from tests.fixtures.overlay import (
    FIXTURES,
    all_notices_of,
    cases,
    expected,
    lay_over_starter,
    name_of,
    notices_of,
    places,
)
from tests.notices.said import well_said


@pytest.mark.parametrize("case", cases("checks", "negative"), ids=name_of)
def test_the_mistake_is_reported_at_its_line(case: Path, tmp_path: Path) -> None:
    wanted = expected(case)
    assert {code for _, _, code in wanted} == {case.parts[-3]}
    notices = notices_of(lay_over_starter(case, tmp_path / "package"))
    assert places(notices) == wanted
    well_said(notices)


@pytest.mark.parametrize("case", cases("checks", "positive"), ids=name_of)
def test_nothing_is_reported(case: Path, tmp_path: Path) -> None:
    assert notices_of(lay_over_starter(case, tmp_path / "package")) == []


@pytest.mark.parametrize("case", cases("owner-checks", "negative"), ids=name_of)
def test_the_mistake_in_the_owners_papers_is_reported_at_its_line(case: Path, tmp_path: Path) -> None:
    wanted = expected(case)
    assert {code for _, _, code in wanted} == {case.parts[-3]}
    notices = all_notices_of(lay_over_starter(case, tmp_path / "package"))
    assert places(notices) == wanted
    well_said(notices)


@pytest.mark.parametrize("case", cases("owner-checks", "positive"), ids=name_of)
def test_nothing_is_reported_of_the_owners_papers(case: Path, tmp_path: Path) -> None:
    assert all_notices_of(lay_over_starter(case, tmp_path / "package")) == []


def test_every_check_has_fixtures_that_fail_and_that_pass() -> None:
    for verdict in ("negative", "positive"):
        assert {case.parts[-3] for case in cases("checks", verdict)} == set(CHECK_CODES)
        assert {case.parts[-3] for case in cases("owner-checks", verdict)} == set(OWNER_CHECK_CODES)


def test_no_fixture_lies_where_no_test_finds_it() -> None:
    kinds = ("checks", "owner-checks")
    found = {case for kind in kinds for verdict in ("negative", "positive") for case in cases(kind, verdict)}
    files = [path for kind in kinds for path in (FIXTURES / kind).rglob("*") if path.is_file()]
    assert files
    assert all(any(case in path.parents for case in found) for path in files)


@pytest.mark.parametrize(("folder", "checks"), [("", CHECKS), ("owner", OWNER_CHECKS)])
def test_every_module_that_checks_is_the_check_of_a_code(folder: str, checks: Mapping[str, object]) -> None:
    modules = (Path(tenderwright.checks.__file__).parent / folder).glob("*.py")
    written = {path.stem for path in modules if "\ndef check(" in path.read_text("utf-8")}
    assert written == {code.replace("-", "_") for code in checks}


@pytest.mark.parametrize(("checks", "context"), [(CHECKS, Context), (OWNER_CHECKS, OwnerContext)])
def test_every_check_takes_its_context_and_yields_notices(checks: Mapping[str, object], context: type) -> None:
    for check in checks.values():
        assert get_type_hints(check) == {"context": context, "return": Iterator[Notice]}
