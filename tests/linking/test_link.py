from __future__ import annotations

import random
from collections.abc import Mapping, Sequence

import pytest

from tenderwright.linking.link import link, link_owner, link_values
from tenderwright.model.load import load_owner
from tenderwright.notices import Notice
from tenderwright.reading.package import Files
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.shape import shape
from tests.model.packages import change, linked, load, told

ITEM = "items/320-rivets-renew.yaml"
WASH = "items/210-hull-wash.yaml"
WATCH = "items/130-fire-watch-provide.yaml"


def only(files: Files) -> Notice:
    (notice,) = linked(files)
    return notice


@pytest.mark.parametrize(
    ("path", "old", "new", "message", "hint"),
    [
        (ITEM, "(strake:A)", "(|strake:a7)", "there is no strake `a7`", None),
        (
            ITEM,
            "wasted to",
            "wasted <|itm:210> to",
            "`itm:` is not a kind of thing that can be referred to",
            "did you mean `item`?",
        ),
        (ITEM, "wasted to", "é <item:210>, <|item:21> to", "there is no item 21", "nearest: `110`"),
        (ITEM, "wasted to", "`<item:999>` <|item:999> to", "there is no item 999", None),
        (ITEM, "wasted to", "<part:tanks> <|part:tank> to", "there is no part `tank`", "did you mean `tanks`?"),
        (ITEM, "wasted to", "<frame:20> <|frame:99> to", "there is no frame 99", None),
        (
            ITEM,
            "boundary_of: [bilge-oil]",
            "boundary_of: [|bilgeoil]",
            "there is no tank `bilgeoil`",
            "did you mean `bilge-oil`?",
        ),
        ("clauses/01-hot-work.md", "<item:140>", "<|item:141>", "there is no item 141", "nearest: `140`, `210`"),
        (
            "package.yaml",
            'tugs: { answer: "yes", item: "110" }',
            'tugs: { answer: "yes", item: |"111" }',
            "there is no item 111",
            "nearest: `110`, `130`",
        ),
        (
            "items/420-underwater-shell-coat.yaml",
            "<value:coating.underwater-spot.area>",
            "<|value:coating.underwater-spot.aria>",
            "there is no value `coating.underwater-spot.aria`",
            "did you mean `coating.underwater-spot.area`?",
        ),
    ],
)
def test_a_dead_reference_is_told_where_it_stands(
    starter: Files, path: str, old: str, new: str, message: str, hint: str | None
) -> None:
    files = change(starter, path, old, new.replace("|", ""))
    source = files.sources[path]
    start = source.text.index(new.replace("|", "")) + new.index("|")
    notice = only(files)
    assert notice.code == "dead-reference"
    assert notice.message == message
    assert str(notice.place) == str(source.place_of(start))
    if hint is not None:
        assert notice.hints[0] == hint


@pytest.mark.parametrize(
    ("path", "old", "new", "message"),
    [
        ("vessel/strakes.yaml", "strake: B", "strake: A", "strake `A` is used twice"),
        ("drawings.yaml", "drawing: d-02", "drawing: d-01", "drawing `d-01` is used twice"),
        (WASH, "item: 210", "item: 320", "item number 320 is used twice"),
        ("items/130-fire-watch-provide.yaml", "line: b", "line: a", "line 130.a is used twice"),
        ("items/420-underwater-shell-coat.yaml", "hold: H2", "hold: H1", "hold `H1` of item 420 is used twice"),
    ],
)
def test_a_name_that_stands_for_two_things_shows_both(
    starter: Files, path: str, old: str, new: str, message: str
) -> None:
    twice = [notice for notice in linked(change(starter, path, old, new)) if notice.code == "duplicate-name"]
    assert [notice.message for notice in twice] == [message]
    (note,) = twice[0].notes
    assert note.place is not None
    assert note.place != twice[0].place


@pytest.mark.parametrize(("on", "circle"), [("320", "130 → 320 → 130"), ("130", "130 → 130")])
def test_a_circle_of_dependence_is_told_once(starter: Files, on: str, circle: str) -> None:
    notice = only(change(starter, WATCH, "phase: dry\n", f'phase: dry\ndepends_on: ["{on}"]\n'))
    assert notice.code == "cycle"
    assert notice.message == f"items depend on each other in a circle: {circle}"


def watches(files: Files, rests_on: Mapping[int, Sequence[int]]) -> Files:
    """Give the package with watches that depend on items."""
    text, sources = files.sources[WATCH].text, dict(files.sources)
    for number, on in rests_on.items():
        path = f"items/{number}-watch.yaml"
        listed = ", ".join(f'"{one}"' for one in on)
        sources[path], _ = read_yaml(path, text.replace("item: 130\n", f"item: {number}\ndepends_on: [{listed}]\n"))
    return Files(files.root, sources, ())


def test_circles_that_share_items_are_one_knot_and_told_once(starter: Files) -> None:
    made = watches(starter, {1000: [1001], 1001: [1002, 1003], 1002: [1000], 1003: [1000], 1004: [1000]})
    (notice,) = linked(made)
    assert notice.message == ("items depend on each other in more than one circle, such as 1000 → 1001 → 1002 → 1000")
    assert [note.text for note in notice.notes] == ["these items rest on each other: 1000, 1001, 1002, 1003"]
    assert notice.place.path == "items/1002-watch.yaml"


def test_knots_apart_are_told_apart(starter: Files) -> None:
    made = watches(starter, {1000: [1001], 1001: [1000, 1002], 1002: [1003], 1003: [1002]})
    assert [notice.message for notice in linked(made)] == [
        "items depend on each other in a circle: 1000 → 1001 → 1000",
        "items depend on each other in a circle: 1002 → 1003 → 1002",
    ]


def test_many_items_that_all_depend_on_each_other_are_one_notice(starter: Files) -> None:
    numbers = range(1000, 1120)
    made = watches(starter, {number: [other for other in numbers if other != number] for number in numbers})
    (notice,) = linked(made)
    assert notice.message.endswith("such as 1000 → 1001 → 1000")
    assert notice.notes[0].text.endswith("1028, 1029 and 90 more")


def test_a_long_chain_is_no_circle_and_is_walked_without_recursion(starter: Files) -> None:
    chain = {number: [number - 1 if number > 1000 else 130] for number in range(1000, 3000)}
    assert linked(watches(starter, chain)) == []


def test_references_lead_back_and_name_the_requirement(starter: Files) -> None:
    package, _ = load(change(starter, ITEM, "without burning", "as in <item:210>"))
    links, _ = link(package)
    back = links.referred_to_by("item", "210")
    assert [(use.by, use.paragraph) for use in back if use.by == ("item", "320") and use.paragraph] == [
        (("item", "320"), "1")
    ]
    assert {use.by for use in back} >= {("item", "320"), ("item", "420")}
    assert all(use.by != ("item", "210") for use in back)
    assert links.referred_to_by("item", "none") == []


def test_the_order_of_files_does_not_matter(starter: Files) -> None:
    spoilt = change(change(starter, ITEM, "(strake:A)", "(strake:Z)"), WASH, "item: 210", "item: 320")
    package, _ = load(spoilt)
    wanted = told(linked(spoilt))
    for seed in range(5):
        paths = list(spoilt.sources)
        random.Random(seed).shuffle(paths)
        shuffled = Files(spoilt.root, {path: spoilt.sources[path] for path in paths}, spoilt.notices)
        assert sorted(told(linked(shuffled))) == sorted(wanted)
        assert load(shuffled)[0].items == package.items


def test_a_value_that_lacks_data_is_told_with_why(starter: Files) -> None:
    package, _ = load(starter)
    links, _ = link(package)
    found = link_values(links, set(), {"coating.underwater-spot.area": "the zone has no area"})
    notices = [notice for notice in found if notice.code == "unreached"]
    assert notices
    assert {notice.message for notice in notices} == {
        "value `coating.underwater-spot.area` could not be calculated: the zone has no area"
    }


def test_rates_are_for_lines_that_there_are(starter: Files) -> None:
    package, _ = load(starter)
    links, _ = link(package)
    files = change(starter, "owner/rates.yaml", "320.a:", "321.a:").owner_only()
    papers, _ = load_owner(files, shape(files)[0])
    _, (notice,) = link_owner(papers, links, package)
    assert (notice.code, notice.message) == ("dead-reference", "there is no item 321")
    assert notice.hints == ("nearest: `320.a`, `420.a`",)
    assert notice.place.path == "owner/rates.yaml"


def test_bids_are_for_lines_that_there_are(starter: Files) -> None:
    package, _ = load(starter)
    links, _ = link(package)
    text = (
        "yard: Ostrey\nreceived: 2027-12-09\n"
        "lines:\n  110.a: { rate: 5, status: priced }\n  321.a: { status: no bid }\n"
        "exclusions:\n  - { text: paint, lines: [420.a, 999.a] }\n"
    )
    path = "owner/bids/ostrey.yaml"
    files = Files(starter.root, {**starter.sources, path: read_yaml(path, text)[0]}, ()).owner_only()
    papers, _ = load_owner(files, shape(files)[0])
    _, found = link_owner(papers, links, package)
    assert [(notice.code, notice.message, notice.place.path, notice.place.line) for notice in found] == [
        ("dead-reference", "there is no item 321", path, 5),
        ("dead-reference", "there is no item 999", path, 7),
    ]
    assert found[0].hints == ("nearest: `320.a`, `420.a`",)
