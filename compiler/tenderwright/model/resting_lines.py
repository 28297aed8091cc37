"""Lines whose quantity rests on that of another line; a circle of them is refused."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec.structs import asdict, replace

from tenderwright.model.item import Item, Line
from tenderwright.model.named_lines import live_lines
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean


class RestingLine(Line, frozen=True, kw_only=True):
    """A line with the line that its quantity rests on."""

    rests_on: Line


def with_resting_lines(package: Package) -> tuple[Package, list[Notice]]:
    """Give each line that takes its quantity from another that other line, which may rest on a third."""
    lines = live_lines(package)
    if not any(line.takes_line is not None for _, line in lines.values()):
        return package, []
    notices: list[Notice] = []
    made = {number: _resting(number, lines, package, notices, ()) for number in lines}
    items = (
        replace(item, lines=tuple(made.get(f"{item.number}.{line.line}") or line for line in item.lines))
        if not item.withdrawn
        else item
        for item in package.items
    )
    return replace(package, items=tuple(items), broken=package.broken.told(notices)), notices


def _resting(
    number: str, lines: Mapping[str, tuple[Item, Line]], package: Package, notices: list[Notice], above: tuple[str, ...]
) -> Line:
    line = lines[number][1]
    if line.takes_line is None:
        return line
    name, at = line.takes_line.name, line.takes_line.at
    own = not above
    if line.quantity is not None or line.takes is not None:
        if own:
            message = f"line {number} takes its quantity from line {name}, and has one of its own"
            notices.append(Notice("bad-quantity", at, message, hints=("leave out one of them",)))
        return line
    if name in (number, *above):
        if own or name == above[0]:
            round_it = " -> ".join((*above, number, name))
            message = f"the quantities of lines rest on each other in a circle: {round_it}"
            notices.append(Notice("cycle", at, message, hints=("write the quantity of one of them",)))
        return line
    if name not in lines:
        if own and not package.broken.may_hold("item", name.split(".")[0]):
            message = f"line {number} takes its quantity from line {name}, which is not there"
            notices.append(Notice("dead-reference", at, message, hints=did_you_mean(name, lines)))
        return line
    below = _resting(name, lines, package, notices if own else [], (*above, number))
    return RestingLine(**asdict(line), rests_on=below)
