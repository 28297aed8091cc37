"""Every service of the checklist is answered: in an item of the tender, or left out on purpose and why.

Ground: the services that published docking specifications and ship repairers' standard terms list, and those that were
forgotten (common practice, no source for the list as a whole).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.item import Item
from tenderwright.model.kinds import SERVICES
from tenderwright.model.services import held_by_items
from tenderwright.model.tender import ServiceAnswer
from tenderwright.notices import Note, Notice

CODE = "forgotten-service"
_HINT = (
    'name it under `services` of the item that holds it, or answer in package.yaml: `{}: {{ answer: "no", why: ... }}`'
)


def check(context: Context) -> Iterator[Notice]:
    """Report the services that are not answered or answered twice, and answers that say neither where nor why."""
    tender = context.package.tender
    if tender is None:
        return
    held = held_by_items(context.package)
    missing = [service for service in SERVICES.words if service not in tender.services and service not in held]
    if missing:
        place = tender.award.evaluated.source.key_place(("services",))
        listed = ", ".join(f"`{service}`" for service in missing)
        many = f"{len(missing)} services of the checklist are not answered: {listed}"
        message = f"service {listed} of the checklist is not answered" if len(missing) == 1 else many
        yield Notice(CODE, place, message, hints=(_HINT.format(missing[0]),))
    for service, holders in held.items():
        yield from _twice(service, holders, tender.services.get(service))
    items = context.package.item_by_name
    for service, answer in tender.services.items():
        said = _half_said(service, answer, items.get(answer.item.name) if answer.item is not None else None)
        if said:
            yield Notice(CODE, answer.here, said[0], hints=(said[1],))


def _twice(service: str, holders: list[ServiceAnswer], said: ServiceAnswer | None) -> Iterator[Notice]:
    """Report a service that a second item holds too, or that package.yaml answers besides."""
    first = holders[0]
    for other in holders[1:]:
        message = f"service `{service}` is held by item {other.item} and item {first.item}, so that it is priced twice"
        notes = (Note("the other item stands here", first.here),)
        yield Notice(CODE, other.here, message, notes, ("name it under `services` of one of them",))
    if said is not None:
        message = f"service `{service}` is answered here, and item {first.item} says that it holds it"
        notes = (Note("the item stands here", first.here),)
        yield Notice(CODE, said.here, message, notes, ("take one of the two away",))


def _half_said(service: str, answer: ServiceAnswer, item: Item | None) -> tuple[str, str] | None:
    """Say what an answer lacks and how to mend it; None where it is whole."""
    if answer.answer != "yes":
        missing = f"service `{service}` is answered `{answer.answer}` without why"
        return None if answer.why else (missing, "add `why`, in a short sentence")
    if answer.item is None:
        return f"service `{service}` is answered `yes` and no item holds it", "add `item` with the number of the item"
    if item is not None and item.withdrawn:
        return (
            f"service `{service}` is held by item {item.number}, which is withdrawn",
            "name another item, or answer `no` with why",
        )
    return None
