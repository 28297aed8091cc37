from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest

from tenderwright.calculations.renewal.contingent import contingent_renewal
from tenderwright.calculations.ship.renewals import shell_contingent, shell_renewal
from tenderwright.calculations.ship.shell_plan import shell_plan
from tenderwright.pricing.quantity import line_quantity
from tests.replacing import replace

from .ship import marram, shot, survey, surveyed


def sound(count: int = 40) -> list[str]:
    return [shot("C", 10 + i + 0.5, "starboard", 9.5, 9.3) for i in range(count)]


def test_one_bad_frame_space_gives_one_insert_of_that_space() -> None:
    """Strake C at Fr 60 to 61: 0.600 m long, as broad as the strake there, corners of 5 t, overweight by the table."""
    package, record, calculated = surveyed(survey(*sound(), shot("C", 60.5, "port", 9.5, 6.0)))
    (one,) = (insert for insert in calculated.found(shell_renewal).inserts if not insert.apart)
    assert package.frames is not None
    assert (one.side, one.strakes, one.name) == ("port", ("C",), "R1")
    assert [one.aft, one.forward] == pytest.approx([package.frames.x(60), package.frames.x(61)])
    steel = one.made.steel
    assert steel.radius == pytest.approx(5 * one.thickness)
    assert steel.area == pytest.approx(0.6 * steel.breadth - (4 - np.pi) * steel.radius**2)
    assert record.values["shell.renewal.mass"].si == pytest.approx(one.made.mass)
    assert one.made.mass > steel.mass
    assert steel.mass / (steel.area * one.thickness * 7850) == pytest.approx(1.0605, abs=0.006)
    butt = 2 * int(np.ceil(1e3 * steel.breadth / 85 - 1e-9))
    frame = int(np.ceil(1e3 * steel.breadth / 133 - 1e-9))
    assert record.values["shell.renewal.rivets"].si == 2 * -(-600 // 85) + 2 * frame
    assert record.values["shell.renewal.rivets-renewed"].si == record.values["shell.renewal.rivets"].si + 4 * butt


@pytest.mark.parametrize(("found", "when"), [(7.2, "now"), (7.4, "next")])
def test_plate_that_passes_its_limit_before_the_next_docking_is_renewed_at_this_one(found: float, when: str) -> None:
    """The limit is 7.125 mm. At 0.09 mm a year 7.2 mm passes it before this docking, and 7.4 mm before the next."""
    early = survey(shot("C", 60.5, "port", 9.5, found + 1.62, "2007-10-06"), name="old")
    late = survey(shot("C", 60.5, "port", 9.5, found), *sound())
    _, record, _ = surveyed(early, late)
    assert record.values["shell.survey.beyond"].si == 0
    assert record.values[f"shell.bad.{when}"].si == 1
    assert record.values["shell.renewal.inserts"].si == 1
    _, record, _ = surveyed(survey(shot("C", 60.5, "port", 9.5, 7.4), *sound()))
    assert record.values["shell.renewal.inserts"].si == 0


def test_plate_of_an_item_of_its_own_is_drawn_and_not_summed() -> None:
    _, record, calculated = marram()
    apart = [one for one in calculated.found(shell_renewal).inserts if one.apart]
    assert [(one.apart, one.strakes, one.side) for one in apart] == [("335", ("C",), "port")]
    rest = [one.made.mass for one in calculated.found(shell_renewal).inserts if not one.apart]
    assert record.values["shell.renewal.mass"].si == pytest.approx(sum(rest))
    assert record.values["shell.renewal.inserts"].si == len(rest)


def test_man_hours_follow_the_place_of_the_strake() -> None:
    _, _, calculated = marram()
    hours = {
        "".join(one.strakes): one.made.man_hours / one.made.steel.mass
        for one in calculated.found(shell_renewal).inserts
    }
    assert hours["B"] > hours["E"]


def test_the_contingent_part_is_that_of_the_counts() -> None:
    """The values are those of the kernel on the counts by strake; every frame space is counted once."""
    _, record, calculated = marram()
    found, plan = calculated.found(shell_contingent), calculated.found(shell_plan)
    assert found is not None
    assert plan is not None
    gauged = found.gauged
    later = contingent_renewal(gauged)
    assert record.values["shell.contingent.spaces"].si == pytest.approx(later.plates)
    assert record.values["shell.contingent.area-p80"].si == pytest.approx(later.area_p80)
    assert record.values["shell.contingent.mass"].si < record.values["shell.contingent.mass-p80"].si
    spaces = int(gauged.sampled.sum() + gauged.unsampled.sum())
    assert spaces == 2 * int(plan.exists.sum()) - int(record.values["shell.bad.apart"].si)


def test_a_denser_survey_leaves_less_to_be_found() -> None:
    bad = shot("F", 60.5, "port", 9.5, 6.0)
    few = [shot("F", f + 0.5, "port", 9.5, 9.0) for f in range(0, 60, 10)]
    many = [shot("F", f + 0.5, "port", 9.5, 9.0) for f in range(60)]
    _, sparse, _ = surveyed(survey(bad, *few))
    _, dense, _ = surveyed(survey(bad, *many))
    assert sparse.values["shell.contingent.mass"].si > 2 * dense.values["shell.contingent.mass"].si


def test_change_a_reading_and_the_quantities_of_the_items_change_with_it() -> None:
    package, record, _ = marram()
    worse = survey(*package.surveys[1].text.splitlines()[1:], shot("D", 50.5, "port", 11.1, 7.0))
    changed, after, _ = surveyed(package.surveys[0], worse)
    item = package.item_by_name["310"]
    before = {line.line: line_quantity(line, record) for line in item.lines}
    now = {line.line: line_quantity(line, after) for line in changed.item_by_name["310"].lines}
    first, later = before["a"], now["a"]
    assert first is not None
    assert later is not None
    assert later.number - first.number >= Decimal(40)
    assert later.unit == "kg"
    assert later.number % 10 == Decimal(0)
    hose = next(line for line in package.item_by_name["770"].lines if line.line == "d")
    one, two = line_quantity(hose, record), line_quantity(hose, after)
    assert one is not None
    assert two is not None
    assert two.number > one.number


def test_an_insert_smaller_than_allowed_grows() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    assert package.condition.renewal is not None
    practice = replace(package.condition.renewal, least_bays=3)
    _, _, calculated = surveyed(survey(*sound(), shot("C", 60.5, "port", 9.5, 6.0)), renewal=practice)
    (one,) = (insert for insert in calculated.found(shell_renewal).inserts if not insert.apart)
    assert len(one.made.outline.bays) == 3
