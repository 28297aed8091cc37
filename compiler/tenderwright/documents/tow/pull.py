"""The pull that she asks of a tug, by two methods in each weather, and the bollard pull that it takes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from tenderwright.calculations.ship.tow_pull import tow_by_navy, tow_by_ufc, tow_pull, tow_tug, tow_weathers
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.parts.limits import shown, word
from tenderwright.model.tow import Tow
from tenderwright.quantities.display import head, in_column, show
from tenderwright.quantities.retold import retold

UNKNOWN = "not known"


def pull(desk: Desk, plan: Tow) -> list[Block]:
    """Give a table of both methods, and under it what governs."""
    weathers = desk.calculated.outcome(tow_weathers)
    if isinstance(weathers, Absent):
        return [] if isinstance(weathers, NotAsked) else [not_calculated(weathers, "Pull")]
    ufc, navy = desk.calculated.each(tow_by_ufc), desk.calculated.each(tow_by_navy)
    rows: list[Row] = []
    for name, weather in weathers.items():
        title = capital(name.replace("-", " "))
        waves = f", {weather.waves}" if weather.waves else ""
        rows.append(
            Row((inline(f"{title}: {weather.speed.text} through the water, wind {weather.wind.text}{waves}"),), "group")
        )
        for method, found in (("UFC 4-159-03", ufc.get(name)), ("Towing manual", navy.get(name))):
            if found is not None:
                rows.append(_row(method, found, weather.efficiency.si))
    columns = (
        Column("Method", width=1.6),
        Column(head("Hull", "pull"), "decimal"),
        Column(head("Propeller", "pull"), "decimal"),
        Column(head("Wind", "pull"), "decimal"),
        Column(head("Waves", "pull"), "decimal"),
        Column(head("All", "pull"), "decimal"),
        Column(head("Pull at the tug", "pull"), "decimal", 1.3),
        Column(head("Bollard pull", "weight"), "decimal", 1.3),
    )
    table = Table(columns, tuple(rows), note=inline(_note(desk, plan)), small=True)
    if plan.propeller == "none":
        table = _without(table, 2)
    return [table, *_governs(desk), Bullets(tuple(inline(words) for words in _sources(desk, plan)))]


def _without(table: Table, at: int) -> Table:
    """Leave a column out of a table."""
    columns = (*table.columns[:at], *table.columns[at + 1 :])
    rows = tuple(
        row if row.weight == "group" else replace(row, cells=(*row.cells[:at], *row.cells[at + 1 :]))
        for row in table.rows
    )
    return replace(table, columns=columns, rows=rows)


def _row(method: str, found: Mapping[str, Any], efficiency: float) -> Row:
    hull = found["hull"] if "hull" in found else found["form"] + found["friction"]
    asked = None if found["pull"] is None else found["pull"] / efficiency / 9.80665
    forces = (hull, found["propeller"], found["wind"], found["sea"], found["total"], found["pull"])
    cells = [method, *(UNKNOWN if one is None else in_column(one, "pull") for one in forces)]
    cells.append(UNKNOWN if asked is None else in_column(asked, "weight"))
    return Row(tuple(inline(cell) for cell in cells))


def _note(desk: Desk, plan: Tow) -> str:
    words = (
        "Pull at the tug is 1.10 of all, for the towline's own drag; "
        "bollard pull is that by the tug's efficiency in that sea."
    )
    if plan.resistance is not None and not plan.resistance.hull_curve:
        words += (
            " The towing manual's hull curve (R_H/D by ship and speed, App. G) is not reproduced here: "
            "somebody who has it "
            "gives hull_curve in tow.yaml with its source. Until then that method gives no sum, "
            "and the other stands alone."
        )
    return words


def _governs(desk: Desk) -> list[Block]:
    found = desk.calculated.outcome(tow_pull)
    if isinstance(found, Absent):
        return [not_calculated(found, "Bollard pull")]
    words = (
        f"Greatest pull on the gear {show(found['pull'], 'pull')}. Bollard pull asked: "
        f"{show(found['bollard'], 'weight')} "
        f"({show(found['needed'], 'pull')}), governed by {found['governs']}."
    )
    if found["unknown"]:
        words += f" Not known in {found['unknown']}, for want of the resistance in waves: it may be more."
    words += " The methods agree to about a third: a tug is chosen with that in hand."
    tug = desk.calculated.outcome(tow_tug)
    if isinstance(tug, Absent):
        words += " No tug is named yet." if isinstance(tug, NotAsked) else ""
    else:
        words += f" {capital(tug.governs.name)}: {shown(tug.governs.limit, tug.governs)}, {word(tug.met).lower()}."
    return [Heading("What governs"), Paragraph(inline(words))]


def _sources(desk: Desk, plan: Tow) -> list[str]:
    found = plan.resistance
    if found is None:
        return []
    shape = f"{found.wind_shape:g}" if found.wind_shape is not None else "0.7, from memory"
    words = [
        f"Frontal area {desk.quantity(found.frontal_area)}: {found.source}. Wind coefficient {shape}; "
        "wind taken from ahead.",
        f"Friction of the hull times {found.fouling or 1:g} for growth (2 heavy weed to 4 thick barnacles is "
        "common practice, "
        "no source).",
    ]
    stated = [*found.cases, *([found.hove_to] if found.hove_to else [])]
    words += [f"Waves, {one.case.replace('-', ' ')}: {one.sea_source}." for one in stated if one.sea_source]
    if found.hove_to is None and not any(one.case == "hove-to" for one in found.cases):
        survival = retold("20 m/s of wind in a current of 0.5 m/s")
        words.append(f"Hove to: {survival}, the survival case of the open sea (MSC/Circ.884, 9.4, from memory).")
    return words
