"""Resolve every reference of a package, forward and back."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cached_property
from typing import TYPE_CHECKING

from msgspec import Struct, field

from tenderwright.linking.approvals import link_approvals
from tenderwright.linking.cycles import find_cycles
from tenderwright.linking.evaluation import dead_in_evaluation, lines_of_evaluation
from tenderwright.linking.grants import link_grants
from tenderwright.linking.in_dock import link_in_dock
from tenderwright.linking.prose import KINDS
from tenderwright.linking.symbols import Symbol, symbol_table
from tenderwright.linking.walk import Use, uses_of, uses_of_findings, uses_of_owner
from tenderwright.linking.work import dead_work
from tenderwright.model.loader import FILES
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import ANY, Broken, Package
from tenderwright.model.table_rows import row_names
from tenderwright.model.withdrawn_lines import line_numbers
from tenderwright.notices import Notice, Place
from tenderwright.notices.codes import SHIP
from tenderwright.notices.suggest import did_you_mean, one_of
from tenderwright.shapes.todos import waits_for_todo

if TYPE_CHECKING:
    from tenderwright.model.findings import Findings


class Links(Struct, frozen=True, dict=True):
    """The symbol table and every use of a name."""

    symbols: Mapping[tuple[str, str], Symbol]
    uses: tuple[Use, ...]
    broken: Broken = field(default_factory=Broken)

    @cached_property
    def _back(self) -> Mapping[tuple[str, str], list[Use]]:
        back: dict[tuple[str, str], list[Use]] = defaultdict(list)
        for use in self.uses:
            back[(use.kind, use.name)].append(use)
        return back

    def referred_to_by(self, kind: str, name: str) -> list[Use]:
        """List the uses of a thing's name by other things, in order."""
        return [use for use in self._back.get((kind, name), []) if use.by != (kind, name)]


def link(package: Package) -> tuple[Links, list[Notice]]:
    """Make the symbol table and resolve every reference but those to values."""
    symbols, notices = symbol_table(package)
    uses = uses_of(package)
    frames = {str(number) for number in package.frames.numbers} if package.frames else None
    notices += _dead(uses, symbols, package, frames)
    notices += _of_docks(uses)
    notices += find_cycles(package)
    return Links(symbols, uses, package.broken.told(notices).joined(_gone(uses, symbols))), notices


def _gone(uses: Iterable[Use], symbols: Mapping[tuple[str, str], Symbol]) -> Broken:
    """Give what is named and is not there as if it were broken; where none of its kind is there, its file too."""
    names = {(use.kind, use.name) for use in uses} - symbols.keys()
    there = {kind for kind, _ in symbols}
    kinds = {kind for kind, _ in names if kind in FILES and kind not in there}
    return Broken(frozenset(names | {(kind, ANY) for kind in kinds}), frozenset(FILES[kind] for kind in kinds))


def link_owner(papers: OwnerPapers, links: Links, package: Package) -> tuple[Links, list[Notice]]:
    """Resolve the references in the owner's papers; gives their own uses beside the symbols of the package."""
    uses = uses_of_owner(papers, package)
    notices = _dead(uses, links.symbols, package, None)
    lines = line_numbers(package)
    by_row = {number.rpartition(".")[0] for number in lines if number.count(".") > 1}
    for number, rate in (papers.rates.lines if papers.rates else {}).items():
        dead = dead_work(number, rate.here, lines | by_row, package)
        notices += [dead] if dead is not None else []
    for number, place in _lines_named(papers):
        dead = dead_work(number, place, lines, package)
        notices += [dead] if dead is not None else []
    rows = row_names(package) if any(bid.tables for bid in papers.bids.values()) else ()
    for bid in papers.bids.values():
        for row in bid.tables:
            if row not in rows and not package.broken.may_hold("item", row.split(".")[0]):
                message, hints = f"the tables of the items have no row `{row}`", did_you_mean(row, rows)
                notices.append(Notice("dead-reference", bid.here, message, hints=hints))
    for number, asker in (papers.questions.asked_by if papers.questions else {}).items():
        if ("question", number) not in links.symbols and not package.broken.may_hold("question", number):
            notices.append(Notice("dead-reference", asker.here, f"there is no question {number}"))
    notices += [*link_grants(papers, package), *link_approvals(papers), *dead_in_evaluation(papers, package)]
    return Links(links.symbols, uses, links.broken), notices + link_in_dock(papers, package)


def _lines_named(papers: OwnerPapers) -> Iterator[tuple[str, Place]]:
    """Yield the lines of the tender that bids, their evaluation and the gifts of the donors' page name."""
    for gift in papers.scope.gifts if papers.scope is not None else ():
        yield gift.line, gift.here
    if papers.taken_away is not None and papers.taken_away.dock_day is not None:
        yield papers.taken_away.dock_day, papers.taken_away.here
    for bid in papers.bids.values():
        for number, line in bid.lines.items():
            yield number, line.here
        for exclusion in bid.exclusions:
            for number in exclusion.lines:
                yield number, exclusion.here
    if papers.evaluation is not None:
        yield from lines_of_evaluation(papers.evaluation)


def link_findings(findings: Findings, links: Links, package: Package) -> tuple[Links, list[Notice]]:
    """Resolve the references in the findings of a docking; gives their own uses beside the symbols of the package."""
    uses = uses_of_findings(findings)
    frames = {str(number) for number in package.frames.numbers} if package.frames else None
    return Links(links.symbols, uses, links.broken), _dead(uses, links.symbols, package, frames)


def _of_docks(uses: Iterable[Use]) -> Iterator[Notice]:
    """Tell of what all may read and names a dock, or a figure of one: no yard reads of another's dock."""
    for use in uses:
        docks = use.kind == "facility" or (use.kind == "value" and use.name.startswith(("facility.", "cradle.")))
        if docks and not use.at.path.startswith("facilities/"):
            message = f"`{use.kind}:{use.name}` is about a dock, and no yard may read of another's"
            hint = "say what is needed of any dock, or move the words to a file under owner/"
            yield Notice("kept-by-owner", use.at, message, hints=(hint,))


def link_values(links: Links, known: Collection[str], missing: Mapping[str, str]) -> list[Notice]:
    """Resolve the references to values, once it is known which there are, and which lack data."""
    notices = []
    for use in links.uses:
        if use.kind == "value" and waits_for_todo(missing.get(use.name, "")):
            continue  # `check` lists what is open, and what it would bring
        if use.kind == "value" and use.name in missing:
            message = f"value `{use.name}` could not be calculated: {missing[use.name]}"
            hint = "add what it needs, or write `quantity:` with its `basis:` instead"
            notices.append(Notice("unreached", use.at, message, hints=(hint,), cause=missing[use.name]))
        elif use.kind == "value" and use.name not in known and not _rests_on_broken(use.name, links.broken):
            family = use.name.partition(".")[0]
            hints, cause = did_you_mean(use.name, known), f"value {use.name}"
            if not any(name.startswith(f"{family}.") for name in known):
                cause = f"value {family}."
                hints = hints or (f"no value begins with `{family}.`: what they rest on is missing from the package",)
            notices.append(
                Notice("dead-reference", use.at, f"there is no value `{use.name}`", hints=hints, cause=cause)
            )
    return notices


_VALUES_OF = {"coating": "scheme", "zone": "zone", "tank": "tank", "cradle": "facility", "anodes": "anode"}
"""By the first word of a value's name, the kind of thing that it is calculated for."""


def _rests_on_broken(value: str, broken: Broken) -> bool:
    """Tell whether a value may be that of a thing left out for its own mistake, or rest on one."""
    if broken.among(*SHIP):
        return True
    first, _, rest = value.partition(".")
    kind = _VALUES_OF.get(first, "")
    if kind == "anode":
        return any(broken_kind == kind for broken_kind, _ in broken.names)
    return broken.may_hold(kind, rest.partition(".")[0])


def _dead(
    uses: Iterable[Use],
    symbols: Mapping[tuple[str, str], Symbol],
    package: Package,
    frames: Collection[str] | None,
) -> list[Notice]:
    notices = []
    names: dict[str, list[str]] = defaultdict(list)
    for kind, name in symbols:
        names[kind].append(name)
    for use in uses:
        if (use.kind, use.name) in symbols or use.kind == "value" or package.broken.may_hold(use.kind, use.name):
            continue
        if use.kind == "frame" and (frames is None or use.name in frames):
            continue
        hints: tuple[str, ...]
        if not use.kind:
            message = f"link `{use.name}` leads to nothing in the package"
            hints = ("refer to things by kind and name, as in `<item:420>`; list a document in drawings.yaml",)
            notices.append(Notice("dead-reference", use.at, message, hints=hints))
            continue
        if use.kind not in KINDS:
            notices.append(
                Notice(
                    "dead-reference",
                    use.at,
                    f"`{use.kind}:` is not a kind of thing that can be referred to",
                    hints=one_of(use.kind, KINDS),
                )
            )
            continue
        what = {"item": f"item {use.name}", "frame": f"frame {use.name}"}.get(use.kind, f"{use.kind} `{use.name}`")
        hints, cause = did_you_mean(use.name, names[use.kind]), what
        if use.kind == "item":
            hints += ("if its work was dropped, bring its file back with `withdrawn: true`",)
        if (use.kind in FILES and not names[use.kind]) or (use.kind == "frame" and not frames):
            cause = FILES.get(use.kind, "vessel/frames.yaml")
            hints = (f"`{cause}` is missing, or holds none",)
        notices.append(Notice("dead-reference", use.at, f"there is no {what}", hints=hints, cause=cause))
    return notices
