"""The catalogue of work items: every entry is whole, finds what it rests on, and says the same in either system."""

from __future__ import annotations

import re

import pytest

from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.starter.items import (
    HEADINGS,
    Entry,
    NoNumber,
    entries,
    file_name,
    free_number,
    item_text,
    numbers_of,
)

_PAIR = re.compile(r"\{([^{}|]+)\|([^{}|]+)\}")
ALL = list(entries().values())


def test_there_are_some_seventy_entries_in_the_trades_order() -> None:
    assert len(ALL) >= 60
    assert [one.hundred for one in ALL] == sorted(one.hundred for one in ALL)
    assert {one.hundred for one in ALL} == set(HEADINGS)


@pytest.mark.parametrize("entry", ALL, ids=lambda one: one.name)
def test_an_entry_rests_on_entries_and_never_on_itself(entry: Entry) -> None:
    seen, front = set(), {entry.name}
    while front:
        front = {name for one in front for name in entries()[one].depends_on} - seen
        seen |= front
    assert entry.name not in seen


@pytest.mark.parametrize("entry", ALL, ids=lambda one: one.name)
def test_what_it_says_in_us_units_is_what_it_says_in_metric(entry: Entry) -> None:
    for metric, us in _PAIR.findall(entry.text):
        if (metric, us) == ("metre", "3 ft"):
            continue
        alone = not any(letter.isdigit() for letter in metric)
        one, other = (parse_quantity(f"1 {text}" if alone else text, "any") for text in (metric, us))
        assert one.dimension == other.dimension
        assert alone or other.si == pytest.approx(one.si, rel=0.3), f"{metric}, {us}"


@pytest.mark.parametrize("entry", ALL, ids=lambda one: one.name)
def test_its_file_is_in_the_units_of_the_package(entry: Entry) -> None:
    numbers = {name: 100 + place for place, name in enumerate(entries())}
    metric, us = (item_text(entry, 777, system, numbers) for system in ("metric", "us"))
    assert "item: 777\n" in metric
    assert "|}" not in metric
    assert not _PAIR.search(metric + us)
    assert (metric != us) == bool(_PAIR.search(entry.text))


def test_a_number_is_five_after_the_last_of_its_hundred() -> None:
    wash = entries()["growth-wash"]
    assert free_number(wash, set()) == 205
    assert free_number(wash, {110, 205, 212, 300}) == 215
    assert free_number(wash, {295, *range(201, 230)}) == 230


def test_a_full_hundred_has_no_number() -> None:
    with pytest.raises(NoNumber, match="no number is free from 201 to 299"):
        free_number(entries()["growth-wash"], set(range(201, 300)))


def test_it_rests_on_the_items_that_the_package_has_and_names_the_others() -> None:
    numbers = numbers_of(["110-dock-and-undock.yaml", "120-my-own-thing.yaml", "readme.md", "160-waste.yaml"])
    assert numbers == {"dock-and-undock": 110, "waste": 160}
    text = item_text(entries()["growth-wash"], 210, "metric", numbers)
    assert 'depends_on: ["110", "160"]\n' in text
    assert "# It rests on these too: name their numbers in `depends_on`: old-coating-sample\n" in text


def test_a_file_is_named_by_number_and_entry() -> None:
    assert file_name(entries()["growth-wash"], 210) == "210-growth-wash.yaml"


def test_a_quantity_of_the_catalogue_can_be_read() -> None:
    for entry in ALL:
        for quantity in re.findall(r"quantity: ([^,}]+)", entry.text):
            if quantity.strip() != "todo":
                try:
                    parse_quantity(quantity.strip(), "any")
                except QuantityError as error:
                    pytest.fail(f"{entry.name}: {error}")
