"""Finds the page to which a byte of a PDF that we wrote belongs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from typing import Any

_STREAM = re.compile(rb"(\d+) 0 obj\n<<(.*)>>\nstream\n")
_LENGTH = re.compile(rb"/Length (\d+)")


def page_at(pdf: bytes, offset: int) -> int | None:
    """Give the number of the page whose drawing holds a byte, from 1; None where the byte belongs to no page alone.

    Only for a PDF of this compiler, each of whose streams gives its length in its own dictionary.
    """
    import pikepdf

    at = 0
    while match := _STREAM.search(pdf, at):
        length = _LENGTH.search(match[2])
        at = match.end() + (int(length[1]) if length else 0)
        if match.start() <= offset < at:
            with pikepdf.open(BytesIO(pdf)) as opened:
                drawn = {number: page for page, one in enumerate(opened.pages, start=1) for number in _drawing(one.obj)}
            return drawn.get(int(match[1]))
    return None


def _drawing(page: Any) -> Iterator[int]:
    """Give the numbers of the objects that draw a page: what stands in its margins, and its content."""
    from pikepdf import Array

    contents = page.get("/Contents", Array())
    for one in contents if isinstance(contents, Array) else [contents]:
        yield one.objgen[0]
