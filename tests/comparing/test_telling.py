"""Nothing that changed is left untold, whatever was changed."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings

from tenderwright.comparing.change import Change
from tenderwright.comparing.changes import differences
from tenderwright.comparing.proof import prove
from tenderwright.comparing.telling import tell

from .edits import Data, edited, package


def told(before: Data, after: Data) -> list[Change]:
    operations = differences(before, after)
    changes = tell(operations, before, after)
    prove(before, after, operations, changes)
    return list(changes)


def change_item(number: int, **parts: object) -> tuple[Data, Data]:
    before, after = package(), package()
    path = next(path for path in after if path.startswith(f"items/{number}"))
    after[path] |= parts
    return before, after


def words(change: Change) -> tuple[str, str, str, str]:
    old, new = (side.text if side else "" for side in (change.old, change.new))
    return change.subject.name, change.what, old, new


@settings(max_examples=300)
@given(edited())
def test_every_operation_is_told_by_exactly_one_change(pair: tuple[Data, Data]) -> None:
    operations = differences(*pair)
    changes = tell(operations, *pair)
    counted = Counter(number for change in changes for number in change.operations)
    assert counted == dict.fromkeys(range(len(operations)), 1)
    assert all(change.subject.title for change in changes)


def test_the_proof_refuses_what_is_untold_or_told_twice() -> None:
    before, after = change_item(210, title="Hull, wash twice")
    operations = differences(before, after)
    changes = tell(operations, before, after)
    for wrong in ((), (*changes, *changes)):
        with pytest.raises(RuntimeError, match="not told by exactly one change"):
            prove(before, after, operations, wrong)


def test_the_proof_refuses_operations_that_give_something_else() -> None:
    before, after = change_item(210, title="Hull, wash twice")
    operations = differences(before, after)
    with pytest.raises(RuntimeError, match="FROM and the operations give"):
        prove(before, package(), operations, tell(operations, before, after))
    with pytest.raises(RuntimeError, match="cannot be applied"):
        prove(after, after, operations, tell(operations, before, after))


def test_the_parts_of_an_item_are_told_by_their_names_and_in_their_order() -> None:
    before, after = package(), package()
    item = after["items/320-rivets-renew.yaml"]
    item["lines"][0]["quantity"] = "55 each"
    item["requirements"].insert(0, "Mark the rivets with the owner.")
    item["requirements"][2] = "Remove lining within 0.5 m of the place and refit it."
    item["where"]["extent"]["to"] = "Fr 28"
    item["tests"][0]["accept"] = "No drop of water inside within 10 min."
    assert [words(change) for change in told(before, after)] == [
        ("320", "Where, extent, to", "Fr 30", "Fr 28"),
        (
            "320",
            "Requirement 2 (now 3)",
            "Remove lining within 0.3 m of the place and refit it.",
            "Remove lining within 0.5 m of the place and refit it.",
        ),
        ("320", "Requirement 1", "", "Mark the rivets with the owner."),
        (
            "320",
            "Test 1, what passes",
            "No drop of water inside at any new rivet or within 300 mm of it in 5 min.",
            "No drop of water inside within 10 min.",
        ),
        ("320", "Line a, quantity", "40 each", "55 each"),
    ]


def test_items_come_and_are_withdrawn() -> None:
    before, after = change_item(210, withdrawn=True)
    after["items/230-hull-scrape.yaml"] = {"item": 230, "title": "Hull, scrape"}
    del after["items/420-underwater-shell-coat.yaml"]
    found = [(change.subject.name, change.manner, change.what) for change in told(before, after)]
    assert found == [("210", "withdrawn", ""), ("230", "added", ""), ("420", "removed", "")]


@pytest.mark.parametrize(
    ("parts", "price"),
    [
        ({"title": "Hull: wash; and sample old coating."}, False),
        ({"title": "Hull, wash twice"}, True),
        ({"revision": 3}, False),
        ({"deferral": "Growth is left on."}, False),
        ({"kind": "option"}, True),
        ({"phase": "before docking"}, True),
        ({"scope": "Wash the shell at 2.50 bar."}, True),
    ],
)
def test_only_what_is_editorial_or_for_the_record_leaves_the_price_alone(parts: dict[str, object], price: bool) -> None:
    (change,) = told(*change_item(210, **parts))
    assert change.price is price


def test_a_date_and_a_clause_and_readings_are_told_each_by_its_file() -> None:
    before, after = package(), package()
    after["package.yaml"]["dates"]["closing"] = "2027-12-17"
    after["clauses/02-changes.md"] = before["clauses/02-changes.md"] + "\nNo verbal order counts.\n"
    after["surveys/thickness-2021.csv"] = before["surveys/thickness-2021.csv"].replace("8.0", "7.4")
    found = told(before, after)
    assert [(change.subject.group, change.what) for change in found] == [
        ("clause", "Text"),
        ("tender", "Dates, closing day"),
        ("other", "Lines 3"),
    ]
    assert found[2].old is not None
    assert found[2].old.text == "A,2.0 m,port,8.0"
