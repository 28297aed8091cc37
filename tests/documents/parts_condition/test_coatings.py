from __future__ import annotations

from tenderwright.calculations.calculate import calculate
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Bullets, Table, plain
from tenderwright.documents.parts.coatings import prints, scheme_blocks, zones
from tenderwright.documents.parts.item import item_part
from tenderwright.linking.link import link
from tenderwright.model.coating import Scheme
from tests.calculations.ship.condition.ship import marram
from tests.documents.composed import rows, tables, words
from tests.replacing import replace

from .parts import desk


def _said(blocks: object) -> list[str]:
    assert isinstance(blocks, (list, tuple))
    told = [plain(entry) for block in blocks if isinstance(block, Bullets) for entry in block.entries]
    notes = tuple(zone.name for zone in desk().package.zones if zone.notes)
    return [one for one in told if "Not calculated" in one or not one.startswith(notes)]


def test_where_every_area_is_known_nothing_is_said() -> None:
    assert _said(zones(desk()).blocks) == []
    assert [_said(scheme_blocks(desk(), scheme)) for scheme in desk().package.schemes if scheme.abrasive] == [
        [] for scheme in desk().package.schemes if scheme.abrasive
    ]


def test_a_scheme_names_the_items_that_list_it() -> None:
    package, _, _ = marram()
    bare = replace(package, schemes=tuple(replace(scheme, item=None) for scheme in package.schemes))
    blocks = zones(Desk(bare, link(bare)[0], calculate(bare))).blocks
    (index,) = (one for one in blocks if isinstance(one, Table) and one.columns[-1].title == "Applied by")
    applied = [plain(row.cells[-1]) for row in index.rows]
    listed = [
        ", ".join(item.number for item in bare.items if scheme.scheme in {one.name for one in item.schemes})
        for scheme in bare.schemes
    ]
    assert applied == [numbers or "–" for numbers in listed]
    assert any(listed)


def test_every_scheme_stands_with_what_it_asks_of_the_steel() -> None:
    (index,) = (one for one in zones(desk()).blocks if isinstance(one, Table) and one.columns[-1].title == "Applied by")
    listed = [[plain(cell) for cell in row.cells] for row in index.rows]
    assert [cells[0] for cells in listed] == [scheme.name for scheme in desk().package.schemes]
    assert listed[0][2:6] == ["Sa 2 1/2", "50 µm to 85 µm", "50 mg/m²", "2"]


def test_an_area_that_the_package_has_no_data_for_says_what_it_needs() -> None:
    package, _, _ = marram()
    assert package.particulars is not None
    bare = replace(package, offsets=None, particulars=replace(package.particulars, displacement=None))
    calculated = calculate(bare)
    without = Desk(bare, link(bare)[0], calculated)
    needs = (
        "Not calculated: it needs the table of offsets, sections of the hull, the girths of the zone in the list of "
        "coating zones, or the displacement in the ship's particulars."
    )
    said = _said(zones(without).blocks)
    assert f"Underwater shell, keel to 2.9 m. {needs}" in said
    assert f"Underwater shell, spot blast and prime. {needs}" in said
    assert not any(entry.startswith("Boot-top") for entry in said)
    assert _said(scheme_blocks(without, bare.schemes[0])) == [f"Paint. {needs}", f"Abrasive. {needs}"]
    assert _said(scheme_blocks(without, bare.schemes[1])) == [f"Paint. {needs}"]


def test_a_scheme_of_one_item_is_printed_in_it_and_one_of_several_in_the_chapter() -> None:
    package, _, _ = marram()
    first, second = (item for item in package.items if item.number in ("410", "420"))
    both = replace(second, schemes=(*first.schemes, *second.schemes))
    shared = replace(package, items=tuple(both if item is second else item for item in package.items))
    alone, several = desk(), Desk(shared, link(shared)[0], calculate(shared))
    (scheme,) = (one for one in package.schemes if one.scheme == first.schemes[0].name)
    found = prints(alone, scheme)
    assert found is not None
    assert found.number == "410"
    assert prints(several, scheme) is None
    for at, in_items, in_chapter in ((alone, [1, 0], 0), (several, [0, 0], 1)):
        pages = [item_part(at, item).blocks for item in at.package.items if item.number in ("410", "420")]
        assert [_coats(page, scheme) for page in pages] == in_items
        assert _coats(zones(at).blocks, scheme) == in_chapter
    assert scheme.name in words(item_part(several, both))


def _coats(blocks: object, scheme: Scheme) -> int:
    """Count the tables that print the coats of a scheme."""
    products = [coat.product + (f", {coat.colour}" if coat.colour else "") for coat in scheme.coats]
    return sum([row[1] for row in rows(table)] == products for table in tables(blocks))
