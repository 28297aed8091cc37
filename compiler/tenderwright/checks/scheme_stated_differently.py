"""What an item says of preparation, salts, films and stripe coats is what the scheme that it applies prints.

Ground: the scheme is printed in the item, and the requirements stand beside it; of two grades or films the guarantee of
the paint's maker holds for one (common practice, no source). Grades: ISO 8501-1, ISO 8501-4 and the joint standards.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from tenderwright.checks.context import Context
from tenderwright.checks.texts import Text, of_item, pattern
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Scheme
from tenderwright.notices import Note, Notice, Place

CODE = "scheme-stated-differently"
_GRADE = pattern(r"\b(?:Sa [123]|St [23]|Wa [12]|WJ-[1-4]|SP ?\d{1,2})(?: 1/2|½| ½|\.5)?(?![\d/])")
_ALIKE = {"SP5": "Sa3", "SP10": "Sa2+", "SP6": "Sa2", "SP7": "Sa1", "SP3": "St3", "SP2": "St2"}
"""Grades of the joint standards that correspond to one of ISO 8501-1."""
_SALTS = pattern(r"(\d+(?:\.\d+)?) mg/m2")
_DUST = pattern(r"[Dd]ust quantity (\d)\b")
_PROFILE = pattern(r"[Pp]rofile (?:of )?(\d+)(?: (?:um|µm))? to (\d+) (?:um|µm)")
_FILM = pattern(r"\bcoats? (?:of|at) (\d+) (?:um|µm|μm)\b|\b(\d+) (?:um|µm|μm) (?:each|nominal)\b")
_STRIPE = re.compile(r"\b[Ss]trip(?:e|es|ing)\b")
_STRIPES = pattern(r"\b(one|two|three) stripe coats?\b|\b[Ss]trip(?:e|ing)\b[^.;]*?\b(once|twice)\b")
_EACH = pattern(r"\b(one|two|three) stripe coats?\b[^.]*\bbefore each\b")
_WORDS = {"one": 1, "once": 1, "two": 2, "twice": 2, "three": 3}


def check(context: Context) -> Iterator[Notice]:
    """Report figures beside a scheme that are not the scheme's, and stripe coats that a clause asks of all schemes."""
    by_item: dict[str, list[Scheme]] = {}
    for scheme in context.package.schemes:
        for item in appliers(context.package, scheme):
            by_item.setdefault(item.number, []).append(scheme)
    for number, schemes in by_item.items():
        for text in of_item(context.package.item_by_name[number]):
            yield from _in_text(text, schemes)
    yield from _clauses(context)


def _in_text(text: Text, schemes: Sequence[Scheme]) -> Iterator[Notice]:
    words, start, end = text.source.text, text.start, text.end
    grades = {_plain(found[0]) for scheme in schemes if (found := _GRADE.search(scheme.preparation.grade))}
    for match in _GRADE.finditer(words, start, end):
        if grades and _plain(match[0]) not in grades and "<item:" not in text.sentence_of(match):
            yield _differs(text, match, f"grade {' '.join(match[0].split())}", schemes)
    salts = {scheme.preparation.salts.si for scheme in schemes if scheme.preparation.salts is not None}
    for match in _SALTS.finditer(words, start, end):
        if salts and all(abs(float(match[1]) * 1e-6 - figure) > 1e-12 for figure in salts):
            yield _differs(text, match, f"salts of {match[1]} mg/m2", schemes)
    dust = {scheme.preparation.dust for scheme in schemes if scheme.preparation.dust is not None}
    for match in _DUST.finditer(words, start, end):
        if dust and int(match[1]) not in dust:
            yield _differs(text, match, f"dust quantity {match[1]}", schemes)
    profiles = {
        (round(one.profile_low.si * 1e6), round(one.profile_high.si * 1e6))
        for one in (scheme.preparation for scheme in schemes)
        if one.profile_low is not None and one.profile_high is not None
    }
    for match in _PROFILE.finditer(words, start, end):
        if profiles and (int(match[1]), int(match[2])) not in profiles:
            yield _differs(text, match, f"a profile of {match[1]} um to {match[2]} um", schemes)
    films = {round(film * 1e6) for scheme in schemes for film in _films(scheme)}
    for match in _FILM.finditer(words, start, end):
        figure = match[1] or match[2]
        if int(figure) not in films and "<item:" not in text.sentence_of(match):
            yield _differs(text, match, f"a film of {figure} um", schemes)
    stripes = [sum(coat.stripe.coats for coat in scheme.coats if coat.stripe is not None) for scheme in schemes]
    counted = next(_STRIPES.finditer(words, start, end), None)
    if counted is not None:
        if _WORDS[counted[1] or counted[2]] not in stripes:
            yield _differs(text, counted, f"`{' '.join(counted[0].split())}`", schemes)
    elif not any(stripes) and (asked := _STRIPE.search(words, start, end)):
        yield _differs(text, asked, "stripe coats", schemes)


def _plain(grade: str) -> str:
    """Write a grade without spaces, halves as `+`, and one of the joint standards as its like of ISO 8501-1."""
    plain = re.sub(r"\s+|[.]5|1/2|½", lambda found: "" if found[0].isspace() else "+", grade)
    return _ALIKE.get(plain, plain)


def _films(scheme: Scheme) -> Iterator[float]:
    """Give every film that the scheme may be asked for: of a coat, and of coats one over the other."""
    films = [coat.dft.si for coat in scheme.coats]
    for first in range(len(films)):
        for last in range(first, len(films)):
            yield sum(films[first : last + 1])


def _differs(text: Text, match: re.Match[str], what: str, schemes: Sequence[Scheme]) -> Notice:
    names = " and ".join(f"`{scheme.scheme}`" for scheme in schemes)
    message = f"{text.whose} asks for {what}, and its scheme {names} does not"
    notes = tuple(Note(f"scheme `{scheme.scheme}` is printed from here", _place(scheme, what)) for scheme in schemes)
    hint = "say `the grade of the scheme` or the like, or put the figure right in the scheme"
    return Notice(CODE, text.place(match), message, notes, (hint,))


def _place(scheme: Scheme, what: str) -> Place:
    return scheme.preparation.here if what.startswith(("grade", "salts", "dust", "a profile")) else scheme.coats[0].here


def _clauses(context: Context) -> Iterator[Notice]:
    """Tell of a clause that asks for stripe coats before each coat, where schemes print others."""
    for clause in context.package.clauses:
        source = clause.text.source
        text = Text(f"clause `{clause.clause}`", None, source, 0, len(source.text))
        for match in _EACH.finditer(source.text):
            each = _WORDS[match[1]]
            other = [
                scheme
                for scheme in context.package.schemes
                if any((coat.stripe.coats if coat.stripe is not None else 0) != each for coat in scheme.coats)
            ]
            if other and "scheme" not in text.sentence_of(match):
                names = ", ".join(f"`{scheme.scheme}`" for scheme in other)
                message = (
                    f"{text.whose} asks for {match[1]} stripe coat before each coat, and these schemes do not: {names}"
                )
                hint = "let the clause refer to the scheme, which prints the stripe coats that are priced"
                yield Notice(CODE, text.place(match, 1), message, hints=(hint,))
