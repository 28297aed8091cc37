"""The days that the owner's papers tell of, each with its place."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from msgspec.structs import replace

from tenderwright.checks.coherence.tender.order import Dated
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.grant import Grant
from tenderwright.model.in_dock import InDock
from tenderwright.model.in_dock_sense import answer_moment

STEPS = ("arrived", "docked", "dry", "undocked", "departed")


def owners_days_of(context: OwnerContext) -> Iterator[Dated]:
    """Give all days of the owner's papers."""
    yield from _money(context)
    yield from _bids(context)
    yield from _approvals(context)
    for path, made in context.papers.in_dock.items():
        yield from _in_dock(context, path, made)


def _money(context: OwnerContext) -> Iterator[Dated]:
    papers = context.papers
    if papers.rates is not None and papers.rates.base_month[5:] in _MONTHS:
        place = context.at("owner/rates.yaml", "base_month")
        yield Dated(
            "rates.month", "the month of the prices", date.fromisoformat(f"{papers.rates.base_month}-01"), place
        )
    decided: dict[str, Dated] = {}
    for index, source in enumerate(papers.funding.sources if papers.funding is not None else ()):
        path, of = ("owner/funding.yaml", "sources", index), source.source
        if source.decided is not None:
            what = f"the decision of `{of}`"
            decided[of] = Dated("funding.decided", what, source.decided, context.at(*path, "decided"), of)
            yield decided[of]
        if source.spend_by is not None:
            what = f"the last day to spend `{of}`"
            yield Dated("funding.last day to spend", what, source.spend_by, context.at(*path, "spend_by"), of)
    spent = {one.source: one.spend_by for one in papers.funding.sources} if papers.funding is not None else {}
    for file, grant in papers.grants.items():
        yield from _phases(context, file, grant, spent.get(grant.source.name) if grant.source is not None else None)
        if grant.dated is not None:
            place = context.at(file, "dated")
            yield Dated("grant.dated", "the application", grant.dated, place, file)
            asked = grant.source.name if grant.source is not None else ""
            if asked in decided:
                yield replace(decided[asked], kind="grant.decided", of=file)


def _phases(context: OwnerContext, file: str, grant: Grant, spent: date | None) -> Iterator[Dated]:
    for index, phase in enumerate(grant.phases):
        of = f"{file} {phase.phase}"
        for key, day in (("begins", phase.begins), ("ends", phase.ends)):
            if day is not None:
                what = f"the day on which phase `{phase.phase}` {key}"
                yield Dated(f"phase.{key}", what, day, context.at(file, "phases", index, key), of)
        if spent is not None:
            what = "the last day to spend the money that is asked for"
            yield Dated("phase.last day to spend", what, spent, context.at(file, "phases", index), of)


_MONTHS = tuple(f"{month:02}" for month in range(1, 13))


def _bids(context: OwnerContext) -> Iterator[Dated]:
    papers, tender = context.papers, context.package.tender
    for path, bid in papers.bids.items():
        of = path.rsplit("/", 1)[-1].removesuffix(".yaml")
        yield Dated("bid.received", f"the bid `{of}`", bid.received, context.at(path, "received"), of)
        issued = {one.number: one.date for one in tender.addenda} if tender is not None else {}
        for index, number in enumerate(bid.addenda):
            if number in issued:
                place = context.at(path, "addenda", index)
                yield Dated("bid.addendum", f"addendum {number}", issued[number], place, of)
        if bid.valid_until is not None:
            what = f"the last day of the bid `{of}`"
            yield Dated("bid.last day of validity", what, bid.valid_until, context.at(path, "valid_until"), of)
    corrections = papers.evaluation.corrections if papers.evaluation is not None else ()
    for index, correction in enumerate(corrections):
        place = context.at("owner/evaluation.yaml", "corrections", index, "confirmed")
        what = f"the correction of line {correction.line}"
        yield Dated("bid.correction", what, correction.confirmed, place, correction.bid)
    if papers.award is not None:
        place = context.at("owner/award.yaml", "awarded")
        yield Dated("award.day", "the award", papers.award.awarded, place)
        yield Dated("bid.award", "the award", papers.award.awarded, place, papers.award.bid.name)


def _approvals(context: OwnerContext) -> Iterator[Dated]:
    kept = context.papers.approvals
    for index, one in enumerate(kept.approvals if kept is not None else ()):
        path, of = ("owner/approvals.yaml", "approvals", index), one.approval
        days = (
            ("asked", "the day of asking", one.asked),
            ("refused", "the refusal", one.refused),
            ("granted", "the day of giving", one.granted),
            ("expires", "the last day", one.expires),
        )
        for key, what, day in days:
            if day is not None:
                yield Dated(f"approval.{key}", f"{what} of `{of}`", day, context.at(*path, key), of)


def _in_dock(context: OwnerContext, path: str, made: InDock) -> Iterator[Dated]:
    for step in STEPS:
        day = getattr(made.days, step)
        if day is not None:
            yield Dated(f"dock.{step}", f"the day {step}", day, context.at(path, "days", step))
    end = context.at(path, "until")
    for key in _PAPERS:
        for index, one in enumerate(getattr(made, key)):
            of = f"{path} {key} {index}"
            for kind, what, field in _PAPERS[key]:
                day = getattr(one, field)
                if day is not None:
                    yield Dated(f"paper.{kind}", what, day, context.at(path, key, index, field), of)
                    if kind == "made":
                        yield Dated("dock.paper", what, day, context.at(path, key, index, field))
                    if kind == "inspected":
                        yield Dated("award.inspected", what, day, context.at(path, key, index, field))
            moment = answer_moment(one) if key == "conditions" else None
            if moment is not None:
                place = context.at(path, key, index, "answer_by")
                yield Dated("paper.answer due", "the last day for the answer", moment.date(), place, of)
            yield Dated("paper.end of file", "the last day that the file covers", made.until, end, of)
    yield Dated("dock.paper", "the last day that the file covers", made.until, end)


_LEFT_OUT = (("made", "the decision", "day"),)
_PAPERS = {
    "conditions": (("made", "the condition found", "day"), ("decided", "the decision", "decided")),
    "changes": (("made", "the change", "day"), ("signed", "the signature", "signed")),
    "measured": (("made", "the measuring", "day"),),
    "deleted": _LEFT_OUT,
    "deferred": _LEFT_OUT,
    "restored": _LEFT_OUT,
    "inspections": (("inspected", "the inspection", "day"),),
    "openings": (
        ("made", "the opening", "opened"),
        ("made", "the closing", "closed"),
        ("made", "the test", "tested"),
    ),
}
