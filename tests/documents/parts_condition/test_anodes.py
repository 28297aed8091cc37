from __future__ import annotations

from tenderwright.calculations.calculate import calculate
from tenderwright.documents.edition import Bullets, Paragraph, plain
from tenderwright.documents.parts.anodes import anodes
from tenderwright.model.package import Package
from tenderwright.quantities.position import parse_position
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .parts import desk, rows, text


def test_every_anode_stands_once_in_its_lot_with_its_life() -> None:
    listed = rows("anodes", "Wasted a year")
    lots = [place for place, cells in enumerate(listed) if len(cells) == 1]
    assert [listed[place][0].split(",")[0] for place in lots] == ["Fitted 10 October 2007", "Fitted 24 May 2018"]
    older, newer = listed[1 : lots[1]], listed[lots[1] + 1 :]
    assert (len(older), len(newer)) == (20, 6)
    assert len({cells[0] for cells in older + newer}) == 26
    found = {cells[0]: (cells[2], cells[-1]) for cells in older + newer}
    assert all("m up" in cells[1] and "zinc" in cells[7] for cells in older + newer)
    assert (found["P12"], found["P4"], found["P1"]) == (("55 %", "Keep"), ("30 %", "Renew"), ("45 %", "Renew"))


def test_the_number_needed_is_told_with_what_governs() -> None:
    values = desk().record.values
    assert f"So {values['anodes.needed'].si:.0f} are needed, and mass governs; 26 are fitted" in text("anodes")


def test_every_pair_of_metals_says_which_wastes_and_what_is_done() -> None:
    listed = rows("anodes", "Care taken")
    assert listed[0][2].startswith("Mild steel wastes")
    assert "anodes P1, P2" in listed[0][3]
    assert all(cells[3] != "nothing" for cells in listed)


def test_nothing_is_composed_where_the_package_says_nothing() -> None:
    assert anodes(replace(desk(), package=replace(desk().package, condition=None, anodes=()))) is None


def _said(package: Package) -> str:
    calculated = calculate(package)
    made = anodes(replace(desk(), package=package, calculated=calculated))
    assert made is not None
    lists = [plain(entry) for block in made.blocks if isinstance(block, Bullets) for entry in block.entries]
    return "\n".join([*(plain(block.text) for block in made.blocks if isinstance(block, Paragraph)), *lists])


def test_what_cannot_be_calculated_says_what_it_needs() -> None:
    package = desk().package
    assert package.condition is not None
    assert package.condition.anodes is not None
    assert _said(replace(package, condition=None)) == (
        "How long the anodes last, and how many are needed. Not calculated: it needs the rules for anodes in the "
        "account of her condition."
    )
    assert "Not calculated: it needs the list of anodes." in _said(replace(package, anodes=()))
    said = _said(replace(package, anodes=tuple(replace(one, left=None) for one in package.anodes)))
    assert "Not calculated: it needs what is left and the day seen of the anodes in the list of anodes" in said
    assert "So " in said


def test_further_anodes_have_places_or_say_why_not() -> None:
    package = desk().package
    assert package.condition is not None
    assert package.condition.anodes is not None
    duty = package.condition.anodes
    longer = replace(package.condition, next_docking=parse_quantity("12 yr", "time"))
    assert "Room for more on each side, clear of anodes and openings: Fr" in _said(replace(package, condition=longer))
    bare = replace(longer, anodes=replace(duty, strip=None))
    assert "Room for more on each side. Not calculated: it needs the strip in which anodes may stand" in _said(
        replace(package, condition=bare)
    )
    assert duty.strip is not None
    assert package.frames is not None
    strip = replace(duty.strip, to=parse_position("Fr 14", package.frames))
    short = replace(longer, anodes=replace(duty, strip=strip))
    assert "find no room on that strip" in _said(replace(package, condition=short))
