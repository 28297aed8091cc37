"""The survey forms: what the package knows is on them, and their columns are those of the files filled from them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.documents.edition import Edition, Table
from tenderwright.documents.owner.survey_forms import survey_forms
from tenderwright.model.care import COLUMNS as CARE
from tenderwright.model.noun import keys_of
from tenderwright.model.photograph import Photograph
from tenderwright.model.survey_row import COLUMNS
from tenderwright.model.timber import Boring, DrawnFastening, MoistureReading, Plank, Seam
from tests.documents.composed import compiled, composed, part, rows, tables, words

PACKAGES = Path(__file__).parents[1] / "packages"


@pytest.fixture(scope="module")
def forms() -> Edition:
    return composed("marram").edition("owner").sheets["survey-forms"]


@pytest.fixture(scope="module")
def of_wood() -> Edition:
    ship = compiled(PACKAGES / "withy")
    return survey_forms(ship.desk(), ship.yard[0])


def _titles(table: Table) -> list[str]:
    return [column.title for column in table.columns]


def _form(forms: Edition, anchor: str, first: str) -> Table:
    return next(table for table in tables(part(forms, anchor)) if _titles(table)[0] == first)


def test_they_hold_nothing_confidential_and_caution_whoever_goes_in(forms: Edition) -> None:
    assert (forms.audience, forms.confidential) == ("yard", False)
    assert "shaft and rudder are locked" in words(part(forms, "form-diver"))
    assert "confined space" in words(part(forms, "form-tanks"))
    assert "Nobody walks through alone" in words(part(forms, "form-walk-through"))
    assert [one.anchor for one in forms.parts] == [
        "form-diver",
        "form-walk-through",
        "form-tanks",
        "form-photograph-list",
    ]


def test_the_diver_has_every_plate_anode_and_opening_by_its_name(forms: Edition) -> None:
    package = composed("marram").compiled.package
    plates = rows(_form(forms, "form-diver", "strake"))
    assert [row[0] for row in plates] == sorted(row[0] for row in plates)
    assert {row[0] for row in plates} == {one.strake for one in package.strakes}
    assert plates[0][:3] == ["A", "Fr 2 – 10", "12.7"]
    assert len([row for row in plates if row[0] == "A"]) == 10
    assert [row[0] for row in rows(_form(forms, "form-diver", "anode"))] == [
        one.anode.upper() for one in package.anodes
    ]
    assert [row[0] for row in rows(_form(forms, "form-diver", "opening"))] == [one.name for one in package.openings]
    potentials = rows(_form(forms, "form-diver", "date"))
    assert potentials[0] == ["", "potential", "Fr 4 port", "", "V", "silver", "", "", "", ""]
    assert len(potentials) == len({one.place for one in package.care_readings if one.kind == "potential"})


def test_the_tanks_are_asked_for_their_certificate_before_anything_else(forms: Edition) -> None:
    package = composed("marram").compiled.package
    before, inside = (table for table in tables(part(forms, "form-tanks")) if _titles(table)[0] == "tank")
    for table in (before, inside):
        assert [row[0] for row in rows(table)] == [one.name for one in package.tanks]
    assert [row[1] for row in rows(before)] == ["yes" if one.held_oil else "no" for one in package.tanks]
    assert {"oxygen", "flammable", "watch at manhole", "competent person"} <= set(_titles(before))


def test_the_columns_to_fill_are_those_of_the_files_that_the_result_goes_into(forms: Edition, of_wood: Edition) -> None:
    plating = _titles(_form(forms, "form-diver", "strake"))
    assert {"strake", "as_built_mm", "frame", "kind", "measured_mm"} <= {*plating} & {*COLUMNS}
    assert tuple(_titles(_form(forms, "form-diver", "date"))) == CARE
    assert set(_titles(_form(forms, "form-photograph-list", "file"))) <= {key for _, key in keys_of(Photograph)}
    beside = {"last time", "photograph", "seen there", "zone", "name", "kind", "number"}
    for first, noun in (
        ("plank", Plank), ("seam", Seam), ("core", Boring), ("spot", MoistureReading), ("zone", DrawnFastening)
    ):  # fmt: skip
        titles = {title.partition(":")[0] for title in _titles(_form(of_wood, "form-timber", first))}
        assert titles - beside <= {key for _, key in keys_of(noun)}, first


def test_wood_is_asked_again_at_the_same_places(of_wood: Edition) -> None:
    timber = tables(part(of_wood, "form-timber"))
    spots = next(table for table in timber if _titles(table)[0] == "spot")
    assert rows(spots)[0] == ["M1", "1.1 m", "port", "1.1 m (3.61 ft)", "27 %", "", ""]
    planks = next(table for table in timber if _titles(table)[0] == "plank")
    assert rows(planks)[1][:2] == ["p4-2", "4"]
    assert rows(planks)[-1] == [""] * len(planks.columns)
    stretches = rows(_form(of_wood, "form-diver", "stretch"))
    assert len(stretches) == 24
    assert all(row[0].count(" m") == 2 for row in stretches)


def test_a_package_that_knows_little_gets_blank_forms_in_its_units() -> None:
    ship = compiled(PACKAGES / "kestrel-bank")
    forms = survey_forms(ship.desk(), ship.yard[0])
    assert "stretch" in _titles(_form(forms, "form-diver", "stretch"))
    assert all("_mm" not in title for table in tables(forms.parts) for title in _titles(table))
