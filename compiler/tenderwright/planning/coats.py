"""When each coat of a scheme is put on, by the schedule."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.model.coating import Coat, Scheme
from tenderwright.model.package import Package
from tenderwright.planning.schedule import Schedule, Scheduled


class PutOn(Struct, frozen=True):
    """A coat, and the activity that puts it on."""

    scheme: Scheme
    coat: Coat
    activity: Scheduled


def put_on(schedule: Schedule, package: Package) -> dict[str, list[PutOn]]:
    """Give the coats that the programme names, by zone and in the order in which they go on."""
    schemes = {scheme.scheme: scheme for scheme in package.schemes}
    found: dict[str, list[PutOn]] = {}
    for activity in schedule.activities:
        source = activity.node.source
        scheme = schemes.get(source.applies.name) if source is not None and source.applies is not None else None
        if source is None or scheme is None:
            continue
        coats = [coat for coat in scheme.coats if not source.coats or coat.coat in source.coats]
        found.setdefault(scheme.zone.name, []).extend(PutOn(scheme, coat, activity) for coat in coats)
    return found
