"""A service of the checklist is held in one place alone.

Ground: what two items hold is priced twice (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.services import held_by_items
from tenderwright.model.tender import ServiceAnswer
from tenderwright.notices import Note, Notice

CODE = "service-answered-twice"


def check(context: Context) -> Iterator[Notice]:
    """Report the services that two items hold, or that an item holds and package.yaml answers too."""
    tender = context.package.tender
    if tender is None:
        return
    for service, holders in held_by_items(context.package).items():
        yield from _twice(service, holders, tender.services.get(service))


def _twice(service: str, holders: list[ServiceAnswer], said: ServiceAnswer | None) -> Iterator[Notice]:
    first = holders[0]
    for other in holders[1:]:
        message = f"service `{service}` is held by item {other.item} and item {first.item}, so that it is priced twice"
        notes = (Note("the other item is here", first.here),)
        yield Notice(CODE, other.here, message, notes, ("name it under `services` of one of the two items only",))
    if said is not None:
        message = f"service `{service}` is answered here, and item {first.item} says that it holds it"
        notes = (Note("the item is here", first.here),)
        hint = "delete it here, or under `services` of the item"
        yield Notice(CODE, said.here, message, notes, (hint,))
