"""The answers to the checklist of services: in the items that hold them, and in package.yaml."""

from __future__ import annotations

from tenderwright.model.build import Reference
from tenderwright.model.package import Package
from tenderwright.model.tender import ServiceAnswer


def held_by_items(package: Package) -> dict[str, list[ServiceAnswer]]:
    """Give, by service, the answers of the items that say that they hold it; withdrawn items hold nothing."""
    held: dict[str, list[ServiceAnswer]] = {}
    for item in package.items:
        for service in item.services if not item.withdrawn else ():
            answer = ServiceAnswer(answer="yes", item=Reference("item", item.number, item.here), here=item.here)
            held.setdefault(service, []).append(answer)
    return held


def service_answers(package: Package) -> dict[str, ServiceAnswer]:
    """Give the answer to each service that is answered, an item's own before that of package.yaml."""
    said = dict(package.tender.services) if package.tender is not None else {}
    return said | {service: answers[0] for service, answers in held_by_items(package).items()}
