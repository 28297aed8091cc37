"""The command line: names the commands, runs one, and turns what happens into an exit code."""

from __future__ import annotations

import argparse
import atexit
import gc
import io
import sys
from collections.abc import Sequence
from importlib import import_module
from types import ModuleType

from tenderwright import __version__
from tenderwright.commands.exits import FAILURE, WRONG_USE
from tenderwright.commands.folder import WrongUse

COMMANDS = {
    "check": "read, validate, link, calculate and run the trade checks; write nothing in the package",
    "build": "compile the editions",
    "explain": "explain a value, a price, a date or a notice code",
    "record": "list what was calculated, and what was not and what that would take",
    "reckon": "run one calculation alone on a small YAML file",
    "issue": "compile the yard edition of what is committed and record it in a git tag",
    "verify": "rebuild a parcel from the commit that it names and compare the two byte for byte",
    "close": "check the findings of a docking and write its history entry and report",
    "next": "begin the package of the next tender from that of a closed one, which is kept as an archive",
    "grant": "write an application for a grant as a paper that stands by itself",
    "bids": "read the price forms that yards return",
    "carry": "carry the prices of an older price form over to a newer one of the same tender",
    "addendum": "tell yards what changed between two commits, and prove that nothing else did",
    "diff": "show what changed between two states of a package, and what that does to cost and time",
    "statement": "write a page for trustees on how the docking stands on a day",
    "start": "write a new package that fits a ship, or a small one to learn from",
    "add": "write a new file into a package: a usual work item, or a form of any other file",
    "import": "bring a list kept as CSV into the form of the package",
}
_MODULES = {"import": "bring_in"}
"""Of commands whose names Python keeps for itself."""


def parser_for(name: str | None) -> argparse.ArgumentParser:
    """Make the parser; only the command named has its arguments, so that the others need not be imported."""
    parser = argparse.ArgumentParser(
        prog="tenderwright",
        description="Compiles a ship's docking package into a tender that yards can price.",
    )
    parser.add_argument("--version", action="version", version=f"tenderwright {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", required=True)
    for command, help_text in COMMANDS.items():
        sub = commands.add_parser(command, help=help_text, description=help_text[0].upper() + help_text[1:] + ".")
        if command == name:
            _module(command).add_arguments(sub)
    return parser


def _module(command: str) -> ModuleType:
    return import_module(f"tenderwright.commands.{_MODULES.get(command, command)}")


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line and give the exit code: 0 clean, 1 mistakes, 2 wrong use, 3 our own failure."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    _collect_seldom()
    words = list(sys.argv[1:] if argv is None else argv)
    name = next((word for word in words if word in COMMANDS), None)
    arguments = parser_for(name).parse_args(words)
    try:
        code: int = _module(arguments.command).run(arguments)
    except WrongUse as error:
        print(f"tenderwright: {error}", file=sys.stderr)
        return WRONG_USE
    except BrokenPipeError:
        sys.stderr.close()
        return FAILURE
    except KeyboardInterrupt:
        print("tenderwright: stopped", file=sys.stderr)
        return FAILURE
    except Exception:
        import traceback

        traceback.print_exc()
        print(
            "tenderwright: this is a mistake in the compiler, not in the package; please report it",
            file=sys.stderr,
        )
        return FAILURE
    return code


def _collect_seldom() -> None:
    """Look for cyclic garbage seldom, and not on leaving: a run makes next to none, and the looking is not free."""
    gc.set_threshold(1_000_000)
    atexit.register(gc.freeze)
