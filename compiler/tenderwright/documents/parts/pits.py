"""Pits of the shell: each stretch, each pit that something is done about, and what that comes to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from string import ascii_lowercase

from tenderwright.calculations.ship.pitting import PitStretch, pit_stretches, pit_work, pits_judged
from tenderwright.calculations.steps.outcome import Absent, Each, NotAsked
from tenderwright.calculations.thickness.pitting import Pit, Pitting
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated, why_not
from tenderwright.documents.parts.abreast import folded
from tenderwright.quantities.display import decimals, head, in_column, show
from tenderwright.quantities.retold import retold

_RULES = (
    "Pits have rules of their own and are in no mean above. Depth is taken from the mean of the plate between them. "
    "Each pit is judged as gauged; it is gauged again when it is clean, before anything is done. From a third of the "
    "plate deep it is welded if more than 6 mm is left, and cut out with its plate if not. Where more than a quarter "
    "of the face is pitted, one deeper than half the plate is cut out too (LR Naval Survey Guidance, Ch. 12). Where "
    "more than 15 % is pitted, more than 70 % of the thickness as built is to be left in each (IMO ESP Code, IACS "
    "CSR). A pit under 1 mm is coated over and watched (common practice, no source); the others are filled."
)


def pit_blocks(desk: Desk) -> list[Block]:
    """Compose the stretches and the work that their pits make; nothing where none is named."""
    stretches, judged = desk.calculated.outcome(pit_stretches), desk.calculated.outcome(pits_judged)
    if isinstance(stretches, Absent):
        return [Heading("Pitting"), not_calculated(stretches)]
    if isinstance(judged, Absent):
        return [Heading("Pitting"), not_calculated(judged)]
    if not stretches:
        return []
    return [
        Heading("Pitting"),
        _stretches(desk, stretches, judged),
        *_work(desk),
    ]


def _thickness(length: float) -> str:
    return in_column(length, "thickness")


def _stretches(desk: Desk, stretches: dict[str, PitStretch], judged: Each[Pitting]) -> Table:
    columns = (
        Column("Strake", width=1.3),
        Column("Place", width=1.5),
        Column("Pitted", "right", 0.7),
        Column("Pits gauged", "right", 0.8),
        Column(head("Plate", "thickness"), "right", 0.8),
        Column(head("Least left", "thickness"), "right", 0.9),
        Column("Cut out", "right", 0.7),
        Column("Weld", "right", 0.7),
        Column("Fill", "right", 0.7),
        Column("Watch", "right", 0.7),
        Column("Still to do", width=2),
    )
    rows = tuple(_stretch_row(desk, one, judged.outcomes[name]) for name, one in stretches.items())
    return Table(columns, rows, note=inline(retold(_RULES)), small=True)


def _stretch_row(desk: Desk, one: PitStretch, judged: Pitting | Absent) -> Row:
    written = one.pitted
    place = [f"{written.strake.name}, {one.side}", _place(desk, written.from_.x, written.to.x)]
    cells = [*place, f"{decimals(100.0 * written.share.si, 0)} %", str(len(one.pits))]
    if isinstance(judged, Absent):
        return Row(tuple(inline(text) for text in [*cells, *["–"] * 6, why_not(judged)]))
    cells += [_thickness(judged.thickness), _thickness(judged.remaining)]
    cells += [str(judged.number(name)) for name in ("local insert", "weld", "fill with epoxy", "watch")]
    return Row(tuple(inline(text) for text in [*cells, capital("; ".join(judged.reasons)) or "–"]))


def _place(desk: Desk, aft: float, forward: float) -> str:
    label = desk.package.frames.label if desk.package.frames else (lambda x: show(x, "centre", more=-1))
    return f"{label(aft)} to {label(forward)}"


def pits_listed(desk: Desk) -> list[Block]:
    """List the pits that something is done about, in two columns; nothing where none is judged."""
    stretches, judged = desk.calculated.found(pit_stretches), desk.calculated.found(pits_judged)
    if not stretches or judged is None:
        return []
    columns = (
        Column("Pit", width=2.6),
        Column(head("Left", "thickness"), "right", 0.8),
        Column(head("Depth", "thickness"), "right", 0.8),
        Column("Called for", width=1.8),
    )
    told = [(one, pit) for name, one in stretches.items() if name in judged for pit in judged[name].pits]
    watched = sum(pit.treatment == "watch" for _, pit in told)
    done = [(one, pit) for one, pit in told if pit.treatment != "watch"]
    letters = dict(zip(dict.fromkeys(pit.why for _, pit in done), ascii_lowercase, strict=False))
    rows = tuple(_pit_rows(desk, done, letters))
    whys = " ".join(f"{letter}: {why}." for why, letter in letters.items())
    note = inline(f"{whys} The {watched} pits that are coated over and watched are not listed.".strip())
    return [Heading("Pits one by one"), *folded(Table(columns, rows, note=note, small=True))]


def _pit_rows(desk: Desk, told: list[tuple[PitStretch, Pit]], letters: Mapping[str, str]) -> Iterator[Row]:
    label = desk.package.frames.label if desk.package.frames else (lambda x: show(x, "centre", more=-1))
    for one, pit in told:
        assert pit.at is not None
        cells = [
            f"{one.pitted.strake.name} {one.side}, {label(pit.at)}",
            _thickness(pit.left),
            _thickness(pit.depth),
            f"{capital(pit.treatment)} ({letters.get(pit.why, pit.why)})",
        ]
        yield Row(tuple(inline(text) for text in cells))


def _work(desk: Desk) -> list[Block]:
    found = desk.calculated.outcome(pit_work)
    if isinstance(found, NotAsked):
        return []
    if isinstance(found, Absent):
        return [not_calculated(found, "Work on the pits")]
    words = (
        f"Of the pits gauged, {found['inserted']:.0f} go with plate that is renewed below. In the plate that stays, "
        "the shares of them that are welded and filled, with the share of the face that is pits, come to "
        f"{show(found['weld_area'], 'spot')} of pit mouth to weld and {show(found['fill_area'], 'area', more=1)} "
        f"to fill, over {show(found['worked_area'], 'area')} of plate. Where the deepest pits were sought out, that "
        "is more welding than there will be."
    )
    return [Paragraph(inline(words))]
