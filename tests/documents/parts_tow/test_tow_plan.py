"""The tow plan and the dead-ship sheet: short, for their readers, and never silent."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tenderwright.documents.dead_ship import dead_ship_sheet
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Edition
from tenderwright.documents.tow.plan import tow_plan
from tenderwright.model.tow import Stop
from tenderwright.quantities.customs import telling_in
from tenderwright.writing.pdf import Typesetter
from tests.calculations.ship.marram import package
from tests.documents.composed import compiled, composed, words
from tests.replacing import replace


@cache
def sheets() -> dict[str, Edition]:
    """Compose both at the demonstration's desk."""
    desk, yard = composed("marram").desk(), composed("marram").edition("yard")
    owner = replace(yard, name="owner", audience="owner", sheets={}, forms={}, parts=())
    with telling_in("metric"):
        plan, dead = tow_plan(desk, owner), dead_ship_sheet(desk, yard)
    assert plan is not None
    assert dead is not None
    return {"tow": plan, "dead": dead}


def text(stem: str) -> str:
    return " ".join(words(part) for part in sheets()[stem].parts)


def test_the_plan_is_public_and_short() -> None:
    plan = sheets()["tow"]
    assert plan.audience == "public"
    assert not plan.confidential
    assert all(part.audience == "public" and part.caution for part in plan.parts)
    assert Typesetter().typeset(plan, 1_822_635_000, "tow-plan").page_count <= 8


def test_the_yard_has_the_dead_ship_and_not_the_tow_which_names_a_dock() -> None:
    yard = composed("marram").edition("yard")
    assert "dead-ship" in yard.sheets
    assert "tow-plan" not in yard.sheets
    dock = next(one for one in package().facilities if one.facility == "sallow-haven-shiplift")
    assert dock.name in text("tow")
    assert dock.name not in text("dead")


def test_the_plan_says_what_is_not_known_and_who_decides() -> None:
    told = text("tow")
    assert "righting levers at large heel" in told
    assert "gives no sum, and the other stands alone" in told
    assert "agree to about a third" in told
    assert "The tug master, on the day" in told
    assert "lacks oxygen" in told
    assert "64 nmi" in told


def test_the_weather_that_governs_is_told_with_its_pull() -> None:
    told = text("tow")
    assert "governed by hove to" in told
    assert "45.6 kN" in told


def test_what_no_item_supplies_is_a_gap() -> None:
    told = text("dead")
    assert "GAP: no item supplies it and nothing is said." in told
    assert "to be settled before she arrives: Shore-side isolation." in told
    assert "29.0 h until she floats" in told


def test_without_a_tow_plan_the_sheet_says_what_hours_would_take() -> None:
    whole = composed("marram").desk()
    bare = Desk(replace(package(), tow=None), whole.links, whole.calculated)
    with telling_in("metric"):
        assert tow_plan(bare, composed("marram").edition("yard")) is None
        dead = dead_ship_sheet(bare, composed("marram").edition("yard"))
    assert dead is not None
    told = " ".join(words(part) for part in dead.parts)
    assert "Visitors; " in told


def test_own_rules_take_the_place_of_the_usual_ones_of_a_phase() -> None:
    tow = package().tow
    assert tow is not None
    assert tow.in_dock is not None
    own = Stop(when="dry", sign="A wedge works loose", do="Stop the shift", source="standing orders")
    changed = replace(package(), tow=replace(tow, in_dock=replace(tow.in_dock, stops=(own,))))
    whole = composed("marram").desk()
    with telling_in("metric"):
        dead = dead_ship_sheet(Desk(changed, whole.links, whole.calculated), composed("marram").edition("yard"))
    assert dead is not None
    told = " ".join(words(part) for part in dead.parts)
    assert "A wedge works loose" in told
    assert "a cap splits" not in told
    assert "a cap splits" in text("dead")


PACKAGES = Path(__file__).parents[2] / "packages"


def told_of(name: str) -> tuple[Edition, str]:
    """Compose the tow plan of another package."""
    found = compiled(PACKAGES / name)
    desk = found.desk()
    bare = replace(composed("marram").edition("yard"), name="owner", audience="owner", sheets={}, forms={}, parts=())
    with telling_in(desk.package.units, american=desk.package.american):
        plan = tow_plan(desk, bare)
    assert plan is not None
    return plan, " ".join(words(part) for part in plan.parts)


def test_a_small_boat_towed_alongside_has_a_short_plan() -> None:
    plan, told = told_of("withy")
    assert len(plan.parts) == 4
    assert "between the hulls" in told
    assert "Bridle, shackles" not in told
    assert "Shaft locked" not in told
    assert "propeller" not in told.lower()
    assert "Without them nobody knows how fast she fills" in told
    assert "one is to be put right" not in told


def test_a_ship_in_customary_units_is_told_in_them() -> None:
    _, told = told_of("kestrel-bank")
    assert "lbf" in told
    assert "46 nmi" in told
    assert " kN" not in told
    assert "Not known in hove to, for want of the resistance in waves" in told
    assert "not her form" in told
