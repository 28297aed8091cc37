"""An item whose hours another item takes holds the service that is taken from them.

Ground: hours are priced for what their item describes; a workboat taken from the hours of crane and riggers is in
nobody's price (derived).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.texts import pattern
from tenderwright.notices import Note, Notice

CODE = "service-not-held"
_TAKEN = pattern(r"<item:(?P<of>\d+)>['’]s hours|hours (?:in|of|under|from) <item:(?P<in>\d+)>")
_SERVICES = re.compile(
    r"\b(work ?boat|punt|launch|tug|stag(?:e|ing)|scaffold|crane|derrick|rigger|fork-?lift|pump|fan|compressor|diver|"
    r"welder|electrician|carpenter|watch|rescue)",
    re.IGNORECASE,
)


def check(context: Context) -> Iterator[Notice]:
    """Report services taken from the hours of an item that does not speak of them."""
    for text in context.texts:
        if text.item is None:
            continue
        for match in _TAKEN.finditer(text.source.text, text.start, text.end):
            number = match["of"] or match["in"]
            wanted = dict.fromkeys(word.lower() for word in _SERVICES.findall(text.sentence_of(match)))
            spoken = " ".join(one.words.lower() for one in context.texts if one.item and one.item.number == number)
            missing = [word for word in wanted if spoken and word not in spoken]
            if missing:
                other = context.package.item_by_name[number]
                message = f"item {text.item.number} takes {' and '.join(missing)} from the hours of item {number}, "
                message += "which does not speak of it"
                note = Note(f"item {number} is here", other.here)
                hint = f"say it in item {number}, or price it in an item that holds it"
                yield Notice(CODE, text.place(match), message, (note,), (hint,))
