"""Whether a package needs a table of frames, and what places are counted from before the particulars are read."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.notices import Notice, Place
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.reading.package import Files
from tenderwright.reading.scalars import Todo

FRAMES = "vessel/frames.yaml"
LENGTH = ("vessel/particulars.yaml", ("dimensions", "length_between_perpendiculars"))
"""The file and the keys of the length from which places may be counted."""
_AT_FRAME = re.compile(r"^[^#\n]*\b[a-z_]+: *\[?[\"']?(Fr *-?[0-9]+)(?= *(?:[,\]}+#-]|$))", re.MULTILINE)


def frames_wanted(files: Files) -> Iterator[Notice]:
    """Tell of a place that is named by a frame, in a package without a table of frames."""
    for path, source in sorted(files.sources.items()):
        named = _AT_FRAME.search(source.text) if path.endswith(".yaml") else None
        if named is not None:
            line = source.text.count("\n", 0, named.start(1)) + 1
            message = f"`{named[1]}` at {path}:{line} needs `{FRAMES}`"
            hints = ("`tenderwright add frames` writes a form of one", "or write distances, such as `12 m abaft FP`")
            yield Notice("missing-file", Place(FRAMES), message, hints=hints)
            return


def length_between(files: Files) -> float | None:
    """Give the length between perpendiculars, m, which places may be counted from before the particulars are read."""
    try:
        return parse_quantity(_length_written(files), "length").si
    except (QuantityError, LookupError, TypeError, AttributeError):
        return None  # told where the file is read


def length_wanted(files: Files) -> bool:
    """Tell whether that length is still `todo`."""
    try:
        return _length_written(files).__class__ is Todo
    except (LookupError, TypeError):
        return False


def _length_written(files: Files) -> str:
    (path, (one, other)) = LENGTH
    written: str = files.sources[path].data[one][other]
    return written
