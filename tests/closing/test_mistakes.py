"""Mistakes in findings are told at their line, each by one notice of its code."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.notices import Notice

from .conftest import SMALL, Tendered

SPOILT = {
    "a key that is none": ("place: Ostrey", "plaice: Ostrey", "unknown-key"),
    "a needed key left out": ("{ what: Stern tube bearing, condition", "{ condition", "missing-key"),
    "a length that is a mass": ("aft: 2.1 m,", "aft: 2.1 kg,", "wrong-dimension"),
    "a number without its unit": ("left_mass: 0.8 kg", "left_mass: 0.8", "wrong-type"),
    "a ton of several meanings": ("left_mass: 0.8 kg", "left_mass: 0.8 ton", "ambiguous-unit"),
    "a cause that is none": ("cause: quantity measured", "cause: bad luck", "wrong-choice"),
    "three decimals of money": ("contract: 4400,", "contract: 4400.005,", "bad-money"),
    "a day of no calendar": ("  docked: 2028-03-02", "  docked: 2028-02-30", "bad-date"),
    "an hour of no day": ("begun: 2028-03-11 09:00", "begun: 2028-03-11 25:00", "bad-date"),
    "a time in other words": ("begun: 2028-03-11 09:00", "begun: 11 March", "wrong-form"),
    "a frame that is none": ("to: Fr 36,", "to: Fr 96,", "bad-frame"),
    "a frame of a reading that is none": ("frame: 18.5", "frame: 88.5", "bad-frame"),
    "a reading without its frame": ("frame: 18.5, ", "", "bad-survey"),
    "a thickness in the wrong unit": ("measured: 8.1 mm", "measured: 8.1 m", "bad-survey"),
    "a strake that is none": ("how: renewed, strake: A", "how: renewed, strake: Q", "dead-reference"),
    "a tank that is none": ("tank: feed-water", "tank: feed-wate", "dead-reference"),
    "an anode that is none": ("anode: s1", "anode: s2", "dead-reference"),
    "an anode twice": ("anode: s1", "anode: p1", "duplicate-name"),
    "an opening that is none": ("opening: sea-chest", "opening: sea-chests", "dead-reference"),
    "a zone that is none": ("- zone: underwater", "- zone: under", "dead-reference"),
    "a scheme of another zone": ("- zone: underwater\n    scheme", "- zone: topside\n    scheme", "dead-reference"),
    "an item in prose that is none": ("see <item:130>", "see <item:131>", "dead-reference"),
    "a line that is none": ("{ line: 110.a,", "{ line: 110.z,", "dead-reference"),
    "hours of a line that is none of hours": ("line: 130.a, hours", "line: 210.a, hours", "dead-reference"),
    "an answer to no report": ("condition: CF-1 }", "condition: CF-9 }", "dead-reference"),
    "an area where rivets are counted": ("quantity: 31 each", "quantity: 31 m2", "wrong-dimension"),
    "undocked before she was docked": ("  undocked: 2028-03-16", "  undocked: 2028-03-01", "date-order"),
    "a coat on a coat not yet ended": ("begun: 2028-03-11 09:00", "begun: 2028-03-10 11:00", "date-order"),
    "a coat after she left": ("ended: 2028-03-11 11:00", "ended: 2028-04-11 11:00", "date-order"),
    "a reading before she came": ("8.1 mm, day: 2028-03-06", "8.1 mm, day: 2027-03-06", "date-order"),
    "decided before it was found": ("decided: 2028-03-05", "decided: 2028-03-03", "date-order"),
    "a cent too much": ("changes: 2945, final: 2945 }", "changes: 2945, final: 2945.01 }", "sum-differs"),
    "a change that is in no log": ("changes: 0, final: 21900.50", "changes: 10, final: 21910.50", "sum-differs"),
    "a total that is another": ("contract: 26300.50", "contract: 26300.05", "sum-differs"),
    "more left than there was": ("left_mass: 0.8 kg", "left_mass: 8 kg", "out-of-bounds"),
    "more than all of it left": ("left: 25 %", "left: 125 %", "out-of-bounds"),
    "a least film above the mean": ("least: 110 um", "least: 151 um", "out-of-bounds"),
    "coats in another order": ("- coat: 2", "- coat: 1", "out-of-bounds"),
    "a row of blocks without pitch": ("pitch: 1.5 m, ", "", "missing-key"),
    "a side block on no side": ("side: both, off", "off", "missing-key"),
    "a stretch the wrong way round": ("from: Fr 12, to: Fr 20", "from: Fr 22, to: Fr 20", "out-of-bounds"),
    "a tank of which nothing is said": (", sounding: 0.4 m }", " }", "missing-key"),
    "more days lost than there were": ("{ days: 1, cause", "{ days: 15, cause", "out-of-bounds"),
    "a bid that is none": ("dock_type: slipway", "dock_type: slipway\nbid: nobody", "dead-reference"),
    "another currency": ("dock_type: slipway", "dock_type: slipway\ncurrency: GBP", "wrong-choice"),
    "a tab": ("  arrived:", "\tarrived:", "yaml-syntax"),
    "a key twice": ("place: Ostrey", "place: Ostrey\nplace: Ostrey", "duplicate-key"),
}  # fmt: skip


def spoil(text: str, old: str, new: str) -> tuple[str, int]:
    """Change one piece, which must stand once, and give the line on which the new one ends."""
    assert text.count(old) == 1, old
    return text.replace(old, new), text.split(old)[0].count("\n") + new.count("\n") + 1


def _errors(notices: tuple[Notice, ...]) -> list[tuple[int, str]]:
    return [(notice.place.line, notice.code) for notice in notices if notice.severity == "error"]


def test_the_findings_are_right_as_they_stand(sandling: Tendered) -> None:
    found = sandling.check(SMALL)
    assert found.notices == ()
    assert found.sound


@pytest.mark.parametrize("case", SPOILT)
def test_a_mistake_gives_one_notice_at_its_line(case: str, sandling: Tendered, small_text: str, tmp_path: Path) -> None:
    old, new, code = SPOILT[case]
    text, line = spoil(small_text, old, new)
    file = tmp_path / "findings.yaml"
    file.write_text(text, "utf-8")
    found = sandling.check(file)
    assert not found.sound
    assert all(notice.place.path == str(file) for notice in found.notices)
    assert (line, code) in _errors(found.notices)
    assert {one for _, one in _errors(found.notices)} == {code}


def test_a_guarantee_may_end_on_the_day_she_leaves_and_not_before(
    sandling: Tendered, small_text: str, tmp_path: Path
) -> None:
    file = tmp_path / "findings.yaml"
    for day, codes in (("2028-03-18", set()), ("2028-03-17", {"date-order"})):
        file.write_text(small_text.replace("guarantee_until: 2029-03-18", f"guarantee_until: {day}"), "utf-8")
        assert {notice.code for notice in sandling.check(file).notices} == codes


def test_an_amount_of_the_wrong_sign_is_told_beside_the_sum(
    sandling: Tendered, small_text: str, tmp_path: Path
) -> None:
    text, line = spoil(small_text, "contract: 21900.50, changes: 0", "contract: -21900.50, changes: 0")
    file = tmp_path / "findings.yaml"
    file.write_text(text, "utf-8")
    assert (line, "bad-money") in _errors(sandling.check(file).notices)


@pytest.mark.parametrize(
    ("name", "code"),
    [("../elsewhere.csv", "outside-package"), ("none.csv", "no-such-file"), ("link.csv", "outside-package")],
)
def test_readings_lie_in_the_folder_of_the_findings(
    name: str, code: str, sandling: Tendered, small_text: str, tmp_path: Path
) -> None:
    folder = tmp_path / "findings"
    folder.mkdir()
    (tmp_path / "elsewhere.csv").write_text("", "utf-8")
    (folder / "link.csv").symlink_to(tmp_path / "elsewhere.csv")
    file = folder / "findings.yaml"
    start, end = small_text.index("readings:\n"), small_text.index("rivets:\n")
    file.write_text(f"{small_text[:start]}readings_file: {name}\n{small_text[end:]}", "utf-8")
    found = sandling.check(file)
    assert _errors(found.notices) == [(small_text[:start].count("\n") + 1, code)]


CSV = (
    "strake,frame,side,tank,member,kind,as_built_mm,measured_mm,date,instrument,stage\n"
    "A,18.5,port,,,plate,9.5,8.1,2028-03-06,ultrasonic,in dock\n"
)


@pytest.mark.parametrize(
    ("row", "code"),
    [
        ("Q,18.5,port,,,plate,9.5,8.1,2028-03-06,ultrasonic,in dock", "dead-reference"),
        ("A,99,port,,,plate,9.5,8.1,2028-03-06,ultrasonic,in dock", "bad-frame"),
        ("A,18.5,larboard,,,plate,9.5,8.1,2028-03-06,ultrasonic,in dock", "wrong-choice"),
        (",,,forepeek,floor,plate,9.5,8.1,2028-03-06,ultrasonic,in dock", "dead-reference"),
        (",,,,,plate,9.5,8.1,2028-03-06,ultrasonic,in dock", "bad-survey"),
        ("A,18.5,port,,,plate,9.5,thin,2028-03-06,ultrasonic,in dock", "bad-survey"),
        ("A,18.5,port,,,plate,9.5,8.1,2028-05-06,ultrasonic,in dock", "date-order"),
        ("A,18.5,port", "bad-survey"),
    ],
)
def test_a_row_of_readings_is_told_at_its_own_file_and_line(
    row: str, code: str, sandling: Tendered, small_text: str, tmp_path: Path
) -> None:
    (tmp_path / "r.csv").write_text(f"{CSV}{row}\n", "utf-8")
    start, end = small_text.index("readings:\n"), small_text.index("rivets:\n")
    file = tmp_path / "findings.yaml"
    file.write_text(f"{small_text[:start]}readings_file: r.csv\n{small_text[end:]}", "utf-8")
    notices = sandling.check(file).notices
    assert [(notice.place.path, notice.place.line, notice.code) for notice in notices] == [
        (str(tmp_path / "r.csv"), 3, code)
    ]


def test_a_row_of_a_firms_readings_is_told_at_its_line(sandling: Tendered, small_text: str, tmp_path: Path) -> None:
    (tmp_path / "r.csv").write_text("Where,Found\n\nA 18.5 P,thin\nQ 18.5 P,8\n", "utf-8")
    start, end = small_text.index("readings:\n"), small_text.index("rivets:\n")
    said = """readings_columns:
  columns:
    - { column: Where, reads: ["{strake} {frame} {side}"] }
    - { column: Found, reads: ["{measured}"] }
  same: { as_built: 9.5 mm, date: 2028-03-06 }
"""
    file = tmp_path / "findings.yaml"
    file.write_text(f"{small_text[:start]}readings_file: r.csv\n{said}{small_text[end:]}", "utf-8")
    told = [(notice.place.path, notice.place.line, notice.code) for notice in sandling.check(file).notices]
    assert told == [(str(tmp_path / "r.csv"), 3, "bad-survey"), (str(tmp_path / "r.csv"), 4, "dead-reference")]
    file.write_text(f"{small_text[:start]}{said}{small_text[end:]}", "utf-8")
    assert [code for _, code in _errors(sandling.check(file).notices)] == ["missing-key"]


def test_a_file_that_is_none_is_told(sandling: Tendered, tmp_path: Path) -> None:
    found = sandling.check(tmp_path / "none.yaml")
    assert [notice.code for notice in found.notices] == ["no-such-file"]
    assert not found.sound
