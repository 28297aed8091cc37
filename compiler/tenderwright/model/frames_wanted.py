"""Whether a package needs a table of frames, and what places are counted from before the particulars are read."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.notices import Notice, Place
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.reading.package import Files

FRAMES = "vessel/frames.yaml"
_AT_FRAME = re.compile(r"^[^#\n]*\b[a-z_]+: *\[?[\"']?(Fr *-?[0-9]+)(?= *(?:[,\]}+#-]|$))", re.MULTILINE)


def frames_wanted(files: Files) -> Iterator[Notice]:
    """Tell of a place that is named by a frame, in a package without a table of frames."""
    for path, source in sorted(files.sources.items()):
        named = _AT_FRAME.search(source.text) if path.endswith(".yaml") else None
        if named is not None:
            line = source.text.count("\n", 0, named.start(1)) + 1
            message = f"`{named[1]}` at {path}:{line} needs `{FRAMES}`"
            hints = ("`tenderwright start` writes one to begin from", "or write distances, such as `12 m abaft FP`")
            yield Notice("missing-file", Place(FRAMES), message, hints=hints)
            return


def length_between(files: Files) -> float | None:
    """Give the length between perpendiculars, m, which places may be counted from before the particulars are read."""
    source = files.sources.get("vessel/particulars.yaml")
    try:
        return (
            parse_quantity(source.data["dimensions"]["length_between_perpendiculars"], "length").si if source else None
        )
    except (QuantityError, LookupError, TypeError, AttributeError):
        return None  # told where the file is read
