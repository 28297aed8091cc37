"""`tenderwright statement`: a page for trustees on how the docking stands on a day, written whole or not at all."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from datetime import date
from pathlib import Path

from tenderwright.commands.both_sides import both_sides, contract_open
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import need
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.notices import sort_notices
from tenderwright.notices.render import as_text
from tenderwright.pipeline import Compiled, OwnersSide, read, stamp_of, timestamp
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.reading.package import Files, papers_hash


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package")
    parser.add_argument(
        "--on",
        type=_day,
        default=None,
        metavar="DATE",
        help="the day of the statement, year-month-day (default: the last that the papers from the dock cover)",
    )
    add_out(parser, "statement-DATE/")


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ArgumentTypeError(f"`{text}` is not a day written year-month-day") from None


def run(arguments: Namespace) -> int:
    """Write a statement."""
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    if arguments.on is not None:
        judge_place(arguments.out, _name(arguments.on))
    files = read(root)
    sides = both_sides(files)
    if sides is None:
        return MISTAKES
    compiled, owner = sides
    need(compiled, "programme")
    if contract_open(compiled, owner, files):
        return MISTAKES
    ledger = ledger_of(owner)
    on = day_of(ledger, arguments.on)
    judge_place(arguments.out, _name(on))
    return _write(compiled, owner, ledger, files, on, arguments.out)


def _name(on: date) -> str:
    return f"statement-{on}"


def ledger_of(owner: OwnersSide) -> Ledger:
    """Give what the papers make of the contract; raises WrongUse where there is none."""
    if owner.ledger is not None:
        return owner.ledger
    if owner.papers.award is not None:
        raise WrongUse("there is no contract to compare the docking with: it is closed, or its bid is missing")
    raise WrongUse("there is no owner/award.yaml with its bid, so there is no contract to compare the docking with")


def day_of(ledger: Ledger, asked: date | None) -> date:
    """Give the day of the statement; raises WrongUse where nothing can be told of it."""
    on = asked or ledger.last
    if on is None:
        raise WrongUse("there is no file under owner/in-dock/; write one, or name the day with --on")
    awarded = ledger.contract.award.awarded
    if on < awarded:
        raise WrongUse(f"{on} is before the award of {awarded}")
    return on


def _write(compiled: Compiled, owner: OwnersSide, ledger: Ledger, files: Files, on: date, out: Path) -> int:
    from tenderwright.documents.editions import stamp
    from tenderwright.documents.statement import statement
    from tenderwright.documents.statement_desk import StatementDesk
    from tenderwright.planning.in_dock.standing import standing
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import write_outputs
    from tenderwright.writing.pdf import Typesetter
    from tenderwright.writing.statement_files import statement_files

    stood = standing(ledger, on, owner.papers, compiled.package, owner.schedule)
    package = compiled.package
    papers = papers_hash(files)
    desk = StatementDesk(
        package, compiled.links, compiled.calculated, standing=stood, papers=owner.papers, papers_hash=papers
    )
    state = stamp_of(compiled)
    try:
        with progress("composing and typesetting the statement"):
            edition = statement(desk, stamp(state))
            written = statement_files(edition, Typesetter(kept_parts()), timestamp(edition, state))
        folder = write_outputs(out, _name(on), written.files)
    except (WritingError, OSError) as error:
        raise WrongUse(f"the statement cannot be written: {error}") from error
    print(f"{folder}: {written.pages} {'page' if written.pages == 1 else 'pages'}, {len(written.files)} files")
    warnings = [notice for notice in owner.notices if notice.place.path.startswith(("owner/in-dock/", "owner/award"))]
    sys.stderr.write(as_text(sort_notices(warnings), files.texts))
    if written.uncovered:
        print(f"  characters that the fonts do not have: {written.uncovered}", file=sys.stderr)
    return CLEAN
