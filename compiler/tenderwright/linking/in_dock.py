"""Resolve what the award and the papers from the dock name: the bid, items, lines, reports, and who signs."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from tenderwright.linking.evaluation import bid_name, bid_path
from tenderwright.linking.inspections import link_inspections
from tenderwright.linking.work import dead_work
from tenderwright.model.award import Award
from tenderwright.model.build import Name
from tenderwright.model.in_dock import ChangeOrder, ConditionReport, InDock
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Note, Notice, Place
from tenderwright.notices.suggest import did_you_mean, one_of


def link_in_dock(papers: OwnerPapers, package: Package) -> list[Notice]:
    """Report every name in the award and in the papers from the dock that stands for nothing, or for two things."""
    award, told = papers.award, list(papers.in_dock.values())
    found = [*_lines(told, award, package), *_reports(told, papers), *_signers(told, award), *_twice(papers)]
    found += link_inspections(told, package)
    if award is not None:
        known = [bid_name(path) for path in papers.bids]
        if award.bid.name not in known and bid_path(award.bid.name) not in papers.broken.files:
            hints = did_you_mean(award.bid.name, known) or ("name it by its file in owner/bids/, without `.yaml`",)
            message, cause = f"there is no bid `{award.bid}`", f"bid {award.bid}"
            found.append(Notice("dead-reference", award.bid.at, message, hints=hints, cause=cause))
    elif told and "owner/award.yaml" not in papers.broken.files:
        first = min(papers.in_dock.values(), key=lambda one: one.here)
        message = "the papers from the dock are compared with the award, and there is no owner/award.yaml"
        hint = "write owner/award.yaml with the bid, its day and its amount"
        found.append(Notice("dead-reference", first.here, message, hints=(hint,)))
    return found


def _lines(told: list[InDock], award: Award | None, package: Package) -> Iterator[Notice]:
    """Report items and lines that the tender does not have, or has no more."""
    live = [item for item in package.items if not item.withdrawn]
    lines = {f"{item.number}.{line.line}" for item in live for line in item.lines}
    both = lines | {item.number for item in live}
    named: list[tuple[Name, Collection[str]]] = []
    if award is not None:
        named += [(one, both) for one in award.dropped] + [(one, lines) for one in award.pool]
        named += [(award.days_line, lines)] if award.days_line is not None else []
    for one in told:
        named += [(report.line, lines) for report in one.conditions if report.line is not None]
        named += [(change.line, lines) for change in one.changes] + [(each.line, lines) for each in one.measured]
        named += [(out.work, both) for out in (*one.deleted, *one.deferred)]
        named += [(back.work, both) for back in one.restored]
    for name, among in named:
        dead = dead_work(name.name, name.at, among, package)
        if dead is not None:
            yield dead


def _reports(told: list[InDock], papers: OwnerPapers) -> Iterator[Notice]:
    """Report changes that answer a report which nobody wrote."""
    known = [report.report.name for one in told for report in one.conditions]
    some_broken = papers.broken.among("owner/in-dock/")
    for change in (change for one in told for change in one.changes):
        name = change.condition
        if name is not None and name.name not in known and not some_broken:
            hints = did_you_mean(name.name, known)
            message = f"there is no condition-found report {name}"
            yield Notice("dead-reference", name.at, message, hints=hints, cause=message)


def _signers(told: list[InDock], award: Award | None) -> Iterator[Notice]:
    """Report changes signed by somebody whom the award does not name."""
    if award is None or not award.authority:
        return
    known = [one.who for one in award.authority]
    for change in (change for one in told for change in one.changes):
        if change.by is not None and change.signed is not None and award.may_sign(change.by.name) is None:
            hints = one_of(change.by.name, known)
            message = f"the award does not name `{change.by}` among those who may sign"
            yield Notice("dead-reference", change.by.at, message, hints=hints, cause=message)


def _twice(papers: OwnerPapers) -> Iterator[Notice]:
    """Report what is told twice: a report or a change, and of one day a measure, a progress or work left out."""
    first: dict[tuple[str, str], Place] = {}
    for _, one in sorted(papers.in_dock.items()):
        for what, day, place in _told(one):
            if (what, day) in first:
                on = f" on {day}" if day else ""
                notes = (Note("it is first listed here", first[what, day]),)
                yield Notice("duplicate-name", place, f"{what} is there twice{on} in the papers from the dock", notes)
            first.setdefault((what, day), place)


def _told(one: InDock) -> Iterator[tuple[str, str, Place]]:
    numbered: tuple[ConditionReport | ChangeOrder, ...] = (*one.conditions, *one.changes)
    for each in numbered:
        if isinstance(each, ConditionReport):
            yield f"report {each.report}", "", each.report.at
        else:
            yield f"change {each.change}", "", each.change.at
    for measured in one.measured:
        yield f"line {measured.line} as measured", str(measured.day or one.until), measured.line.at
    for progress in one.progress:
        yield f"progress of item {progress.item}", str(one.until), progress.item.at
    for out in (*one.deleted, *one.deferred):
        yield f"{out.work} as left out", str(out.day), out.work.at
    for back in one.restored:
        yield f"{back.work} as restored", str(back.day), back.work.at
