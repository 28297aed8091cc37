"""What every noun of the package is: a frozen struct, whose annotations declare the format."""

from __future__ import annotations

from msgspec import Struct


class Noun(Struct, frozen=True, kw_only=True, eq=False):
    """A thing of the package; two are equal wherever they stand, so that `here` is not compared."""

    def __eq__(self, other: object) -> bool:
        """Tell whether another says the same."""
        if type(self) is not type(other):
            return NotImplemented
        return all(getattr(self, name) == getattr(other, name) for name in self.__struct_fields__ if name != "here")

    def __ne__(self, other: object) -> bool:
        """Follow `==`, which the struct does not do by itself."""
        return not self == other

    def __hash__(self) -> int:
        """Follow what is compared."""
        return hash(tuple(getattr(self, name) for name in self.__struct_fields__ if name != "here"))


def keys_of(noun: type[Noun] | Noun) -> tuple[tuple[str, str], ...]:
    """Give each field of a noun with its key in the file: a name that Python keeps for itself ends in `_`."""
    names: tuple[str, ...] = noun.__struct_fields__
    return tuple((name, name.rstrip("_")) for name in names if name != "here")
