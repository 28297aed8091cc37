"""Resolve what applications for grants name: profile, source, headings, categories, lines and risks."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from tenderwright.linking.work import dead_work
from tenderwright.model.build import Name
from tenderwright.model.funding import FundingSource
from tenderwright.model.grant import Grant
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.model.profile import Profile
from tenderwright.model.withdrawn_lines import line_numbers
from tenderwright.notices import Note, Notice, Place
from tenderwright.notices.suggest import one_of

PROFILES = "owner/profiles/"


def link_grants(papers: OwnerPapers, package: Package) -> list[Notice]:
    """Report every name in the applications and the profiles of forms that stands for nothing."""
    found: list[Notice] = []
    for profile in papers.profiles.values():
        found += _profile(profile)
    for grant in papers.grants.values():
        found += _grant(grant, papers, package)
    for source in papers.funding.sources if papers.funding is not None else ():
        found += _works([(one.work.name, one.work.at) for one in source.granted], package)
        found += _match_rule(source, papers)
    return found


def _match_rule(source: FundingSource, papers: OwnerPapers) -> Iterator[Notice]:
    known = [one.source for one in papers.funding.sources if one is not source] if papers.funding is not None else []
    rule = source.match_rule
    if rule is not None:
        for name in (*rule.excludes, *(name for limit in rule.limits for name in limit.sources)):
            yield from _named(name, known, "other source")


def _profile(profile: Profile) -> Iterator[Notice]:
    names = [category.category for category in profile.categories]
    yield from _named(profile.default_category, names, "category")
    if profile.contingency == "own line" and profile.category_taking("contingency") is None:
        message = "contingency is to stand on a line of its own, and no category takes `contingency`"
        hint = "give one category `takes: [contingency]`"
        yield Notice("dead-reference", profile.here, message, hints=(hint,))


def _grant(grant: Grant, papers: OwnerPapers, package: Package) -> Iterator[Notice]:
    profile = papers.profiles.get(grant.profile.name)
    if profile is not None:
        yield from _of_profile(grant, profile)
    elif not papers.broken.among(PROFILES):
        yield from _named(grant.profile, papers.profiles, "profile")
    if grant.source is not None and papers.funding is not None:
        yield from _named(grant.source, [source.source for source in papers.funding.sources], "source")
    if papers.risks is not None:
        for risk in grant.risks or ():
            yield from _named(risk, [one.risk for one in papers.risks.risks], "risk")
    yield from _phases(grant)
    yield from _items_and_lines(grant, package)


def _phases(grant: Grant) -> Iterator[Notice]:
    """Report names of phases that stand for nothing, and items that stand in two of them."""
    known = [one.phase for one in grant.phases]
    costs = [one.phase for one in grant.costs] + [one.phase for one in grant.in_kind]
    for name in costs:
        if name is not None:
            yield from _named(name, known, "phase")
    yield from _asked_by_phase(grant)
    first: dict[str, Place] = {}
    for phase in grant.phases:
        for reference in phase.items:
            if reference.name in first:
                notes = (Note("it is first listed here", first[reference.name]),)
                message = f"item {reference.name} stands in two phases"
                hint = "leave it in one of them, or split the item in two"
                yield Notice("duplicate-name", reference.at, message, notes, (hint,))
            first.setdefault(reference.name, reference.at)


def _asked_by_phase(grant: Grant) -> Iterator[Notice]:
    """Report sums asked in some phases only, and those that do not add up to what is asked."""
    asked = [one.asked for one in grant.phases if one.asked is not None]
    silent = [one for one in grant.phases if one.asked is None]
    if asked and silent:
        message = f"phase `{silent[0].phase}` does not say what is asked for it, and others do"
        yield Notice("missing-key", silent[0].here, message, hints=("write `asked:` in every phase, or in none",))
    elif asked and grant.asked is not None and sum(asked) != grant.asked:
        message = f"{grant.asked:,} is asked, and {sum(asked):,} for the phases together"
        hint = "leave `asked:` of the application out, or correct one of the sums"
        yield Notice("sum-differs", grant.phases[-1].here, message, hints=(hint,))


def _of_profile(grant: Grant, profile: Profile) -> Iterator[Notice]:
    headings = [one.heading for one in profile.headings]
    for name, prose in grant.headings.items():
        yield from _known(name, prose.source.key_place(prose.path), headings, f"heading `{name}`", profile)
    for name, limit in grant.limits.items():
        yield from _known(name, limit.here, headings, f"heading `{name}`", profile)
    known = {word for one in profile.categories for word in (one.category, *one.takes)}
    named = [*grant.categories.values(), *(one.category for one in grant.costs)]
    named += [one.category for one in grant.in_kind]
    for category in named:
        yield from _known(category.name, category.at, known, f"category `{category}`", profile)


def _items_and_lines(grant: Grant, package: Package) -> Iterator[Notice]:
    yield from _works([(number, category.at) for number, category in grant.categories.items()], package)
    yield from _works([(line.name, line.at) for output in grant.outputs for line in output.lines], package)


def _works(named: Iterable[tuple[str, Place]], package: Package) -> Iterator[Notice]:
    known = line_numbers(package) | {item.number for item in package.items}
    for number, place in named:
        dead = dead_work(number, place, known, package)
        if dead is not None:
            yield dead


def _named(name: Name, known: Collection[str], what: str) -> Iterator[Notice]:
    if name.name not in known:
        hints = one_of(name.name, sorted(known))
        message = f"there is no {what} `{name}`"
        yield Notice("dead-reference", name.at, message, hints=hints, cause=message)


def _known(name: str, at: Place, known: Collection[str], what: str, profile: Profile) -> Iterator[Notice]:
    if name not in known:
        message = f"profile `{profile.name}` has no {what}"
        hints = one_of(name, sorted(known))
        yield Notice("dead-reference", at, message, hints=hints)
