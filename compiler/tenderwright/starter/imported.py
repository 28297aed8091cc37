"""A list that somebody keeps as CSV, brought into the form of a file of the package."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct

from tenderwright.model.build import Builder
from tenderwright.model.delivered_file import (
    ANY,
    CannotRead,
    Rows,
    by_heading,
    pieces_of,
    read_cell,
    rows_of_text,
    unread_columns,
    wrong_column,
    wrong_form,
)
from tenderwright.model.json_schema import noun_schema
from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.reading.scalars import Todo
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.keywords import format_checker, validator_class
from tenderwright.shapes.schemas import load_schema
from tenderwright.shapes.validate import validate, validate_with
from tenderwright.starter.import_columns import ImportColumn, ImportColumns
from tenderwright.starter.import_keys import Leaf, Schema, identifier, leaves_of, patterns_of
from tenderwright.writing.yaml_file import yaml_text

LISTS = {
    "openings": "openings",
    "valves": "openings",
    "tanks": "tanks",
    "anodes": "anodes",
    "strakes": "strakes",
    "appendages": "appendages",
}
"""What may be imported, and its list in vessel/; a valve is written with the opening that it closes."""


class Imported(Struct, frozen=True):
    """What became of a list: the text of a file of the package, or what is in the way."""

    text: str
    notices: tuple[Notice, ...]
    left: Mapping[str, int]
    """By key, how many entries need it and have it as `todo`."""

    @property
    def sound(self) -> bool:
        """Tell whether every row was read."""
        return not any(notice.severity == "error" for notice in self.notices)


def entry_schema(what: str) -> Schema:
    """Give the schema of one entry of a list."""
    name = LISTS[what]
    found: Schema = load_schema(name)["properties"][name]["items"]
    return found


def import_list(what: str, listed: Source, said: Source) -> Imported:
    """Bring a list into the form of the package by what is said of its columns; a bad row leaves no text."""
    validator = validator_class()(noun_schema(ImportColumns), format_checker=format_checker())
    mistakes = [notice for _, notice in validate_with(said, validator)]
    if mistakes:
        return Imported("", tuple(mistakes), {})
    builder = Builder(said)
    return _Import(what, listed, builder.build(ImportColumns, said.data), said.path).run()


class _Entry(Struct):
    line: int
    data: dict[str, Any]


class _Import:
    """One list on its way into the package."""

    def __init__(self, what: str, listed: Source, said: ImportColumns, said_in: str) -> None:
        self.list = LISTS[what]
        self.schema = entry_schema(what)
        self.key = self.list.removesuffix("s")
        self.listed, self.said, self.said_in = listed, said, said_in
        self.leaves = leaves_of(self.schema)
        self.patterns = patterns_of(self.leaves)
        self.words = {(one.of, one.written.strip().lower()): one.means for one in said.words}
        self.above: dict[str, str] = {}
        self.left: dict[str, int] = {}

    def run(self) -> Imported:
        rows = rows_of_text(self.listed.text, self.said)
        notices = [*self._wrong(rows)]
        if notices:
            return Imported("", tuple(notices), {})
        unread = rows.beside({*(one.column for one in self.said.columns), *self.said.left_out})
        notices += unread_columns(self.listed.path, self.said.heading_row, unread, self.said_in)
        entries: list[_Entry] = []
        for line, cells in rows.rows:
            try:
                self._put(entries, line, self._row(by_heading(rows.headings, cells)))
            except CannotRead as error:
                notices.append(Notice("wrong-form", self._at(line), f"cannot read the row: {error}"))
        for entry in entries:
            notices += self._finished(entry)
        head = f"# {self.list.capitalize()}, brought in from {self.listed.path.rsplit('/', 1)[-1]}.\n"
        made = Imported(head + yaml_text({self.list: [entry.data for entry in entries]}), tuple(notices), self.left)
        return made if made.sound else Imported("", made.notices, {})

    def _at(self, line: int) -> Place:
        return Place(self.listed.path, line)

    def _wrong(self, rows: Rows) -> Iterator[Notice]:
        """Say what of the columns does not fit the list, or what is asked of it."""
        known = [*self.leaves, ANY]
        for one in self.said.columns:
            yield from wrong_column(one.column, rows, self.said, self.listed.path, one.here)
            for form in one.reads:
                yield from wrong_form(form, known, one.here)
                pieces = [self.leaves[piece] for piece in pieces_of(form) if piece in self.leaves]
                measured = [leaf for leaf in pieces if "quantity" in leaf.schema]
                if one.unit and measured and not any(leaf.takes(one.unit) for leaf in measured):
                    message = f"`{one.unit}` is not a unit of `{measured[0].key}`"
                    yield Notice("delivered-columns", one.here, message)
        for key in self.said.same:
            if key not in self.leaves:
                message = f"`same` gives `{key}`, which {self.list} have not"
                yield Notice("delivered-columns", self.said.here, message, hints=did_you_mean(key, known))
        for word in self.said.words:
            if word.of not in self.leaves:
                message = f"`{word.written}` is said to be a word for `{word.of}`, which {self.list} have not"
                yield Notice("delivered-columns", word.here, message, hints=did_you_mean(word.of, known))

    def _row(self, row: Mapping[str, str]) -> dict[str, Any]:
        """Read the values of a row by key."""
        values = {key: self._value(self.leaves[key], text, "") for key, text in self.said.same.items()}
        for one in self.said.columns:
            cell = row.get(one.column, "")
            cell = self.above.get(one.column, "") if one.down and not cell else cell
            self.above[one.column] = cell
            for key, text in self._pieces(one, cell).items():
                values[key] = self._value(self.leaves[key], text, one.unit)
        return values

    def _pieces(self, one: ImportColumn, cell: str) -> dict[str, str]:
        if not cell:
            return {}
        alone = one.reads[0][1:-1]
        if one.reads == (f"{{{alone}}}",) and alone in self.leaves:
            return {alone: cell}
        pieces = read_cell(cell, one.column, one.reads, self.patterns)
        return {key: text for key, text in pieces.items() if key != ANY}

    def _value(self, leaf: Leaf, text: str, unit: str) -> Any:
        text = self.words.get((leaf.key, text.lower()), text)
        if self.said.decimal_comma and "quantity" in leaf.schema:
            text = text.replace(",", ".")
        return leaf.value(text, unit if leaf.takes(unit) else "", self.said.dates)

    def _put(self, entries: list[_Entry], line: int, values: dict[str, Any]) -> None:
        """Add a row: a new entry, or one more run of the entry that has the same name."""
        if not values.get(self.key):
            values[self.key] = identifier(str(values.get("name", ""))) or f"{self.key}-{len(entries) + 1}"
        made: dict[str, Any] = {}
        for key in self.leaves:
            if key in values:
                _set(made, self.leaves[key], values[key])
        of_lists = {leaf.path[0] for leaf in self.leaves.values() if leaf.lists}
        same = next((one for one in entries if one.data[self.key] == made[self.key]), None)
        if same is None:
            entries.append(_Entry(line, made))
            return
        if not of_lists & set(made):
            raise CannotRead(f"`{made[self.key]}` stands on line {same.line} too")
        for key, value in made.items():
            if key in of_lists:
                same.data.setdefault(key, []).extend(value)
            elif same.data.setdefault(key, value) != value:
                raise CannotRead(
                    f"`{key}` of `{made[self.key]}` is {value} here, and {same.data[key]} on line {same.line}"
                )

    def _finished(self, entry: _Entry) -> Iterator[Notice]:
        """Put `todo` for what is needed and not known, set the keys in order, and hold the entry to the format."""
        entry.data = self._ordered(self.schema, entry.data)
        source, read = read_yaml(self.listed.path, yaml_text({self.list: [entry.data]}))
        for _, notice in [((), one) for one in read] + validate(source, self.list):
            yield Notice(notice.code, self._at(entry.line), notice.message, hints=notice.hints)

    def _ordered(self, schema: Schema, data: Mapping[str, Any]) -> dict[str, Any]:
        made: dict[str, Any] = {}
        for key, below in schema["properties"].items():
            if key in data:
                made[key] = self._below(below, data[key])
            elif key in schema.get("required", ()):
                self.left[key] = self.left.get(key, 0) + 1
                made[key] = Todo("todo")
        return made

    def _below(self, schema: Schema, value: Any) -> Any:
        if isinstance(value, dict):
            return self._ordered(schema, value)
        if isinstance(value, list) and schema.get("items", {}).get("properties"):
            return [self._ordered(schema["items"], one) for one in value]
        return value


def _set(data: dict[str, Any], leaf: Leaf, value: Any) -> None:
    """Put a value at its place, in a list as that list's one entry."""
    for depth, key in enumerate(leaf.path[:-1], start=1):
        below = data.setdefault(key, [{}] if depth == leaf.lists else {})
        data = below[0] if depth == leaf.lists else below
    data[leaf.path[-1]] = value


def proposed(what: str, listed: Source) -> str:
    """Write a beginning of what is to be said of a list's columns, with what their headings suggest."""
    rows = rows_of_text(listed.text, ImportColumns(columns=(), here=Place("")))
    leaves = leaves_of(entry_schema(what))
    columns = []
    for heading in rows.headings:
        near = did_you_mean(heading, leaves)
        columns.append({"column": heading, "reads": [f"{{{near[0].split('`')[1] if near else ANY}}}"]})
    keys = "".join(f"#   {key}: {leaf.schema.get('description', '')}\n" for key, leaf in leaves.items())
    return (
        f"# What each column of {listed.path.rsplit('/', 1)[-1]} holds. Look at each: {{any}} is passed over.\n"
        "# Add `unit:` where its cells name none, and `same:` for what no column holds.\n"
        f"# These may be read:\n{keys}{yaml_text({'columns': columns})}"
    )
