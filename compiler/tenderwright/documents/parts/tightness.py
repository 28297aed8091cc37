"""Tightness: the test of every boundary that the work opens, the register of leaks, and clearances with their "
"limits."""

from __future__ import annotations

from tenderwright.calculations.ship.tightness import OpenedBoundary, boundary_test, opened_boundaries
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.tightness.choice import Choice
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Inline, Part, Row, Span, Table, inline
from tenderwright.documents.not_calculated import why_not
from tenderwright.documents.parts.abreast import abreast
from tenderwright.documents.together import together
from tenderwright.model.clearances import clearances_of
from tenderwright.model.ship_condition import Clearance, Leak
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import show


def tightness(desk: Desk) -> Part | None:
    """Compose tests, leaks and clearances; None where the package gives none of them."""
    blocks = [*_tests(desk), *_leaks(desk), *_clearances(desk)]
    if not blocks:
        return None
    title = "Tightness, leaks and clearances"
    return Part("tightness", "", title, "data", "The ship", tuple(blocks), caution=True, audience="yard")


def _tests(desk: Desk) -> list[Block]:
    """Compose the boundaries under the test that each one needs."""
    opened, tests = desk.calculated.found(opened_boundaries) or {}, desk.calculated.outcome(boundary_test)
    outcomes = {key: tests if isinstance(tests, Absent) else tests.outcomes[key] for key in opened}
    by_choice: dict[str, list[OpenedBoundary]] = {}
    for key, one in opened.items():
        by_choice.setdefault(_figure(outcomes[key]), []).append(one)
    if not by_choice:
        return []
    chosen = [one for one in outcomes.values() if not isinstance(one, Absent)]
    cautions = {caution: None for one in chosen for caution in one.cautions}
    listed = [Bullets(tuple(inline(f"{capital(caution)}.") for caution in cautions))] if cautions else []
    tables = abreast((_under(desk, words, alike),) for words, alike in by_choice.items())
    return [Heading("Tests of tightness"), *tables, *listed]


def _under(desk: Desk, words: str, alike: list[OpenedBoundary]) -> Table:
    """List the boundaries under a test, those that the same items open in one row."""
    named: dict[tuple[str, ...], list[str]] = {}
    for one in alike:
        name = capital(desk.label(one.kind, one.name))
        named.setdefault(tuple(item.number for item in one.items), []).append(name)
    rows = tuple(_test(desk, together(names), items) for items, names in named.items())
    columns = (Column("Boundary", width=2.2), Column("Opened or worked on by items", width=1.8))
    test, _, figure = words.partition(": ")
    return Table(columns, rows, caption=test, note=inline(capital(figure)), small=True)


def _figure(choice: Choice | Absent) -> str:
    """Say what the test is, at which figure, and who gives it."""
    if isinstance(choice, Absent):
        return why_not(choice)
    figure = choice.figure
    if choice.head is not None and choice.pressure is not None:
        figure = f"{show(choice.head, 'centre')} of head ({show(choice.pressure, 'test pressure')}) {figure}"
    elif choice.pressure is not None:
        figure = f"{show(choice.pressure, 'test pressure')} {figure}"
    agreed = "; the naval architect agrees it first" if choice.sign_off else ""
    return f"{capital(choice.test)}: {figure}{agreed} ({choice.source})"


def _test(desk: Desk, name: str, items: tuple[str, ...]) -> Row:
    spans: list[str | Span] = []
    for item in items:
        spans += [", "] if spans else []
        spans.append(desk.item_ref(item))
    return Row((inline(name), inline(*spans)))


def _leaks(desk: Desk) -> list[Block]:
    written = desk.package.condition
    rows = tuple(_leak(desk, leak) for leak in (written.leaks if written else ()))
    columns = (
        Column("Leak", width=1.8),
        Column("Place", width=1.6),
        Column("As last seen", width=2.4),
        Column("Before that", width=3),
        Column("Item", width=0.9),
    )
    note = inline("Openings are listed in ", desk.part("fittings"), ", each with its valve and state.")
    return [Heading("Register of leaks"), Table(columns, rows, note=note, small=True)] if rows else []


def _leak(desk: Desk, leak: Leak) -> Row:
    height = f", {desk.quantity(leak.height)} up" if leak.height else ""
    history = "; ".join(f"{day(look.on)}: {look.found}" for look in leak.history)
    cells = (
        inline(capital(leak.where)),
        inline(f"{leak.at}, {leak.side}{height}", *_opening(desk, leak)),
        inline(f"{day(leak.seen)}: {leak.state}"),
        inline(history or "–"),
        _item(desk, leak),
    )
    return Row(cells)


def _opening(desk: Desk, leak: Leak) -> Inline:
    return inline(" (", desk.ref(leak.opening), ")") if leak.opening else ()


def _item(desk: Desk, one: Leak | Clearance) -> Inline:
    return inline(desk.ref(one.item)) if one.item else inline("–")


def _clearances(desk: Desk) -> list[Block]:
    rows = []
    for one in clearances_of(desk.package):
        found = "; ".join(f"{day(look.on)}: {desk.quantity(look.clearance)}" for look in one.found)
        last = one.found[-1].clearance
        verdict = (
            "beyond it" if last.si > one.limit.si else f"{show((one.limit.si - last.si), 'thickness')} short of it"
        )
        words = f"{desk.quantity(one.limit)}, {one.source}"
        cells = (inline(capital(one.what)), inline(found), inline(words), inline(capital(verdict)), _item(desk, one))
        rows.append(Row(cells))
    columns = (
        Column("Clearance", width=2),
        Column("Found", width=2.6),
        Column("Limit", width=2.4),
        Column("Last found", width=1.3),
        Column("Item", width=0.9),
    )
    return [Heading("Shaft, bearings and rudder"), Table(columns, tuple(rows), small=True)] if rows else []
