"""Lists that people keep as CSV become files of the package, and no row of them is lost in silence."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.cli import main
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.validate import validate
from tenderwright.starter.imported import LISTS, Imported, import_list, proposed

ANODES = """
columns:
  - { column: No., reads: ["{anode}"] }
  - { column: Location, reads: ["{at} {side}"] }
  - { column: Up, reads: ["{height}"], unit: ft }
  - { column: Weight, reads: ["{mass}"], unit: lbs }
  - { column: Left, reads: ["{left}"], unit: "%" }
  - { column: Seen, reads: ["{seen}"] }
dates: month/day/year
left_out: [Remarks]
same: { alloy: zinc, fixing: bolted }
"""
VALVES = """
columns:
  - { column: Valve, reads: ["{name}"] }
  - { column: Frame, reads: ["{at}"], unit: frame }
  - { column: P/S, reads: ["{side}"] }
  - { column: Bore, reads: ["{bore}"], unit: in }
  - { column: Type, reads: ["{valve}"] }
words: [{ of: side, written: CL, means: centreline }]
same: { kind: suction, state: in use }
"""
STRAKES = """
columns:
  - { column: Strake, reads: ["{strake}"], down: true }
  - { column: Name, reads: ["{name}"] }
  - { column: Girth, reads: ["{from_girth} to {to_girth}"], unit: ft }
  - { column: Plates, reads: ["{plates.from} - {plates.to}"], unit: frame }
  - { column: Thickness, reads: ["{plates.thickness}"], unit: in }
  - { column: Butts, reads: ["{butts}"] }
"""
TANKS = """
separator: semicolon
decimal_comma: true
columns:
  - { column: Tank, reads: ["{name}"] }
  - { column: Use, reads: ["{use}"] }
  - { column: Frames, reads: ["{bounds.from}-{bounds.to}"], unit: frame }
  - { column: Bottom, reads: ["{bounds.bottom}"], unit: m }
  - { column: Top, reads: ["{bounds.top}"], unit: m }
  - { column: Oil, reads: ["{held_oil}"] }
  - { column: Capacity, reads: ["{capacity}"], unit: m3 }
words: [{ of: use, written: FW, means: fresh water }]
same: { bounds.inboard: 0 m, bounds.outboard: shell }
"""


def brought(what: str, text: str, said: str) -> Imported:
    source, notices = read_yaml("list.yaml", said)
    assert notices == []
    return import_list(what, Source("list.csv", text), source)


def entries(made: Imported, what: str) -> list[dict]:
    source, notices = read_yaml("made.yaml", made.text)
    assert [*notices, *validate(source, LISTS[what])] == []
    return source.data[LISTS[what]]


def test_anodes_in_us_units() -> None:
    text = "No.,Location,Up,Weight,Left,Seen,Remarks\nP 1,Fr 12 P,3.5,22,40,6/16/2026,x\nP 2,FR. 14 STBD,4'-6\",.5,,,\n"
    made = brought("anodes", text, ANODES)
    assert made.notices == ()
    assert entries(made, "anodes") == [
        {"anode": "p-1", "at": "Fr 12", "side": "port", "height": "3.5 ft", "alloy": "zinc", "mass": "22 lb",
         "fixing": "bolted", "left": "40 %", "seen": "2026-06-16"},
        {"anode": "p-2", "at": "Fr 14", "side": "starboard", "height": "4'-6\"", "alloy": "zinc", "mass": "0.5 lb",
         "fixing": "bolted"},
    ]  # fmt: skip


def test_what_is_needed_and_not_in_the_list_is_todo() -> None:
    made = brought("valves", "Valve,Frame,P/S,Bore,Type\nFire Pump Suction,21 + 8 in,S,4,gate\nDrain,7,CL,,\n", VALVES)
    assert made.left == {"height": 2}
    assert made.text.startswith("# Openings, brought in from list.csv.\nopenings:\n  - opening: fire-pump-suction\n")
    first, second = entries(made, "valves")
    assert first == {
        "opening": "fire-pump-suction",
        "name": "Fire Pump Suction",
        "kind": "suction",
        "at": "Fr 21 + 8 in",
        "side": "starboard",
        "height": "todo",
        "bore": "4 in",
        "valve": "gate",
        "state": "in use",
    }
    assert (second["opening"], second["side"], "bore" in second) == ("drain", "centreline", False)
    source, _ = read_yaml("made.yaml", made.text)
    assert len(source.todos) == 2


def test_several_rows_of_one_strake_are_its_runs_of_plates() -> None:
    text = (
        "Strake,Name,Girth,Plates,Thickness,Butts\n"
        'a,garboard,0 to 3 1/2,10 - 30,3/8,"Fr 10, Fr 20"\n'
        ",,,30 - 60,20# plate,\n"
        "B,bottom,3.5 to 7,10 - 60,.3125,\n"
    )
    first, second = entries(brought("strakes", text, STRAKES), "strakes")
    assert first == {
        "strake": "A",
        "name": "garboard",
        "from_girth": "0 ft",
        "to_girth": "3 1/2 ft",
        "plates": [
            {"from": "Fr 10", "to": "Fr 30", "thickness": "3/8 in"},
            {"from": "Fr 30", "to": "Fr 60", "thickness": "20# plate"},
        ],
        "butts": ["Fr 10", "Fr 20"],
    }
    assert second["plates"] == [{"from": "Fr 10", "to": "Fr 60", "thickness": "0.3125 in"}]


def test_tanks_have_keys_inside_others_and_words_of_the_list() -> None:
    text = "Tank;Use;Frames;Bottom;Top;Oil;Capacity\nFresh water tank, port;FW;20-26;shell;2,4;no;5,5\n"
    (tank,) = entries(brought("tanks", text, TANKS), "tanks")
    assert tank["tank"] == "fresh-water-tank-port"
    assert tank["use"] == "fresh water"
    assert tank["held_oil"] is False
    assert tank["capacity"] == "5.5 m3"
    assert tank["bounds"] == {
        "from": "Fr 20",
        "to": "Fr 26",
        "bottom": "shell",
        "top": "2.4 m",
        "inboard": "0 m",
        "outboard": "shell",
    }


@pytest.mark.parametrize(
    ("row", "code", "words"),
    [
        ("P2,midships,3,22,40,,", "wrong-form", "`midships` under `Location` is of none of the forms"),
        ("P2,Fr 12 P,3 kg,22,40,,", "wrong-dimension", "expected a length"),
        ("P2,Fr 12 amidships,3,22,40,,", "wrong-choice", "amidships"),
        ("P2,Fr 12 P,3,2 tons,40,,", "ambiguous-unit", "several meanings"),
        ("P2,Fr 12 P,3,22,40,31/12/2026,", "wrong-form", "`31/12/2026` is not a date"),
        ("P1,Fr 12 P,3,22,40,,", "wrong-form", "`p1` stands on line 2 too"),
        ("P2,Fr 12 P,3,22,40,,,,", "wrong-form", "it has 9 cells"),
    ],
)
def test_a_row_that_cannot_be_read_is_told_at_its_line_and_nothing_is_written(row: str, code: str, words: str) -> None:
    text = f"No.,Location,Up,Weight,Left,Seen,Remarks\nP1,Fr 12 P,3.5,22,40,,\n{row}\n"
    made = brought("anodes", text, ANODES)
    assert made.text == ""
    (notice,) = made.notices
    assert (notice.code, str(notice.place)) == (code, "list.csv:3:1")
    assert words in notice.message


@pytest.mark.parametrize(
    ("written", "instead", "words"),
    [
        ("column: Up", "column: Height", "no column `Height`"),
        ("{mass}", "{weight}", "reads `weight`"),
        ("unit: lbs", "unit: stones", "`stones` is not a unit of `mass`"),
        ("alloy: zinc", "metal: zinc", "`same` gives `metal`"),
        ("left_out: [Remarks]", "words: [{ of: colour, written: a, means: b }]", "a word for `colour`"),
        ("columns:", "colums:", "`colums`"),
    ],
)
def test_what_is_said_of_the_columns_must_fit(written: str, instead: str, words: str) -> None:
    text = "No.,Location,Up,Weight,Left,Seen,Remarks\nP1,Fr 12 P,3.5,22,40,,\n"
    made = brought("anodes", text, ANODES.replace(written, instead))
    assert made.text == ""
    assert any(words in notice.message for notice in made.notices)
    assert {notice.place.path for notice in made.notices} == {"list.yaml"}


def test_a_column_that_nothing_reads_is_named() -> None:
    made = brought("anodes", "No.,Location,Up,Weight,Left,Seen,Maker\nP1,Fr 12 P,3,22,40,,x\n", ANODES)
    (notice,) = made.notices
    assert (notice.code, "`Maker`" in notice.message, made.sound) == ("delivered-unread", True, True)


@given(st.text("abcFr0123,;.\"'/\n {}-#", max_size=60), st.sampled_from(sorted(LISTS)))
def test_any_list_is_read_or_told(text: str, what: str) -> None:
    for said in (ANODES, VALVES, STRAKES, TANKS):
        head = ",".join(line.split("column: ")[1].split(",")[0] for line in said.splitlines() if "column: " in line)
        made = brought(what, f"{head}\n{text}", said)
        assert made.sound or made.text == ""


def test_a_proposal_names_every_heading_and_every_key() -> None:
    text = proposed("anodes", Source("list.csv", "No.,Side,Mass (kg)\n1,P,10\n"))
    source, notices = read_yaml("list.yaml", text)
    assert notices == []
    assert [one["column"] for one in source.data["columns"]] == ["No.", "Side", "Mass (kg)"]
    assert source.data["columns"][1]["reads"] == ["{side}"]
    assert "#   mass: Net mass of alloy when new.\n" in text


def test_the_command_proposes_then_prints_then_writes_a_new_file_only(tmp_path: Path, capsys) -> None:
    listed, new = tmp_path / "anodes.csv", tmp_path / "new.yaml"
    listed.write_text("No.,Location,Up,Weight,Left,Seen,Remarks\nP1,Fr 12 P,3.5,22,40,,\n", "utf-8")
    assert main(["import", "anodes", str(listed)]) == 1
    ran = capsys.readouterr()
    assert "- column: No." in ran.out
    assert "run the command again" in ran.err
    listed.with_suffix(".yaml").write_text(ANODES, "utf-8")
    assert main(["import", "anodes", str(listed)]) == 0
    printed = capsys.readouterr().out
    assert printed.startswith("# Anodes, brought in from anodes.csv.\nanodes:\n")
    assert main(["import", "anodes", str(listed), "--out", str(new)]) == 0
    assert new.read_text("utf-8") == printed
    assert main(["import", "anodes", str(listed), "--out", str(new)]) == 2
    assert "is there already" in capsys.readouterr().err
    listed.write_text(listed.read_text("utf-8") + "P2,abeam,3.5,22,40,,\n", "utf-8")
    assert main(["import", "anodes", str(listed), "--out", str(tmp_path / "other.yaml")]) == 1
    assert "anodes.csv:3:1: error[wrong-form]" in capsys.readouterr().err
    assert not (tmp_path / "other.yaml").exists()
