"""What stands under the title of an item: its kind, when, where, and what it is tied to."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Inline, Paragraph, Span, inline
from tenderwright.model.item import Item
from tenderwright.quantities.customs import day

KINDS = {
    "definite": ("Definite", "fully described, one price"),
    "measured": ("Measured", "rates, measured again when done"),
    "contingent": ("Contingent", "only on written instruction"),
    "option": ("Option", "taken up or not by the owner"),
    "provisional": ("Provisional sum", "set by the owner"),
    "credit": ("Credit", "to the owner"),
    "owner": ("Owner's work", "not priced"),
    "information": ("Information", "nothing to price"),
}
_PHASES = {
    "before docking": "afloat before docking",
    "dry": "in dock, dry",
    "after undocking": "afloat after undocking",
    "any": "at any time",
}


def item_head(desk: Desk, item: Item) -> list[Block]:
    """Say in a line or two what an item is, when and where."""
    name, means = KINDS[item.kind]
    first: list[Inline] = [inline(Span(name, strong=True), f" ({means})"), inline(_when(item)), where_of(desk, item)]
    if item.safety:
        first.append(inline("needed for safety or to keep her afloat"))
    blocks: list[Block] = [Paragraph(_run(first), anchor=f"head-{item.number}")]
    more = _ties(desk, item)
    return [*blocks, Paragraph(_run(more), anchor=f"ties-{item.number}")] if more else blocks


def _run(pieces: list[Inline], between: str = " · ", before: str = "") -> Inline:
    """Run pieces into one line with dots, or something else, between."""
    spans: list[Span] = [Span(before)] if before else []
    for index, piece in enumerate(piece for piece in pieces if piece):
        spans += [*([Span(between)] if index else []), *piece]
    return tuple(spans)


def _when(item: Item) -> str:
    begins, ends = _PHASES[item.phase], _PHASES[item.last_phase]
    if begins == ends:
        return begins
    return f"from {begins}, to {ends}" if "," in begins else f"from {begins} to {ends}"


def where_of(desk: Desk, item: Item) -> Inline:
    """Give the zones, tanks, openings, frames, strakes and side at which an item is, in one line."""
    where = item.where
    things = desk.refs((*where.zones, *where.tanks, *where.openings))
    places: list[Inline] = [things] if things else []
    if where.extent:
        places.append(inline(str(where.extent)))
    if where.strakes:
        names = [Span(strake.name, desk.anchor(strake.kind, strake.name)) for strake in where.strakes]
        places.append(_run([inline(name) for name in names], ", ", "strake " if len(names) == 1 else "strakes "))
    if where.side:
        places.append(inline({"both": "both sides"}.get(where.side, where.side)))
    return _run(places, "; " if any("; " in span.text for span in things) else ", ")


def _ties(desk: Desk, item: Item) -> list[Inline]:
    found: list[Inline] = []
    for label, on in (
        ("begins", item.begins_on),
        ("done by", item.ends_on),
        ("taken up or not by", item.option_until),
    ):
        if on is not None:
            found.append(inline(f"{label} {on} ({day(on.on(desk.tender.events))})"))
    if item.duration is not None:
        found.append(inline(f"likely takes {desk.quantity(item.duration)}"))
    if item.where.boundary_of:
        found.append(inline("on the boundary of ", *desk.refs(item.where.boundary_of)))
    return found
