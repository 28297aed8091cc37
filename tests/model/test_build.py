from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import Annotated

import pytest
from msgspec import field

from tenderwright.model.build import Awaited, Builder, Prose, Reference
from tenderwright.model.day import Day
from tenderwright.model.kinds import Length, LengthOrKeel, TankRef
from tenderwright.model.marks import AbsentMeans
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import FrameTable, Position
from tenderwright.quantities.quantity import Quantity
from tenderwright.reading.yaml_file import read_yaml


class Inner(Noun, frozen=True, kw_only=True):
    """A thing with a place."""

    name: str
    here: Place


class Outer(Noun, frozen=True, kw_only=True):
    """One field of every sort."""

    word: str
    long: Length
    edge: LengthOrKeel
    at: Position
    from_: int
    cost: Decimal
    on: date
    due: Day
    text: Prose
    tank: TankRef
    here: Place
    parts: tuple[Inner, ...] = ()
    by_name: Mapping[str, Inner] = field(default_factory=dict)
    ratio: float | None = None
    absent: Length | None = None


TEXT = """\
# é
word: 12
long: 40 ft 8 in
edge: keel
at: Fr 1 + 100 mm
from: 3
cost: 84.5
on: 2027-04-12
due: docking + 3 d
text: |
  See <tank:forepeak>.
tank: forepeak
parts: [{name: a}, {name: b}]
by_name: {x: {name: c}}
ratio: 2
"""


@pytest.fixture
def builder() -> Builder:
    source, notices = read_yaml("f.yaml", TEXT)
    assert notices == []
    return Builder(source, FrameTable([0, 1, 2], [0.0, 0.5, 1.0]))


def test_every_sort_of_field_is_read(builder: Builder) -> None:
    made = builder.build(Outer, builder.source.data)
    assert builder.notices == []
    assert made.word == "12"
    assert isinstance(made.long, Quantity)
    assert made.long.si == pytest.approx(12.3952)
    assert made.edge == "keel"
    assert made.at.x == pytest.approx(0.6)
    assert (made.from_, made.cost, made.on) == (3, Decimal("84.5"), date(2027, 4, 12))
    assert made.due == Day("docking + 3 d", "docking", 3)
    assert made.text.text == "See <tank:forepeak>."
    assert isinstance(made.tank, Reference)
    assert (made.tank.kind, made.tank.name) == ("tank", "forepeak")
    assert [part.name for part in made.parts] == ["a", "b"]
    assert made.by_name["x"].name == "c"
    assert isinstance(made.ratio, float)
    assert made.absent is None


def test_everything_knows_its_place(builder: Builder) -> None:
    made = builder.build(Outer, builder.source.data)
    assert isinstance(made.long, Quantity)
    assert (made.here.line, made.long.at.line, made.at.at.line, made.tank.at.line) == (2, 3, 5, 12)
    assert [(part.here.line, part.here.column) for part in made.parts] == [(13, 9), (13, 20)]
    place = made.text.place_of("tank:forepeak")
    assert (place.line, place.column) == (11, 8)


def test_places_do_not_make_things_differ(builder: Builder) -> None:
    first, second = builder.build(Outer, builder.source.data).parts[0], Inner(name="a", here=Place("elsewhere"))
    assert first == second
    assert (first != second) is False
    assert len({first, second}) == 1
    assert first != Inner(name="b", here=first.here)
    assert first != "a"


def test_a_frame_that_is_not_there_is_told_at_its_place(builder: Builder) -> None:
    position = builder.position("Fr 9", ("at",))
    assert position.x == 0.0
    (notice,) = builder.notices
    assert (notice.code, str(notice.place)) == ("bad-frame", "f.yaml:5:5")


def test_without_frames_a_position_is_not_told_twice() -> None:
    source, _ = read_yaml("f.yaml", TEXT)
    builder = Builder(source)
    assert builder.position("Fr 9", ("at",)).text == "Fr 9"
    assert builder.notices == []


def test_a_key_without_a_field_is_not_read(builder: Builder) -> None:
    assert builder.build(Inner, {"name": "a", "other": 1}) == Inner(name="a", here=Place("f.yaml"))


class Assuming(Noun, frozen=True, kw_only=True):
    """Fields that say something when they are left out, and one that does not."""

    here: Place
    state: str = "fitted"
    oil: bool = False
    count: int = 1
    edge: Annotated[Length | None, AbsentMeans("the deck")] = None
    known: Length | None = None


@pytest.mark.parametrize("key", ["oil", "count", "edge"])
def test_what_is_still_to_be_found_is_not_answered_by_a_default(key: str) -> None:
    source, notices = read_yaml("f.yaml", f"{key}: todo\n")
    assert notices == []
    with pytest.raises(Awaited) as raised:
        Builder(source).build(Assuming, source.data)
    assert raised.value.wanted == (("f.yaml", (key,)),)


def test_what_says_nothing_when_it_is_left_out_may_wait() -> None:
    source, _ = read_yaml("f.yaml", "known: todo\n")
    assert Builder(source).build(Assuming, source.data).known is None
