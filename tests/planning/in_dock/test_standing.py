"""How the docking stands as a whole."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.planning.in_dock.standing import Standing, standing
from tests.pricing.in_dock.conftest import Docked
from tests.pricing.in_dock.sandling import WEEK, compiled, write_docked


def _stands(docked: Docked, on: date) -> Standing:
    made, owner = docked
    assert owner.ledger is not None
    return standing(owner.ledger, on, owner.papers, made.package, owner.schedule)


def test_work_is_weighed_by_what_it_comes_to(docked: Docked) -> None:
    """Done: 4000 of item 140 and half of 3000; ordered without the pool: 41335, of them 500 to be signed left out."""
    work = _stands(docked, date(2028, 4, 9)).work
    assert (work.finished, work.under_way, work.not_begun) == (("140",), ("210", "420"), ("110", "130", "320"))
    whole = Decimal(22000 + 3260 + 4000 + 3000 + 4800 + 4275)
    assert work.share == pytest.approx(Decimal(5500) / whole)


def test_once_she_is_afloat_nothing_on_blocks_is_left(tmp_path: Path) -> None:
    week = WEEK.replace("dry: 2028-04-05 }", "dry: 2028-04-05, undocked: 2028-04-09 }")
    found = _stands(compiled(write_docked(tmp_path / "s", week_1=week)), date(2028, 4, 10))
    assert found.needed is None
    assert {one.days for one in found.put_off} == {None}


def test_without_a_programme_no_days_are_needed(tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s")
    (root / "owner" / "programme.yaml").unlink()
    assert _stands(compiled(root), date(2028, 4, 9)).needed is None
