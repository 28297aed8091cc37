"""A file that goes along is the very one that the package describes.

Ground: the revision that a package states is that of one file; a checksum shows that it was not taken for another
(derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.travelling_files import sent
from tenderwright.notices import Notice

CODE = "file-checksum"


def check(context: Context) -> Iterator[Notice]:
    """Report each file whose checksum is not stated, or is that of another."""
    for one in sent(context.package):
        if one.found is None or one.sha256 == one.found.sha256:
            continue
        said = "has another checksum than is stated" if one.sha256 else "has no checksum stated"
        hint = f"if it is the right one, write `sha256: {one.found.sha256}`"
        yield Notice(CODE, one.here, f"{one.what}: `{one.path}` {said}", hints=(hint,))
