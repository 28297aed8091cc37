"""A file that goes along is of a kind that any yard can open, and is what its name says.

Ground: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.travelling_files import sent
from tenderwright.notices import Notice

CODE = "file-kind"


def check(context: Context) -> Iterator[Notice]:
    """Report each file that is of another kind."""
    for one in sent(context.package):
        if one.found is not None and not one.found.is_one_of(one.kinds):
            kinds = ", ".join(f".{kind}" for kind in one.kinds)
            message = f"{one.what}: `{one.path}` is not a file of a kind that goes along"
            yield Notice(CODE, one.here, message, hints=(f"kinds that do: {kinds}, each holding what its name says",))
