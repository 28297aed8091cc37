"""Anodes known by their number are reckoned like those listed one by one, with their places taken as spread evenly."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.anode_life import each_anode
from tenderwright.calculations.ship.anodes import fitted_anodes
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.pipeline import read
from tests.documents.composed import Composed, anchors, compiled, words
from tests.fixtures.overlay import notices_of
from tests.model.packages import change, load, put
from tests.outcomes import result_of
from tests.pipeline.packages import MARRAM, edit, starter

FAMILY = """families:
  - { family: bilge, count: 7, extent: { from: Fr 6, to: Fr 30 }, height: 0.9 m, alloy: zinc, mass: 5 kg,
      fixing: bolted, left: 40 %, seen: 2026-05-11 }
"""


def _root(folder: str, text: str = FAMILY, where: str = "[bilge]") -> Path:
    root = starter(Path(folder) / "p")
    (root / "vessel" / "anodes.yaml").write_text(text, "utf-8")
    item = "items/420-underwater-shell-coat.yaml"
    edit(root, item, "where:\n", f"where:\n  anodes: {where}\n")
    return root


def _composed(text: str = FAMILY) -> Composed:
    with TemporaryDirectory() as folder:
        return compiled(_root(folder, text))


@pytest.fixture(scope="module")
def family() -> Composed:
    return _composed()


def _anodes(package: Package) -> list[tuple[str, str, float]]:
    return [(one.anode, one.side, round(one.at.x, 6)) for one in package.anodes]


def test_they_are_spread_evenly_to_both_sides(family: Composed) -> None:
    package = family.compiled.package
    assert package.frames is not None
    aft, fore = package.frames.x(6), package.frames.x(30)
    found = _anodes(package)
    assert [name for name, _, _ in found] == [f"bilge-{n}" for n in range(1, 8)]
    assert [side for _, side, _ in found] == ["port", "starboard"] * 3 + ["port"]
    places = sorted({x for _, _, x in found})
    steps = [round(b - a, 6) for a, b in pairwise(places)]
    assert steps == [pytest.approx((fore - aft) / 4)] * 3
    assert places[0] - aft == pytest.approx(fore - places[-1])


def test_mass_and_number_are_those_of_as_many_listed(family: Composed) -> None:
    listed = "anodes:\n" + "".join(
        f"  - {{ anode: b{n}, at: Fr 12, side: port, height: 0.9 m, alloy: zinc, mass: 5 kg }}\n" for n in range(7)
    )
    with TemporaryDirectory() as folder:
        same = compiled(_root(folder, listed, "[b0]"))
    assert family.found(fitted_anodes) == same.found(fitted_anodes)
    assert family.found(fitted_anodes)["mass"] == 35.0


def test_what_names_the_family_names_all_of_them(family: Composed) -> None:
    item = family.compiled.package.item_by_name["420"]
    assert [one.name for one in item.where.anodes] == [f"bilge-{n}" for n in range(1, 8)]


def test_the_page_gives_a_family_one_row(family: Composed) -> None:
    (holder,) = (one for one in family.yard[0].parts if "anodes" in anchors(one))
    said = words(holder)
    assert "BILGE-1 to -7" in said
    assert "BILGE-3" not in said


def test_life_and_current_are_those_of_each_times_their_number() -> None:
    """Marram's anodes, as if her diver had only counted 26 of them at 35 % left."""
    files = read(MARRAM)
    text = (
        "families:\n  - { family: hull, count: 26, extent: { from: Fr 3, to: Fr 76 }, height: 1.2 m, alloy: zinc, "
        "mass: 10 kg, left: 35 %, seen: 2026-06-16 }\n"
    )
    files = put(files, "vessel/anodes.yaml", text)
    lots = "    - anodes: [p4, p5, p6, p7, p8, p9, p10, p11, p12, s4, s5, s6, s7, s8, s9, s10, s11, s12, r1, r2]\n"
    files = change(files, "vessel/condition.yaml", lots, "    - anodes: [hull]\n")
    files = change(files, "vessel/condition.yaml", "    - anodes: [p1, p2, p3, s1, s2, s3]\n      on: 2018-05-24\n", "")
    calculated = calculate(load(files)[0])
    each = result_of(calculated, each_anode)
    assert len(each.anodes) == 26
    assert len({(one.life.rate, one.current) for one in each.anodes}) == 1
    assert each.current == pytest.approx(26 * each.anodes[0].current)


@pytest.mark.parametrize(
    ("text", "where", "code"),
    [
        (FAMILY.replace("count: 7", "count: 0"), "[bilge]", "out-of-bounds"),
        (FAMILY.replace("mass: 5 kg", "mass: 5 m"), "[bilge]", "wrong-dimension"),
        (FAMILY, "[bilges]", "dead-reference"),
        (FAMILY + "anodes:\n" + "  - { anode: bilge-3, at: Fr 12, side: port, height: 1 m, alloy: zinc, mass: 5 kg }\n",
         "[bilge]", "duplicate-name"),
    ],
)  # fmt: skip
def test_mistakes_are_told_once(text: str, where: str, code: str) -> None:
    with TemporaryDirectory() as folder:
        found: list[Notice] = notices_of(_root(folder, text, where))
    assert [one.code for one in found if one.severity == "error"] == [code]
