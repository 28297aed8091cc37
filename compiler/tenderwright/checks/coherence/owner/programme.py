"""The owner's programme fits that of the tender: durations within the docking, day lines by their days, few crews.

Ground: the programme of the tender; crews of a ship of this size: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.item_place import place_in
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.programme import Programme
from tenderwright.model.tender import Programme as Planned
from tenderwright.notices import Note, Notice

CODE = "days-differ"
_DAY = 86400.0
_CREWS = 40


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report durations, crews and counts of days that do not fit the programme of the tender."""
    programme, tender = context.papers.programme, context.package.tender
    plan = tender.programme if tender is not None else None
    if programme is None or plan is None:
        return
    stay = (plan.redelivery - plan.arrival).days
    for activity in programme.activities:
        high = activity.high or activity.likely
        if high is not None and stay > 0 and high.si > 3 * stay * _DAY:
            message = f"activity `{activity.activity}` takes up to {high}, and she is at the yard for {stay} days"
            yield Notice(CODE, high.at, message, hints=("is the unit the right one?",))
        elif activity.high and activity.likely and activity.high.si > max(8 * activity.likely.si, 7 * _DAY):
            message = f"activity `{activity.activity}` most likely takes {activity.likely}, and up to {activity.high}"
            yield Notice(CODE, activity.high.at, message, hints=("is the unit the right one?",))
    for index, crew in enumerate(programme.crews):
        if crew.count > _CREWS:
            message = f"{crew.count} crews of {crew.name or crew.crew} do not find room on one ship"
            yield Notice("quantity-unlikely", context.at("owner/programme.yaml", "crews", index, "count"), message)
    if plan.arrival <= plan.docking < plan.undocking <= plan.redelivery:
        yield from _day_lines(context, programme, plan)


def _day_lines(context: OwnerContext, programme: Programme, plan: Planned) -> Iterator[Notice]:
    stay, on_blocks = (plan.redelivery - plan.arrival).days, (plan.undocking - plan.docking).days
    counted = {"dock days": on_blocks, "yard days": stay, "wet days": stay - on_blocks}
    for index, one in enumerate(programme.day_lines):
        number, _, letter = one.line.partition(".")
        item = context.live_item(number)
        for line in item.lines if item is not None else ():
            if line.line != letter or line.quantity is None or one.days not in counted:
                continue
            days, tendered = counted[one.days] - one.less, line.quantity.si / _DAY
            if abs(tendered - days) > max(3, days / 3):
                message = f"line {one.line} counts {one.days}, {days} by the programme, and {line.quantity} is tendered"
                place = place_in(item, "lines", item.written(line), "quantity") if item is not None else line.here
                note = Note("its days are said here", context.at("owner/programme.yaml", "day_lines", index, "days"))
                yield Notice(CODE, place, message, (note,))
