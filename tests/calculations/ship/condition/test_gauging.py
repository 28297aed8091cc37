from __future__ import annotations

from .ship import marram, shot, survey, surveyed


def test_two_a_plate_one_plate_in_three_and_five_where_corrosion_is_substantial() -> None:
    """Two for each plate of A to F, one for a third of those of G and H, and five for the one poor plate."""
    package, record, _ = surveyed(survey(shot("C", 60.5, "port", 9.5, 7.6)))
    strakes = {strake.strake: strake for strake in package.strakes}
    plates = {
        name: len({*(b.text for b in s.butts), *(e.text for r in s.plates for e in (r.from_, r.to))}) - 1
        for name, s in strakes.items()
    }
    everywhere = 2 * sum(plates[name] for name in "ABCDEF")
    third = -(-2 * (plates["G"] + plates["H"]) // 3)
    assert record.values["shell.gauging.shots"].si == 2 * everywhere + third + 5


def test_the_item_takes_the_number() -> None:
    package, _, _ = marram()
    line = package.item_by_name["220"].lines[0]
    assert line.takes is not None
    assert line.takes.name == "shell.gauging.shots"
