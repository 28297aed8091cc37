"""The catalogue of work items: some seventy usual items of a museum docking, each an item file without its number.

A folder of the catalogue is a hundred-block of numbers; a file is an entry, called by its name. In an entry
`{25 mm|1 in}` is written in metric or in US units, and `depends_on` names other entries.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from functools import cache
from pathlib import Path

from msgspec import Struct

CATALOGUE = Path(__file__).with_name("catalogue")
STEP = 5
"""From an item's number to the next, so that later ones find room between."""
HEADINGS = {
    100: "Docking and services",
    200: "Washing, survey and records",
    300: "Steel and rivets",
    400: "Coating",
    500: "Sea connections",
    600: "Shafts, rudder and anodes",
    700: "Tanks and spaces",
    800: "Wood",
    900: "Options and owner's work",
}
"""The hundred-blocks of numbers, and their headings in a tender."""

_UNITS = re.compile(r"\{([^{}|]+)\|([^{}|]+)\}")
_DEPENDS = re.compile(r"^depends_on: \[(.*)\]\n", re.MULTILINE)
_TITLE = re.compile(r"^title: (.*)$", re.MULTILINE)
_KIND = re.compile(r"^kind: (.*)$", re.MULTILINE)


class NoNumber(ValueError):
    """No number is free in the hundred of an entry."""


class Entry(Struct, frozen=True):
    """An item of the catalogue."""

    name: str
    hundred: int
    text: str

    @property
    def title(self) -> str:
        """Give the title of the item."""
        match = _TITLE.search(self.text)
        return match[1] if match else self.name

    @property
    def kind(self) -> str:
        """Give the kind of the item."""
        match = _KIND.search(self.text)
        return match[1] if match else ""

    @property
    def depends_on(self) -> tuple[str, ...]:
        """Name the entries that are done before it."""
        match = _DEPENDS.search(self.text)
        return tuple(name.strip() for name in match[1].split(",")) if match else ()


@cache
def entries() -> Mapping[str, Entry]:
    """Give every entry by its name, in the order of a docking."""
    return {entry.name: entry for entry in map(_entry, sorted(CATALOGUE.glob("*/*.yaml")))}


def _entry(path: Path) -> Entry:
    return Entry(path.stem, int(path.parent.name.partition("-")[0]), path.read_text("utf-8"))


def free_number(entry: Entry, used: Collection[int]) -> int:
    """Give the next number of an entry's hundred, five after the last; else the first that is free. Raises NoNumber."""
    block = range(entry.hundred + 1, entry.hundred + 100)
    after = max((number for number in used if number in block), default=entry.hundred) // STEP * STEP + STEP
    number = after if after in block else next((number for number in block if number not in used), None)
    if number is None:
        raise NoNumber(f"no number is free from {block.start} to {block.stop - 1}")
    return number


def file_name(entry: Entry, number: int) -> str:
    """Name the file of an item in the folder items/."""
    return f"{number}-{entry.name}.yaml"


def numbers_of(files: Collection[str]) -> dict[str, int]:
    """Give, by entry, the number of the item of that name among files of items/, such as `210-growth-wash.yaml`."""
    found: dict[str, int] = {}
    for file in sorted(files):
        number, _, name = file.removesuffix(".yaml").partition("-")
        if number.isdigit() and name in entries():
            found.setdefault(name, int(number))
    return found


def item_text(entry: Entry, number: int, system: str, others: Mapping[str, int], schema: str = "") -> str:
    """Write an entry as an item file: numbered, in the package's units, resting on those of the others that are there.

    `schema` is the path of the schema for editors. What it rests on and the package lacks is named in a comment.
    """
    metric = system != "us"
    text = _UNITS.sub(lambda match: match[1] if metric else match[2], entry.text)
    text = _DEPENDS.sub(lambda _: _resting(entry, others), text)
    text = _TITLE.sub(lambda match: f"item: {number}\n{match[0]}", text, count=1)
    return (f"# yaml-language-server: $schema={schema}\n" if schema else "") + text


def _resting(entry: Entry, others: Mapping[str, int]) -> str:
    there = [str(others[name]) for name in entry.depends_on if name in others]
    absent = [name for name in entry.depends_on if name not in others]
    line = "depends_on: [" + ", ".join(f'"{number}"' for number in there) + "]\n" if there else ""
    return line + (
        f"# It rests on these too: name their numbers in `depends_on`: {', '.join(absent)}\n" if absent else ""
    )
