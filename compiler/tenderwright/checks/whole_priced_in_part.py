"""A requirement that reads as if it covered a whole surface stands with lines that price the whole of it.

Ground: the text of the item governs what is done and the line what is paid, so that a yard does the whole shell for the
price of a part, or claims the rest (common practice, no source). Lines that price nine tenths count as whole.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.texts import Text, of_item, pattern
from tenderwright.model.coating import Zone
from tenderwright.model.item import Item, Line
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

WHOLE = 0.90
_WORK = r"(?:[Bb]last|[Cc]oat|[Pp]rime|[Ww]ash|[Pp]repare|[Aa]brade|[Jj]et|[Pp]aint|[Dd]egrease)"
_PART = re.compile(
    r"\b(?:spots?|places?|parts?|patch(?:es)?|panels?|areas?|bare|broken|failed|marked|named|where|edges?|windows?|trial)\b"
)
_FIELDS = (("requirements", "*"),)


def check(context: Context) -> Iterator[Notice]:
    """Warn of requirements that bound no part of a zone, where the firm lines in square metres price only a part."""
    zones = {zone.zone: zone for zone in context.package.zones}
    for item in context.live_items:
        for reference in item.where.zones:
            zone = zones.get(reference.name)
            area = context.value(f"zone.{reference}.area")
            if zone is None or area is None:
                continue
            priced = _priced(context, item)
            if 0 < priced < WHOLE * float(area.si):
                yield from _whole(item, zone, priced, float(area.si))


def _whole(item: Item, zone: Zone, priced: float, area: float) -> Iterator[Notice]:
    surface = re.escape(zone.name.split(",")[0].lower())
    whole = pattern(
        rf"\b{_WORK}\b[^.;]*?\b(?:the )?(?P<whole>(?:whole |entire )?{surface.replace(chr(92) + ' ', ' ')})\b"
    )
    for text in of_item(item, _FIELDS):
        for match in whole.finditer(text.source.text, text.start, text.end):
            if _bounded(text, match):
                continue
            message = (
                f"item {item.number} asks for work on the {' '.join(match['whole'].split())}, "
                f"{show(area, 'area', more=-1)}, and its lines price {show(priced, 'area', more=-1)}"
            )
            hint = "say which part is meant, such as `the places marked`, or price the whole zone"
            yield Notice("whole-priced-in-part", text.place(match, "whole"), message, hints=(hint,))


def _bounded(text: Text, match: re.Match[str]) -> bool:
    """Tell whether the sentence speaks of a part; one that says `whole` does not."""
    return not match["whole"].startswith(("whole", "entire")) and bool(_PART.search(text.sentence_of(match)))


def _priced(context: Context, item: Item) -> float:
    """Give the square metres that the item's firm lines price; a contingent line is for what may come on top."""
    return sum(_area(context, line) for line in item.lines if item.kind_of(line) != "contingent")


def _area(context: Context, line: Line) -> float:
    if line.takes is not None:
        value = context.value(line.takes.name)
        share = line.share.si if line.share is not None else 1.0
        return float(value.si) * share if value is not None and value.dimension == "area" else 0.0
    return line.quantity.si if line.quantity is not None and line.quantity.dimension == "area" else 0.0
