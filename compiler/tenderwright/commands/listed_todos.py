"""How `check` lists what is still `todo`: where, what it is, and what it would bring."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from tenderwright.commands.record import groups_of
from tenderwright.shapes.todos import Todo, by_file, by_holder

_FEW = 24
"""So many values are told one by one, with what each means; more by what holds them, to be read at a glance."""
_LONGEST = 90


def listed_todos(todos: Sequence[Todo], missing: Mapping[str, str]) -> Iterator[str]:
    """Yield a line that counts them, and for each file a line for each value and one for what they would bring."""
    files = by_file(todos)
    if not files:
        return
    count, places = len(todos), len(files)
    what = "1 value" if count == 1 else f"{count} values"
    yield f"still `todo`: {what} in {'1 file' if places == 1 else f'{places} files'}; write each once it is known"
    for file, found in files.items():
        yield from _one_by_one(file, found) if count <= _FEW else _together(file, found)
        names = [name for name, why in missing.items() if any(_brings(todo, why) for todo in found)]
        if names:
            yield f"  {file}: would bring {', '.join(groups_of(names))} ({len(names)})"


def _one_by_one(file: str, found: Iterable[Todo]) -> Iterator[str]:
    yield from (f"  {file}:{todo.place.line}: `{todo.key}`{_said(todo)}" for todo in found)


def _together(file: str, found: Iterable[Todo]) -> Iterator[str]:
    yield from (f"  {file}:{group.lines}: {group}" for group in by_holder(found))


def _said(todo: Todo) -> str:
    """Give the first sentence of what a value means, to follow its key."""
    first = todo.means.partition(". ")[0].rstrip(".")
    if len(first) > _LONGEST:
        first = f"{first[:_LONGEST].rsplit(' ', 1)[0]} …"
    return f": {first[0].lower()}{first[1:]}" if first else ""


def _brings(todo: Todo, why: str) -> bool:
    """Tell whether what is missing for a reason waits for a value: the reason names its file, and the value or all."""
    file = todo.place.path
    return (
        f"in {file} is still `todo`" in why
        or f"in {file} are still `todo`" in why
        or (file in why and f"`{todo.key}`" in why)
    )
