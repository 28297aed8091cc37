"""Render notices: in full with the source line marked, one on a line, as JSON, or as annotations of a change."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.notices.notice import Notice, Place

_CONTROL = re.compile("[\0-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
"""What a name or a line from anywhere could make a terminal do."""

Sources = Mapping[str, str]
"""The text of each file, by path."""

_MOST = 20
"""The most other places that are listed for reading."""


def _excerpt(place: Place, sources: Sources) -> list[str]:
    lines = sources[place.path].split("\n") if place.path in sources else []
    if not 1 <= place.line <= len(lines):
        return []
    line = lines[place.line - 1].replace("\t", " ").rstrip()
    start = max(0, place.column - 61) if len(line) > 120 else 0
    shown = line[start : start + 120]
    width = max(1, min(place.end_column or place.column + 1, start + len(shown) + 1) - place.column)
    number = f"{place.line:>5} | "
    return [number + shown, " " * 5 + " | " + " " * (place.column - 1 - start) + "^" * width]


def as_text(notices: Sequence[Notice], sources: Sources) -> str:
    """Render each notice with its source line, notes and hints."""
    out: list[str] = []
    for notice in notices:
        out.append(f"{notice.place}: {notice.severity}[{notice.code}]: {notice.message}")
        out += _excerpt(notice.place, sources)
        for note in notice.notes:
            out.append(f"        note: {note.text}" + (f" ({note.place})" if note.place else ""))
            if note.place:
                out += _excerpt(note.place, sources)
        out += [f"        hint: {hint}" for hint in notice.hints]
        if notice.also:
            out.append(f"        also: the same at {_listed(notice.also)}")
        out.append("")
    return _shown("\n".join(out))


def _shown(text: str) -> str:
    return _CONTROL.sub(lambda match: match[0].encode("unicode_escape").decode(), text)


def _listed(places: Sequence[Place]) -> str:
    """List the other places of a notice, of very many the first."""
    lines = list(dict.fromkeys(f"{place.path}:{place.line}" for place in places))
    more = f", and {len(lines) - _MOST} more" if len(lines) > _MOST else ""
    return f"{_count(places)}: {', '.join(lines[:_MOST])}{more}"


def _count(places: Sequence[Place]) -> str:
    return f"{len(places)} other place{'s' * (len(places) != 1)}"


def one_a_line(notices: Sequence[Notice]) -> str:
    """Render each notice on one line."""
    return _shown("".join(f"{n.place}: {n.severity}[{n.code}]: {n.message}{_more(n)}\n" for n in notices))


def _more(notice: Notice) -> str:
    return f" (and at {_count(notice.also)})" if notice.also else ""


def _as_data(notice: Notice) -> dict[str, Any]:
    place = notice.place
    return {
        "path": place.path,
        "line": place.line,
        "column": place.column,
        "end_column": place.end_column or place.column + 1,
        "severity": notice.severity,
        "code": notice.code,
        "message": notice.message,
        "notes": [{"text": n.text, "at": str(n.place) if n.place else None} for n in notice.notes],
        "hints": list(notice.hints),
        "also": [str(other) for other in notice.also],
    }


def as_json(notices: Sequence[Notice]) -> str:
    """Render the notices as a JSON array."""
    return json.dumps([_as_data(n) for n in notices], ensure_ascii=False, indent=2) + "\n"


def _escape(text: str, *, prop: bool = False) -> str:
    text = text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")
    return text.replace(":", "%3A").replace(",", "%2C") if prop else text


def as_annotations(notices: Sequence[Notice], above: str = "") -> str:
    """Render the notices as workflow commands that annotate a change; no line of a source is quoted.

    `above` leads from the top of the repository to the package, as `ships/` does.
    """
    return "".join(
        f"::{n.severity} file={_escape(above + n.place.path, prop=True)},line={n.place.line},col={n.place.column},"
        f"title={_escape(n.code, prop=True)}::{_escape('; '.join([n.message + _more(n), *n.hints]))}\n"
        for n in notices
    )


def summary(notices: Sequence[Notice]) -> str:
    """Say how many mistakes and warnings there are."""
    errors = sum(n.severity == "error" for n in notices)
    warnings = len(notices) - errors
    if not notices:
        return "no mistakes found"
    parts = [f"{errors} mistake{'s' * (errors != 1)}"] if errors else []
    parts += [f"{warnings} warning{'s' * (warnings != 1)}"] if warnings else []
    return " and ".join(parts)
