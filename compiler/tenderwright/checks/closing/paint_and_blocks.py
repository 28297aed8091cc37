"""The paint log and the blocks make sense by themselves: coats in order, least below most, rows that go somewhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.model.found import DryFilm, UsedBlock
from tenderwright.notices import Notice
from tenderwright.reading.source import Path


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report coats out of order, films whose mean lies outside them, and rows of blocks without a pitch."""
    for number, log in enumerate(context.findings.paint):
        for (_, under), (index, over) in pairwise(enumerate(log.coats)):
            if over.coat <= under.coat:
                at = context.at("paint", number, "coats", index, "coat")
                yield Notice("out-of-bounds", at, f"coat {over.coat} stands after coat {under.coat}")
        for index, coat in enumerate(log.coats):
            if coat.dft is not None:
                yield from _film(context, ("paint", number, "coats", index, "dft"), coat.dft)
        scheme = next((s for s in context.package.schemes if log.scheme and s.scheme == log.scheme.name), None)
        if scheme is not None and log.scheme is not None and scheme.zone.name != log.zone.name:
            message = f"scheme `{scheme.scheme}` is for zone `{scheme.zone.name}`, not `{log.zone.name}`"
            yield Notice("dead-reference", log.scheme.at, message)
    blocks = context.findings.blocks
    yield from _rows(context, "keel", blocks.keel)
    yield from _rows(context, "sides", blocks.sides)


def _film(context: ClosingContext, at: Path, film: DryFilm) -> Iterator[Notice]:
    if film.least is not None and film.least.si > film.mean.si:
        message = f"the least film `{film.least}` is above the mean `{film.mean}`"
        yield Notice("out-of-bounds", context.at(*at, "least"), message)
    if film.most is not None and film.most.si < film.mean.si:
        message = f"the most film `{film.most}` is below the mean `{film.mean}`"
        yield Notice("out-of-bounds", context.at(*at, "most"), message)


def _rows(context: ClosingContext, key: str, blocks: Sequence[UsedBlock]) -> Iterator[Notice]:
    for number, one in enumerate(blocks):
        if one.to is not None and (one.pitch is None or one.pitch.si <= 0):
            message = f"a row of blocks from {one.at} to {one.to} needs its pitch"
            yield Notice("missing-key", context.at("blocks", key, number), message)
        if one.to is not None and one.to.x < one.at.x:
            message = f"a row of blocks runs from aft, and {one.to} lies abaft {one.at}"
            yield Notice("out-of-bounds", context.at("blocks", key, number, "to"), message)
        if key == "sides" and one.side == "centreline":
            hints = ("write `side: both`, `port` or `starboard`",)
            message = f"the side block at {one.at} stands on no side"
            yield Notice("missing-key", context.at("blocks", key, number), message, hints=hints)
