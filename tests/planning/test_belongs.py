"""No rung leaves her worse: what touches one surface or opening is bought together, and bottom before topsides."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from tenderwright.model.funding import Scope
from tenderwright.model.load import load_owner
from tenderwright.model.package import Package
from tenderwright.planning.belongs import bottom_first, held_together, missing, together
from tenderwright.planning.scope import must_do
from tenderwright.reading.package import Files
from tests.model.packages import change, load, put

SCHEMES = """schemes:
  - scheme: underwater-overall
    zone: underwater
    item: "430"
    extent: { share: 100 %, basis: all of it }
    preparation: { grade: St 3, salts: 50 mg/m2, hold: H1 }
    coats: [{ coat: 1, product: antifouling, volume_solids: 55 %, dft: 100 um, loss: 30 % }]
  - scheme: topside-all
    zone: topside
    item: "440"
    extent: { share: 100 %, basis: all of it }
    preparation: { grade: St 3, salts: 50 mg/m2, hold: H1 }
    coats: [{ coat: 1, product: finish, volume_solids: 55 %, dft: 50 um, loss: 30 % }]
"""
ITEM = """item: {number}
title: Shell, work on
kind: definite
phase: dry
where: {where}
depends_on: [{after}]
scope: Work on it.
does: [{does}]
lines: [{{ line: a, text: All of it, price: lump }}]
"""
SCOPE = """weights: { risk: 5, preservation: 3, safety: 4 }
items:
  "420": { risk: 4, needs: ["210"] }
  "430": { risk: 3 }
  "440": { risk: 1 }
  "450": { risk: 2 }
  "510": { risk: 2 }
"""


def item(number: int, where: str, does: str, after: str = "") -> str:
    return ITEM.format(number=number, where=where, after=after, does=does)


@pytest.fixture
def files(starter: Files) -> Files:
    made = change(starter, "vessel/zones.yaml", "schemes:\n", SCHEMES)
    made = put(made, "items/430-overall.yaml", item(430, "{ zones: [underwater] }", "coats", '"420"'))
    made = put(made, "items/440-topside.yaml", item(440, "{ zones: [topside] }", "coats"))
    made = put(made, "items/450-anodes.yaml", item(450, "{ anodes: [p1, s1] }", "changes weight"))
    made = put(made, "items/510-chest-open.yaml", item(510, "{ openings: [sea-chest] }", "opens hull"))
    made = put(made, "items/520-chest-close.yaml", item(520, "{ openings: [sea-chest] }", "closes hull"))
    return put(made, "owner/scope.yaml", SCOPE)


@pytest.fixture
def package(files: Files) -> Package:
    made, notices = load(files)
    assert notices == []
    return made


def scope_of(files: Files, package: Package) -> Scope:
    scope = load_owner(files.owner_only(), {}, package.broken)[0].scope
    assert scope is not None
    return scope


def pairs(package: Package) -> set[tuple[str, str]]:
    return {(one.item, one.other) for one in together(package)}


def test_two_schemes_of_one_zone_are_one_choice(package: Package) -> None:
    assert {("420", "430"), ("430", "420")} <= pairs(package)


def test_a_coat_goes_with_what_prepares_its_zone_and_not_the_other_way(package: Package) -> None:
    assert {("420", "210"), ("430", "210")} <= pairs(package)
    assert ("210", "420") not in pairs(package)


def test_what_opens_an_opening_goes_with_what_closes_it(package: Package) -> None:
    assert ("510", "520") in pairs(package)
    assert ("520", "510") not in pairs(package)


def test_bottom_and_anodes_come_before_the_topsides_unless_the_owner_says_why(package: Package, files: Files) -> None:
    scope = scope_of(files, package)
    assert {(one.item, one.other) for one in bottom_first(package, scope)} == {
        ("440", "420"), ("440", "430"), ("440", "450"),
    }  # fmt: skip
    for told in ({"before_bottom": "paint is given"}, {"must": True}):
        allowed = replace(scope, items={**scope.items, "440": replace(scope.items["440"], **told)})
        assert bottom_first(package, allowed) == ()


def test_the_ladder_is_given_all_of_it_as_needs(package: Package, files: Files) -> None:
    scope = scope_of(files, package)
    held = held_together(package, scope)
    needs = {number: {reference.name for reference in worth.needs} for number, worth in held.items.items()}
    assert needs["420"] == {"210", "430"}
    assert needs["440"] == {"420", "430", "450"}
    assert needs["510"] == {"520"}
    must = replace(held, items={**held.items, "420": replace(held.items["420"], must=True)})
    assert must_do(must) == {"420", "430", "210"}


def test_only_what_the_scope_does_not_hold_together_yet_is_proposed(package: Package, files: Files) -> None:
    scope = scope_of(files, package)
    assert {(one.item, one.other) for one in missing(package, scope)} == {
        ("420", "430"), ("430", "420"), ("430", "210"), ("510", "520"),
    }  # fmt: skip
    assert missing(package, held_together(package, scope)) == ()
