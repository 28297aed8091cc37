"""A value may be `todo`: it is no mistake, it is listed, and what rests on it says so."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from tenderwright.commands.listed_todos import listed_todos
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.reading.package import Files
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.todos import refused
from tenderwright.starter.write import write_starter


@pytest.fixture(scope="module")
def starter(tmp_path_factory: pytest.TempPathFactory) -> Files:
    folder = tmp_path_factory.mktemp("todo") / "package"
    write_starter(folder)
    return read(folder)


def with_todo(files: Files, path: str, old: str, new: str) -> tuple[Compiled, OwnersSide]:
    text = files.sources[path].text
    assert text.count(old) == 1, (path, old)
    source, notices = read_yaml(path, text.replace(old, new))
    assert notices == []
    changed = replace(files, sources={**files.sources, path: source})
    compiled = compile_package(changed)
    return compiled, compile_owner(changed, compiled)


def notices_of(made: tuple[Compiled, OwnersSide]) -> list[str]:
    return [f"{one.place}: {one.message}" for side in made for one in side.notices]


NEEDED = "beam: 5.44 m"


def test_what_rests_on_a_needed_value_is_lacking_and_says_which(starter: Files) -> None:
    made = with_todo(starter, "vessel/particulars.yaml", NEEDED, "beam: todo, ask the yard")
    assert notices_of(made) == []
    compiled, _ = made
    why = "`beam` in vessel/particulars.yaml is still `todo`"
    assert compiled.package.particulars is None
    assert compiled.record.missing["condition.arrival.trim"] == why
    (line,) = [line for line in listed_todos(compiled.package.todos, compiled.record.missing) if "would bring" in line]
    assert "condition.*" in line


def test_an_optional_key_is_as_if_it_were_left_out(starter: Files) -> None:
    compiled, owner = with_todo(starter, "vessel/particulars.yaml", "displacement: 112 t", "displacement: TODO")
    assert notices_of((compiled, owner)) == []
    assert compiled.package.particulars is not None
    assert compiled.package.particulars.displacement is None
    (todo,) = compiled.package.todos
    assert (todo.key, todo.place.line) == ("displacement", 16)
    assert todo.means.startswith("Displacement at the usual draft")


def test_text_is_to_be_written(starter: Files) -> None:
    compiled, _ = with_todo(starter, "vessel/particulars.yaml", "type: steam tug", "type: todo")
    assert compiled.package.particulars is not None
    assert compiled.package.particulars.type == TO_BE_WRITTEN


def test_an_entry_of_a_sum_is_never_left_out_in_silence(starter: Files) -> None:
    compiled, owner = with_todo(starter, "vessel/lightship.yaml", "mass: 1.5 t", "mass: todo")
    assert notices_of((compiled, owner)) == []
    assert compiled.package.lightship is None
    assert compiled.record.missing["condition.arrival.trim"] == "`mass` in vessel/lightship.yaml is still `todo`"


def test_a_tank_that_waits_is_not_taken_for_none(starter: Files) -> None:
    compiled, owner = with_todo(starter, "vessel/tanks.yaml", "use: fresh water", "use: todo")
    assert notices_of((compiled, owner)) == []
    why = "`use` in vessel/tanks.yaml is still `todo`"
    assert compiled.record.missing["tank.feed-water.volume"] == why
    assert compiled.record.missing["condition.arrival.trim"] == why


@pytest.mark.parametrize("key", ["issued", "closing"])
def test_a_day_of_the_tender_may_be_open_in_a_draft(starter: Files, key: str) -> None:
    text = starter.sources["package.yaml"].text
    line = next(line for line in text.splitlines() if line.startswith(f"  {key}:"))
    compiled, owner = with_todo(starter, "package.yaml", line, f"  {key}: todo")
    assert notices_of((compiled, owner)) == []
    assert compiled.package.tender is not None
    assert getattr(compiled.package.tender.dates, key) is None


def test_a_rate_without_its_quantity_is_not_one(starter: Files) -> None:
    made = with_todo(starter, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: todo")
    assert notices_of(made) == []
    assert made[1].estimate is None


def test_quoted_it_is_a_word_like_others(starter: Files) -> None:
    compiled, _ = with_todo(starter, "vessel/particulars.yaml", "type: steam tug", 'type: "todo"')
    assert compiled.package.todos == ()


def test_other_mistakes_of_the_file_are_still_told(starter: Files) -> None:
    compiled, _ = with_todo(starter, "vessel/particulars.yaml", NEEDED, "beam: todo\n  breadth: 5.44 m")
    (notice,) = compiled.notices
    assert notice.code == "unknown-key"


def test_what_may_not_be_open_any_more_is_refused_at_its_line(starter: Files) -> None:
    compiled, _ = with_todo(starter, "vessel/particulars.yaml", NEEDED, "beam: todo")
    (notice,) = refused(compiled.package.todos)
    assert (notice.code, notice.severity, notice.place.path) == ("still-todo", "error", "vessel/particulars.yaml")
    assert notice.message == "`beam` is still `todo`: her greatest moulded breadth"


PORTION = 24


@pytest.mark.parametrize("portion", range(PORTION))
def test_no_value_of_a_package_stops_anything(starter: Files, portion: int) -> None:
    """Write `todo` for one value after the other, a portion of all by each: there is never a notice."""
    spots = [
        (path, at, start, end)
        for path, source in starter.sources.items()
        if path.endswith(".yaml")
        for at, (start, end) in source.ends.items()
    ]
    path, at, start, end = spots[(7 + portion * (len(spots) // PORTION)) % len(spots)]
    text = starter.sources[path].text
    after = "\n" if text[start] in "|>" else ""
    made = with_todo(starter, path, text, f"{text[:start]}todo{after}{text[end:]}")
    assert notices_of(made) == [], (path, at)
    assert len(made[0].package.todos) + len(made[1].papers.todos) == 1


def test_a_place_by_a_frame_waits_for_the_frames(starter: Files) -> None:
    compiled, owner = with_todo(starter, "vessel/frames.yaml", "direction: forward", "direction: todo")
    assert notices_of((compiled, owner)) == []
    assert compiled.package.frames is None
    assert compiled.package.tanks == ()
    assert compiled.record.missing["tank.forepeak.volume"] == "`direction` in vessel/frames.yaml is still `todo`"
