"""`tenderwright record`: what was calculated, what was not and what that would take."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from pathlib import Path

from tenderwright.calculations.value import Record
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import package_folder
from tenderwright.pipeline import compile_package, read


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", nargs="?", type=Path, default=None, metavar="DIR", help="the package (default: here)")
    parser.add_argument("--format", choices=("full", "json"), default="full", help="how the record is written")
    parser.add_argument("--again", action="store_true", help="run every method again on its recorded inputs")


def run(arguments: Namespace) -> int:
    """Write the record of calculation, or run it again."""
    compiled = compile_package(read(package_folder(arguments.folder)))
    if arguments.again:
        return _again(compiled.record)
    if arguments.format == "json":
        from tenderwright.writing.record_json import record_json

        sys.stdout.write(record_json(compiled.record).decode())
    else:
        from tenderwright.commands.next_paper import next_paper

        print("\n".join(listed(compiled.record)))
        if compiled.sound and (what := next_paper(compiled)):
            print(what)
    return CLEAN


def listed(record: Record) -> Iterator[str]:
    """Yield the record as lines: what was calculated by method, then what was not by what it would take."""
    counts: dict[str, int] = {}
    for value in record.values.values():
        counts[value.working.method.title] = counts.get(value.working.method.title, 0) + 1
    yield f"calculated: {len(record.values)} values"
    for title, count in counts.items():
        yield f"  {count:>5}  {title}"
    for words, kept in (("not calculated", record.missing), ("not calculated, because of a mistake", record.failed)):
        if kept:
            yield f"{words}: {len(kept)} values"
            yield from (f"  {line}" for line in by_reason(kept))


def by_reason(kept: dict[str, str]) -> Iterator[str]:
    """Yield a line for each reason why values were not calculated, with what the names of the values begin with."""
    reasons: dict[str, list[str]] = {}
    for name, why in kept.items():
        reasons.setdefault(why, []).append(name)
    for why, names in reasons.items():
        yield f"{why}: {', '.join(groups_of(names))} ({len(names)})"


def groups_of(names: list[str]) -> list[str]:
    """Give what names begin with, such as `docking.landing`, or `tank.*` for those of several tanks."""
    whole: dict[str, dict[str, None]] = {}
    for name in names:
        whole.setdefault(name.partition(".")[0], {})[name.rpartition(".")[0]] = None
    return [next(iter(groups)) if len(groups) == 1 else f"{first}.*" for first, groups in whole.items()]


def _again(record: Record) -> int:
    from tenderwright.calculations.steps.again import different

    found = list(different(record))
    for value, figure in found:
        print(f"{value.name}: {value.si!r} is recorded, {figure!r} comes out by {value.working.method.name}")
    print(f"{len(record.values) - len(found)} of {len(record.values)} values come out the same to the last bit")
    return MISTAKES if found else CLEAN
