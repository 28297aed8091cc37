"""The pipeline: every stage in order, each on one line. Read this page first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.results import Results
from tenderwright.calculations.value import Record
from tenderwright.checks.context import Context
from tenderwright.checks.run import run_checks
from tenderwright.linking.link import Links, link, link_owner, link_values
from tenderwright.model.load import load_owner, load_package
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Notice, sort_notices
from tenderwright.pricing.price import Estimate, price
from tenderwright.reading.package import Files, read_package
from tenderwright.reading.source import Source
from tenderwright.shapes.shape import shape


@dataclass(frozen=True)
class Compiled:
    """A package after every stage but composing and writing: the yard's side, which has seen nothing of owner/."""

    files: Files
    package: Package
    links: Links
    record: Record
    results: Results
    notices: tuple[Notice, ...]

    @property
    def sound(self) -> bool:
        """Tell whether no mistake was found."""
        return not any(notice.severity == "error" for notice in self.notices)


@dataclass(frozen=True)
class OwnersSide:
    """The owner's papers and what they add."""

    papers: OwnerPapers
    estimate: Estimate | None
    notices: tuple[Notice, ...]

    @property
    def sound(self) -> bool:
        """Tell whether no mistake was found under owner/."""
        return not any(notice.severity == "error" for notice in self.notices)


def read(root: Path, kept: Mapping[str, Source] | None = None) -> Files:
    """Read all the files of a package."""
    return read_package(root, kept=kept)


def compile_package(files: Files) -> Compiled:
    """Take the files through every stage that the yard edition needs, without anything under owner/."""
    files = files.without_owner()
    mistakes, shape_notices = shape(files)
    package, model_notices = load_package(files, mistakes)
    links, link_notices = link(package)
    record, results = calculate(package)
    value_notices = link_values(links, record.known)
    check_notices = run_checks(Context(package, links, record))
    notices = [
        *files.notices,
        *shape_notices,
        *model_notices,
        *link_notices,
        *record.notices,
        *value_notices,
        *check_notices,
    ]
    return Compiled(files, package, links, record, results, tuple(sort_notices(notices)))


def compile_owner(files: Files, compiled: Compiled) -> OwnersSide:
    """Take the owner's papers through the same stages, on top of what the yard's side gave."""
    files = files.owner_only()
    mistakes, shape_notices = shape(files)
    papers, model_notices = load_owner(files, mistakes)
    link_notices = link_owner(papers, compiled.links, compiled.package)
    estimate, price_notices = price(papers, compiled.package, compiled.record)
    notices = [*files.notices, *shape_notices, *model_notices, *link_notices, *price_notices]
    return OwnersSide(papers, estimate, tuple(sort_notices(notices)))
