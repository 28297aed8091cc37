"""The ship: particulars, frames, keel, marks, openings, appendages and plating."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.ship.shafts import not_placed
from tenderwright.calculations.steps.outcome import without_file
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import (
    Block,
    Column,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Table,
    inline,
    plain,
)
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.parts.abreast import abreast, facts_abreast
from tenderwright.documents.parts.notes import notes_on
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.particulars import Particulars, Shaft, WoodHull
from tenderwright.model.vessel import Opening, PlateRun, Strake
from tenderwright.quantities.display import in_column, unit_of

SHIP = "The ship"
_FRAME_COLUMNS = 4


def particulars(desk: Desk) -> Part:
    """Compose the ship's particulars."""
    ship = desk.package.particulars
    if ship is None:
        absent = not_calculated(without_file(desk.package, "vessel/particulars.yaml"))
        return Part(
            "particulars", "", "Particulars of the ship", "data", SHIP, (absent,), caution=True, audience="yard"
        )
    told = (
        ("Why she matters", ship.significance),
        ("How she lies", ship.status),
        ("Machinery", ship.machinery),
        ("Hull", ship.hull.notes if ship.hull else None),
    )
    blocks: list[Block] = [
        *facts_abreast(_facts(desk, ship)),
        *abreast((Heading(title, 3), desk.prose(text)) for title, text in told if text is not None),
        *notes_on(desk, [(shaft.name, shaft.notes) for shaft in ship.shafts]),
        *abreast((_marks(desk, ship), _frames(desk))),
        *([desk.prose(desk.package.frame_notes)] if desk.package.frame_notes else []),
        *_hazards(desk, ship),
    ]
    return Part(
        "particulars", "", "Particulars of the ship", "data", SHIP, tuple(blocks), caution=True, audience="yard"
    )


def _facts(desk: Desk, ship: Particulars) -> list[tuple[str, Inline]]:
    size, keel, hull = ship.dimensions, ship.keel, ship.hull
    facts: list[tuple[str, Inline]] = [
        ("Name and type", inline(f"{ship.name}, {ship.type}, {ship.built or TO_BE_WRITTEN}")),
        ("Builder", inline(ship.builder)),
        ("Hull", inline(f"{hull.material}, {hull.fastening}" if hull else "")),
        *(_of_wood(desk, hull.wood) if hull and hull.wood else ()),
        ("Length overall", inline(desk.quantity(size.length_overall))),
        ("Length between perpendiculars", inline(desk.quantity(size.length_between_perpendiculars))),
        ("Moulded beam", inline(desk.quantity(size.beam))),
        ("Moulded depth amidships", inline(desk.quantity(size.depth))),
        ("Usual mean draft", inline(f"{desk.quantity(size.draft)} above the keel line")),
        ("Displacement at that draft", inline(desk.quantity(ship.displacement))),
        ("Air draft", inline(desk.quantity(size.air_draft))),
        ("Keel", inline(f"{keel.kind} keel, {desk.quantity(keel.width)} wide" + _keel_depth(desk, ship))),
        ("Drag of keel", inline(f"{desk.quantity(keel.drag)} deeper aft than forward" if keel.drag else "")),
        ("Straight of keel", inline(f"{keel.straight}")),
    ]
    facts += [(shaft.name, inline(_shaft(desk, shaft))) for shaft in ship.shafts]
    if not ship.shafts:
        facts.append(("Shafts", inline("none recorded")))
    return [fact for fact in facts if any(span.text for span in fact[1])]


def _shaft(desk: Desk, shaft: Shaft) -> str:
    """Say what is there of a shaft: where it lies, its state, and its propeller."""
    place = "on the centreline" if shaft.side == "centreline" else f"to {shaft.side}"
    away = f", {desk.quantity(shaft.off_centre)} from the centreline" if shaft.off_centre else ""
    thick = f"{desk.quantity(shaft.diameter)} diameter, " if shaft.diameter else ""
    words = f"{thick}{place}{away}; {shaft.state}"
    propeller = shaft.propeller
    if propeller is None:
        return words if shaft.state != "propeller fitted" else f"{words}, not described"
    kept = "" if shaft.state == "propeller fitted" else ", the propeller kept"
    mass = f", {desk.quantity(propeller.mass)}" if propeller.mass else ""
    blades = f", {propeller.blades} blades" if propeller.blades else ""
    unplaced = shaft in not_placed(desk.package.particulars, desk.package.openings)
    left = ". Where it stands is not known, and no draft or breadth of hers counts it" if unplaced else ""
    return f"{words}{kept}: {propeller.material}, {desk.quantity(propeller.diameter)} diameter{blades}{mass}{left}"


def _of_wood(desk: Desk, wood: WoodHull) -> list[tuple[str, Inline]]:
    frames = wood.frames if wood.framing == "wood" else f"{wood.frames}, of {wood.framing}"
    return [
        ("Planking", inline(f"{wood.planking}, {wood.laid}, {desk.quantity(wood.thickness)} at the bottom")),
        ("Frames", inline(frames)),
        ("Sheathing", inline(wood.sheathing)),
    ]


def _keel_depth(desk: Desk, ship: Particulars) -> str:
    return f" and {desk.quantity(ship.keel.depth)} deep below the keel line" if ship.keel.depth else ""


def _marks(desk: Desk, ship: Particulars) -> list[Block]:
    rows = tuple(
        Row((inline(m.name), inline(m.at.text), inline(m.side), inline(desk.quantity(m.datum, "0", beside=True))))
        for m in ship.draft_marks
    )
    columns = (
        Column("Marks", width=1.2),
        Column("At", width=0.9),
        Column("Side", width=0.9),
        Column("Zero above the keel line", "right", 1.5),
    )
    return [Heading("Draft marks", 3), Table(columns, rows, small=True)] if rows else []


def _frames(desk: Desk) -> list[Block]:
    frames = desk.package.frames
    if frames is None:
        return []
    if not frames.numbers:
        words = "No frames are given: places along her are distances forward of the after perpendicular, unless said."
        return [Heading("Places along her", 3), Paragraph(inline(words))]
    shown = [n for i, n in enumerate(frames.numbers) if n % 10 == 0 or i in (0, len(frames.numbers) - 1)]
    cells = [(inline(f"Fr {n}"), inline(in_column(frames.x(n), "distance"))) for n in shown]
    height = -(-len(cells) // _FRAME_COLUMNS)
    cells += [(inline(""), inline(""))] * (height * _FRAME_COLUMNS - len(cells))
    rows = tuple(Row(sum((cells[row + height * k] for k in range(_FRAME_COLUMNS)), ())) for row in range(height))
    columns = (Column("Frame"), Column(unit_of("distance"), "decimal")) * _FRAME_COLUMNS
    note = inline("Forward of the after perpendicular.")
    return [Heading("Frames", 3), Table(columns, rows, note=note, small=True)]


_MATERIALS = {"pcb": "PCB"}


def _hazards(desk: Desk, ship: Particulars) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(_MATERIALS.get(h.material, h.material)),
                inline(h.where),
                inline(h.status),
                inline(desk.ref(h.report)) if h.report else inline("–"),
            )
        )
        for h in ship.hazards
    )
    columns = (Column("Material", width=1.4), Column("Where", width=4), Column("Known by", width=1.6), Column("Report"))
    heading = Heading("Hazardous materials known or suspected", 3)
    return [heading, Table(columns, rows, small=True)] if rows else []


def fittings(desk: Desk) -> Part:
    """Compose the lists of openings and appendages."""
    blocks = [*_openings(desk), *_appendages(desk)]
    title = "Openings and appendages"
    return Part("fittings", "", title, "data", SHIP, tuple(blocks), caution=True, audience="yard")


def _openings(desk: Desk) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(o.name if o.kind in o.name.lower() else f"{o.name} ({o.kind})"),
                inline(f"{o.at.text}, {o.side}"),
                inline(desk.quantity(o.height)),
                inline(desk.quantity(o.bore, "–")),
                inline(", ".join(word for word in (o.valve, o.state) if word) or "–"),
                _notes(desk, o),
            ),
            anchor=desk.anchor("opening", o.opening),
        )
        for o in desk.package.openings
    )
    columns = (
        Column("Opening", width=2.5),
        Column("At", width=1.7),
        Column("Height", "right", 0.8),
        Column("Bore", "right", 0.8),
        Column("Valve and state", width=2.5),
        Column("Notes", width=4.2),
    )
    note = inline("Heights are of the centre above the keel line.")
    return [Heading("Openings in the hull"), _noted(Table(columns, rows, note=note, small=True))] if rows else []


def _notes(desk: Desk, opening: Opening) -> Inline:
    """Give what is noted of an opening, and what the last docking that dealt with its valve did and tested."""
    told = desk.words(opening.notes) if opening.notes is not None else inline()
    for docking in sorted(desk.package.history, key=lambda one: one.docked, reverse=True):
        for valve in (one for one in docking.valves if one.opening.name == opening.opening):
            tight = {True: " Tight.", False: " Not tight.", None: ""}[valve.tight]
            head = f"{' ' if told else ''}Docking of {docking.docked.year}: "
            return (*told, *inline(head, *desk.of_tender(docking.tender).words(valve.done), tight))
    return told or inline("–")


def _noted(table: Table) -> Table:
    """Leave out the last column, of notes, where there are none."""
    if any(plain(row.cells[-1]) != "–" for row in table.rows):
        return table
    rows = tuple(replace(row, cells=row.cells[:-1]) for row in table.rows)
    return replace(table, columns=table.columns[:-1], rows=rows)


def _appendages(desk: Desk) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(a.name),
                inline(f"{a.extent}, {a.side}"),
                inline(desk.quantity(a.area, "–")),
                inline(a.material or "–"),
                desk.words(a.notes) if a.notes is not None else inline("–"),
            ),
            anchor=desk.anchor("appendage", a.appendage),
        )
        for a in desk.package.appendages
    )
    columns = (
        Column("Appendage", width=1.5),
        Column("Extent", width=1.9),
        Column("Area", "right", 0.75),
        Column("Material", width=2.1),
        Column("Notes", width=6),
    )
    return [Heading("Appendages"), _noted(Table(columns, rows, small=True))] if rows else []


def plating(desk: Desk) -> Part | None:
    """Compose the strakes as built; None without strakes."""
    rows = tuple(
        Row(
            (
                inline(f"{strake.strake}  {capital(strake.name)}"),
                inline("; ".join(_run(desk, run) for run in strake.plates)),
                inline(_riveted(desk, strake)),
            ),
            anchor=desk.anchor("strake", strake.strake),
        )
        for strake in desk.package.strakes
    )
    columns = (Column("Strake", width=1.3), Column("Plates, as built", width=4.6), Column("Riveting", width=3.4))
    if not rows:
        return None
    table = Table(columns, rows, note=_usual(desk), small=True)
    return Part("plating", "", "Shell plating as built", "data", SHIP, (table,), audience="yard")


def _run(desk: Desk, run: PlateRun) -> str:
    return f"{run.from_} to {run.to}, {desk.quantity(run.thickness)}" + (", inner" if run.inner else "")


def _riveted(desk: Desk, strake: Strake) -> str:
    """Say how the joints of a strake are riveted that are not as usual."""
    names = {"seam": "upper seam", "lower seam": "lower seam", "butt": "butts", "frame": "frames"}
    told = []
    for one in strake.joints:
        pitch = f" at {desk.quantity(one.pitch)}" if one.pitch is not None else ""
        where = f", {one.from_} to {one.to}" if one.from_ is not None and one.to is not None else ""
        rows = f"{one.rows} row{'s' if one.rows > 1 else ''}" + (" a side" if one.kind != "lap" else "")
        told.append(f"{names[one.joint]} {one.kind}, {rows} of {desk.quantity(one.rivet)}{pitch}{where}")
    return capital("; ".join([*told, *([strake.riveting] if strake.riveting else [])]))


def _usual(desk: Desk) -> Inline:
    """Say how the ship is riveted where a strake says nothing; nothing where that is not known."""
    practice = desk.package.condition.renewal if desk.package.condition else None
    if practice is None:
        return ()
    rows = f"seams lapped, {practice.seam_rows} row{'s' if practice.seam_rows > 1 else ''}"
    butts = f"butts lapped, {practice.butt_rows} row{'s' if practice.butt_rows > 1 else ''}"
    pitches = [
        f"{desk.quantity(pitch)} {where}"
        for pitch, where in ((practice.seam_pitch, "at seams and butts"), (practice.frame_pitch, "at frames"))
        if pitch is not None
    ]
    at = f", at {' and '.join(pitches)}" if pitches else ""
    return inline(f"Elsewhere: {rows}; {butts}; rivets of {desk.quantity(practice.rivet)}{at}. {practice.source}.")
