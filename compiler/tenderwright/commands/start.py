"""`tenderwright start`: write a new package that fits a ship, with `todo` for what is not known."""

from __future__ import annotations

import re
import shlex
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.exits import CLEAN

if TYPE_CHECKING:
    from tenderwright.starter.fitted import Ship

_ANSWERS = ("name", "material", "fastening", "shafts", "units", "currency", "place", "papers")


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    from tenderwright.starter.fitted import MATERIALS, PAPERS

    parser.add_argument("folder", type=Path, metavar="DIR", help="a new or empty folder")
    parser.add_argument("--example", action="store_true", help="the small package of an invented ship, to learn from")
    parser.add_argument("--name", help="the ship's name")
    parser.add_argument("--material", choices=tuple(MATERIALS), help="what her shell is of")
    parser.add_argument("--fastening", help="how plates are joined or planks fastened, such as riveted or welded")
    parser.add_argument("--shafts", type=int, choices=range(4), help="how many propeller shafts she has; 0 for none")
    parser.add_argument("--units", choices=("metric", "us", "both"), help="how quantities are shown")
    parser.add_argument("--currency", help="by its three letters, such as EUR or USD")
    parser.add_argument("--place", help="where she lies")
    listed = "; ".join(f"{name}: {what}" for name, what in PAPERS.items())
    parser.add_argument("--papers", help=f"which papers there are of her, by comma. {listed}")


def run(arguments: Namespace) -> int:
    """Write the package, and beside it the workflow that checks it on every push."""
    from tenderwright.commands.folder import WrongUse
    from tenderwright.starter.fitted import fitted_files
    from tenderwright.starter.write import write_fitted, write_starter

    folder: Path = arguments.folder
    answered = any(getattr(arguments, answer) is not None for answer in _ANSWERS)
    if arguments.example and answered:
        raise WrongUse("--example is the package of a ship of its own: give either that or answers about yours")
    ship = None
    if not arguments.example and (answered or sys.stdin.isatty()):
        try:
            ship = _ship(arguments) if answered else _asked()
        except EOFError as error:
            raise WrongUse("the answers ended before the last question, so nothing was written") from error
    try:
        written = write_starter(folder) if ship is None else write_fitted(folder, fitted_files(ship))
    except OSError as error:
        raise WrongUse(str(error)) from error
    print(f"{len(written)} files written in {folder}")
    if ship is None:
        print("  they are those of an invented ship, to learn from; for your own give `--name`, `--papers` and so on")
    _add_workflow(folder)
    print("owner/ is confidential and is kept in the same repository as the rest: let that be private,")
    print(f"  or give owner/ a repository of its own, as {folder / 'owner' / 'README.md'} shows")
    print(f"next: tenderwright check {shlex.quote(str(folder))}")
    return CLEAN


def _ship(arguments: Namespace) -> Ship:
    """Make the ship of the answers given; raises WrongUse where one cannot be."""
    from tenderwright.starter.fitted import FASTENINGS, Ship

    material = arguments.material or "steel"
    units = arguments.units or "metric"
    return Ship(
        name=arguments.name or "",
        material=material,
        fastening=_one_of(arguments.fastening or FASTENINGS[material][0], FASTENINGS[material], "fastening"),
        shafts=1 if arguments.shafts is None else arguments.shafts,
        units=units,
        currency=_currency(arguments.currency or ("USD" if units == "us" else "EUR")),
        place=arguments.place or "",
        papers=_papers(arguments.papers or ""),
    )


def _one_of(answer: str, choices: Sequence[str], what: str) -> str:
    from tenderwright.commands.folder import WrongUse

    if answer not in choices:
        raise WrongUse(f"`{answer}` is not a {what}: it is one of {', '.join(choices)}")
    return answer


def _currency(answer: str) -> str:
    from tenderwright.commands.folder import WrongUse

    if not re.fullmatch("[A-Z]{3}", answer.upper()):
        raise WrongUse(f"`{answer}` is not a currency: write its three letters, as in USD")
    return answer.upper()


def _papers(answer: str) -> frozenset[str]:
    """Read which papers there are; raises WrongUse where one is not known."""
    from tenderwright.starter.fitted import PAPERS

    named = [name.strip() for name in answer.split(",") if name.strip()]
    return frozenset(_one_of(name, tuple(PAPERS), "paper") for name in named)


def _asked() -> Ship:
    """Ask for the answers on the terminal, each with its default."""
    from tenderwright.starter.fitted import FASTENINGS, MATERIALS, PAPERS, Ship

    print("A few questions about the ship; Enter takes what stands in brackets, and all can be changed later.")
    name = input("Her name: ").strip()
    material = _choose("Her shell is of", tuple(MATERIALS))
    fastening = _choose("It is fastened by" if material == "wood" else "Its plates are", FASTENINGS[material])
    shafts = int(_choose("How many propeller shafts has she", ("1", "0", "2", "3")))
    units = _choose("Units of her papers", ("metric", "us", "both"))
    currency = _choose("Currency of the prices", ("USD" if units == "us" else "EUR",), any_other=True)
    place = input("Where she lies: ").strip()
    print("Which of her papers are there?")
    papers = frozenset(paper for paper, what in PAPERS.items() if _choose(f"  {what}", ("no", "yes")) == "yes")
    return Ship(name, material, fastening, shafts, units, _currency(currency), place, papers)


def _choose(question: str, choices: Sequence[str], *, any_other: bool = False) -> str:
    """Ask until one of the choices is given, or as much of it as tells it apart; the first stands for no answer."""
    more = f" ({', '.join(choices)})" if len(choices) > 1 else ""
    while True:
        answer = input(f"{question}{more} [{choices[0]}]: ").strip() or choices[0]
        if any_other or answer in choices:
            return answer
        begun = [choice for choice in choices if choice.startswith(answer.lower())]
        if len(begun) == 1:
            return begun[0]
        print(f"  it is one of {', '.join(choices)}")


def _add_workflow(folder: Path) -> None:
    from tenderwright.starter.source import pinned_source
    from tenderwright.starter.workflow import add_workflow, names_for, top_for, workflow_text

    top = top_for(folder)
    package = folder.resolve().relative_to(top).as_posix()
    source = pinned_source()
    try:
        name = add_workflow(top, package, workflow_text(package, source))
    except OSError as error:
        print(f"the package is whole, but its workflow could not be written: {error}", file=sys.stderr)
        return
    if not name:
        print(f"{names_for(package)[-1]} is there already and was left as it is", file=sys.stderr)
        return
    print(f"{top / name} checks the package on every push")
    if not source:
        print("  fill in its line TENDERWRIGHT: this Tenderwright does not know from where others can fetch it")
