"""The passage leg by leg, the weather in which she sails, and who decides."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.verdict import within
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.model.tow import Leg, Tow
from tenderwright.quantities.display import head, in_column, plainly, show

MILE, KNOT = 1852.0, 1852.0 / 3600.0
_SAME = 0.02
"""Share by which the legs may differ from the distance that the dock's file states."""


def route(desk: Desk, plan: Tow) -> list[Block]:
    """Give a table of the legs out, and of those home where they differ."""
    if not plan.out:
        return [Paragraph(inline("The legs of the passage are not written yet: out in tow.yaml."))]
    blocks: list[Block] = [Heading("Out"), _legs(plan.out)]
    blocks += _against_dock(desk, plan)
    blocks.append(Heading("Home"))
    if plan.home:
        blocks.append(_legs(plan.home))
    else:
        blocks.append(
            Paragraph(
                inline("The same legs the other way, with the same limits, after a survey of her as she then is.")
            )
        )
    return blocks


def _legs(legs: Sequence[Leg]) -> Table:
    rows = []
    for number, leg in enumerate(legs, start=1):
        cells = (
            f"{number}",
            f"{leg.leg}" + (f". {leg.tug}" if leg.tug else ""),
            leg.water,
            miles(leg.distance.si),
            knots(leg.speed.si),
            in_column(leg.distance.si / leg.speed.si, "hours"),
            leg.shelter or "not said",
            leg.limits,
        )
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    hours = sum(leg.distance.si / leg.speed.si for leg in legs)
    total = ("", "All legs", "", _total(legs), "", in_column(hours, "hours"), "", "")
    rows.append(Row(tuple(inline(cell) for cell in total), "total"))
    columns = (
        Column("", width=0.3),
        Column("Leg, and tugs", width=2.4),
        Column("Water", width=0.9),
        Column("Distance", "right", 0.8),
        Column("Speed", "right", 0.6),
        Column(head("Time", "hours"), "decimal", 0.6),
        Column("Shelter", width=1.8),
        Column("Limits", width=2),
    )
    return Table(columns, tuple(rows), small=True, note=inline("Times without waiting for tide, daylight or weather."))


def miles(si: float) -> str:
    """Write a distance at sea in nautical miles, to a tenth at most."""
    return plainly(round(10 * si / MILE) * MILE / 10, "sea distance")


def knots(si: float) -> str:
    """Write a speed at sea in knots, to a tenth at most."""
    return plainly(round(10 * si / KNOT) * KNOT / 10, "speed through water")


def _total(legs: Sequence[Leg]) -> str:
    """Sum the distances of the legs."""
    return miles(sum(leg.distance.si for leg in legs))


def _against_dock(desk: Desk, plan: Tow) -> list[Block]:
    dock = next((one for one in desk.package.facilities if plan.dock and one.facility == plan.dock.name), None)
    if dock is None or dock.tow is None:
        return []
    summed = sum(leg.distance.si for leg in plan.out)
    if within(abs(summed - dock.tow.si), _SAME * dock.tow.si):
        return []
    away = miles(dock.tow.si)
    words = f"The legs add up to {_total(plan.out)}, and {dock.name} is given as {away} away: one is to be put right."
    return [Paragraph(inline(words))]


def sailing(desk: Desk, plan: Tow) -> list[Block]:
    """Say in what weather she sails and who decides."""
    found: list[tuple[str, Inline]] = []
    limits = plan.limits
    if limits is None:
        found.append(("Limits", inline("Not stated: limits in tow.yaml, by the tow surveyor.")))
    else:
        told = (
            ("Wind", limits.wind, "or less, with none stronger forecast"),
            ("Waves", limits.waves, "significant height, or less"),
            ("Visibility", limits.sight, "or more"),
            ("Forecast", limits.window, "of that weather, confirmed a day and again two hours before"),
        )
        for name, quantity, words in told:
            if quantity is None:
                found.append((name, inline("No limit is stated")))
            else:
                told_as = miles(quantity.si) if name == "Visibility" else desk.quantity(quantity)
                found.append((name, inline(f"{told_as} {words}")))
        found.append(("By", inline(limits.source)))
    found += [
        ("Not before", inline("Every row of T4 is signed, soundings and alarms are not older than 24 h, "
            "the lights burn, the second "
                              "line is rigged, and insurer, flag and harbour have agreed (common practice, "
                                  "no source).")),
        ("Who decides", inline("The tug master, on the day; he may refuse. The owner may only stop. "
            "No limit is passed to keep a date.")),
        ("On the way", inline("Position and what the alarms show go into the log each hour; "
            "the owner and the coastguard know the plan and "
                              "its contingencies (MSC/Circ.884, 6 and 11).")),
        ("Lights and shapes", inline(_lights(desk, plan))),
    ]  # fmt: skip
    return [Heading("Sailing"), Facts(tuple(found))]


_LONG = 200.0
"""Length of a tow beyond which both carry a diamond, and the tug a third light, m (COLREG rule 24, from memory)."""


def _lights(desk: Desk, plan: Tow) -> str:
    base = "On her sidelights and a sternlight, never masthead lights (COLREG rule 24, from memory). "
    if plan.towed == "alongside":
        return (
            base + "Alongside they are as one vessel only where they are rigidly made fast; "
            "else the tug shows two masthead lights."
        )
    if plan.length is None:
        return (
            base
            + f"The length of the tow is not said (length): over {show(_LONG, 'run')} both carry a diamond by day, "
            "and the tug a third light."
        )
    if within(plan.length.si, _LONG):
        return (
            base + f"A tow of {desk.quantity(plan.length)}: two masthead lights and the yellow light on the tug, "
            "no shape by day."
        )
    return (
        base + f"A tow of {desk.quantity(plan.length)}: three masthead lights and the yellow light on the tug, "
        "a diamond on both by day."
    )
