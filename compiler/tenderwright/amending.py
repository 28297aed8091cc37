"""Make an addendum from two compiled packages, beside the pipeline: compose both, compare them, tell the difference."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from tenderwright.comparing.compare import Comparison, compare
from tenderwright.comparing.side import Side
from tenderwright.comparing.statement import statement
from tenderwright.model.item import Item
from tenderwright.model.tender import Addendum
from tenderwright.pipeline import Compiled, OwnersSide, compose_yard, timestamp
from tenderwright.reading.git_state import GitState

if TYPE_CHECKING:
    from tenderwright.documents.addendum import Amendment
    from tenderwright.documents.edition import Edition
    from tenderwright.documents.edition_side import Issue
    from tenderwright.writing.edition_files import Written
    from tenderwright.writing.pdf import Typesetter


@dataclass(frozen=True)
class Stated:
    """A sound package with its state in git."""

    compiled: Compiled
    state: GitState

    @property
    def addenda(self) -> tuple[Addendum, ...]:
        """Give the addenda that it lists, by number."""
        tender = self.compiled.package.tender
        return tuple(sorted(tender.addenda, key=lambda one: one.number)) if tender else ()

    @property
    def tender(self) -> str:
        """Give the number of its tender."""
        return self.compiled.package.tender.tender.number if self.compiled.package.tender else ""


@dataclass(frozen=True)
class Amended:
    """An addendum composed, with the comparison it tells and its statement as plain data."""

    amendment: Amendment
    comparison: Comparison
    entry: Addendum
    statement: dict[str, Any]


def new_addenda(before: Stated, after: Stated) -> list[Addendum]:
    """Give the addenda that only the later package lists."""
    known = {one.number for one in before.addenda}
    return [one for one in after.addenda if one.number not in known]


def amend(before: Stated, after: Stated, entry: Addendum) -> Amended:
    """Compose the addendum that makes one package into the other; raises RuntimeError where it is not proved whole."""
    from tenderwright.documents.addendum import amendment

    issues = _issue(before), _issue(after)
    comparison = compare(_side(before), _side(after))
    made = amendment(*issues, comparison, entry)
    return Amended(made, comparison, entry, _statement(before, after, entry, issues, comparison))


def revisions_due(before: Stated, after: Stated) -> tuple[Item, ...]:
    """Give the items that changed between two sound packages and bear the revision that they had."""
    from tenderwright.documents.revised import not_raised

    one, other = _issue(before), _issue(after)
    return not_raised(one.desk, other.desk, one.edition, other.edition)


def write_addendum(amended: Amended, typesetter: Typesetter, state: GitState) -> Written:
    """Write every file of an addendum as bytes; nothing is on disk yet."""
    from tenderwright.writing.addendum_files import addendum_files

    edition = amended.amendment.edition
    when = timestamp(edition, state)
    amends = str(amended.statement["from"]["commit"])
    return addendum_files(amended.amendment, amended.statement, amended.entry.number, amends, typesetter, when)


def _side(stated: Stated) -> Side:
    compiled = stated.compiled
    return Side(compiled.files, compiled.package, compiled.links, compiled.record)


def _issue(stated: Stated) -> Issue:
    from tenderwright.documents.desk import Desk
    from tenderwright.documents.edition_side import Issue

    compiled = stated.compiled
    edition, form = compose_yard(compiled, stated.state)
    return Issue(Desk(compiled.package, compiled.links, compiled.calculated), edition, form)


def _statement(
    before: Stated, after: Stated, entry: Addendum, issues: tuple[Issue, Issue], comparison: Comparison
) -> dict[str, Any]:
    sides = {
        name: {"commit": stated.state.commit, "state": stated.state.state, "price_form": issue.form.edition_hash}
        for name, stated, issue in zip(("from", "to"), (before, after), issues, strict=True)
    }
    head = {"tender": after.tender, "addendum": entry.number, "date": entry.date, "summary": entry.summary}
    return {**head, **sides, **statement(comparison)}


@dataclass(frozen=True)
class Owners:
    """What the owner's papers make of two packages."""

    sides: tuple[tuple[OwnersSide, str], ...]
    """Each with why it has no estimate; empty where it has one."""
    each: bool
    """Whether each side has its own papers, not both those of today."""


@dataclass(frozen=True)
class Differing:
    """What changed between two sound packages, composed for yards, and for the owner where there are owner's papers."""

    editions: tuple[Edition, ...]
    comparison: Comparison
    statement: dict[str, Any]


def differ(before: Stated, after: Stated, owners: Owners | None, names: tuple[str, str]) -> Differing:
    """Compose what changed, and what that does to cost and time; raises RuntimeError where it is not proved whole."""
    from tenderwright.documents.diff import diff

    issues = _issue(before), _issue(after)
    comparison = compare(_side(before), _side(after))
    editions = [diff(*issues, comparison, names)]
    if owners is not None:
        from tenderwright.documents.owner.diff import OwnersView, owners_diff

        one, other = (OwnersView(owner.estimate, owner.schedule, why) for owner, why in owners.sides)
        editions.append(owners_diff(issues[1].desk, editions[0].stamp, names, one, other, each=owners.each))
    sides = {
        name: {"commit": stated.state.commit, "state": stated.state.state}
        for name, stated in zip(("from", "to"), (before, after), strict=True)
    }
    return Differing(tuple(editions), comparison, {"tender": after.tender, **sides, **statement(comparison)})


def write_diff(differing: Differing, typesetter: Typesetter, state: GitState) -> tuple[Written, ...]:
    """Write every file of what changed as bytes, the yard's side first; nothing is on disk yet."""
    from tenderwright.writing.diff_files import diff_files

    data = (differing.statement, None)
    return tuple(
        diff_files(edition, typesetter, timestamp(edition, state), told)
        for edition, told in zip(differing.editions, data, strict=False)
    )
