"""What is broken is left out and its name kept, so that one slip of the pen gives one notice."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.model.package import ANY
from tenderwright.reading.package import Files

from .packages import change, linked, load, put, told

ITEM = "items/320-rivets-renew.yaml"


def test_the_starter_is_built_whole(starter: Files) -> None:
    package, notices = load(starter)
    assert notices == []
    assert [item.number for item in package.items] == ["110", "130", "140", "210", "320", "420"]
    assert package.tender is not None
    assert package.broken.names == frozenset()
    assert [clause.clause for clause in package.clauses] == ["hot-work", "changes"]
    assert (package.clauses[0].number, package.clauses[0].title) == ("1", "Hot work")
    assert package.clauses[0].text.text.startswith("Hot work is welding")


@pytest.mark.parametrize(
    ("path", "old", "new", "code"),
    [
        (ITEM, "phase: dry", "phase: |dri", "wrong-choice"),
        (ITEM, "from: Fr 10,", "from: |Fr 99,", "bad-frame"),
        (ITEM, "quantity: 40 each", "quantity: |40 eech", "bad-quantity"),
        (ITEM, "side: both", "|sidde: both", "unknown-key"),
        ("vessel/tanks.yaml", "from: Fr 14", "from: |Fr 99", "bad-frame"),
        ("vessel/tanks.yaml", "tank: bilge-oil", "tank: |Bilge oil", "wrong-form"),
        ("vessel/strakes.yaml", "strake: A", "strake: |A A", "wrong-form"),
        ("vessel/frames.yaml", "direction: forward", "direction: |ford", "wrong-choice"),
        ("vessel/zones.yaml", "share: 30 %", "share: |30", "wrong-type"),
        ("vessel/zones.yaml", "scheme: underwater-spot", "scheme: |Underwater", "wrong-form"),
        ("drawings.yaml", "drawing: r-02", "drawing: |R 02", "wrong-form"),
        ("package.yaml", "currency: EUR", "currency: |euro", "wrong-form"),
        ("history/docking-2021.yaml", "left: 42 %", "left: |42", "wrong-type"),
    ],
)
def test_one_slip_gives_one_notice_even_where_others_refer_to_it(
    starter: Files, path: str, old: str, new: str, code: str
) -> None:
    files = change(starter, path, old, new.replace("|", ""))
    source = files.sources[path]
    place = source.place_of(source.text.index(new.replace("|", "")) + new.index("|"))
    assert told(linked(files)) == [(str(place), code)]


@settings(max_examples=120)
@given(st.data())
def test_a_slip_anywhere_gives_at_most_one_notice(starter: Files, data: st.DataObject) -> None:
    """Whatever one word is spoilt, nothing that rests on it is told of again before the calculations."""
    paths = [path for path in starter.sources if path.endswith(".yaml") and not path.startswith("owner/")]
    path = data.draw(st.sampled_from(paths))
    source = starter.sources[path]
    spots = [(start, end) for start, end in source.ends.values() if source.text[start:end].strip()]
    start, end = data.draw(st.sampled_from(spots))
    if "\n" in source.text[start:end]:
        return
    assert len(linked(put(starter, path, f"{source.text[:start]}zz!9{source.text[end:]}"))) <= 1


def test_a_missing_key_of_an_item_is_the_only_notice_though_others_depend_on_it(starter: Files) -> None:
    assert told(linked(change(starter, "items/210-hull-wash.yaml", "kind: definite\n", ""))) == [
        ("items/210-hull-wash.yaml:2:1", "missing-key")
    ]


def test_a_broken_entry_is_left_out_and_the_others_stay(starter: Files) -> None:
    package, _ = load(change(starter, "vessel/tanks.yaml", "sounding: 0.30 m", "sounding: 0.30"))
    whole, _ = load(starter)
    assert {tank.tank for tank in whole.tanks} - {tank.tank for tank in package.tanks} == {"bilge-oil"}
    assert ("tank", "bilge-oil") in package.broken.names
    assert "vessel/tanks.yaml" in package.broken.files
    assert package.broken.may_hold("tank", "bilge-oil")
    assert not package.broken.may_hold("tank", "forepeak")


def test_a_name_that_cannot_be_read_may_be_any_of_its_kind(starter: Files) -> None:
    package, _ = load(change(starter, "vessel/strakes.yaml", "strake: A", "strake: A A"))
    assert ("strake", ANY) in package.broken.names
    assert package.broken.may_hold("strake", "A")
    assert not package.broken.may_hold("tank", "A")


def test_a_file_that_is_not_yaml_hides_nothing_else(starter: Files) -> None:
    assert told(linked(put(starter, ITEM, "item: 320\ntitle: a: b\n"))) == [(f"{ITEM}:2:9", "yaml-syntax")]


def test_the_number_of_an_item_is_that_of_its_file(starter: Files) -> None:
    _, (notice,) = load(change(starter, ITEM, "item: 320", "item: 330"))
    assert (notice.code, notice.place.path) == ("file-number", ITEM)
    assert notice.hints == ("name it `330-….yaml`, or mend the number",)


def test_without_an_entry_of_a_file_nothing_is_built_from_it(starter: Files) -> None:
    sources = {path: source for path, source in starter.sources.items() if not path.startswith("vessel/")}
    package, _ = load(Files(starter.root, sources, ()))
    assert (package.frames, package.particulars, package.tanks, package.zones) == (None, None, (), ())
