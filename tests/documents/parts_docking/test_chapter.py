"""The docking chapter: which parts there are, and that their tables show what was calculated."""

from __future__ import annotations

import re

import pytest

from tenderwright.calculations.ship.footprints import covered_strips
from tenderwright.calculations.ship.keel_loads import one_block_out, planned_keel_blocks
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.documents.edition import plain
from tests.documents.composed import composed, part, rows, tables, walk, words

CHAPTER = ["docking-data", "landing", "blocks", "undocking"]


def test_the_chapter_has_its_parts_in_order_each_with_the_caution() -> None:
    edition = composed("marram").edition("yard")
    found = [one for one in edition.parts if one.anchor in CHAPTER]
    assert [one.anchor for one in found] == CHAPTER
    assert [one.number for one in found] == ["4.1", "4.2", "4.3", "4.4"]
    assert all(one.caution for one in found)


def test_without_a_docking_plan_there_is_the_docking_data_alone() -> None:
    edition = composed("starter").edition("yard")
    assert [one.anchor for one in edition.parts if one.anchor in CHAPTER] == ["docking-data"]
    assert set(edition.sheets) == {"dead-ship", "inspection-plan"}


def test_without_a_docking_plan_the_owner_still_has_the_facilities_compared() -> None:
    verdicts, *_ = tables(part(composed("starter").edition("owner"), "facility-fit"))
    assert [row[0] for row in rows(verdicts)] == ["Ostrey graving dock"]


def test_the_landing_stands_by_both_methods() -> None:
    both, levels = tables(part(composed("marram").edition("yard"), "landing"))
    line = next(row for row in rows(both) if row[0].startswith("Upthrust as she comes"))
    assert line[1:] == [
        f"{one.settling.upthrust / 1000:.1f} t"
        for one in (
            composed("marram").found(landing_step).held,
            composed("marram").found(landing_step).exact,
        )
    ]
    marked = [row[0] for row in rows(levels) if row[0]]
    assert marked == ["first touch", "on all the blocks"]
    water = [float(row[1]) for row in rows(levels)]
    assert water == sorted(water, reverse=True)


def test_every_block_has_its_row() -> None:
    found = tables(part(composed("marram").edition("yard"), "blocks"))
    keel = [row for table in found if table.columns[0].title == "No." for row in rows(table)]
    side = next(table for table in found if table.columns[0].title == "Pair from aft")
    assert [row[1] for row in keel] == [one.position for one in composed("marram").found(planned_keel_blocks)]
    assert [row[1] for row in rows(side)] == [one.position for one in composed("marram").found(planned_side_blocks)]
    shown = [float(row[-1]) for row in keel]
    assert shown == pytest.approx(
        [(one.pressure or 0.0) / 1e6 for one in composed("marram").found(planned_keel_blocks)],
        abs=0.006,
    )


def test_one_block_out_in_turn_is_printed_with_the_worst_and_the_verdict_stays_open() -> None:
    text = words(part(composed("marram").edition("yard"), "blocks"))
    turns = composed("marram").found(one_block_out)
    blocks = composed("marram").found(planned_keel_blocks)
    assert f"with that at {blocks[turns.worst.out - 1].position} out" in text
    assert "elastic by estimates: not known, 3.10 MPa allowed" in text
    each = [f"{blocks[one.out - 1].position} {one.pressure / 1e6:.2f}" for one in turns.cases]
    assert ", ".join(each) in text


def test_the_elastic_loads_are_not_given_without_saying_what_they_rest_on() -> None:
    text = words(part(composed("marram").edition("yard"), "blocks"))
    assert "above π/4" in text
    assert "naval architect judges" in text


def test_the_hull_part_lists_plugs_strips_and_the_area_that_stays_bare() -> None:
    found = composed("marram")
    one = part(found.edition("yard"), "blocks")
    text = words(one)
    listed = tables(one)
    openings = next(table for table in listed if table.columns[0].title == "Opening")
    covered = [row for table in listed if table.columns[0].title == "Frames" for row in rows(table)]
    plugs = [row for row in rows(openings) if row[0].startswith("Docking plug")]
    assert len(plugs) == 5
    assert all(float(row[3].split()[0]) >= 0.3 for row in plugs)
    assert len(covered) == len(composed("marram").found(covered_strips))
    area = found.compiled.record.values["blocks.bare-area"].si
    assert f"{area:.2f} m²" in text


def test_the_undocking_part_gives_the_verdict_first_and_every_tank() -> None:
    one = part(composed("marram").edition("yard"), "undocking")
    text = words(one)
    assert "Calculated to float off level and stable" in text
    assert "subject to soundings, weight log and drafts" in text
    listed = next(table for table in tables(one) if table.columns[0].title == "Tank")
    note = plain(listed.note)
    tanks = composed("marram").compiled.package.tanks
    named = {row[0] for row in rows(listed)} | {tank.name for tank in tanks if tank.name in note.partition("dry:")[2]}
    assert named == {tank.name for tank in tanks}
    assert "Empty in both, and to be found dry: Chain locker" in note
    assert "Sound every tank before flooding" in text


def test_the_comparison_gives_result_deciding_figure_and_margin_of_each_facility() -> None:
    verdicts, *_ = tables(part(composed("marram").edition("owner"), "facility-fit"))
    found = {row[0]: row[1:] for row in rows(verdicts)}
    assert {name: row[0] for name, row in found.items()} == {
        "Corve Harbour Dock Trust": "Not known",
        "Kettle Sound Docking Company": "Not known",
        "Sallow Haven Shiplift Company": "Not known",
        "Tarnmouth Slip and Engine Works": "Fail",
    }
    assert found["Corve Harbour Dock Trust"][1] == "line load"
    demand, limit, margin = found["Corve Harbour Dock Trust"][2:]
    known, elastic = (float(figure) for figure in re.findall(r"(?:^|rigid, )([\d.]+)", demand))
    assert known < elastic
    limit, margin = (float(re.sub(r" t/m$", "", cell)) for cell in (limit, margin))
    assert limit - elastic == pytest.approx(margin, abs=0.11)


def test_what_a_facility_does_not_meet_is_stressed() -> None:
    _, side_by_side, *_ = tables(part(composed("marram").edition("owner"), "facility-fit"))
    stressed = {
        (plain(row.cells[0]), side_by_side.columns[index].title)
        for row in side_by_side.rows
        for index, cell in enumerate(row.cells)
        if any(span.strong for span in cell)
    }
    assert stressed == {
        ("Water over the blocks", "Tarnmouth Slip and Engine Works"),
        ("Line load", "Tarnmouth Slip and Engine Works"),
    }


def test_no_table_of_the_chapter_has_a_row_of_another_width() -> None:
    edition = composed("marram").edition("yard")
    for anchor in CHAPTER:
        for table in (thing for thing in walk(part(edition, anchor)) if hasattr(thing, "columns")):
            assert {len(row.cells) for row in table.rows if row.weight != "group"} == {len(table.columns)}
