"""How long it takes: the critical path adds up to the days, and every activity is told once."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tenderwright.documents.edition import Facts, Part, Table, plain
from tenderwright.documents.owner.programme import in_words, programme, waits_for
from tenderwright.planning.network import Link
from tenderwright.planning.schedule import Schedule
from tests.documents.composed import composed, rows, tables, walk, words
from tests.replacing import replace

from .seen import figures, foreseen_desk, marram_part, starter_desk


def schedule() -> Schedule:
    found = foreseen_desk().foresight
    assert found is not None
    assert found.schedule is not None
    return found.schedule


def made() -> Part:
    found = programme(foreseen_desk())
    assert found is not None
    return found


def titled(found: Part, column: str) -> Table:
    (table,) = [one for one in tables(found) if column in [each.title for each in one.columns]]
    return table


def marram_schedule() -> Schedule:
    found = composed("marram").owner.schedule
    assert found is not None
    return found


def test_the_critical_path_runs_without_a_gap_from_arrival_to_redelivery() -> None:
    for one in (schedule(), marram_schedule()):
        chain = one.critical_chain()
        assert chain[0].node.name == "arrival"
        assert chain[-1].node.name == "redelivery"
        assert all(each.critical for each in chain)
        for before, after in pairwise(chain):
            assert after.start == pytest.approx(before.finish)
        assert sum(each.finish - each.start for each in chain) == pytest.approx(one.yard_days)


def test_the_table_of_the_critical_path_adds_up_by_stage() -> None:
    one = marram_schedule()
    table = titled(marram_part("owner-programme"), "Work on the critical path")
    days: dict[str, float] = {}
    stage, sums = "", {}
    for row in table.rows:
        cells = [plain(cell) for cell in row.cells]
        if row.weight == "group":
            stage = cells[0]
        elif row.weight == "normal":
            days[stage] = days.get(stage, 0.0) + float(cells[4])
        elif row.weight == "subtotal":
            sums[stage] = float(cells[4])
    assert list(days) == ["Before she is dry", "On blocks", "Afloat again"]
    assert sums == pytest.approx(days, abs=0.1)  # shown to hundredths of a day
    assert sums["On blocks"] == pytest.approx(one.dock_days, abs=0.005)
    assert float(plain(table.rows[-1].cells[4])) == pytest.approx(one.yard_days, abs=0.005)
    assert sum(sums.values()) == pytest.approx(one.yard_days, abs=0.02)


def test_docking_and_undocking_of_one_item_stand_in_rows_of_their_own() -> None:
    table = titled(marram_part("owner-programme"), "Work on the critical path")
    assert [row[0] for row in rows(table) if len(row) > 1].count("110") == 2


def test_every_activity_is_told_once_with_its_dates_and_what_it_waits_for() -> None:
    one, found = marram_schedule(), marram_part("owner-programme")
    table = rows(titled(found, "Waits for"))
    assert [row[1] for row in table] == [each.node.title for each in one.activities]
    by_title = {row[1]: row for row in table}
    gate = by_title["First gate, owner's answer"]
    assert gate[:1] + gate[2:7] == ["230", "1 – 2 – 3.5", "10 May", "12 May", "2.00", "critical"]
    assert gate[-1] == (
        "frames marked and plating gauged (item 220); rivets and seams sounded by four gangs (item 225)"
    )
    assert by_title["Forepeak floors riveted"][-1].endswith("(the riveters come from there)")
    assert by_title["Six plugs found and drawn"][6] == "14.81"
    bold = {plain(row.cells[1]) for row in titled(found, "Waits for").rows if row.cells[1][0].strong}
    assert bold == {each.node.title for each in one.activities if each.critical}


def test_days_on_blocks_are_said_likely_in_the_trials_and_as_tendered() -> None:
    seen = foreseen_desk().foresight
    assert seen is not None
    one, time = schedule(), seen.outlook.time
    assert time is not None
    told = in_words(one, time)
    assert f"on blocks for {one.dock_days:.1f} days and is in the yard for {one.yard_days:.1f}" in told
    assert f"no more than {time.dock[0.5]:.1f} days on blocks (P50)" in told
    assert f"{time.dock[0.8]:.1f} (P80)" in told
    assert f"The tender asks for {one.dock_days_tendered}, which were enough in" in told
    assert "trials" not in in_words(replace(one, dock_days_tendered=None), None)


def test_it_stands_beside_common_practice_which_has_no_source() -> None:
    text = words(marram_part("owner-programme"))
    assert "common practice, no source" in text
    assert "about three weeks dry" in text
    assert "This programme keeps her dry for 27.4 days; along the critical path the most of them go to item 420" in text


def test_week_weather_and_crews_are_told() -> None:
    (facts,) = [block for block in walk(marram_part("owner-programme")) if isinstance(block, Facts)]
    told = {term: plain(words) for term, words in facts.pairs}
    assert told["Week"].startswith("6 days worked in seven")
    assert "81 % of the days worked" in told["Weather"]
    assert told["Crews"].startswith("1 × riveting gang, three squads; 2 × platers")
    bare = {term: plain(words) for block in walk(made()) if isinstance(block, Facts) for term, words in block.pairs}
    assert bare["Crews"] == "Not limited."
    assert bare["Weather"].startswith("Not counted")
    assert "late rain" in bare["Risks"]


def test_what_an_activity_waits_for_is_said_without_saying_it_twice() -> None:
    one = schedule()
    place = one.network.index["coat"]
    title = one.network.nodes[place].title
    lowered = title[:1].lower() + title[1:]
    assert waits_for(Link(place, 0, f"after {lowered}"), one) == lowered
    assert waits_for(Link(place, 0, "item 430 comes after item 420"), one) == f"{lowered} (item 420)"
    assert waits_for(Link(place, 0, "done on blocks"), one) == f"{lowered} (done on blocks)"


def test_the_bar_chart_shows_every_activity_on_sheets_of_one_scale() -> None:
    found = figures(marram_part("owner-programme"))
    assert [one.name for one in found] == ["bar-chart-1", "bar-chart-2", "bar-chart-3"]


def test_without_trials_of_time_the_columns_of_the_trials_are_left_out() -> None:
    desk = foreseen_desk()
    assert desk.foresight is not None
    bare = replace(desk.foresight, outlook=replace(desk.foresight.outlook, time=None))
    found = programme(replace(desk, foresight=bare))
    assert found is not None
    assert "Critical in trials" not in words(found)
    assert len(titled(found, "Waits for").columns) == len(titled(made(), "Waits for").columns) - 1


def test_there_is_no_part_without_a_programme() -> None:
    assert programme(starter_desk()) is None
    assert programme(replace(starter_desk(), foresight=None)) is None
