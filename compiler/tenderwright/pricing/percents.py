"""Lines priced as a percentage of what other lines come to: which lines each of them is of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tenderwright.model.item import Item, Line
from tenderwright.model.named_lines import live_lines, named_lines
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean
from tenderwright.pricing.amount import PERCENT
from tenderwright.pricing.sections import UNCOUNTED, section_of


def percents(package: Package) -> dict[str, tuple[str, ...]]:
    """Give by each line that is a percentage the lines that it is of, in the order in which they are named."""
    lines = live_lines(package)
    return {
        number: tuple(dict.fromkeys(found for name in line.of for found in _named(name.name, lines)))
        for number, (_, line) in lines.items()
        if line.price == PERCENT
    }


def _named(name: str, lines: Mapping[str, tuple[Item, Line]]) -> list[str]:
    """Give the lines that a name stands for; an item stands for what it has besides percentages."""
    found = named_lines(name, lines)
    return found if found == [name] else [number for number in found if lines[number][1].price != PERCENT]


def percent_mistakes(package: Package) -> list[Notice]:
    """Report percentages of nothing, of lines that are not there, of percentages, and of lines that count otherwise."""
    lines = live_lines(package)
    return [
        notice for number, (item, line) in lines.items() for notice in _mistakes(package, lines, number, item, line)
    ]


def _mistakes(
    package: Package, lines: Mapping[str, tuple[Item, Line]], number: str, item: Item, line: Line
) -> Iterator[Notice]:
    if line.price != PERCENT:
        if line.of:
            hint = "write `price: percent`, or leave out `of`"
            yield Notice("bad-percent", line.here, f"line {number} is not a percentage, and names lines", hints=(hint,))
        return
    if not line.of:
        hint = "name them, as in `of: [310.a, 315.*]`"
        yield Notice("bad-percent", line.here, f"line {number} is a percentage and does not say of what", hints=(hint,))
    if line.quantity is not None or line.takes is not None or line.amount is not None:
        hint = "leave out `quantity`, `takes` and `amount`"
        message = f"line {number} is a percentage, whose quantity is what the lines that it names come to"
        yield Notice("bad-percent", line.here, message, hints=(hint,))
    for name in line.of:
        found = _named(name.name, lines)
        if not found and not package.broken.may_hold("item", name.name.split(".")[0]):
            hints = did_you_mean(name.name, lines)
            yield Notice(
                "dead-reference", name.at, f"line {number} is a percentage of `{name}`, which is not there", hints=hints
            )
        if any(lines[one][1].price == PERCENT for one in found):
            message = f"line {number} is a percentage of line {name}, which is a percentage itself"
            yield Notice("bad-percent", name.at, message, hints=("name the lines that both are of",))
        elif package.tender is not None:
            own = section_of(item, line, package.tender)
            for one in found:
                of = section_of(*lines[one], package.tender)
                if (own.in_base and not of.in_base) or (own.code not in UNCOUNTED and of.code in UNCOUNTED):
                    message = f"line {number} is paid in any case, and is a percentage of line {one}, which is not"
                    hint = f"give it the kind of line {one}, or a percentage line of its own"
                    yield Notice("bad-percent", name.at, message, hints=(hint,))
