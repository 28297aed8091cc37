from __future__ import annotations

import pytest

from tenderwright.calculations.coatings.grades import GRADES, METHOD, flash_rust_of, preparation_grade
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(
    ("iso", "sspc", "nace"),
    [
        # Dry grades as SSPC-VIS 1 pairs them with ISO 8501-1 (from memory).
        ("Sa 3", "SSPC-SP 5", "NACE No. 1"),
        ("Sa 2 1/2", "SSPC-SP 10", "NACE No. 2"),
        ("Sa 2", "SSPC-SP 6", "NACE No. 3"),
        ("Sa 1", "SSPC-SP 7", "NACE No. 4"),
        ("St 3", "SSPC-SP 3", None),
        ("St 2", "SSPC-SP 2", None),
        # Waterjetting: SSPC-SP WJ and ISO 8501-4 (from memory).
        ("Wa 2 1/2", "WJ-2", None),
        ("Wa 2", "WJ-3", None),
        ("Wa 1", "WJ-4", None),
    ],
)
def test_published_correspondence(iso: str, sspc: str, nace: str | None) -> None:
    assert preparation_grade(iso) is preparation_grade(sspc)
    assert preparation_grade(iso).nace == nace


@pytest.mark.parametrize(
    "name",
    [
        "Sa 2 1/2",
        "Sa 2½",
        "SA2.5",
        "Sa 2,5",
        "sa 2-1/2",
        "SSPC-SP 10",
        "SP10",
        "NACE 2",
        "NACE No. 2",
        "near-white",
        "near white metal blast",
        "BS 4232 second quality",
    ],
)
def test_one_grade_by_any_of_its_names(name: str) -> None:
    assert preparation_grade(name).name == "near-white blast"


@pytest.mark.parametrize(
    "name",
    [
        "WJ-2 L", "WJ-2M", "WJ-2 (flash rust H)", "SSPC-SP WJ-2", "SSPC-SP WJ-2/NACE WJ-2", "Wa 2 1/2 M",
        "SSPC-SP 12/NACE No. 5, WJ-2", "ISO 8501-4 Wa 2 1/2",
    ],
)  # fmt: skip
def test_a_grade_of_waterjetting_with_its_standard_and_its_flash_rust(name: str) -> None:
    # Degrees of flash rust L, M, H of ISO 8501-4 and of SSPC-SP WJ-1 to WJ-4 (from memory).
    assert preparation_grade(name) is preparation_grade("WJ-2")


def test_the_two_names_of_a_joint_standard_are_of_one_grade() -> None:
    assert preparation_grade("SSPC-SP 10/NACE No. 2") is preparation_grade("Sa 2 1/2")
    with pytest.raises(OutOfRange):
        preparation_grade("SSPC-SP 10/NACE No. 3")


def test_grades_that_differ_in_a_half_are_kept_apart() -> None:
    assert preparation_grade("Sa 2") is not preparation_grade("Sa 2 1/2")
    assert preparation_grade("Wa 2") is not preparation_grade("Sa 2")
    assert preparation_grade("NACE WJ-2") is preparation_grade("WJ 2")
    assert preparation_grade("SP 1") is not preparation_grade("SP 10")


@pytest.mark.parametrize("name", ["SSPC-SP 11", "SSPC-SP 15", "SSPC-SP 1", "SSPC-SP 8"])
def test_grades_without_an_iso_grade(name: str) -> None:
    assert preparation_grade(name).iso is None


def test_every_name_finds_its_own_row() -> None:
    for grade in GRADES:
        for name in (grade.name, grade.iso, grade.sspc, grade.nace):
            if name is not None:
                assert preparation_grade(name) is grade


def test_rows_say_what_is_from_memory() -> None:
    assert "from memory" in preparation_grade("SP 10").caution
    assert all("from memory" in preparation_grade(name).caution for name in ("WJ-2", "WJ-3", "WJ-4"))


@pytest.mark.parametrize("name", ["", "Sa 4", "2", "clean", "SP 99"])
def test_refuses_a_name_no_standard_has(name: str) -> None:
    with pytest.raises(OutOfRange, match="no surface preparation grade"):
        preparation_grade(name)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(grade="near-white")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["iso"] == "Sa 2 1/2"


@pytest.mark.parametrize(
    ("written", "grade", "flash"),
    [
        # ISO 8501-4 (from memory): the preparation grade, then the flash rust grade L, M or H.
        ("Wa 2 1/2 M", "Wa 2 1/2", "M"),
        ("Wa 2½ L", "Wa 2 1/2", "L"),
        ("Wa 2 FR H", "Wa 2", "H"),
        ("WJ-2 M", "Wa 2 1/2", "M"),
        ("WJ-2/L", "Wa 2 1/2", "L"),
        ("Wa 1", "Wa 1", ""),
        ("Sa 2 1/2", "Sa 2 1/2", ""),
    ],
)
def test_a_grade_of_water_jetting_may_end_with_its_flash_rust(written: str, grade: str, flash: str) -> None:
    assert preparation_grade(written) is preparation_grade(grade)
    assert flash_rust_of(written) == flash


def test_a_dry_grade_has_no_flash_rust() -> None:
    with pytest.raises(OutOfRange):
        preparation_grade("Sa 2 1/2 M")
    assert METHOD.run(grade="Wa 2 1/2 M")["flash_rust"] == "medium"
