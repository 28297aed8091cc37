"""`tenderwright explain`: a value's whole working, an item with its prices and dates, or a notice code."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from tenderwright.calculations.plain import plain
from tenderwright.calculations.ship.how_sure import WHERE, how_sure
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Given, Value
from tenderwright.calculations.written import as_written
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.explain_price import item_price, line_price
from tenderwright.commands.explain_time import activity_time, item_time
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.documents.desk import Desk
from tenderwright.model.item import Item
from tenderwright.notices import Place, sort_notices
from tenderwright.notices.codes import CODES
from tenderwright.notices.explain import explanation
from tenderwright.notices.render import as_text, summary
from tenderwright.notices.suggest import did_you_mean
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.pricing.quantity import line_quantity
from tenderwright.quantities.customs import telling_in
from tenderwright.quantities.display import plus_minus
from tenderwright.quantities.purposes import purpose_of

DRIVERS = 3
"""Sources of uncertainty that are named, the greatest first."""


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument(
        "words",
        nargs="+",
        metavar="[DIR] REF",
        help="a value, an item, a line such as 420.a, an activity of the programme, or a notice code",
    )
    parser.add_argument(
        "--format",
        choices=("full", "yaml"),
        default="full",
        help="yaml: the file with which `reckon` gives the value again",
    )


def run(arguments: Namespace) -> int:
    """Explain one thing."""
    *before, name = arguments.words
    if len(before) > 1:
        raise WrongUse("name one folder at most, then what to explain")
    if name in CODES and not before:
        print(explanation(name))
        return CLEAN
    files = read(package_folder(Path(before[0]) if before else None))
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    try:
        if arguments.format == "yaml":
            print(_reckon_file(name.removeprefix("value:"), compiled), end="")
        else:
            with telling_in(compiled.package.units, american=compiled.package.american):
                print(_explained(name.removeprefix("value:").removeprefix("item:"), compiled, owner))
    except WrongUse:
        mistakes = [one for one in (*compiled.notices, *owner.notices) if one.severity == "error"]
        if not mistakes:
            raise
        sys.stderr.write(as_text(sort_notices(mistakes), files.texts))
        print(f"{summary(mistakes)}; `{name}` may rest on what is broken, and cannot be explained", file=sys.stderr)
        return MISTAKES
    return CLEAN


def _explained(name: str, compiled: Compiled, owner: OwnersSide) -> str:
    record, items = compiled.record, compiled.package.item_by_name
    if name in items:
        return explain_item(items[name], compiled, owner)
    number, _, letter = name.partition(".")
    if number in items and letter in {line.line for line in items[number].lines} | _withdrawn(number, compiled):
        return explain_item(items[number], compiled, owner, letter)
    planned = owner.schedule.activities if owner.schedule else ()
    for one in planned:
        if one.node.name == name and owner.schedule is not None:
            return "\n".join(activity_time(one, owner.schedule))
    if name in record.values:
        return explain_value(record.values[name], compiled)
    for kept in (record.failed, record.missing):
        if name in kept:
            return f"{name}\n  not calculated: {kept[name]}"
    if name in CODES:
        return explanation(name)
    lines = [f"{item.number}.{line.line}" for item in items.values() for line in item.lines]
    known = [*record.known, *items, *lines, *CODES, *(one.node.name for one in planned)]
    near = [value for value in record.values if value.startswith(f"{name}.")]
    hint = f"it holds {', '.join(near)}" if near else "; ".join(did_you_mean(name, known))
    raise WrongUse(f"there is no value, item or notice code `{name}`" + (f": {hint}" if hint else ""))


def _reckon_file(name: str, compiled: Compiled) -> str:
    """Give the inputs of a value as a file for `reckon`, with the command that reads it."""
    import yaml

    value = compiled.record.values.get(name)
    if value is None:
        raise WrongUse(f"there is no value `{name}`: only a value has a file for `reckon`")
    method = value.working.method
    data = {
        argument: as_written(method.inputs[argument], plain(given.si))
        for argument, given in value.working.inputs.items()
    }
    head = f"# {value.name}, {value.symbol.meaning}: {value.working.about}\n"
    head += f"# tenderwright reckon {method.name} FILE.yaml\n"
    return head + yaml.safe_dump(data, sort_keys=False, allow_unicode=True)


def explain_value(value: Value, compiled: Compiled) -> str:
    """Give a value's whole working, down to the lines of the package that it rests on."""
    desk = Desk(compiled.package, compiled.links, compiled.calculated)
    lines: list[str] = []
    for one in compiled.record.chain(value.name):
        method = one.working.method
        lines += [f"{one.name} = {desk.figure(one, 6)}", f"  {one.symbol.meaning}; {one.working.about}"]
        lines += known_to(one, compiled.calculated)
        lines += [f"  formula  {method.formula}", f"  source   {method.source}", f"  valid    {method.valid}"]
        lines += [
            f"  input    {name.replace('_', ' ')} = {given.text}   [{_origin(given)}]"
            for name, given in one.working.inputs.items()
        ]
        lines += [f"  caution  {caution}" for caution in method.cautions]
        lines.append("")
    users = [use for use in compiled.links.uses if use.kind == "value" and use.name == value.name]
    lines += [f"used by {use.by[0]} {use.by[1]} at {use.at}" for use in users]
    return "\n".join(lines).rstrip()


def known_to(value: Value, calculated: Calculated) -> list[str]:
    """Say what a value may be out by, and what drives that, where it was worked out."""
    figure = next((figure for figure, name in WHERE.items() if name == value.name), "")
    found = calculated.found(how_sure)
    if found is None or figure not in found.figures:
        return []
    one = found.figures[figure]
    known = plus_minus(value.si, one.u, purpose_of(value.dimension, value.unit))
    drivers = ", ".join(f"{name} {share:.0%}" for name, share in one.shares[:DRIVERS])
    name = f"uncertainty.{figure.replace('_', '-')}"
    return [f"  known to {known}, twice the standard uncertainty; by {drivers}; see {name}"]


def _origin(given: Given) -> str:
    if isinstance(given.origin, Place):
        return f"{given.origin.path}:{given.origin.line}"
    return given.origin


def _withdrawn(number: str, compiled: Compiled) -> set[str]:
    return {line.line for line in compiled.package.withdrawn_lines.get(number, ())}


def explain_item(item: Item, compiled: Compiled, owner: OwnersSide, letter: str = "") -> str:
    """Give an item's lines and how each is priced, when it is done, what it rests on, and what refers to it.

    With the letter of a line, that line alone.
    """
    lines = [
        f"item {item.number}  {item.title}",
        f"  {item.kind}, {item.phase}, revision {item.revision}   [{item.here}]",
    ]
    if item.withdrawn:
        lines.append("  withdrawn: it is not priced, and its number stays taken")
    after = ", ".join(reference.name for reference in item.depends_on)
    if after and not letter:
        lines.append(f"  after items {after}")
    priced = {line.number: line for line in owner.estimate.lines} if owner.estimate else {}
    for line in item.lines:
        number = f"{item.number}.{line.line}"
        if letter not in ("", line.line):
            continue
        takes = f", taken from {line.takes}" if line.takes else ""
        quantity = line_quantity(line, compiled.record) or "not known"
        lines.append(f"  {number}  {line.text}: {quantity}{takes}   [{line.here}]")
        if number in priced:
            lines += [f"         {told}" for told in line_price(priced[number])]
    for line in compiled.package.withdrawn_lines.get(item.number, ()):
        if letter in ("", line.line):
            lines.append(f"  {item.number}.{line.line}  {line.text}: withdrawn, not priced   [{line.here}]")
    if letter:
        return "\n".join(lines)
    if owner.estimate is not None:
        lines += [f"  {told}" for told in item_price(item.number, owner.estimate)]
    if owner.schedule is not None:
        lines += [f"  {told}" for told in item_time(item.number, owner.schedule)]
    for use in compiled.links.referred_to_by("item", item.number):
        holder = " ".join(word for word in use.by if word)
        lines.append(f"  referred to by {holder}{f' paragraph {use.paragraph}' if use.paragraph else ''}   [{use.at}]")
    return "\n".join(lines)
