"""A limit, period or sum that the contract states twice is the same in each place.

Ground: the order of documents makes one of two figures govern, and it may be the one nobody meant; a bidder prices the
cheaper (common practice, no source). A fire watch of 30 min on nine pages and of 60 min in the contract is the case
that this rule was made from.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct

from tenderwright.checks.context import Context
from tenderwright.checks.texts import Text, of_package, pattern
from tenderwright.model.package import Package
from tenderwright.notices import Note, Notice, Place
from tenderwright.quantities.quantity import Quantity


def _of(quantity: Quantity | None) -> _Datum | None:
    return _Datum(quantity.si, str(quantity), quantity.at) if quantity is not None else None


def _trim(package: Package) -> _Datum | None:
    docking = package.lightship.docking if package.lightship is not None else None
    return _of(docking.trim if docking is not None else None)


def _least_gm(package: Package) -> _Datum | None:
    return _of(package.docking_plan.least_gm if package.docking_plan is not None else None)


def _damages(package: Package) -> _Datum | None:
    damages = package.tender.damages if package.tender is not None else None
    return _Datum(float(damages.a_day), f"{damages.a_day}", damages.here) if damages is not None else None


def _grace(package: Package) -> _Datum | None:
    damages = package.tender.damages if package.tender is not None else None
    return _Datum(float(damages.after), f"{damages.after} d", damages.here) if damages is not None else None


_N = r"(?P<figure>\d+(?:\.\d+)?)"


class _Datum(Struct, frozen=True):
    """A figure of the data: the number in the unit in which texts state it, as written, and its place."""

    number: float
    text: str
    at: Place


class Subject(Struct, frozen=True):
    """Something of which the trade's words state one figure: how it is found, and in what sentences."""

    name: str
    word: str
    """A word that stands in any text that states it, so that the other texts need not be searched."""
    found: re.Pattern[str]
    unit: str
    told: re.Pattern[str] | None = None
    """What the sentence holds besides; None where the figure's own words are enough."""
    data: Callable[[Package], _Datum | None] | None = None
    """The figure in the data of the package, where it stands there too."""


SUBJECTS = (
    Subject(
        "the fire watch after hot work",
        "watch",
        pattern(rf"{_N} (?P<unit>min|h)\b after"),
        "",
        re.compile(r"\bwatch\b"),
    ),
    Subject("relative humidity for coating", "humidity", pattern(rf"humidity (?:of |is )?{_N} % or less"), "%"),
    Subject(
        "steel above the dew point for coating",
        "dew",
        pattern(rf"{_N} (?:K|°C|degC) (?:or more )?above (?:the )?dew point"),
        "K",
    ),
    Subject("the hose test", "ose", pattern(rf"[Hh]oses?(?: test)? at {_N} bar"), "bar"),
    Subject(
        "the age of a certificate for hot work",
        "certif",
        pattern(rf"(?:each|every) {_N} h\b"),
        "h",
        re.compile(r"certif.*hot.work|hot.work.*certif"),
    ),
    Subject(
        "vapour for hot work",
        "explosive",
        pattern(rf"below {_N} % of the lower explosive limit"),
        "%",
        re.compile(r"hot.work"),
    ),
    Subject(
        "the liability insurance", "liability", pattern(r"[A-Z]{3} (?P<figure>\d[\d,]*)"), "", re.compile(r"liability")
    ),
    Subject(
        "metacentric height at the critical instant",
        "etacentric",
        pattern(rf"[Mm]etacentric height (?:of )?{_N} m or more at the critical instant"),
        "m",
        data=_least_gm,
    ),
    Subject(
        "damages for a day",
        "pays",
        pattern(r"pays [A-Z]{3} (?P<figure>\d[\d,]*)"),
        "",
        re.compile(r"redelivery|late"),
        data=_damages,
    ),
    Subject(
        "the days before damages begin",
        "contract",
        pattern(rf"{_N} d after the contract day"),
        "d",
        data=_grace,
    ),
    Subject(
        "trim by the stern for docking",
        "trim",
        pattern(rf"to a trim of {_N} m by the stern"),
        "m",
        data=_trim,
    ),
)


class _Stated(Struct, frozen=True):
    """A figure where it stands."""

    figure: str
    whose: str
    place: Place
    rank: int
    """Clauses before items, and items before answers to questions."""

    @property
    def number(self) -> float:
        """Give the figure as a number; hours in minutes, so that 1 h is 60 min."""
        number, _, unit = self.figure.replace(",", "").partition(" ")
        return float(number) * (60.0 if unit == "h" else 1.0)


def check(context: Context) -> Iterator[Notice]:
    """Report each figure that differs from what the ship's data, a clause, or else the first item states."""
    by_file: dict[str, list[Text]] = {}
    for text in of_package(context):
        by_file.setdefault(text.source.path, []).append(text)
    for subject in SUBJECTS:
        files = (texts for texts in by_file.values() if subject.word in texts[0].source.text)
        texts = [text for file in files for text in file]
        stated = sorted(_stated(subject, texts), key=lambda one: one.rank)
        data = subject.data(context.package) if subject.data is not None else None
        if data is not None:
            yield from _against_data(subject, data, stated)
        else:
            yield from _against_first(subject, stated)


def _stated(subject: Subject, texts: Sequence[Text]) -> Iterator[_Stated]:
    for text in texts:
        for match in subject.found.finditer(text.source.text, text.start, text.end):
            if subject.told is None or subject.told.search(_around(text, match)):
                unit = match.groupdict().get("unit") or subject.unit
                figure = f"{match['figure']} {unit}".strip()
                yield _Stated(figure, text.whose, text.place(match, "figure"), _rank(text))


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


def _against_data(subject: Subject, data: _Datum, stated: Sequence[_Stated]) -> Iterator[Notice]:
    for one in stated:
        if abs(one.number - data.number) > 1e-9:
            message = f"{one.whose} has {one.figure} for {subject.name}, and {data.at.path} has {data.text}"
            yield _notice(one, message, Note("it is stated here", data.at))


def _notice(one: _Stated, message: str, note: Note) -> Notice:
    hint = "state it in one place, and let the others refer to that, as in `<clause:hot-work>`"
    return Notice("limit-stated-differently", one.place, message, (note,), (hint,))
