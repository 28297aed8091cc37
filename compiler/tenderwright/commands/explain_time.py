"""What `explain` says of time: when an item is done, what it waits for, and why it is on the critical path."""

from __future__ import annotations

from tenderwright.planning.schedule import Schedule, Scheduled


def item_time(number: str, schedule: Schedule) -> list[str]:
    """Say when the activities of an item are done, and what each waits for."""
    mine = [one for one in schedule.activities if one.node.item is not None and one.node.item.number == number]
    lines: list[str] = []
    for one in mine:
        lines += activity_time(one, schedule)
    critical = next((one for one in mine if one.critical), None)
    if critical is not None:
        lines.append("on the critical path: a day more here is a day more on blocks or in the yard")
        lines.append("  " + " -> ".join(step.node.name for step in schedule.critical_chain(critical)))
    return lines


def activity_time(one: Scheduled, schedule: Schedule) -> list[str]:
    """Say when one activity is done."""
    days, node = one.node.duration, one.node
    span = f"{days.likely:g} d" if days.low == days.high else f"{days.low:g} to {days.high:g} d, likely {days.likely:g}"
    stretched = one.finish - one.start
    passes = f", {stretched:.1f} d as they pass" if abs(stretched - days.likely) > 0.05 else ""
    float_ = "critical, no float" if one.critical else f"float {one.total_float:.1f} d"
    lines = [f"{node.name}  {node.title}: {one.begins} to {one.ends}, {span}{passes}; {float_}"]
    for link in one.driven_by:
        lines.append(f"  waits for {schedule.network.nodes[link.before].name}: {link.why}")
    return lines
