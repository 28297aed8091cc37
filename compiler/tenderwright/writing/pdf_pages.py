"""Finds the page to which a byte of a PDF that we wrote belongs."""

from __future__ import annotations

import re
import zlib

_STREAM = re.compile(rb"(\d+) 0 obj\n<<([^>]*)>>\nstream\n")
_LENGTH = re.compile(rb"/Length (\d+)")
_OBJECTS = re.compile(rb"/Type /ObjStm/N (\d+)/First (\d+)")
_KIDS = re.compile(rb"/Type /Pages/Kids \[([^\]]*)\]")
_CONTENTS = re.compile(rb"/Type /Page/.*?/Contents (\d+) 0 R", re.DOTALL)


def page_at(pdf: bytes, offset: int) -> int | None:
    """Give the number of the page whose drawing holds a byte, from 1; None where the byte belongs to no page alone.

    Only for a PDF of this compiler, whose objects stand in object streams (ISO 32000-1, 7.5.7).
    """
    objects: dict[int, bytes] = {}
    holding = 0
    at = 0
    while match := _STREAM.search(pdf, at):
        length = _LENGTH.search(match[2])
        at = match.end() + (int(length[1]) if length else 0)
        if match.start() <= offset < at:
            holding = int(match[1])
        if packed := _OBJECTS.search(match[2]):
            objects |= _unpacked(zlib.decompress(pdf[match.end() : at]), int(packed[1]), int(packed[2]))
    return _pages(objects).get(holding)


def _unpacked(data: bytes, count: int, first: int) -> dict[int, bytes]:
    """Take an object stream apart: pairs of number and offset, then the objects."""
    numbers = [int(word) for word in data[:first].split()][: 2 * count]
    starts = [first + start for start in numbers[1::2]]
    return {
        number: data[start:end] for number, start, end in zip(numbers[::2], starts, [*starts[1:], None], strict=True)
    }


def _pages(objects: dict[int, bytes]) -> dict[int, int]:
    """Give the number of each page by the number of the object that draws it."""
    tree = next((match for held in objects.values() if (match := _KIDS.search(held))), None)
    kids = [int(number) for number in re.findall(rb"(\d+) 0 R", tree[1])] if tree else []
    drawn = [_CONTENTS.search(objects.get(kid, b"")) for kid in kids]
    return {int(match[1]): page for page, match in enumerate(drawn, start=1) if match}
