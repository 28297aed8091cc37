from __future__ import annotations

from tenderwright.documents.parts.anodes import anodes
from tests.replacing import replace

from .parts import desk, rows, text


def test_every_lot_stands_with_its_life() -> None:
    listed = rows("anodes", "Wasted a year")
    assert [cells[0].count(",") + 1 for cells in listed] == [20, 6]
    assert [cells[-1] for cells in listed] == ["Keep", "Renew"]


def test_the_number_needed_is_told_with_what_governs() -> None:
    values = desk().record.values
    assert f"So {values['anodes.needed'].si:.0f} are needed, and mass governs; 26 are fitted" in text("anodes")


def test_every_pair_of_metals_says_which_wastes_and_what_is_done() -> None:
    listed = rows("anodes", "Care taken")
    assert listed[0][2].startswith("Mild steel wastes")
    assert "anodes P1, P2" in listed[0][3]
    assert all(cells[3] != "nothing" for cells in listed)


def test_nothing_is_composed_where_the_package_says_nothing() -> None:
    assert anodes(replace(desk(), package=replace(desk().package, condition=None))) is None
