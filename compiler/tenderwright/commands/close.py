"""`tenderwright close`: check the findings of a docking; write its history entry and docking report, all or nothing."""

from __future__ import annotations

import hashlib
import sys
from argparse import ArgumentParser, Namespace
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec.structs import replace

from tenderwright.closing import CompiledFindings, compile_findings
from tenderwright.commands.both_sides import both_sides, contract_open
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.held_up import held_up
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.output_folder import add_out, judge_out, judge_place, take_back_unfinished
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import need
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.model.findings import Findings
from tenderwright.model.package import sound
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read, stamp_of, timestamp
from tenderwright.planning.approval_events import judged_on
from tenderwright.reading.layout import schema_of
from tenderwright.reading.package import Files, read_one
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml

if TYPE_CHECKING:
    from tenderwright.planning.inspection.results import Inspected
    from tenderwright.pricing.final_account import FinalAccount
    from tenderwright.writing.edition_files import Written


FOLDER = "docking-report"


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package that was tendered")
    parser.add_argument("findings", type=Path, metavar="FINDINGS.yaml", help="what the docking found, did and cost")
    parser.add_argument(
        "--draft",
        action="store_true",
        help="write FINDINGS.yaml, a new file, as far as award, papers from the dock, surveys and ship supply it",
    )
    add_out(parser, f"{FOLDER}/")


@dataclass(frozen=True)
class Closing:
    """A package with the findings of its docking, both sound."""

    files: Files
    compiled: Compiled
    owner: OwnersSide
    answers: CompiledFindings
    findings: Findings
    source: Source
    account: FinalAccount | None

    @cached_property
    def inspected(self) -> Inspected | None:
        """Give the inspection plan and the register of openings; None where nothing is recorded of them."""
        from tenderwright.planning.inspection.ordered import inspected_in_dock

        found = inspected_in_dock(self.compiled.package, self.owner.papers, self.owner.ledger)
        return found if found.in_use else None

    @cached_property
    def left_open(self) -> tuple[str, ...]:
        """Name what is still open of them."""
        from tenderwright.planning.inspection.in_words import words_for

        found = self.inspected.still_open if self.inspected is not None else ()
        return tuple(words_for(self.compiled.package, one) for one in found)


def run(arguments: Namespace) -> int:
    """Close a docking."""
    if not arguments.draft:
        need_typesetter()
    root = package_folder(arguments.folder)
    if arguments.draft:
        from tenderwright.commands.close_draft import write_draft

        return write_draft(root, arguments.findings)
    judge_out(root, arguments.out)
    judge_place(arguments.out, FOLDER)
    take_back_unfinished(root)
    files = _before(read(root), arguments.findings)
    sides = both_sides(files)
    if sides is None:
        return MISTAKES
    compiled, owner = sides
    need(compiled, "particulars", "frames")
    if contract_open(compiled, owner, files):
        return MISTAKES
    answers = compile_findings(arguments.findings, compiled, owner)
    sys.stderr.write(as_text(answers.notices, _texts(answers)))
    if answers.findings is None or answers.source is None or not answers.sound:
        print(f"{summary(answers.notices)}; nothing was written", file=sys.stderr)
        return MISTAKES
    afloat = answers.findings.dates.undocked
    last = max(afloat, judged_on(owner.papers) or afloat)
    if held_up("close", last, "nothing was written", compiled, owner):
        return MISTAKES
    account = _account(answers.findings, compiled, owner)
    return _close(Closing(files, compiled, owner, answers, answers.findings, answers.source, account), arguments.out)


def _texts(answers: CompiledFindings) -> dict[str, str]:
    return {source.path: source.text for source in (answers.source, answers.survey) if source is not None}


def _account(findings: Findings, compiled: Compiled, owner: OwnersSide) -> FinalAccount | None:
    from tenderwright.pricing.final_account import final_account

    bid = owner.papers.bids.get(f"owner/bids/{findings.bid}.yaml") if findings.bid else None
    return final_account(findings, compiled.package, compiled.record, owner.estimate, bid)


def _close(closing: Closing, out: Path) -> int:
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.new_files import in_the_way, new_files
    from tenderwright.writing.outputs import write_outputs

    root = closing.files.root
    sources = source_files(closing)
    docking = closing.findings.docking
    there = in_the_way(root, sources) or [
        earlier.here.path for earlier in closing.compiled.package.history if earlier.docking == docking
    ]
    done = all((root / path).is_file() and (root / path).read_bytes() == text for path, text in sources.items())
    if there and not done:
        raise WrongUse(f"{there[0]} is there already, so {docking} is closed; nothing was written")
    if done and (out / FOLDER).exists():
        print(f"{docking} is closed already by these very findings; {out / FOLDER} is its report")
        return CLEAN
    mistakes = _mistakes_after(closing, sources)
    if mistakes:
        sys.stderr.write(as_text(mistakes, _texts(closing.answers)))
        print(f"{summary(mistakes)}; nothing was written", file=sys.stderr)
        return MISTAKES
    try:
        with progress("composing and typesetting the docking report"):
            written = _report(closing)
        with new_files(root, {} if done else sources):
            folder = write_outputs(out, FOLDER, written.files)
    except (WritingError, OSError) as error:
        raise WrongUse(f"the docking cannot be closed: {error}") from error
    for path in sources:
        print(f"{root / path}: {'there already, the same' if done else 'written'}")
    print(f"{folder}: {written.pages} pages, {len(written.files)} files")
    if written.uncovered:
        print(f"  characters that the fonts do not have: {written.uncovered}", file=sys.stderr)
    if open_ := len(closing.left_open):
        rows = (
            "1 point or row of the inspection plan" if open_ == 1 else f"{open_} points and rows of the inspection plan"
        )
        print(f"closed with {rows} still open; the report and the history entry name them", file=sys.stderr)
    if closing.account is not None and not (root / "owner").is_dir():
        words = "what was paid is kept in the confidential report alone, since there is no owner/"
        print(words, file=sys.stderr)
    return CLEAN


def _before(files: Files, findings: Path) -> Files:
    """Give the package without what an earlier close of the same docking wrote: closing twice is closing once."""
    source, _ = read_one(findings)
    docking = source.data.get("docking") if source is not None and isinstance(source.data, dict) else None
    if f"history/{docking}.yaml" not in files.sources:
        return files
    surveys = (f"surveys/{docking}.csv", f"surveys/{docking}.yaml")
    written = (f"history/{docking}.yaml", *surveys, f"owner/closing/{docking}.yaml")
    return replace(
        files,
        sources={path: source for path, source in files.sources.items() if path not in written},
        notices=tuple(notice for notice in files.notices if notice.place.path not in written),
    )


def source_files(closing: Closing) -> dict[str, bytes]:
    """Write the new source files of the package: history entry, readings, and the account for the owner's papers."""
    from tenderwright.documents.history_entry import closing_account, history_entry
    from tenderwright.model.reading_rows import survey_text
    from tenderwright.writing.yaml_file import yaml_text

    findings, data, account = closing.findings, closing.source.data, closing.account
    package = closing.compiled.package
    made: dict[str, str] = {}
    if closing.answers.survey is not None:
        made[f"surveys/{findings.docking}.csv"] = closing.answers.survey.text
        if findings.readings_columns is not None:
            made[f"surveys/{findings.docking}.yaml"] = yaml_text(data["readings_columns"])
    elif findings.readings:
        made[f"surveys/{findings.docking}.csv"] = survey_text(findings.readings)
    if account is not None and (closing.files.root / "owner").is_dir():
        made[f"owner/closing/{findings.docking}.yaml"] = yaml_text(closing_account(findings, data, account, package))
    entry = history_entry(findings, data, package, closing.left_open)
    made[f"history/{findings.docking}.yaml"] = yaml_text(entry)
    return {path: text.encode() for path, text in made.items()}


def _mistakes_after(closing: Closing, sources: dict[str, bytes]) -> list[Notice]:
    """Compile the package as it will be, and give the mistakes in readings, at the line where they were written.

    A mistake in a file that we wrote from sound findings is our own, and raises RuntimeError.
    """
    added = {path: _source(path, content.decode()) for path, content in sources.items()}
    files = Files(closing.files.root, {**closing.files.sources, **added}, closing.files.notices)
    compiled = compile_package(files)
    notices = [*compiled.notices, *compile_owner(files, compiled).notices]
    mine = [notice for notice in notices if notice.place.path in added and notice.severity == "error"]
    moved = [_where_written(notice, closing) for notice in mine if notice.place.path.startswith("surveys/")]
    if len(moved) < len(mine):
        raise RuntimeError("what was composed is not sound:\n" + as_text(mine, files.texts))
    return sort_notices(moved)


def _source(path: str, text: str) -> Source:
    return read_yaml(path, text)[0] if schema_of(path) else Source(path, text, text, {(): (1, 1, 0)})


def _where_written(notice: Notice, closing: Closing) -> Notice:
    if closing.answers.survey is not None:
        return replace(notice, place=replace(notice.place, path=closing.answers.survey.path))
    row = max(0, notice.place.line - 2)
    return replace(notice, place=Place(*_span(closing.source.place(("readings", row)))))


def _span(place: Place) -> tuple[str, int, int, int]:
    return place.path, place.line, place.column, place.end_column


def _report(closing: Closing) -> Written:
    from tenderwright.calculations.ship.bare_places import bare_places
    from tenderwright.calculations.ship.docking_totals import docking_totals
    from tenderwright.calculations.ship.survey_readings import survey_readings, surveys_since
    from tenderwright.documents.closing_desk import ClosedDocking, ReportDesk
    from tenderwright.documents.docking_report import docking_report, not_recorded
    from tenderwright.documents.editions import stamp
    from tenderwright.writing.pdf import Typesetter
    from tenderwright.writing.report_files import report_files

    compiled, findings, package = closing.compiled, closing.findings, closing.compiled.package
    taken = compiled.calculated.found(survey_readings)
    closed = ClosedDocking(
        findings,
        docking_totals(findings, package, closing.answers.readings),
        bare_places(findings.blocks, sound(package.frames), sound(package.particulars).keel.width.si),
        closing.account,
        not_recorded(
            findings,
            package,
            surveys_since(taken, findings.dates.docked),
            inspected=closing.inspected is not None,
        ),
        closing.inspected,
        closing.owner.papers,
    )
    desk = ReportDesk(package, compiled.links, compiled.calculated)
    state = stamp_of(compiled)
    name = closing.source.path.replace("\\", "/").rsplit("/", 1)[-1]
    basis = f"{name}, SHA-256 {hashlib.sha256(closing.source.text.encode()).hexdigest()[:16]}"
    report = docking_report(desk, closed, stamp(state), basis, confidential=False)
    secret = docking_report(desk, closed, stamp(state), basis, confidential=True) if closing.account else None
    return report_files(report, secret, Typesetter(kept_parts()), timestamp(report, state))
