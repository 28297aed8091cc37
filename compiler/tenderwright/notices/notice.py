"""A notice: one mistake or doubt about a package, at its place, with a cure."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.notices.codes import CODES

Severity = Literal["error", "warning"]


class Place(Struct, frozen=True, order=True):
    """A span in a file of the package: lines and columns count from 1, and the end column is just after the span."""

    path: str
    line: int = 1
    column: int = 1
    end_column: int = 0

    def __str__(self) -> str:
        """Give the place as `path:line:column`."""
        return f"{self.path}:{self.line}:{self.column}"


class Placed(Struct, frozen=True, eq=False):
    """Something as it is written in a file; two are equal wherever they stand."""

    def __eq__(self, other: object) -> bool:
        """Tell whether another says the same."""
        if type(self) is not type(other):
            return NotImplemented
        return all(getattr(self, name) == getattr(other, name) for name in self.__struct_fields__ if name not in _WHERE)

    def __ne__(self, other: object) -> bool:
        """Follow `==`, which the struct does not do by itself."""
        return not self == other

    def __hash__(self) -> int:
        """Follow what is compared."""
        return hash(tuple(getattr(self, name) for name in self.__struct_fields__ if name not in _WHERE))


_WHERE = frozenset({"at", "source", "path"})
"""The fields that say where something stands."""


class Note(Struct, frozen=True):
    """More about a notice, perhaps at a place of its own."""

    text: str
    place: Place | None = None


class Notice(Struct, frozen=True):
    """One diagnostic; severity comes from the registry of codes."""

    code: str
    place: Place
    message: str
    notes: tuple[Note, ...] = ()
    hints: tuple[str, ...] = ()
    cause: str = ""
    """What is behind the notice where several may have one cause, such as a name that is gone; empty elsewhere."""
    also: tuple[Place, ...] = ()
    """The other places at which the same cause would be told."""

    @property
    def severity(self) -> Severity:
        """Tell whether the notice stops an edition or only warns."""
        return CODES[self.code].severity


def sort_notices(notices: Iterable[Notice]) -> list[Notice]:
    """Sort notices by file, line, column and code, and say each once, and each cause once with all its places."""
    first: dict[tuple[object, ...], Notice] = {}
    places: dict[tuple[object, ...], set[Place]] = {}
    for notice in sorted(dict.fromkeys(notices), key=lambda n: (n.place, n.code, n.message)):
        key = (notice.code, notice.cause) if notice.cause else (notice,)
        first.setdefault(key, notice)
        places.setdefault(key, set()).update((notice.place, *notice.also))
    return [
        replace(one, also=tuple(sorted(places[key] - {one.place}))) if one.cause else one for key, one in first.items()
    ]
