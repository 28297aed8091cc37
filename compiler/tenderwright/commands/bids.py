"""`tenderwright bids`: what is done with the price forms that yards return, each in a command of its own."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from importlib import import_module

PARTS = {
    "read": "read a returned price form, and write it under owner/bids/ for review",
    "compare": "compare the bids by the published rule: corrected, evaluated, ranked",
}
"""Each is a module `commands/bids_<name>.py` with `add_arguments` and `run`, as a command is."""


def add_arguments(parser: ArgumentParser) -> None:
    """Add the commands below this one, each with its arguments."""
    parts = parser.add_subparsers(dest="part", metavar="WHAT", required=True)
    for name, help_text in PARTS.items():
        sub = parts.add_parser(name, help=help_text, description=help_text[0].upper() + help_text[1:] + ".")
        import_module(f"tenderwright.commands.bids_{name}").add_arguments(sub)


def run(arguments: Namespace) -> int:
    """Run the command below this one."""
    code: int = import_module(f"tenderwright.commands.bids_{arguments.part}").run(arguments)
    return code
