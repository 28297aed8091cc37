"""A limit, period or sum that the contract states twice is the same in each place.

Ground: the order of documents makes one of two figures govern, and it may be the one nobody meant; a bidder prices the
cheaper (common practice, no source). A fire watch of 30 min on nine pages and of 60 min in the contract is the case
that this rule was made from.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from tenderwright.checks.context import Context
from tenderwright.checks.stated_once import SUBJECTS, Datum, Subject
from tenderwright.checks.texts import Text, of_item, pattern
from tenderwright.notices import Note, Notice, Place

_ANSWER = pattern(r"answer takes (\d+) h\b")


class _Stated(Struct, frozen=True):
    """A figure where it stands."""

    figure: str
    whose: str
    place: Place
    rank: int
    """Clauses before items, and items before answers to questions."""

    @property
    def number(self) -> float | str:
        """Give the figure as a number, hours in minutes, so that 1 h is 60 min; a letter of a grade as it is."""
        number, _, unit = self.figure.replace(",", "").partition(" ")
        return number if number.isalpha() else float(number) * (60.0 if unit == "h" else 1.0)


def check(context: Context) -> Iterator[Notice]:
    """Report each figure that differs from what the ship's data, a clause, or else the first item states."""
    files: dict[str, list[Text]] = {}
    for text in context.texts:
        files.setdefault(text.source.path, []).append(text)
    for subject in SUBJECTS:
        stated = sorted(_stated(subject, files.values()), key=lambda one: one.rank)
        data = subject.data(context.package) if subject.data is not None else None
        if data is not None:
            yield from _against_data(subject, data, stated)
        else:
            yield from _against_first(subject, stated)
    yield from _gates(context)


def _gates(context: Context) -> Iterator[Notice]:
    """Tell of a gate whose words give the owner another time than its `within`."""
    for item in context.live_items:
        if item.decision is None:
            continue
        within = item.decision.within
        for text in of_item(item, (("scope",), ("requirements", "*"))):
            for match in _ANSWER.finditer(text.source.text, text.start, text.end):
                if abs(float(match[1]) * 3600.0 - within.si) > 1.0:
                    message = (
                        f"item {item.number} gives the owner {match[1]} h for the answer, and `within` has {within}"
                    )
                    stated = _Stated(f"{match[1]} h", text.whose, text.place(match, 1), 1)
                    yield _notice(stated, message, Note("it is stated here", within.at))


def _stated(subject: Subject, files: Iterable[Sequence[Text]]) -> Iterator[_Stated]:
    for texts in files:
        words = texts[0].source.text
        if not subject.may_stand_in(words):
            continue
        for match in subject.found.finditer(words):
            text = next((one for one in texts if one.start <= match.start() and match.end() <= one.end), None)
            if text is not None and (subject.told is None or subject.told.search(_around(text, match))):
                unit = match.groupdict().get("unit") or subject.unit
                group = next(name for name, found in match.groupdict().items() if found and name.startswith("figure"))
                figure = f"{match[group]} {unit}".strip()
                yield _Stated(figure, text.whose, text.place(match, group), _rank(text))


def _around(text: Text, match: re.Match[str]) -> str:
    """Give the sentence; of a hold point, all that it says."""
    path = next((path for path, ends in text.source.ends.items() if ends == (text.start, text.end)), ())
    if text.item is not None and path[:1] == ("holds",):
        hold = text.item.holds[int(path[1])]
        return " ".join((hold.at, hold.accept.text, hold.record))
    return text.sentence_of(match)


def _rank(text: Text) -> int:
    if text.item is not None:
        return 1
    return 2 if text.whose.startswith("question") else 0


def _against_first(subject: Subject, stated: Sequence[_Stated]) -> Iterator[Notice]:
    for other in stated[1:]:
        first = stated[0]
        if other.number != first.number:
            message = f"{other.whose} has {other.figure} for {subject.name}, and {first.whose} has {first.figure}"
            yield _notice(other, message, Note(f"{first.whose} states it here", first.place))


def _against_data(subject: Subject, data: Datum, stated: Sequence[_Stated]) -> Iterator[Notice]:
    for one in stated:
        if isinstance(one.number, str) or abs(one.number - data.number) > 1e-9:
            message = f"{one.whose} has {one.figure} for {subject.name}, and {data.at.path} has {data.text}"
            yield _notice(one, message, Note("it is stated here", data.at))


def _notice(one: _Stated, message: str, note: Note) -> Notice:
    hint = "state it in one place, and let the others refer to that, as in `<clause:hot-work>`"
    return Notice("limit-stated-differently", one.place, message, (note,), (hint,))
