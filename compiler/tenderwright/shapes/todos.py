"""What is still to be found out: the values that are written `todo`, each with what it means."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from msgspec import Struct

from tenderwright.notices import Notice, Place
from tenderwright.reading.layout import schema_of
from tenderwright.reading.source import Path, Source
from tenderwright.shapes.schemas import load_schema

_NAMED = 12
"""So many keys of one mapping are named; of more, the first and the last."""


class Todo(Struct, frozen=True):
    """A value that is still `todo`."""

    place: Place
    at: Path
    means: str
    """What the key means."""

    @property
    def key(self) -> str:
        """Give the nearest key, as it stands in the file."""
        return next((one for one in reversed(self.at) if isinstance(one, str)), self.place.path)


class Held(Struct, frozen=True):
    """What is still `todo` in one mapping or list."""

    at: Path
    todos: tuple[Todo, ...]

    @property
    def lines(self) -> str:
        """Give the lines on which it stands."""
        first, last = self.todos[0].place.line, self.todos[-1].place.line
        return f"{first}-{last}" if last != first else f"{first}"

    def __str__(self) -> str:
        """Name what is open, after what holds it: `dates: issued, closing`."""
        inside = ".".join(one for one in self.at if isinstance(one, str))
        keys = list(dict.fromkeys(todo.key for todo in self.todos))
        named = ", ".join(keys) if len(keys) <= _NAMED else f"{keys[0]} to {keys[-1]}, {len(keys)} in all"
        return f"{inside}: {named}" if inside and keys != [inside] else named


def still_todo(sources: Mapping[str, Source]) -> tuple[Todo, ...]:
    """Give the values that are still `todo`, by file and line."""
    with_some = [source for _, source in sorted(sources.items()) if source.todos]
    return tuple(todo for source in with_some for todo in todos_of(source, schema_of(source.path) or ""))


def by_file(todos: Iterable[Todo]) -> dict[str, list[Todo]]:
    """Give what is still `todo` by file."""
    files: dict[str, list[Todo]] = {}
    for todo in todos:
        files.setdefault(todo.place.path, []).append(todo)
    return files


def by_holder(todos: Iterable[Todo]) -> list[Held]:
    """Give what is still `todo` in one file by the mapping or list that holds it."""
    holders: dict[Path, list[Todo]] = {}
    for todo in todos:
        holders.setdefault(todo.at[:-1], []).append(todo)
    return [Held(at, tuple(held)) for at, held in holders.items()]


def todos_of(source: Source, name: str) -> Iterator[Todo]:
    """Yield what is still `todo` in a file, whose schema is known by name."""
    for at in sorted(source.todos, key=source.place):
        yield Todo(source.place(at), at, _meaning(load_schema(name), at) if name else "")


def _meaning(schema: Mapping[str, Any], at: Path) -> str:
    """Give what the schema says of the nearest value that it describes."""
    meaning = ""
    for key in at:
        known = schema.get("properties", {})
        schema = schema.get("items", {}) if isinstance(key, int) else known.get(key, schema.get("additionalProperties"))
        if not isinstance(schema, dict):
            break
        meaning = schema.get("description", meaning)
    return meaning


def waits_for_todo(why: str) -> bool:
    """Tell whether the reason why a value is missing is that something is still `todo`, which is listed by itself."""
    return why.endswith(" still `todo`")


def held_back(notices: Iterable[Notice], todos: Iterable[Todo], sources: Mapping[str, Source]) -> list[Notice]:
    """Leave out the notices of things that hold a `todo`: what they say may be answered with it."""
    held = {_spot(place) for todo in todos for place in _holders(sources[todo.place.path], todo.at)}
    return [one for one in notices if _spot(one.place) not in held]


def _holders(source: Source, at: Path) -> Iterator[Place]:
    for length in range(len(at) + 1):
        yield from (source.place(at[:length]), source.key_place(at[:length]))
    yield from (source.key_place(key) for key in source.keys if key[:-1] == at[:-1])


def _spot(place: Place) -> tuple[str, int, int]:
    return place.path, place.line, place.column


def refused(todos: Iterable[Todo]) -> list[Notice]:
    """Give a notice for each value that may not be `todo` any more."""
    return [Notice("still-todo", todo.place, _sentence(todo), hints=("write the value",)) for todo in todos]


def _sentence(todo: Todo) -> str:
    means = f": {todo.means[0].lower()}{todo.means[1:].rstrip('.')}" if todo.means else ""
    return f"`{todo.key}` is still `todo`{means}"
