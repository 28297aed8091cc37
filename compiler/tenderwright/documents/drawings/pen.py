"""The pen: SVG elements in millimetres of paper, escaped, and rounded so that the same drawing gives the same bytes."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from itertools import accumulate, takewhile
from xml.sax.saxutils import escape

Point = tuple[float, float]
Segment = tuple[Point, Point]

FINE, MEDIUM, HEAVY = 0.18, 0.35, 0.5
"""Line weights, mm: hatching, dimensions and leaders; edges; outlines and what must be seen first."""
PREFIX = "dw-"
"""Begins every class inside a drawing, so that no style of the page it stands on is meant for it."""
HIDDEN, CHAIN, LIMIT = "1.4 0.7", "5 0.8 0.8 0.8", "3 1"
"""Dashes: hidden edges, centrelines and perpendiculars, limits."""
INK, FAINT, PAPER = "#111111", "#555555", "#ffffff"
BLUE, RED, GREEN, OCHRE, PURPLE = "#0072b2", "#c14a00", "#007a5a", "#8a6200", "#8e4a78"
"""Colours told apart by colour-blind readers; no meaning rests on them alone."""
FAMILY = "'Tender Sans','Source Sans 3','Source Sans Pro','Segoe UI',Helvetica,Arial,'Liberation Sans',sans-serif"
FACE: Mapping[str, str | float] = {
    "font-family": FAMILY, "font-size": 2.5, "font-style": "normal", "font-weight": "400", "letter-spacing": "0"
}  # fmt: skip
"""What a drawing would otherwise inherit from the page, set at its root."""
SMALL, NORMAL, TITLE = 2.5, 2.8, 4.0
"""Sizes of type, mm."""

_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_WIDTHS = (("iljI.,:;'|!", 0.28), ("frt()[]-/·° ", 0.34), ("mwMW%—½¼¾…", 0.87), ("ABCDEFGHKLNOPQRSTUVXYZ−+=<>×", 0.70))
_OTHER = 0.556
BOLD = 1.07
"""How much wider bold type runs."""


def number(value: float) -> str:
    """Write a number to two decimals without needless zeros; raises ValueError where it is not finite."""
    if not math.isfinite(value):
        raise ValueError(f"a drawing cannot hold {value}")
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def words(text: str) -> str:
    """Escape text for SVG and drop characters that XML cannot hold."""
    return escape(_NOT_XML.sub("", text), {'"': "&quot;"})


def element(name: str, attributes: Mapping[str, str | float], *content: str) -> str:
    """Make an element; empty attributes are left out, and content is markup already."""
    given = "".join(
        f' {key}="{words(value) if isinstance(value, str) else number(value)}"'
        for key, value in attributes.items()
        if value != ""
    )
    return f"<{name}{given}>{''.join(content)}</{name}>" if content else f"<{name}{given}/>"


def picture(width: float, height: float, words: str, marks: Iterable[str]) -> str:
    """Put marks on a picture without a title strip, its sides in mm, and give it as an SVG document."""
    attributes: dict[str, str | float] = {
        "xmlns": "http://www.w3.org/2000/svg",
        "width": f"{number(width)}mm",
        "height": f"{number(height)}mm",
        "viewBox": f"0 0 {number(width)} {number(height)}",
        "role": "img",
        "aria-label": words,
        **FACE,
    }
    return element("svg", attributes, *marks)


def document(name: str, size: tuple[float, float], title: str, description: str, marks: Iterable[str]) -> str:
    """Put marks on a sheet, its sides in mm, and give it as an SVG document with its title and description."""
    wide, high = map(number, size)
    attributes: dict[str, str | float] = {
        "xmlns": "http://www.w3.org/2000/svg",
        "width": f"{wide}mm",
        "height": f"{high}mm",
        "viewBox": f"0 0 {wide} {high}",
        "role": "img",
        "aria-labelledby": f"{name}-title {name}-desc",
        **FACE,
    }
    return element(
        "svg",
        attributes,
        element("title", {"id": f"{name}-title"}, words(title)),
        element("desc", {"id": f"{name}-desc"}, words(description)),
        element("rect", {"x": 0, "y": 0, "width": size[0], "height": size[1], "fill": PAPER}),
        *(f"\n{mark}" for mark in marks if mark),
        "\n",
    )


def line(start: Point, end: Point, width: float = FINE, dash: str = "", colour: str = INK) -> str:
    """Draw a straight line."""
    ends: dict[str, str | float] = {"x1": start[0], "y1": start[1], "x2": end[0], "y2": end[1]}
    return element("line", {**ends, "stroke": colour, "stroke-width": width, "stroke-dasharray": dash})


def curve(points: Sequence[Point], width: float = FINE, dash: str = "", colour: str = INK) -> str:
    """Draw straight lines from point to point, left open."""
    return _path("M" + "L".join(_pair(p) for p in points), width, dash, colour, "none")


def polygon(points: Sequence[Point], width: float = FINE, dash: str = "", colour: str = INK, fill: str = "none") -> str:
    """Draw a closed outline; a width of 0 draws the filling alone."""
    return _path("M" + "L".join(_pair(p) for p in points) + "Z", width, dash, colour, fill)


def strokes(
    segments: Iterable[Segment], width: float = FINE, dash: str = "", colour: str = INK, begin: float = 0.0
) -> str:
    """Draw many separate straight lines as one element; nothing for none. Dashes begin so many mm in."""
    data = "".join(f"M{_pair(a)}L{_pair(b)}" for a, b in segments)
    return _path(data, width, dash, colour, "none", begin) if data else ""


def circle(centre: Point, radius: float, width: float = FINE, fill: str = "none", colour: str = INK) -> str:
    """Draw a circle; a width of 0 draws the filling alone."""
    where: dict[str, str | float] = {"cx": centre[0], "cy": centre[1], "r": radius}
    edge: dict[str, str | float] = {"stroke": colour, "stroke-width": width} if width else {}
    return element("circle", {**where, "fill": fill, **edge})


def text(
    at: Point,
    content: str,
    size: float = SMALL,
    anchor: str = "start",
    bold: bool = False,
    colour: str = INK,
    kind: str = "",
) -> str:
    """Write one line of text on a baseline; `kind` becomes its class, prefixed, by which a reader can find it."""
    attributes: dict[str, str | float] = {"x": at[0], "y": at[1], "font-size": size}
    if anchor != "start":
        attributes["text-anchor"] = anchor
    if bold:
        attributes["font-weight"] = "600"
    return element("text", {**attributes, "fill": colour, "class": PREFIX + kind if kind else ""}, words(content))


def label(
    at: Point,
    content: str,
    size: float = SMALL,
    anchor: str = "middle",
    bold: bool = False,
    colour: str = INK,
    kind: str = "",
) -> str:
    """Write text on a ground of paper, centred in height on the point, so that lines under it do not cross it."""
    wide, high = text_width(content, size, bold) + 0.6, size * 0.95
    left = at[0] - {"start": 0.3, "middle": wide / 2, "end": wide - 0.3}[anchor]
    ground: dict[str, str | float] = {"x": left, "y": at[1] - high / 2, "width": wide, "height": high, "fill": PAPER}
    return element("rect", ground) + text((at[0], at[1] + size * 0.34), content, size, anchor, bold, colour, kind)


def text_width(content: str, size: float, bold: bool = False) -> float:
    """Estimate how wide text runs, on the wide side for common faces without serifs, mm."""
    return sum(map(_ems, content)) * size * (BOLD if bold else 1.0)


@cache
def _ems(letter: str) -> float:
    """Give the width of a letter in ems."""
    return next((width for set_, width in _WIDTHS if letter in set_), _OTHER)


def shortened(content: str, size: float, room: float, bold: bool = False) -> str:
    """Shorten text with an ellipsis until it fits the room, mm."""
    if text_width(content, size, bold) <= room:
        return content
    reach = accumulate(text_width(letter, size, bold) for letter in content)
    left = room - text_width("…", size, bold)
    kept = sum(1 for _ in takewhile(lambda so_far: so_far <= left, reach))
    return content[:kept].rstrip(" ,;:(") + "…"


def wrapped(content: str, size: float, room: float, rows: int, bold: bool = False) -> list[str]:
    """Set words in up to so many rows; the last is shortened where they are too many."""
    lines = [""]
    for word in content.split():
        wider = f"{lines[-1]} {word}".strip()
        if text_width(wider, size, bold) <= room or not lines[-1] or len(lines) == rows:
            lines[-1] = wider
        else:
            lines.append(word)
    return [shortened(one, size, room, bold) for one in lines]


def _pair(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def _path(data: str, width: float, dash: str, colour: str, fill: str, begin: float = 0.0) -> str:
    attributes: dict[str, str | float] = {"d": data, "fill": fill}
    if width:
        attributes |= {"stroke": colour, "stroke-width": width, "stroke-dasharray": dash, "stroke-linejoin": "round"}
    if dash and begin:
        attributes["stroke-dashoffset"] = begin
    return element("path", attributes)
