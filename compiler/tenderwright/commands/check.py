"""`tenderwright check`: read, validate, link, calculate, run the trade checks; write nothing in the package."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from pathlib import Path

from tenderwright.checks.context import Unjudged
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import package_folder
from tenderwright.commands.kept_results import kept_results
from tenderwright.commands.listed_todos import listed_todos
from tenderwright.commands.next_paper import next_paper
from tenderwright.commands.record import by_reason
from tenderwright.notices import sort_notices
from tenderwright.notices.render import as_annotations, as_json, as_text, one_a_line, summary
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.reading.git import path_in_repository
from tenderwright.shapes.todos import waits_for_todo

FORMATS = ("full", "line", "json", "annotations")


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", nargs="?", type=Path, default=None, metavar="DIR", help="the package (default: here)")
    parser.add_argument("--format", choices=FORMATS, default="full", help="how notices are written (default: full)")
    parser.add_argument("--strict", action="store_true", help="count warnings as mistakes")


def run(arguments: Namespace) -> int:
    """Check a package."""
    files = read(package_folder(arguments.folder))
    with kept_results(files.root) as kept:
        compiled = compile_package(files, kept)
    owner = compile_owner(files, compiled)
    notices = sort_notices([*compiled.notices, *owner.notices])
    if arguments.format == "full":
        sys.stdout.write(as_text(notices, files.texts))
        items, values = len(compiled.package.items), len(compiled.record.values)
        print(f"{summary(notices)}: {items} items, {values} values, {len(files.sources)} files")
        if not (compiled.sound and owner.sound):
            print("What rests on a mistake is not judged: mend it and check again.")
        if compiled.unjudged:
            print("\n".join(_not_judged(compiled.unjudged)))
        if compiled.record.missing:
            print(f"not calculated: {len(compiled.record.missing)} values")
            lacking = {name: why for name, why in compiled.record.missing.items() if not waits_for_todo(why)}
            for line in by_reason(lacking):
                print(f"  {line}")
            print("More about what was calculated and what was not: tenderwright record")
        for line in listed_todos((*compiled.package.todos, *owner.papers.todos), compiled.record.missing):
            print(line)
        if notices:
            print("More about a code: tenderwright explain CODE")
        if compiled.sound and owner.sound and (what := next_paper(compiled, owner.papers)):
            print(what)
    elif arguments.format == "line":
        sys.stdout.write(one_a_line(notices))
    elif arguments.format == "json":
        sys.stdout.write(as_json(notices))
    else:
        _annotate(compiled, owner)
    mistakes = [n for n in notices if n.severity == "error" or arguments.strict]
    return MISTAKES if mistakes else CLEAN


def _not_judged(unjudged: Sequence[Unjudged]) -> Iterator[str]:
    """Yield a line that counts the trade checks not made, or only in part, then one for each reason."""
    reasons: dict[str, list[str]] = {}
    for one in unjudged:
        reasons.setdefault(one.why, []).append(one.code)
    yield f"not judged, or only in part: {len({one.code for one in unjudged})} trade checks"
    yield from (f"  {why}: {', '.join(codes)}" for why, codes in reasons.items())


def _annotate(compiled: Compiled, owner: OwnersSide) -> None:
    """Annotate the yard's side at its paths in the repository; of the owner's papers others may read only a count."""
    above = path_in_repository(compiled.files.root)
    sys.stdout.write(as_annotations(compiled.notices, above))
    if owner.notices:
        print(f"the owner's papers: {summary(owner.notices)}, shown only by `tenderwright check` on your own machine")
