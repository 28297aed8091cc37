"""`tenderwright grant`: write an application for a grant as a paper that stands by itself, whole or not at all."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from tenderwright.commands.dock_papers import stopping, tell_dock_mistakes
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse, package_folder
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.output_folder import add_out, judge_out, judge_place
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import need
from tenderwright.commands.typesetter import need_typesetter
from tenderwright.model.build import Name
from tenderwright.model.grant import Grant
from tenderwright.model.profile import Profile, shipped_profiles
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.notices.render import as_text, summary
from tenderwright.notices.suggest import did_you_mean
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read, stamp_of, timestamp
from tenderwright.planning.grant_outputs import output_mistakes
from tenderwright.quantities.customs import telling_in
from tenderwright.reading.package import Files, papers_hash
from tenderwright.shapes.todos import refused

if TYPE_CHECKING:
    from tenderwright.documents.grant_desk import ApplicationDesk
    from tenderwright.documents.grant_headings import Long, Under
    from tenderwright.planning.application import Application

_RESTS_ON = tuple(
    f"owner/{name}" for name in ("rates", "indices", "funding", "risks", "scope", "programme", "grants/", "profiles/")
)


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the package")
    parser.add_argument(
        "profile",
        metavar="PROFILE",
        help="an application of owner/grants/, by the name of its file, or the profile of a form",
    )
    parser.add_argument(
        "--final",
        action="store_true",
        help="write it without the marks of a draft; refused where a heading is empty or too long, or a value `todo`",
    )
    add_out(parser, "grant-PROFILE/")


def run(arguments: Namespace) -> int:
    """Write an application."""
    need_typesetter()
    root = package_folder(arguments.folder)
    name = f"grant-{arguments.profile}"
    judge_out(root, arguments.out)
    judge_place(arguments.out, name)
    files = read(root)
    compiled = compile_package(files)
    owner = compile_owner(files, compiled)
    found = [*compiled.notices, *owner.notices]
    if errors := stopping(found):
        return _stop(errors, files)
    tell_dock_mistakes(found, files)
    need(compiled)
    grant, profile = chosen_grant(arguments.profile, owner)
    if arguments.final:
        open_ = _still_open(grant, compiled, owner)
        if open_:
            return _stop(open_, files)
    with progress("running the trials"):
        desk = application_desk(grant, profile, compiled, owner)
    with telling_in(desk.units, american=desk.package.american):
        mistakes = [*too_much_asked(desk.applied, files), *output_mistakes(grant, desk.applied.chosen)]
    if mistakes:
        return _stop(mistakes, files)
    return _write(desk, compiled, files, arguments.out, name, final=arguments.final)


def _stop(errors: list[Notice], files: Files) -> int:
    sys.stderr.write(as_text(sort_notices(errors), files.texts))
    print(f"{summary(errors)}; nothing was written", file=sys.stderr)
    return MISTAKES


def chosen_grant(name: str, owner: OwnersSide) -> tuple[Grant, Profile]:
    """Find an application by the name of its file, or make one of all items by the name of a profile."""
    grants = {PurePosixPath(path).stem: grant for path, grant in owner.papers.grants.items()}
    profiles = owner.papers.profiles or shipped_profiles()
    grant = grants.get(name)
    if grant is not None:
        return grant, profiles[grant.profile.name]
    if name not in profiles:
        hint = (
            "; ".join(did_you_mean(name, [*grants, *profiles])) or f"one of {', '.join(sorted({*grants, *profiles}))}"
        )
        raise WrongUse(f"there is neither owner/grants/{name}.yaml nor a profile `{name}`: {hint}")
    place = Place(f"owner/grants/{name}.yaml")
    return Grant(profile=Name(name, place), title=profiles[name].title, here=place), profiles[name]


def application_desk(grant: Grant, profile: Profile, compiled: Compiled, owner: OwnersSide) -> ApplicationDesk:
    """Work an application out and lay out the desk for it; runs the trials. Raises WrongUse where something lacks."""
    from tenderwright.documents.grant_desk import ApplicationDesk
    from tenderwright.planning.application import application
    from tenderwright.planning.match_programme import GaveUp
    from tenderwright.planning.outlook import outlook
    from tenderwright.planning.trials import trials

    estimate, papers, schedule = owner.estimate, owner.papers, owner.schedule
    if estimate is None:
        raise WrongUse("there is no owner/rates.yaml, so there is no estimate to apply with")
    if grant.source is not None and papers.funding is None:
        raise WrongUse(f"there is no owner/funding.yaml with the source `{grant.source}`")
    tendered = schedule.dock_days_tendered if schedule is not None else None
    seen = outlook(trials(papers, estimate, schedule), estimate, tendered)
    try:
        applied = application(grant, profile, estimate, seen.cost, papers.funding)
    except GaveUp as error:
        raise WrongUse(str(error)) from error
    if not applied.chosen.work:
        raise WrongUse("the application has no item of work: shared services enter only by the part that work carries")
    return ApplicationDesk(
        compiled.package,
        compiled.links,
        compiled.calculated,
        estimate=estimate,
        applied=applied,
        outlook=seen.cost,
        papers=papers,
        schedule=schedule,
    )


def too_much_asked(applied: Application, files: Files) -> list[Notice]:
    """Report money asked beyond what may be asked: in the whole, in a phase, or in what is asked for instead."""
    from tenderwright.pricing.money import written

    found = []
    each = [one.application for one in applied.alternatives]
    for place, one in enumerate(each):
        found += unmatched(one, files, ("alternatives", place, "asked"))
    if not each:
        found += unmatched(applied, files, ("asked",))
    for place, row in enumerate(applied.phases):
        if row.phase is not None and row.split.match < 0:
            asked, eligible = row.split.grant, row.split.grant + row.split.match
            message = (
                f"{written(asked)} is asked for phase `{row.phase.phase}`, and {written(eligible)} of it is eligible"
            )
            hint = "ask for less in this phase, or put more of the work into it"
            where = files.sources[applied.grant.here.path].place(("phases", place, "asked"))
            found.append(Notice("grant-unmatched", where, message, hints=(hint,)))
    return found


def unmatched(applied: Application, files: Files, asked: tuple[str | int, ...]) -> list[Notice]:
    """Report money that is asked beyond what costs, match and source allow, at the line where it is asked."""
    if applied.too_much <= 0:
        return []
    from tenderwright.pricing.money import written

    whole = applied.whole
    cash = whole.total - whole.granted - whole.not_eligible - applied.in_kind
    message = f"{written(applied.asked)} is asked, {written(applied.too_much)} more than may be"
    granted = f"; others have granted {written(whole.granted)} already" if applied.taken_off else ""
    facts = [f"eligible costs come to {written(cash)} in money and {written(applied.in_kind)} in kind{granted}"]
    source = applied.source
    if source is not None:
        wanted = f"`{source.source}` gives {written(source.amount)} at most"
        facts.append(f"{wanted} and wants a match of {source.match}" if source.match is not None else wanted)
    most = written(min(applied.ceiling, source.amount) if source is not None else applied.ceiling)
    hint = f"ask for {most} or less, or add eligible items"
    place = files.sources[applied.grant.here.path].place(asked)
    return [Notice("grant-unmatched", place, f"{message}: {'; '.join(facts)}", hints=(hint,))]


def _still_open(grant: Grant, compiled: Compiled, owner: OwnersSide) -> list[Notice]:
    """Report every value that is `todo` and that a final application rests on."""
    if grant.here.path not in owner.papers.grants:
        raise WrongUse(f"a final application has words of yours: write {grant.here.path}")
    other_grants = [path for path in owner.papers.grants if path != grant.here.path]
    own = [todo for todo in owner.papers.todos if todo.place.path.startswith(_RESTS_ON)]
    return refused([*compiled.package.todos, *(todo for todo in own if todo.place.path not in other_grants)])


def not_final(grant: Grant, headings: tuple[Under, ...], long: tuple[Long, ...], files: Files) -> list[Notice]:
    """Report headings that were left empty, and what is longer than the funder takes."""
    source = files.sources[grant.here.path]
    found = []
    for one in headings:
        if one.empty:
            message = f"nothing is written under `{one.heading.title}`"
            hint = f"write it under `headings: {one.heading.heading}:`. {one.heading.asks}"
            written = one.heading.heading in grant.headings
            place = source.key_place(("headings", one.heading.heading)) if written else grant.here
            found.append(Notice("heading-empty", place, message, hints=(hint,)))
    for each in long:
        if each.too_long:
            written = each.heading in grant.headings
            place = source.key_place(("headings", each.heading)) if written else grant.here
            hint = "shorten your own words, or let the funder's profile take less beside them under `takes`"
            message = f"`{each.title}` is too long: {each.told}"
            found.append(Notice("heading-too-long", place, message, hints=(hint,)))
    return found


def _others(grant: Grant, desk: ApplicationDesk) -> dict[str, Application]:
    """Work the other applications of the package out, by the names of their files, that what they share is seen."""
    from tenderwright.planning.application import application

    papers = desk.papers
    profiles = papers.profiles or shipped_profiles()
    return {
        PurePosixPath(path).stem: application(
            one, profiles[one.profile.name], desk.estimate, desk.outlook, papers.funding
        )
        for path, one in papers.grants.items()
        if path != grant.here.path and one.source is not None and grant.source is not None
    }


def _told_twice(desk: ApplicationDesk) -> list[str]:
    """Tell the owner what is counted on twice."""
    from tenderwright.planning.grant_twice import twice
    from tenderwright.pricing.money import written

    told = []
    for one in twice(desk.applied, _others(desk.applied.grant, desk)):
        what = f"asked twice: line {one.what}" if one.asked else f"match counted twice: `{one.what}`"
        there = f"{written(one.elsewhere)} in {' and '.join(one.others)}"
        told.append(f"{what} stands here for {written(one.here)} and {there}; there is {written(one.most)} of it")
    return told


def told_of_match(applied: Application) -> list[str]:
    """Tell the owner whose rules on match are kept, what more could be had, and what is not worked out."""
    from tenderwright.pricing.money import written

    told = []
    for rule in applied.matching.rules:
        counts = f"{written(rule.counts)} counts" + (
            f", {written(rule.not_counted)} does not" if rule.not_counted else ""
        )
        told.append(
            f"match: `{rule.source.source}` gives {written(rule.gives)} and wants {written(rule.wanted)}: {counts}"
        )
    if applied.to_be_found > 0:
        told.append(f"match: {written(applied.to_be_found)} is still to be found")
        for more in applied.matching.more:
            takes = f"{written(more.takes)} of others for the same work"
            told.append(f"match: `{more.source.source}` could give {written(more.amount)} more, against {takes}")
    sources = [*([applied.source] if applied.source is not None else []), *(one.source for one in applied.drawn)]
    for source in sources:
        if source.match_rule is not None and source.match_rule.otherwise:
            told.append(f"not worked out, a rule of `{source.source}` on match: {source.match_rule.otherwise}")
    return told


def _write(desk: ApplicationDesk, compiled: Compiled, files: Files, out: Path, name: str, *, final: bool) -> int:
    from tenderwright.documents.editions import stamp
    from tenderwright.documents.grant import grant_edition
    from tenderwright.documents.grant_headings import counts_pages, lengths, under_headings
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.grant_files import grant_files, pages_by_part
    from tenderwright.writing.outputs import write_outputs
    from tenderwright.writing.pdf import Typesetter

    state, typesetter = stamp_of(compiled), Typesetter(kept_parts())
    hashed = papers_hash(files, _RESTS_ON)
    try:
        with progress("composing and typesetting the application"):
            headings = under_headings(desk)
            edition = grant_edition(desk, stamp(state), hashed, headings, None)
            when = timestamp(edition, state)
            pages = pages_by_part(edition, typesetter, when) if counts_pages(desk, headings) else {}
            long = lengths(desk, headings, pages)
            mistakes = not_final(desk.applied.grant, headings, long, files) if final else []
            if mistakes:
                return _stop(mistakes, files)
            if not final:
                edition = grant_edition(desk, stamp(state), hashed, headings, long)
            written = grant_files(edition, typesetter, when)
        folder = write_outputs(out, name, written.files)
    except (WritingError, OSError) as error:
        raise WrongUse(f"the application cannot be written: {error}") from error
    print(f"{folder}: {written.pages} pages, {len(written.files)} files, {state.label}")
    for one in headings:
        if one.empty:
            print(f"  still to be written: {one.heading.title}", file=sys.stderr)
    for each in long:
        print(f"  {'too long: ' if each.too_long else ''}{each.title}: {each.told}", file=sys.stderr)
    with telling_in(desk.units, american=desk.package.american):
        for words in told_of_match(desk.applied):
            print(f"  {words}", file=sys.stderr)
    with telling_in(desk.units, american=desk.package.american):
        for words in _told_twice(desk):
            print(f"  {words}", file=sys.stderr)
    if written.uncovered:
        print(f"  characters that the fonts do not have: {written.uncovered}", file=sys.stderr)
    return CLEAN
