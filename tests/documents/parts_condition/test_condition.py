from __future__ import annotations

from typing import Any

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.pitting import pits_judged
from tenderwright.documents.desk import Desk
from tenderwright.documents.parts.condition import condition, percent, yearly
from tests.replacing import replace

from .parts import desk, part, rows, tables, text, text_of


def test_every_zone_stands_with_its_limit_and_its_source() -> None:
    package = desk().package
    assert package.condition is not None
    listed = rows("condition", "Beyond limit")
    assert [cells[0].lower() for cells in listed] == [zone.name for zone in package.condition.zones]
    assert {cells[2] for cells in listed} == {"25 %", "20 %"}
    for zone in package.condition.zones:
        assert zone.source in text("condition")


def test_every_plate_called_is_named_with_its_place_under_its_call() -> None:
    shell = desk().calculated.found(shell_forecast)
    assert shell is not None
    plates = rows("gauging", "Rate used")
    groups = [cells[0] for cells in plates if len(cells) == 1]
    assert groups == ["Renew now", "Renew now, ahead of its limit", "Watch"]
    assert [cells[0] for cells in plates if len(cells) > 1] == [call.name for call in shell.calls]
    assert all(cells[1].startswith("Fr ") for cells in plates if len(cells) > 1)
    counts = [len([call for call in shell.calls if call.call == group.lower()]) for group in groups]
    told = f"{counts[0]} to renew now; {counts[1]} to renew now, ahead of its limit; {counts[2]} to watch"
    assert f"Plates gauged: {shell.analysis.call.size}, of which {told}." in text("condition")


def test_every_pit_that_is_worked_on_is_listed_with_its_reason() -> None:
    judged = desk().calculated.found(pits_judged)
    assert judged is not None
    worked = [pit for one in judged.outcomes.values() for pit in one.pits if pit.treatment != "watch"]
    columns = [one for one in tables("gauging") if one.columns[0].title == "Pit"]
    assert sum(len(one.rows) for one in columns) == len(worked)
    assert abs(len(columns[0].rows) - len(columns[1].rows)) <= 1
    assert all(f": {pit.why}." in text("gauging") for pit in worked)


def test_the_readings_of_the_zones_add_up_to_those_of_the_strakes() -> None:
    by_zone = sum(int(cells[3]) for cells in rows("condition", "Beyond limit"))
    by_strake = sum(int(cells[1]) for cells in rows("condition", "Strake"))
    assert by_zone == by_strake == desk().record.values["shell.survey.latest"].si


def test_the_contingent_part_is_told_in_words_with_its_counts() -> None:
    values, said = desk().record.values, text("condition")
    assert f"gauged {values['shell.contingent.gauged'].si:.0f} frame spaces" in said
    assert f"in {values['shell.contingent.bad'].si:.0f} of them" in said
    assert f"{values['shell.contingent.mass-p80'].si:.0f} kg in four draws of five" in said
    assert "drawn with replacement" in said


def test_the_inserts_are_summed_and_those_of_other_items_stand_apart() -> None:
    listed = rows("condition", "Insert")
    total = next(cells for cells in listed if cells[0] == "All")
    assert total[6] == f"{desk().record.values['shell.renewal.mass'].si:.0f}"
    assert [len(cells) for cells in listed].count(1) == 1
    assert "item 335" in listed[-1][2]


def test_rates_say_what_they_are_worth() -> None:
    assert yearly(3e-5, 1e-5) == "0.030 ± 0.010"
    assert yearly(1e-5, 3e-5) == "0.010 ± 0.030, within its uncertainty"
    assert yearly(-1e-5, 3e-5) == "no measurable loss"
    assert yearly(float("nan"), 3e-5) == "gauged once"
    assert percent(0.125, 1) == "12.5 %"


def test_the_part_carries_the_caution_and_is_left_out_without_readings() -> None:
    assert part("condition").caution
    assert condition(changed(condition=None, surveys=())) is None


def changed(**parts: Any) -> Desk:
    """Give the desk of the ship with parts of her package changed."""
    package = replace(desk().package, **parts)
    calculated = calculate(package)
    return replace(desk(), package=package, calculated=calculated)


def said(of: Desk) -> str:
    made = condition(of)
    assert made is not None
    return text_of(made).strip()


def test_it_says_what_it_would_take_where_something_is_missing() -> None:
    written = desk().package.condition
    assert written is not None
    assert said(changed(condition=None)) == "Not calculated: it needs the account of her condition."
    assert said(changed(surveys=())) == "Not calculated: it needs thickness readings in the surveys."
    bare = said(changed(condition=replace(written, members=None, renewal=None)))
    assert "Not calculated: it needs the members inside her tanks in the account of her condition." in bare
    assert "Not calculated: it needs the rules for renewing plate in the account of her condition." in bare


def test_a_zone_without_readings_and_a_stretch_without_pits_say_so() -> None:
    package = desk().package
    once = "strake,frame,side,as_built_mm,measured_mm,date\nF,40.5,port,9.5,9.0,2025-10-06\n"
    few = said(changed(surveys=(replace(package.surveys[1], text=once),)))
    assert "Not calculated: it needs readings of that zone in the surveys." in few
    assert "Not calculated: it needs pits gauged on strake B, port" in few
