"""The page that says when she should come out again: the day, what governs it, and what would move it."""

from __future__ import annotations

from datetime import date

from tenderwright.calculations.care.coming_out import ComingOut
from tenderwright.calculations.ship.coming_out import (
    anodes_as_they_are,
    coming_out_again,
    coming_out_as_she_is,
    plates_after,
    plates_as_she_is,
)
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.thickness.reaching_limit import ReachingLimit
from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Bullets, Column, Facts, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated, why_not
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.parts.limits import word
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals, show

FAR = 60
"""Years from the first ground after which a day says no more than that it is far off."""


def coming_out_page(desk: OwnerDesk) -> list[Block]:
    """Compose the page."""
    now, again = desk.calculated.outcome(coming_out_as_she_is), desk.calculated.outcome(coming_out_again)
    blocks: list[Block] = [
        Facts((("As she is", inline(_in_short(now))), ("After this docking", inline(_in_short(again)))))
    ]
    for title, found in (("As she is, with nothing done", now), ("Again, after the docking planned", again)):
        blocks.append(Heading(title))
        blocks += [not_calculated(found)] if isinstance(found, Absent) else [_grounds(found)]
    return [*blocks, *_plates(desk), *_not_known(desk), Paragraph(inline(_HOW), as_note=True)]


_HOW = (
    "Each day is the earliest of its ground, by the rate found and two of its standard uncertainties; the likely day "
    "is by the rate alone. Planning figures: surveyor, naval architect, insurer and flag decide when she is docked. A "
    "reading entered under care/ or surveys/ moves them."
)


def _in_short(found: ComingOut | Absent) -> str:
    if isinstance(found, Absent):
        return why_not(found)
    governs = found.governs
    words = f"By {day(_date(governs.early))}: {governs.ground}"
    if governs.likely and governs.likely != governs.early:
        words += f" (likely {day(_date(governs.likely))})"
    if found.margin is None:
        return f"{words}. No docking is planned."
    held = f"The docking planned for {day(_date(found.planned))}"
    years = abs(found.margin)
    if found.in_time:
        return f"{words}. {held} is in time" + (f" by {decimals(years, 1)} years." if years >= 0.05 else ".")
    return f"{words}. {held} comes {decimals(years, 1)} years after that. {_until(governs.moves)}"


def _until(moves: str) -> str:
    return f"Dock sooner, or: {moves}." if moves else "Dock sooner."


def _grounds(found: ComingOut) -> Table:
    first = _date(found.governs.early)
    rows = [
        Row(
            (
                inline(capital(one.ground)),
                inline(_near(_date(one.early), first)),
                inline(_near(_date(one.likely), first) if one.likely else "never, by the rate"),
                inline(_held(one.early, found.planned)),
                inline(one.moves),
            ),
            "total" if number == 0 else "normal",
        )
        for number, one in enumerate(found.grounds)
    ]
    columns = (
        Column("Ground", width=2.4),
        Column("At the earliest", width=1.4),
        Column("Likely", width=1.4),
        Column("Docking planned in time", width=1.1),
        Column("What would move it", width=2.6),
    )
    return Table(columns, tuple(rows), small=True, note=inline("The first row governs."))


def _held(early: str, planned: str) -> str:
    return word(planned <= early) if planned else "none planned"


def _near(when: date, first: date) -> str:
    return day(when) if when.year - first.year < FAR else "far off"


def _date(written: str) -> date:
    return date.fromisoformat(written)


def _plates(desk: OwnerDesk) -> list[Block]:
    told = []
    for step, words in ((plates_as_she_is, "With nothing renewed"), (plates_after, "Of the plates that stay")):
        found = desk.calculated.found(step)
        if found is not None and found.early:
            told.append(inline(f"{words}: {_plate(found)}"))
    spent = desk.calculated.found(anodes_as_they_are)
    if spent is not None and spent.never:
        names = ", ".join(one.upper() for one in spent.never)
        told.append(
            inline(f"Anodes {names} have not wasted at all: passive, painted or not bonded. To be looked into.")
        )
    return [Heading("How the days were found"), Bullets(tuple(told))] if told else []


def _plate(one: ReachingLimit) -> str:
    return (
        f"plate {one.plate}, {show(one.thickness, 'thickness')} with a limit of {show(one.limit, 'thickness')}, loses "
        f"{show(one.rate / 31557600.0, 'rate of loss')}, of which one standard uncertainty is "
        f"{show(one.u / 31557600.0, 'rate of loss')}; the least of {one.places} readings."
    )


def _not_known(desk: OwnerDesk) -> list[Block]:
    """Say which grounds are not counted, and what each would take."""
    told = []
    hull = desk.package.particulars.hull if desk.package.particulars is not None else None
    of_metal = hull is None or hull.of_metal
    for step, of in ((plates_as_she_is, "Plate"), (anodes_as_they_are, "Anodes")) if of_metal else ():
        found = desk.calculated.outcome(step)
        if isinstance(found, Absent):
            told.append(inline(f"{of}: {found.why}."))
        if isinstance(found, ReachingLimit) and not found.early:
            words = "Plate: no frame space was gauged twice, nor is it known in which year she was built."
            told.append(inline(words))
    plan = desk.package.care
    if plan is None or not plan.coatings:
        told.append(inline("Coating: it needs `coatings` in care/plan.yaml, how long each lasts."))
    if not any(one.kind in ("leak", "pump") for one in desk.package.care_readings):
        told.append(inline("Leaks: it needs readings of kind `leak` or `pump` under care/."))
    return [Heading("Not counted"), Bullets(tuple(told))] if told else []
