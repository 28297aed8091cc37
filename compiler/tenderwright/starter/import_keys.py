"""The keys that a list may fill: those of the entry that a schema describes, and how each is written in a cell."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.model.delivered_file import ANY, BARE, SIDES, CannotRead, day_of
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.quantities.spellings import spelled

Schema = Mapping[str, Any]

_FRAME = re.compile(r"(?:fr|frame)?\.?\s*(-?[0-9]+)(\s*[+-]\s*\S.*)?", re.IGNORECASE)
_YES, _NO = ("yes", "y", "true", "x", "1"), ("no", "n", "false", "-", "0")
_NUMBER = r"[+-]?[0-9.][0-9.,/ ½¼¾⅛⅜⅝⅞-]*"
_FEET = r"(?:\s*(?:ft\.?|'|’|′)\s*-?\s*[0-9 /½¼¾⅛⅜⅝⅞-]+)?"
_QUANTITY = rf"{_NUMBER}{_FEET}\s*[A-Za-z%\"'°²³’”′″#][A-Za-z0-9%*/²³.]*|{_NUMBER}"


class Leaf(Struct, frozen=True):
    """A key that a cell may fill, and the schema of its value."""

    key: str
    """With a point between a key and one inside it."""
    schema: Schema
    path: tuple[str, ...]
    lists: int
    """How many of the path's first keys lead into a list of things, whose next entry each row gives."""

    @property
    def pattern(self) -> str:
        """Give how it is written in a cell, as a pattern."""
        dimension = self.schema.get("quantity")
        if dimension == "position":
            return r"(?:Fr(?:ame)?\.?\s*)?-?[0-9]+(?:\s*[+-]\s*[0-9][0-9./ ]*\s*(?:mm|in|ft|m)\b)?|[0-9.]+\s*(?:m|ft)\b"
        if dimension and not self.schema.get("or"):
            return _QUANTITY
        return r"[A-Za-z][A-Za-z ]*?" if self.key == "side" else ".+?"

    def value(self, cell: str, unit: str, dates: str) -> Any:
        """Give what a cell says as it is written in YAML; raises CannotRead."""
        words = self.schema.get("or", ()) or self.schema.get("enum", ())
        close = next((one for one in words if one.lower() == cell.lower()), None)
        if close is not None:
            return close
        if "enum" in self.schema:
            return SIDES.get(cell.lower(), cell) if "port" in self.schema["enum"] else cell
        if self.schema.get("quantity") == "position":
            return _position(cell, unit)
        if "quantity" in self.schema:
            return _quantity(cell, unit)
        if self.schema.get("format") == "date":
            return day_of(cell, dates)
        return self._plain(cell)

    def _plain(self, cell: str) -> Any:
        kind = self.schema.get("type")
        if kind == "boolean":
            if cell.lower() not in (*_YES, *_NO):
                raise CannotRead(f"`{cell}` is neither yes nor no")
            return cell.lower() in _YES
        if kind in ("integer", "number"):
            try:
                return int(cell) if kind == "integer" else float(cell)
            except ValueError:
                raise CannotRead(f"`{cell}` is no {'whole ' if kind == 'integer' else ''}number") from None
        if kind == "array":
            entry = Leaf(self.key, self.schema["items"], self.path, self.lists)
            return [entry.value(one.strip(), "", "year-month-day") for one in re.split(r"[,;]", cell) if one.strip()]
        if self.schema.get("title") == "Identifier":
            return identifier(cell)
        return cell.upper() if "A-Z" in self.schema.get("pattern", "") else cell

    def takes(self, unit: str) -> bool:
        """Tell whether figures of this key may be in a unit."""
        dimension = self.schema.get("quantity")
        if not dimension or unit == "frame":
            return unit != "frame" or dimension == "position"
        try:
            parse_quantity(f"1 {unit}", "length" if dimension == "position" else dimension)
        except QuantityError:
            return False
        return True


def _position(cell: str, unit: str) -> str:
    match = _FRAME.fullmatch(cell)
    if match and (unit in ("", "frame") or cell[:1].lower() == "f"):
        return f"Fr {match[1]}{f' {match[2].strip()[0]} {match[2].strip()[1:].strip()}' if match[2] else ''}"
    return _quantity(cell, "" if unit == "frame" else unit)


def _quantity(cell: str, unit: str) -> str:
    if not BARE.fullmatch(cell):
        return cell
    if not unit:
        raise CannotRead(f"`{cell}` has no unit, and its column names none")
    return f"{'0' if cell[0] == '.' else ''}{cell} {spelled(unit)}"


def identifier(text: str) -> str:
    """Make an identifier of a name: small letters and digits with hyphens between."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")[:48].strip("-")


def leaves_of(entry: Schema) -> dict[str, Leaf]:
    """List the keys of an entry that a cell may fill, by name."""
    found: dict[str, Leaf] = {}

    def walk(schema: Schema, path: tuple[str, ...], lists: int) -> None:
        for key, below in schema.get("properties", {}).items():
            at = (*path, key)
            items = below.get("items", {})
            if items.get("properties") and not lists:
                walk(items, at, len(at))
            elif below.get("properties"):
                walk(below, at, lists)
            elif not items.get("properties") and "additionalProperties" not in below:
                found[".".join(at)] = Leaf(".".join(at), below, at, lists)

    walk(entry, (), 0)
    return found


def patterns_of(leaves: Mapping[str, Leaf]) -> dict[str, str]:
    """Give how each key is written in a cell."""
    return {key: leaf.pattern for key, leaf in leaves.items()} | {ANY: ".*"}
