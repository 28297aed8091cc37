"""`tenderwright check`: read, validate, link, calculate, run the trade checks; write nothing."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import package_folder
from tenderwright.notices import sort_notices
from tenderwright.notices.render import RENDERERS, summary
from tenderwright.pipeline import compile_owner, compile_package, read


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", nargs="?", type=Path, default=None, metavar="DIR", help="the package (default: here)")
    parser.add_argument("--format", choices=tuple(RENDERERS), default="text", help="how notices are written")
    parser.add_argument("--strict", action="store_true", help="count warnings as mistakes")


def run(arguments: Namespace) -> int:
    """Check a package."""
    files = read(package_folder(arguments.folder))
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    notices = sort_notices([*compiled.notices, *owner.notices])
    sys.stdout.write(RENDERERS[arguments.format](notices, files.texts))
    if arguments.format == "text":
        items, values = len(compiled.package.items), len(compiled.record.values)
        sys.stdout.write(f"{summary(notices)}: {items} items, {values} values, {len(files.sources)} files\n")
    mistakes = [n for n in notices if n.severity == "error" or arguments.strict]
    return MISTAKES if mistakes else CLEAN
