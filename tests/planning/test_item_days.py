"""Beginning, end and duration of an item are printed, and the programme takes them from it."""

from __future__ import annotations

from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.planning.schedule import Schedule
from tenderwright.reading.package import Files
from tests.documents.composed import part, words
from tests.fixtures.wider_format import Change, of_item, wider
from tests.model.packages import change, put
from tests.pricing.in_dock.sandling import PROGRAMME

RIVETS = "items/320-rivets-renew.yaml"
DAYS = "phase: dry\nends: after undocking\nbegins_on: docking + 2 d\nends_on: undocking + 3 d\nduration: 6 d\n"


def test_the_item_prints_its_days() -> None:
    said = words(part(wider(of_item("phase: dry\n", DAYS)).yard[0], "item-510"))
    assert "from in dock, dry, to afloat after undocking" in said
    assert "docking + 2 d (7 April 2028)" in said
    assert "likely takes 6 d" in said


def _schedule(files: Files, *changes: Change) -> Schedule:
    files = put(
        files, "owner/programme.yaml", PROGRAMME.replace('rivet, item: "320", likely: 3 d', 'rivet, item: "320"')
    )
    for path, old, new in changes:
        files = change(files, path, old, new)
    made = compile_owner(files, compile_package(files))
    assert [one for one in made.notices if one.severity == "error"] == []
    assert made.schedule is not None
    return made.schedule


def test_the_programme_takes_the_duration_of_the_item(starter: Files) -> None:
    three, nine = (_schedule(starter, (RIVETS, "phase: dry\n", f"phase: dry\nduration: {days} d\n")) for days in (3, 9))
    place = three.network.index["rivet"]
    assert [one.network.nodes[place].duration.likely for one in (three, nine)] == [3.0, 9.0]


def test_an_item_that_ends_afloat_does_not_hold_back_the_undocking(starter: Files) -> None:
    held = _schedule(starter, (RIVETS, "phase: dry\n", "phase: dry\nduration: 9 d\n"))
    free = _schedule(starter, (RIVETS, "phase: dry\n", "phase: dry\nends: after undocking\nduration: 9 d\n"))
    for made, expected in ((held, True), (free, False)):
        network = made.network
        assert ((network.index["rivet"], network.index["undock"]) in network.pairs) is expected
        assert (network.index["dock"], network.index["rivet"]) in network.pairs
