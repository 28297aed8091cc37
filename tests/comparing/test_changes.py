"""FROM and the operations give TO, to the last digit, type and order of keys."""

from __future__ import annotations

import json
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.comparing.apply import CannotApply, apply
from tenderwright.comparing.changes import differences
from tenderwright.comparing.data import package_data, same
from tenderwright.comparing.operation import Named, Operation, as_json, from_json
from tenderwright.pipeline import read
from tests.pipeline.packages import edit, starter

from .edits import Data, edited, package, values


@settings(max_examples=300)
@given(edited())
def test_applying_the_operations_to_the_one_gives_the_other(pair: tuple[Data, Data]) -> None:
    before, after = pair
    operations = from_json(json.loads(json.dumps(as_json(differences(before, after)))))
    made = apply(before, operations)
    assert made.keys() == after.keys()
    assert [path for path in after if not same(made[path], after[path])] == []


@settings(max_examples=200)
@given(st.dictionaries(st.sampled_from(["a.yaml", "items/1-a.yaml", "surveys/s.csv"]), values), st.data())
def test_any_data_can_become_any_other(before: Data, data: st.DataObject) -> None:
    after = data.draw(st.dictionaries(st.sampled_from(["a.yaml", "items/1-a.yaml", "clauses/1-c.md"]), values))
    made = apply(before, differences(before, after))
    assert same(dict(sorted(made.items())), dict(sorted(after.items())))


@settings(max_examples=50)
@given(edited(), st.randoms(use_true_random=False))
def test_the_order_of_the_files_does_not_matter(pair: tuple[Data, Data], random: Random) -> None:
    before, after = pair
    turned = []
    for data in pair:
        paths = list(data)
        random.shuffle(paths)
        turned.append({path: data[path] for path in paths})
    assert differences(*turned) == differences(before, after)


def test_where_the_owner_keeps_papers_is_no_change_for_yards(tmp_path: Path) -> None:
    root = starter(tmp_path)
    before = package_data(read(root))
    edit(root, "package.yaml", "currency: EUR\n", "currency: EUR\nowner_papers: in this repository\n")
    assert package_data(read(root)) == before


def test_of_the_tow_yards_are_told_only_how_she_is_kept_in_dock(tmp_path: Path) -> None:
    """The legs of the tow say to which dock she goes, which is nothing for the other yards."""
    root = starter(tmp_path)
    before = package_data(read(root))
    (root / "tow.yaml").write_text("tower: a tug of the port\ndock: ostrey-dock\n")
    assert package_data(read(root)) == before
    with (root / "tow.yaml").open("a") as file:
        file.write("in_dock: { gangs: 2 }\n")
    told = package_data(read(root))
    assert told == before | {"tow.yaml": {"in_dock": {"gangs": 2}}}
    assert list(told) == sorted(told)


def test_nothing_changed_gives_no_operations() -> None:
    assert differences(package(), package()) == ()


@settings(max_examples=50)
@given(edited())
def test_the_data_compared_are_left_as_they_were(pair: tuple[Data, Data]) -> None:
    before, after = pair
    kept = json.dumps(pair)
    apply(before, differences(before, after))
    assert json.dumps(pair) == kept


@pytest.mark.parametrize(
    ("old", "new"), [(1, 1.0), (True, 1), (0.0, -0.0), ("1", 1), (None, ""), ({"a": 1, "b": 2}, {"b": 2, "a": 1})]
)
def test_what_python_takes_for_equal_is_still_a_change(old: object, new: object) -> None:
    (operation,) = differences({"package.yaml": {"x": old}}, {"package.yaml": {"x": new}})
    assert operation.does in ("set", "order")


def test_entries_are_found_by_their_names_and_not_by_their_places() -> None:
    lines = [{"line": "a", "text": "Wash"}, {"line": "b", "text": "Blast", "quantity": "20 m2"}]
    after = [{"line": "c", "text": "Test"}, {"line": "b", "text": "Blast", "quantity": "25 m2"}]
    before = {"items/210-hull.yaml": {"item": 210, "lines": lines}}
    found = differences(before, {"items/210-hull.yaml": {"item": 210, "lines": after}})
    assert [(operation.does, operation.at) for operation in found] == [
        ("set", ("lines", Named("line", "b"), "quantity")),
        ("removed", ("lines", Named("line", "a"))),
        ("added", ("lines", Named("line", "c"))),
    ]


def test_a_requirement_written_anew_is_one_change_and_those_after_it_are_none() -> None:
    old = ["Wash the shell at 200 bar.", "Dry it.", "Tell the owner."]
    new = ["Scrape growth off first.", "Wash the shell at 250 bar, bow to stern.", "Dry it.", "Tell the owner."]
    found = differences({"items/210.yaml": {"requirements": old}}, {"items/210.yaml": {"requirements": new}})
    assert [(operation.does, operation.at) for operation in found] == [
        ("set", ("requirements", 0)),
        ("added", ("requirements", 0)),
    ]


def test_a_file_that_holds_the_same_item_under_another_name_has_moved() -> None:
    before = {"items/210-wash.yaml": {"item": 210, "title": "Hull, wash"}}
    after = {"items/210-scrape.yaml": {"item": 210, "title": "Hull, scrape"}}
    assert [operation.does for operation in differences(before, after)] == ["file-moved", "set"]


def test_readings_changed_in_a_long_survey_are_told_by_their_lines() -> None:
    rows = [f"A,{number}.0 m,port,8.1" for number in range(5000)]
    before = {"surveys/s.csv": "\n".join(rows)}
    rows[2500] = "A,2500.0 m,port,7.2"
    (operation,) = differences(before, {"surveys/s.csv": "\n".join(rows)})
    assert operation.position == 2500
    assert operation.new == ["A,2500.0 m,port,7.2"]


def test_operations_that_do_not_fit_are_refused() -> None:
    data = {"package.yaml": {"a": 1, "l": [{"line": "a"}]}}
    for operation in (
        Operation("set", "package.yaml", ("a",), 2, 3),
        Operation("removed", "package.yaml", ("l", Named("line", "b")), {}),
        Operation("added", "package.yaml", ("a",), new=1, position=0),
        Operation("set", "other.yaml", ("a",), 1, 2),
        Operation("file-removed", "package.yaml", old={}),
        Operation("order", "package.yaml", (), ["l", "a"], ["a", "l"]),
    ):
        with pytest.raises(CannotApply):
            apply(data, [operation])
