"""Results of heavy methods that were found before: what is kept is found by the very inputs that the record holds.

A result is kept under a digest of its method's name, its inputs and the units in which its words tell figures, and all
results together with a word on what else they hang on, the maker: who made it is asked, and results of another maker
are not looked at. They are read back by their declared types, floats to the last bit; what is damaged or not ours
holds nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from hashlib import blake2b
from typing import Any, TypeVar, get_type_hints

import numpy as np
from msgspec import MsgspecError, Raw, Struct
from msgspec.msgpack import Decoder, Encoder

from tenderwright.calculations.method import Method
from tenderwright.quantities.customs import system

R = TypeVar("R")

SIZE = 32
"""Length of a digest, bytes."""


class _Results(Struct, frozen=True):
    maker: bytes
    results: dict[bytes, Raw]


class Kept:
    """Results by their inputs: those that were kept before, and those that this run asked for."""

    def __init__(self, maker: bytes, content: bytes = b"") -> None:
        """Take what an earlier run gave as `content`."""
        self._maker = maker
        self._before = _read(maker, content)
        self._asked: dict[bytes, Raw] = {}
        self.new = False
        """Whether something was calculated that was not kept before."""

    def run(self, method: Method[R], inputs: Mapping[str, Any]) -> R:
        """Give the result of a method's kernel, from what is kept or by running it; raises OutOfRange."""
        return self.of(method.name, inputs, _result(method.kernel), lambda: method.kernel(**inputs))

    def of(self, name: str, inputs: object, kind: Any, work: Callable[[], R]) -> R:
        """Give the result, of a declared type, of any work by its name and all that it hangs on."""
        key = digest(_ENCODER.encode((name, system(), inputs)))
        raw = self._before.get(key)
        if raw is not None:
            try:
                result: R = _decoder(kind).decode(raw)
                self._asked[key] = raw
                return result
            except MsgspecError:
                pass  # it is not what the work gives, so it is done anew
        result = work()
        self._asked[key] = Raw(_ENCODER.encode(result))
        self.new = True
        return result

    def content(self) -> bytes:
        """Give what this run asked for, to be kept."""
        body = _ENCODER.encode(_Results(self._maker, self._asked))
        return digest(body) + body


def digest(content: bytes) -> bytes:
    """Give a digest of some bytes."""
    return blake2b(content, digest_size=SIZE).digest()


def _read(maker: bytes, content: bytes) -> dict[bytes, Raw]:
    if digest(content[SIZE:]) != content[:SIZE]:
        return {}
    try:
        found = Decoder(_Results).decode(content[SIZE:])
    except MsgspecError:
        return {}
    return found.results if found.maker == maker else {}


@cache
def _result(kernel: Callable[..., Any]) -> Any:
    return get_type_hints(kernel)["return"]


@cache
def _decoder(kind: Any) -> Decoder[Any]:
    return Decoder(kind, dec_hook=_array)


def _bare(thing: Any) -> Any:
    """Give what msgspec does not know as what it does."""
    if isinstance(thing, np.ndarray):
        return thing.dtype.str, thing.shape, thing.tobytes()
    if isinstance(thing, np.generic):
        return thing.item()
    if isinstance(thing, Mapping):
        return dict(thing)
    raise TypeError(f"a {type(thing).__name__} cannot be kept")


def _array(_: Any, kept: Any) -> Any:
    dtype, shape, content = kept
    return np.frombuffer(content, dtype).reshape(shape).copy()


_ENCODER = Encoder(enc_hook=_bare)
