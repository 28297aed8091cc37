"""Every service of the checklist is answered: in an item of the tender, or left out on purpose.

Ground: the services that published docking specifications and ship repairers' standard terms list, and those that were
forgotten (common practice, no source for the list as a whole).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.kinds import SERVICES
from tenderwright.model.services import held_by_items
from tenderwright.notices import Notice

CODE = "forgotten-service"
_HINT = (
    'name it under `services` of the item that holds it, or answer in package.yaml: `{}: {{ answer: "no", why: ... }}`'
)


def check(context: Context) -> Iterator[Notice]:
    """Report the services that are not answered."""
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
