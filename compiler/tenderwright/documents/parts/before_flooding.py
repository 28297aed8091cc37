"""What must be true before the dock is flooded, and what is read after she floats: forms for the dockside.

The rows are common practice, no source; which of them a ship has follows from her data.
"""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.ship.stops import floating_stops
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.parts.openings_register import is_plug, of_wood
from tenderwright.planning.inspection.points import Point
from tenderwright.planning.inspection.register import RegisterRow
from tenderwright.quantities.display import head, show

_SIGNED_BY = ("Dockmaster", "Owner's representative", "Naval architect")


def before_flooding(desk: Desk, points: Sequence[Point], rows: Sequence[RegisterRow]) -> list[Block]:
    """Compose the sheet that is signed row by row before any water is let in."""
    asked = [*_of_the_papers(desk, points, rows), *_of_the_ship(desk), *_of_the_dock(desk)]
    columns = (
        Column("No.", width=0.5),
        Column("What must be true before any water is let in", width=6.2),
        Column("Seen, or read", width=2),
        Column("Yard", width=1.4),
        Column("Owner", width=1.4),
    )
    made = tuple(Row((inline(str(n)), inline(words), (), (), ())) for n, words in enumerate(asked, start=1))
    return [
        Paragraph(inline("A row that is not signed by both keeps the water out. Rows are common practice, no source.")),
        Table(columns, made, small=True, ruled=True),
        Heading("Authority to flood"),
        signed("Signed when every row above is"),
    ]


def signed(when: str) -> Table:
    """Give a form for who signs, and when."""
    columns = (Column(when, width=1.6), Column("Name", width=2), Column("Signature", width=2), Column("Day and hour"))
    return Table(columns, tuple(Row((inline(one), (), (), ())) for one in _SIGNED_BY), ruled=True)


def _of_the_papers(desk: Desk, points: Sequence[Point], rows: Sequence[RegisterRow]) -> list[str]:
    holds = sum(1 for one in points if one.before in ("docking", "flooding"))
    found = (
        [f"Hold points that come before flooding: all {holds} of the plan released, or not reached"] if holds else []
    )
    if rows:
        found.append(f"Register of openings: all {len(rows)} rows, and each hole cut, closed, tested and signed twice")
    if plugs := sum(1 for one in rows if is_plug(desk, one)):
        found.append(f"Docking plugs: {plugs} in place, tight and locked; as many back as were drawn, none in the safe")
    if openings := sum(1 for one in rows if one.kind == "opening" and not is_plug(desk, one)):
        found.append(f"Valves and overboards: {openings} openings seen shut or blanked, each valve worked once")
    if blocks := sum(1 for one in rows if one.kind == "block"):
        found.append(f"Keel blocks: {blocks} that were moved bear again, side blocks and shores in place")
    return found


def _of_the_ship(desk: Desk) -> list[str]:
    package, ship = desk.package, desk.package.particulars
    found = ["Work below the water: complete, each foreman says so for his trade"]
    if package.tanks:
        found += [
            "Tanks and voids: nobody in them, tools counted, lids shut, pipes clear",
            "Soundings: equal to those before docking, or each difference explained, in writing",
        ]
    found.append(
        "Weights that came aboard, went or were moved: log signed, dockmaster told, stability as floated in hand"
    )
    if package.anodes:
        found.append(f"Anodes: {len(package.anodes)} on the list, covers off, no paint on them")
    if any("coats" in item.does for item in package.items if not item.withdrawn):
        found.append("Paint: cured by its maker's sheet for the steel's own temperature; block patches done or listed")
    if ship is not None and ship.shafts:
        found.append("Propeller, shaft and rudder: locked or free as agreed, glands tight, lines clear")
    else:
        found.append("Rudder: secured or free as agreed")
    if any(one.kind == "sea chest" for one in package.openings):
        found.append("Sea chests: empty of tools and rags, gratings on")
    if of_wood(desk):
        found.append("Planking: wetted as agreed; pumps aboard enough for her until she has taken up")
    found.append("Anchors, boats and everything that can move: secured")
    return found


def _of_the_dock(desk: Desk) -> list[str]:
    stops = desk.calculated.found(floating_stops)
    hold = "Hold: at the height of the sea chests, until every space is seen dry"
    if stops is not None and stops.covered is not None:
        level = show(stops.covered, "centre")
        hold = f"Hold: agreed at {level} over the first block, {stops.last_opening} covered, until all is seen dry"
    return [
        "Persons: everybody out of the dock, from under her and from her tanks; counted by name",
        "Staging, hoses, cables, waste: out of the dock; nothing that floats left",
        "Shore power, earth, water, telephone: off, or long enough for her rise",
        "Pumps aboard: two ways of pumping proved on the day; alarms live",
        "Watch: a person at every valve and space below the water, each able to speak to the dockmaster",
        "Wind and water: within what the dockmaster allows for the whole of it",
        hold,
    ]


def after_undocking(desk: Desk) -> list[Block]:
    """Compose the forms for what is read and sounded once she floats."""
    return [*_soundings(desk), Heading("As she floats"), _afloat(desk), signed("She is taken over afloat")]


def _soundings(desk: Desk) -> list[Block]:
    spaces = [tank.name for tank in desk.package.tanks] or [""] * 6
    when = ("At the hold", "Afloat", "After 1 h", "After 4 h", "After 24 h")
    columns = (
        Column("Tank or space", width=3),
        *(Column(f"{one}", width=1.2) for one in when),
        Column("By", width=1.2),
    )
    blank = tuple(() for _ in range(len(when) + 1))
    rows = tuple(Row((inline(name) if name else (), *blank)) for name in (*spaces, *([""] * 3)))
    unit = head("Soundings", "sounding")
    words = f"{unit}; hour beside each. Bilges and every space without a pipe on the lines left free."
    return [Paragraph(inline(words)), Table(columns, rows, small=True, ruled=True)]


def _afloat(desk: Desk) -> Table:
    ship, package = desk.package.particulars, desk.package
    asked = ["Drafts forward, amidships and aft, both sides; list; density of the water"]
    if ship is not None and ship.shafts:
        asked.append("Stern gland: drops in a minute, shaft at rest")
    if package.openings:
        asked.append("Every sea valve opened and shut once under pressure; seats and glands tight")
    if package.anodes:
        asked.append("Potential of the hull at three places each side, 24 h afloat and when it stands still")
    if of_wood(desk):
        asked.append("Water pumped out in each hour until she has taken up")
    asked += [
        "Insulation of the wiring measured before shore power is taken",
        "Bilge and fire alarms tried; pumps ready and left so",
        "What blocks, shores and ropes left on her: looked at, and photographed",
        "Rows of the tow's own list gone through again, where she is towed",
        "Ship's papers, keys and what was taken from aboard: back, by list",
    ]
    columns = (
        Column("After she floats", width=5),
        Column("Read", width=3),
        Column("Yard", width=1.2),
        Column("Owner", width=1.2),
    )
    return Table(columns, tuple(Row((inline(words), (), (), ())) for words in asked), small=True, ruled=True)
