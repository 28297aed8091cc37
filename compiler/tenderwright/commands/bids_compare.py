"""`tenderwright bids compare`: compare the returned bids by the rule that the tender published."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.dock_papers import stopping, tell_dock_mistakes
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import need, open_in_bids, stopped_by
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.model.package import sound
from tenderwright.notices import Notice, sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read, stamp_of, timestamp
from tenderwright.quantities.customs import telling_in

if TYPE_CHECKING:
    from tenderwright.documents.desk import Desk
    from tenderwright.pricing.bids.compare import BidComparison
    from tenderwright.writing.edition_files import Written


FOLDER = "bids"


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package that was tendered, with owner/bids/")
    add_out(parser, "bids/, which is confidential,")


def run(arguments: Namespace) -> int:
    """Compare the bids of a package."""
    need_typesetter()
    root = package_folder(arguments.folder)
    judge_out(root, arguments.out)
    judge_place(arguments.out, FOLDER)
    files = read(root)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    found = [*compiled.notices, *owner.notices]
    errors = stopping(found) or mistakes_in(compiled, owner)
    if errors:
        sys.stderr.write(as_text(sort_notices(errors), files.texts))
        print(f"the package has {summary(errors)}; nothing was written", file=sys.stderr)
        return MISTAKES
    need(compiled)
    if stopped_by(open_in_bids(compiled, owner), files):
        print("what bids are made of is still `todo`; nothing was written", file=sys.stderr)
        return MISTAKES
    tell_dock_mistakes(found, files)
    if not owner.papers.bids:
        raise WrongUse("there are no bids in owner/bids/; read them with `tenderwright bids read`")
    with progress("calculating and comparing"):
        desk, comparison, edition_hash = compared(compiled, owner)
    warnings = doubts_of(comparison)
    sys.stderr.write(as_text(warnings, files.texts))
    made = written(desk, comparison, edition_hash, compiled)
    with telling_in(desk.units, american=desk.package.american):
        return _write(arguments.out, made, comparison, warnings)


def mistakes_in(compiled: Compiled, owner: OwnersSide) -> list[Notice]:
    """Give what keeps the bids of a sound package from being compared."""
    from tenderwright.pricing.bids.told import mistakes

    return mistakes(owner.papers, sound(compiled.package.tender))


def doubts_of(comparison: BidComparison) -> list[Notice]:
    """Give what the owner has to settle with the bidders."""
    from tenderwright.pricing.bids.told import doubts

    return doubts(comparison)


def compared(compiled: Compiled, owner: OwnersSide) -> tuple[Desk, BidComparison, str]:
    """Compare the bids of a sound package; gives also the desk and the hash of its price form."""
    from tenderwright.documents.desk import Desk
    from tenderwright.documents.form import price_form
    from tenderwright.pricing.bids.compare import compare

    package, calculated = compiled.package, compiled.calculated
    desk = Desk(package, compiled.links, calculated)
    edition_hash = price_form(desk, "").edition_hash
    return desk, compare(owner.papers, package, calculated, owner.estimate, edition_hash), edition_hash


def written(desk: Desk, comparison: BidComparison, edition_hash: str, compiled: Compiled) -> Written:
    """Compose and typeset the comparison; nothing is on disk yet."""
    from tenderwright.documents.bid_report import bid_report
    from tenderwright.documents.editions import stamp
    from tenderwright.writing.bid_files import bid_files
    from tenderwright.writing.pdf import Typesetter

    state = stamp_of(compiled)
    with progress("composing and typesetting the comparison"):
        report = bid_report(desk, comparison, stamp(state))
        return bid_files(report, edition_hash, Typesetter(kept_parts()), timestamp(report, state))


def _write(out: Path, made: Written, comparison: BidComparison, warnings: list[Notice]) -> int:
    from tenderwright.pricing.money import in_currency
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import write_outputs

    try:
        folder = write_outputs(out, FOLDER, made.files)
    except (WritingError, OSError) as error:
        raise WrongUse(f"the comparison cannot be written: {error}") from error
    for bid in comparison.bids:
        fit = comparison.fits[bid.name].state
        rank = f"{comparison.ranks[bid.name]}. " if comparison.whole else ""
        so_far = "" if comparison.whole else " as far as is known"
        print(f"{rank}{bid.label}: {in_currency(comparison.currency, bid.total)}{so_far}, dock {fit}")
    if not comparison.whole:
        print("the comparison is not whole, and no bid is ranked; it needs")
        for label, words in comparison.wanted:
            print(f"  {label}: {words}")
    told = f"; {summary(warnings)} to settle with the bidders" if warnings else ""
    print(f"{folder}: {made.pages} pages, {len(made.files)} files{told}")
    if made.uncovered:
        print(f"  characters that the fonts do not have: {made.uncovered}", file=sys.stderr)
    return CLEAN
