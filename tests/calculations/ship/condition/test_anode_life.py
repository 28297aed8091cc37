from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.anode_life import anodes_reconciled, each_anode, seen_anodes
from tenderwright.calculations.ship.anode_need import further_anodes
from tenderwright.calculations.ship.metals import metal_pairs
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .ship import docked, marram, surveyed


def test_each_anode_wastes_in_step_with_time_from_the_day_it_was_fitted() -> None:
    """s2, of 2018-05-24, had 15 % left on 2026-06-16: 85 % in 8.06 years, and a new one lasts as long."""
    package, record, calculated = marram()
    each = calculated.found(each_anode)
    assert each is not None
    by_name = {one.name: one for one in each.anodes}
    assert len(by_name) == len(package.anodes) == 26
    assert by_name["s2"].life.rate == pytest.approx(0.85 / 8.063, rel=1e-3)
    assert by_name["s2"].life.whole_life == pytest.approx(8.063, rel=1e-3)
    assert by_name["p12"].life.rate == pytest.approx(0.45 / 18.68, rel=1e-3)
    assert record.values["anodes.fastest"].si == "s2"
    given = sum((1 - a.left.si) * a.mass.si * 780 / 8760 / _years(a.anode) for a in package.anodes if a.left)
    assert record.values["anodes.current-given"].si == pytest.approx(given, rel=1e-3)


def test_an_anode_renewed_in_an_earlier_dock_wastes_there_as_the_old_one_did() -> None:
    """s2, of 2018-05-24, had 5 % left on 2027-05-05: 95 % in 8.95 years. The new one of 2027-06-02 begins whole."""
    package, _, _ = marram()
    rows = ("what: anode s2, anode: s2, left: 5 %, fitted: 6.5 kg", "what: anode p12, anode: p12, left_mass: 5.0 kg")
    _, _, calculated = surveyed(*package.surveys, history=(docked(package, *rows, key="anodes"),))
    each, seen = calculated.found(each_anode), calculated.found(seen_anodes)
    assert each is not None
    assert seen is not None
    life = {one.name: one.life for one in each.anodes}
    told = {one.anode.anode: one for one in seen.seen}
    assert life["s2"].rate == pytest.approx(0.95 / 8.945, rel=1e-3)
    assert life["s2"].at_next == pytest.approx(0.95 / 8.945 * (5.0 - 28 / 365.25), rel=2e-3)
    assert (str(told["s2"].renewed), told["s2"].left) == ("2027-06-02", pytest.approx(0.05))
    assert (told["p12"].renewed, told["p12"].left) == (None, pytest.approx(0.5))
    assert life["p12"].rate == pytest.approx(0.5 / 19.57, rel=1e-3)


def _years(name: str) -> float:
    return 8.063 if name in ("p1", "p2", "p3", "s1", "s2", "s3") else 18.684


def test_what_they_gave_is_set_beside_what_is_reckoned() -> None:
    _, record, calculated = marram()
    found = calculated.found(anodes_reconciled)
    assert found is not None
    share = record.values["anodes.current-given"].si / record.values["anodes.current-mean"].si
    assert record.values["anodes.given-of-reckoned"].si == found.share == pytest.approx(share)
    assert found.reading == "less, and some were spent"


def test_the_current_is_that_of_areas_coating_and_density() -> None:
    package, record, _ = marram()
    assert package.condition is not None
    assert package.condition.anodes is not None
    shell, stern, screw = package.condition.anodes.surfaces
    expected = (
        record.values["zone.underwater.area"].si * 0.080 * (0.02 + 0.5 * 0.012 * 5)
        + record.values["zone.rudder-and-stern-frame.area"].si * 0.080 * (0.05 + 0.5 * 0.025 * 5)
        + 5.4 * 0.080
    )
    assert (shell.b, stern.b, screw.a) == (0.012, 0.025, None)
    assert record.values["anodes.current-mean"].si == pytest.approx(expected, rel=1e-9)


def test_the_number_is_the_mass_over_that_of_one_where_mass_governs() -> None:
    _, record, _ = marram()
    mass = record.values["anodes.current-mean"].si * 5 * 365.25 * 24 / (780 * 0.85)
    assert record.values["anodes.mass-needed"].si == pytest.approx(mass)
    assert record.values["anodes.governs"].si == "mass"
    each = record.values["anodes.mass"].si / record.values["anodes.count"].si
    assert record.values["anodes.needed"].si == -(-mass // each)
    lasts = record.values["anodes.lasts"].si / (365.25 * 86400)
    assert lasts == pytest.approx(5 * record.values["anodes.mass"].si / mass)
    assert "anodes.further.centres" not in record.known


def test_where_more_are_needed_they_are_placed_clear_of_what_is_there() -> None:
    package, record, calculated = surveyed(*marram()[0].surveys, next_docking=parse_quantity("12 yr", "time"))
    layout = calculated.found(further_anodes)
    assert layout is not None
    assert record.values["anodes.further.centres"].si == list(layout.centres)
    assert len(layout.centres) > 2
    assert record.values["anodes.needed"].si > len(package.anodes)
    for centre in layout.centres:
        for anode in package.anodes:
            if abs(anode.height.si - 1.20) < 0.6 and anode.length:
                assert abs(centre - anode.at.x) >= 0.5 * anode.length.si + 0.2 + 0.3 - 1e-9


def test_without_their_sizes_it_is_told_and_without_a_duty_missing() -> None:
    package, _, _ = marram()
    record = calculate(replace(package, anodes=tuple(replace(anode, length=None) for anode in package.anodes))).record
    assert any("length, width and thickness" in notice.message for notice in record.notices)
    assert "anodes.needed" in record.failed
    record = calculate(replace(package, condition=None)).record
    assert record.missing["anodes.needed"] == "it needs `anodes` in vessel/condition.yaml"
    record = calculate(replace(package, anodes=())).record
    assert record.missing["anodes.needed"] == "it needs vessel/anodes.yaml"
    assert "anodes.current-mean" in record.values


def test_every_figure_comes_out_again() -> None:
    for _, record, _ in (marram(), surveyed(*marram()[0].surveys, next_docking=parse_quantity("12 yr", "time"))):
        assert [v.name for v, _ in different(record) if v.name.startswith(("anodes.", "metals."))] == []


def test_anodes_that_nobody_looked_at_say_what_they_need() -> None:
    package, _, _ = marram()
    calculated = calculate(replace(package, anodes=tuple(replace(anode, left=None) for anode in package.anodes)))
    assert "`left` and `seen`" in calculated.record.missing["anodes.current-given"]
    assert "anodes.needed" in calculated.record.values
    first, *others = package.anodes
    some = calculate(replace(package, anodes=(replace(first, left=None), *others)))
    seen = some.found(seen_anodes)
    assert seen is not None
    assert seen.not_seen == (first.anode,)


def test_further_anodes_without_a_strip_say_that_they_need_one() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.anodes is not None
    duty = replace(package.condition.anodes, strip=None)
    _, record, calculated = surveyed(*package.surveys, next_docking=parse_quantity("12 yr", "time"), anodes=duty)
    assert isinstance(calculated.outcome(further_anodes), Lacking)
    assert "`strip`" in record.missing["anodes.further.centres"]


def test_anodes_of_an_alloy_that_is_not_known_are_told() -> None:
    package, _, _ = marram()
    record = calculate(replace(package, anodes=tuple(replace(one, alloy="magnesium") for one in package.anodes))).record
    assert any("magnesium" in notice.message for notice in record.notices)
    assert "anodes.needed" in record.failed


def test_anodes_of_two_alloys_are_not_taken_as_those_of_one() -> None:
    package, _, _ = marram()
    first, *others = package.anodes
    record = calculate(replace(package, anodes=(replace(first, alloy="aluminium"), *others))).record
    why = "it needs anodes of one alloy in vessel/anodes.yaml, and they are of aluminium and zinc"
    assert record.missing["anodes.needed"] == record.missing["anodes.new.current"] == why
    assert record.missing["anodes.current-given"] == why
    assert "anodes.count" in record.values


def test_a_surface_whose_zone_has_no_area_rests_on_it_and_one_of_neither_is_told() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.anodes is not None
    record = calculate(replace(package, offsets=None, particulars=None)).record
    assert "anodes.current-mean" in record.missing
    first, *others = package.condition.anodes.surfaces
    neither = replace(package.condition.anodes, surfaces=(replace(first, zone=None), *others))
    _, record, _ = surveyed(*package.surveys, anodes=neither)
    assert any("give `zone` or `area`" in notice.message for notice in record.notices)


def test_each_pair_of_metals_is_judged() -> None:
    _, record, calculated = marram()
    pairs = calculated.found(metal_pairs)
    assert pairs is not None
    assert record.values["metals.1.wastes"].si == "mild steel"
    assert [f"metals.{key}.risk" in record.values for key in pairs] == [True] * len(pairs)
