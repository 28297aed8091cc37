"""Who may read what: each part, table and figure is the yard's, the owner's or anybody's; unsaid, it is the owner's."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

Audience = Literal["yard", "owner", "public"]

READS: Mapping[Audience, frozenset[Audience]] = {
    "yard": frozenset({"yard", "public"}),
    "owner": frozenset({"yard", "owner", "public"}),
    "public": frozenset({"public"}),
}
"""What the reader of an edition may read."""


class NotForItsReader(RuntimeError):
    """A composer put something into an edition whose reader may not see it: a mistake of ours."""


def hold(reader: Audience, audience: Audience, what: str) -> None:
    """Raise `NotForItsReader` where something is not for the reader of an edition."""
    if audience not in READS[reader]:
        raise NotForItsReader(f"{what} is for the {audience}, and the edition for the {reader}")
