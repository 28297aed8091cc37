"""Every file under references/ is named by a document or a picture, so that it goes along with the tender.

Ground: a file that nothing names is packed for nobody (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.travelling_files import sent
from tenderwright.notices import Notice, Place

CODE = "file-named-nowhere"


def check(context: Context) -> Iterator[Notice]:
    """Report each file that would go along and is named nowhere."""
    named = {one.path for one in sent(context.package)}
    hint = (
        "name it as the `file` of a document in drawings.yaml or of a picture of an item, or move it out of references/"
    )
    for path in sorted(context.package.travelling.keys() - named):
        yield Notice(CODE, Place(path), f"`{path}` is named nowhere, so it does not go along", hints=(hint,))
