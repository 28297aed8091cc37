"""What can still be put off: nothing that has begun, must be done, or is needed; its saving at the rates of the bid."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.planning.in_dock.live import live_items, needs_of, wholly_out
from tenderwright.planning.in_dock.put_off import PutOff, can_be_put_off
from tenderwright.pricing.in_dock.account import account
from tests.pricing.in_dock.conftest import Docked
from tests.pricing.in_dock.sandling import SCOPE, WEEK, compiled, write_docked


def _found(docked: Docked, day: int = 9) -> dict[str, PutOff]:
    made, owner = docked
    assert owner.ledger is not None
    running = account(owner.ledger, date(2028, 4, day))
    found = can_be_put_off(running, made.package, owner.papers.scope, owner.schedule, docked=day >= 5)
    assert [one.saving for one in found] == sorted((one.saving for one in found), reverse=True)
    return {one.item.number: one for one in found}


def test_by_hand(docked: Docked) -> None:
    """110 and 130 must be done, 140 is done, 210 is needed, 420 was measured: the rivets are left, 48 at 100."""
    found = _found(docked)
    assert set(found) == {"320"}
    assert found["320"].saving == Decimal(4800)
    assert found["320"].days == pytest.approx(3.0)


def test_before_anything_has_begun(docked: Docked) -> None:
    """On the day of docking only the wash and the cleaning are needed; no rivets are ordered, so none can be saved."""
    found = _found(docked, 5)
    assert {number: one.saving for number, one in found.items()} == {"420": Decimal(4500)}
    assert found["420"].days == pytest.approx(4.0)
    assert found["420"].frees == ()


def test_what_nothing_else_needs_is_named(tmp_path: Path) -> None:
    """Without the rivets nobody needs item 140, which only they need."""
    week = WEEK.replace('  - { item: "140", done: 100 % }\n', "")
    found = _found(compiled(write_docked(tmp_path / "s", week_1=week)))
    assert found["320"].frees == ("140",)


def test_what_is_excluded_could_be_done_instead(tmp_path: Path) -> None:
    scope = SCOPE.replace('needs: ["140", "210"] }', 'needs: ["140", "210"], excludes: ["130"] }')
    scope = scope.replace(', needs: ["130"]', "")
    found = _found(compiled(write_docked(tmp_path / "s", scope=scope)))
    assert found["320"].opens == ("130",)
    assert "130" in found


def test_without_a_scope_nothing_is_offered(docked: Docked) -> None:
    made, owner = docked
    assert owner.ledger is not None
    assert can_be_put_off(account(owner.ledger, date(2028, 4, 5)), made.package, None, None, docked=True) == ()


def test_what_is_left_out_is_not_offered_again_and_needs_nothing(tmp_path: Path) -> None:
    """With rivets and coating out, the wash is needed by nobody: but it has begun, so only the hose main is left."""
    out = 'deferred:\n  - { work: "320", day: 2028-04-08, why: money, by: Trustees }\n'
    week = WEEK.replace("measured:\n  - { line: 420.a, quantity: 47.5 m2 }\n", "").replace(
        '  - { item: "210", done: 50 % }\n', ""
    )
    docked = compiled(write_docked(tmp_path / "s", week_1=week + out))
    made, owner = docked
    assert owner.ledger is not None
    running = account(owner.ledger, date(2028, 4, 9))
    assert wholly_out(running) == {"320"}
    assert "320" not in {item.number for item in live_items(running, made.package)}
    assert set(_found(docked)) == {"420"}
    assert _found(docked)["420"].frees == ("210",)


def test_an_item_of_which_the_scope_is_silent_needs_what_it_comes_after(docked: Docked) -> None:
    made, owner = docked
    items = made.package.item_by_name
    assert needs_of(items["210"], owner.papers.scope) == {"110"}
    assert needs_of(items["420"], owner.papers.scope) == {"210"}, "its order says 320 too, and the scope does not"
    assert needs_of(items["420"], None) == {"210", "320"}
