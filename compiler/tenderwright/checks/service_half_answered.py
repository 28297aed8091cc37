"""An answer to the checklist of services says which item holds the service, or why no item does.

Ground: a bidder cannot price a service that is said to be held nowhere (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.item import Item
from tenderwright.model.tender import ServiceAnswer
from tenderwright.notices import Notice

CODE = "service-half-answered"


def check(context: Context) -> Iterator[Notice]:
    """Report answers in package.yaml that say neither where nor why."""
    tender = context.package.tender
    if tender is None:
        return
    items = context.package.item_by_name
    for service, answer in tender.services.items():
        said = _half_said(service, answer, items.get(answer.item.name) if answer.item is not None else None)
        if said:
            yield Notice(CODE, answer.here, said[0], hints=(said[1],))


def _half_said(service: str, answer: ServiceAnswer, item: Item | None) -> tuple[str, str] | None:
    """Say what an answer lacks and how to mend it; None where it is whole."""
    if answer.answer != "yes":
        missing = f"service `{service}` is answered `{answer.answer}` and does not say why"
        return None if answer.why else (missing, "add `why`, in a short sentence")
    if answer.item is None:
        missing = f"service `{service}` is answered `yes` and does not say which item holds it"
        return missing, "add `item` with the number of the item"
    if item is not None and item.withdrawn:
        return (
            f"service `{service}` is held by item {item.number}, which is withdrawn",
            'name another item, or write `answer: "no"` and `why`',
        )
    return None
