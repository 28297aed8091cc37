"""The pipeline: every stage in order, each on one line. Read this page first."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.steps.kept import Kept, digest
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Record
from tenderwright.checks.context import Context, Unjudged
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.checks.owner.registry import run_owner_checks
from tenderwright.checks.run import run_checks
from tenderwright.linking.link import Links, link, link_owner, link_values
from tenderwright.model.issued_item import issued_items
from tenderwright.model.load import load_owner, load_package
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.owner_papers import owner_papers
from tenderwright.model.package import Package, sound
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.planning.schedule import Schedule, plan
from tenderwright.pricing.adders import adder_mistakes
from tenderwright.pricing.in_dock.ledger import Ledger, ledger
from tenderwright.pricing.percents import percent_mistakes
from tenderwright.pricing.price import Estimate, price
from tenderwright.pricing.quantity import quantity_mistakes
from tenderwright.quantities.customs import telling_in
from tenderwright.reading.git import Refused
from tenderwright.reading.git_state import GitState, git_state
from tenderwright.reading.issued_items import issued_sources
from tenderwright.reading.owner_in_git import goes_along_to
from tenderwright.reading.package import Files, read_package
from tenderwright.reading.source import Source
from tenderwright.shapes.shape import shape
from tenderwright.shapes.todos import held_back

if TYPE_CHECKING:
    from tenderwright.documents.edition import Edition
    from tenderwright.documents.owner.desk import OwnerDesk
    from tenderwright.documents.price_form import PriceForm
    from tenderwright.writing.edition_files import Written
    from tenderwright.writing.pdf import Typesetter


class Compiled(Struct, frozen=True):
    """A package after every stage but composing and writing: the yard's side, which has seen nothing of owner/."""

    files: Files
    package: Package
    links: Links
    calculated: Calculated
    notices: tuple[Notice, ...]
    unjudged: tuple[Unjudged, ...]
    """The trade checks that could not be made, or only in part."""

    @property
    def record(self) -> Record:
        """Give the record of calculation."""
        return self.calculated.record

    @property
    def sound(self) -> bool:
        """Tell whether no mistake was found."""
        return not any(notice.severity == "error" for notice in self.notices)


class OwnersSide(Struct, frozen=True):
    """The owner's papers and what they add."""

    papers: OwnerPapers
    estimate: Estimate | None
    schedule: Schedule | None
    notices: tuple[Notice, ...]
    ledger: Ledger | None = None
    """What the papers from the dock make of the awarded bid; None before an award."""
    sources: Mapping[str, Source] = {}
    """All the files that were read, the yard's side among them."""

    @property
    def sound(self) -> bool:
        """Tell whether no mistake was found under owner/."""
        return not any(notice.severity == "error" for notice in self.notices)

    @property
    def content(self) -> bytes:
        """Give a digest of all the files that were read."""
        return digest(repr([(path, source.text) for path, source in sorted(self.sources.items())]).encode())


def read(root: Path, kept: Mapping[str, Source] | None = None) -> Files:
    """Read all the files of a package, the items that earlier issues of its tender held, and where owner/ goes."""
    files = read_package(root, kept=kept)
    try:
        remote = goes_along_to(root) if files.owner_only().sources else ""
        return replace(files, issued=issued_sources(root, files.sources), goes_along_to=remote)
    except Refused as refused:
        return replace(files, notices=(*files.notices, _refused(refused)))


def _refused(refused: Refused) -> Notice:
    hints = (refused.cure,) if refused.cure else ()
    return Notice("repository-refused", Place("package.yaml"), f"{refused.why}: no earlier issue is known", hints=hints)


def compile_package(files: Files, kept: Kept | None = None) -> Compiled:
    """Take the files through every stage that the yard edition needs, without anything under owner/."""
    files = files.without_owner()
    mistakes, shape_notices = shape(files)
    package, model_notices = load_package(files, mistakes)
    links, link_notices = link(package)
    with telling_in(package.units, american=package.american):
        calculated = calculate(package, kept)
        record = calculated.record
        value_notices = link_values(links, record.known, record.missing)
        quantity_notices = [*quantity_mistakes(package, record), *percent_mistakes(package)]
        quantity_notices += adder_mistakes(package, record)
        checked = Context(package, links, calculated, issued_items(files), files.sources)
        check_notices, unjudged = run_checks(checked)
    found = [*files.notices, *shape_notices, *model_notices]
    later = links.broken.hold_back([*record.notices, *value_notices, *quantity_notices, *check_notices])
    found += held_back([*link_notices, *later], package.todos, files.sources)
    return Compiled(files, package, links, calculated, tuple(sort_notices(found)), unjudged)


def compile_owner(files: Files, compiled: Compiled) -> OwnersSide:
    """Take the owner's papers through the same stages, on top of what the yard's side gave."""
    files = files.owner_only()
    mistakes, shape_notices = shape(files)
    papers, model_notices = load_owner(files, mistakes, compiled.links.broken.told(compiled.notices))
    links, link_notices = link_owner(papers, compiled.links, compiled.package)
    value_notices = link_values(links, compiled.record.known, compiled.record.missing)
    with telling_in(compiled.package.units, american=compiled.package.american):
        estimate, price_notices = price(papers, compiled.package, compiled.record)
        schedule, plan_notices = plan(papers, compiled.package, compiled.record)
        dock, dock_notices = ledger(papers, compiled.package, compiled.calculated, estimate, files.sources)
        sources = {**compiled.files.sources, **files.sources}
        checked = OwnerContext(compiled.package, papers, compiled.calculated, estimate, schedule, dock, sources)
        check_notices = run_owner_checks(checked)
    notices = [*files.notices, *shape_notices, *model_notices, *link_notices]
    later = [*value_notices, *price_notices, *plan_notices, *dock_notices, *check_notices]
    later = papers.broken.told(notices).hold_back(later)
    notices += held_back(later, (*compiled.package.todos, *papers.todos), sources)
    notices += owner_papers(files, compiled.package.tender)
    return OwnersSide(papers, estimate, schedule, tuple(sort_notices(notices)), dock, sources)


# Composing and writing are imported where they are used, so that `check` starts fast.


def compose_yard(compiled: Compiled, state: GitState) -> tuple[Edition, PriceForm]:
    """Compose the yard edition of a sound package."""
    from tenderwright.documents.desk import Desk
    from tenderwright.documents.editions import stamp, yard_edition

    desk = Desk(compiled.package, compiled.links, compiled.calculated)
    return yard_edition(desk, stamp(state))


def compose_owner(
    compiled: Compiled, owner: OwnersSide, state: GitState, kept: Kept | None = None, yard: Edition | None = None
) -> tuple[Edition, PriceForm]:
    """Compose the owner's book of a sound package, with the papers beside it; the yard edition may be there already."""
    from tenderwright.documents.editions import stamp
    from tenderwright.documents.owner.book import owner_edition
    from tenderwright.documents.owner.index import Filed
    from tenderwright.reading.filed import checksums

    on_file = Filed(yard or compose_yard(compiled, state)[0], checksums(compiled.files))
    desk, notices = owner_desk(compiled, owner, kept), [*compiled.notices, *owner.notices]
    return owner_edition(desk, stamp(state), notices, compiled.unjudged, owner.papers.todos, on_file)


def compose_priced(compiled: Compiled, owner: OwnersSide, yard: Edition) -> Edition:
    """Compose the specification with the owner's prices at its lines, from the yard edition of a sound package."""
    from tenderwright.documents.owner.priced import priced_edition

    return priced_edition(yard, sound(owner.estimate), sound(compiled.package.tender).currency)


def owner_desk(compiled: Compiled, owner: OwnersSide, kept: Kept | None = None) -> OwnerDesk:
    """Lay out the desk for what only the owner sees, priced; runs the trials and works out the ladders."""
    from tenderwright.documents.owner.desk import OwnerDesk
    from tenderwright.planning.foresight import foresee

    package, estimate = compiled.package, sound(owner.estimate)
    with telling_in(package.units, american=package.american):
        content = owner.content if kept is not None else b""
        foresight = foresee(owner.papers, package, estimate, owner.schedule, kept, content)
    return OwnerDesk(
        package, compiled.links, compiled.calculated, estimate=estimate, foresight=foresight, ledger=owner.ledger
    )


def write(edition: Edition, form: PriceForm, typesetter: Typesetter, state: GitState) -> Written:
    """Write every file of an edition as bytes; nothing is on disk yet."""
    from tenderwright.writing.edition_files import edition_files

    return edition_files(edition, form, typesetter, timestamp(edition, state))


def write_owner(
    book: Edition, form: PriceForm, priced: Edition | None, typesetter: Typesetter, state: GitState
) -> Written:
    """Write every file of the owner's papers as bytes; nothing is on disk yet."""
    from tenderwright.writing.owner_files import owner_files

    return owner_files(book, form, priced, typesetter, timestamp(book, state))


def timestamp(edition: Edition, state: GitState) -> int:
    """Give the time that files are stamped with: that of the commit, or the day of issue."""
    from datetime import UTC, datetime, time

    from tenderwright.documents.edition import UNDATED

    if state.time is not None and state.state == "issued":
        return state.time
    return int(datetime.combine(edition.issued or UNDATED, time(), UTC).timestamp())


def stamp_of(compiled: Compiled) -> GitState:
    """Find the state in git of the package, owner/ apart."""
    state = git_state(compiled.files.root, compiled.files.paths)
    open_ = len(compiled.package.todos)
    if not open_ or state.state != "issued":
        return state
    return replace(state, state="draft", why=f"{open_} value{'s are' if open_ > 1 else ' is'} still to be written")
