"""Prepares a drawing for a page: with a text alternative, names of its own, nothing that runs or loads."""

from __future__ import annotations

import re
from dataclasses import dataclass
from xml.etree import ElementTree

from tenderwright.documents.edition import Figure
from tenderwright.writing.errors import WritingError

DRAWN_ELSEWHERE = "The drawing itself is in the PDF."
"""What a document says that takes no drawings."""
_LOCAL_URL = re.compile(r"url\(\s*['\"]?#([^'\")]+)['\"]?\s*\)")
_REFUSED = frozenset({"script", "foreignObject", "image", "iframe", "a"})
_MILLIMETRES = {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72, "px": 25.4 / 96, "": 25.4 / 96}
_LENGTH = re.compile(r"\s*([\d.]+)\s*([a-z]*)\s*")


@dataclass(frozen=True)
class Room:
    """The largest a figure may be in one medium, in millimetres."""

    width: float
    height: float

    def scale(self, figure: Figure) -> float:
        """Give the factor that fits a figure into the room: 1 where it fits as drawn and keeps its scale."""
        width, height = figure_size(figure)
        return min(1.0, self.width / width, self.height / height) if width and height else 1.0


def figure_svg(figure: Figure, *, scale: float = 1.0, nested_rules: bool = False) -> str:
    """Give a figure's SVG ready to stand inside an HTML document that holds other figures.

    Identifiers are prefixed with the figure's name and the text alternative becomes its title. With
    `nested_rules`, style rules are nested so that they reach nothing outside the figure: browsers need that
    and know nesting, a typesetter that treats each drawing as a picture of its own does not. Raises
    `WritingError` for SVG that is malformed or would run or load something.
    """
    root = _parse(figure)
    prefix = f"{figure.name}--"
    for element in root.iter():
        _make_local(element, prefix, figure)
        if element.tag == "style" and element.text and nested_rules:
            element.text = f"#{prefix}drawing {{ {element.text} }}"
    for title in root.findall("title"):
        root.remove(title)
    title = ElementTree.Element("title")
    title.text = figure.alternative
    root.insert(0, title)
    if scale < 1.0:
        for side, length in zip(("width", "height"), figure_size(figure), strict=True):
            root.set(side, f"{length * scale:.3f}mm")
    root.set("xmlns", "http://www.w3.org/2000/svg")
    root.set("id", f"{prefix}drawing")
    root.set("role", "img")
    root.set("aria-label", figure.alternative)
    return ElementTree.tostring(root, encoding="unicode")


def figure_size(figure: Figure) -> tuple[float, float]:
    """Give the drawn width and height of a figure in millimetres, zero where its SVG does not say."""
    root = _parse(figure)
    return _millimetres(root.get("width", "")), _millimetres(root.get("height", ""))


def _millimetres(length: str) -> float:
    match = _LENGTH.fullmatch(length)
    return float(match[1]) * _MILLIMETRES.get(match[2], 0.0) if match else 0.0


def _parse(figure: Figure) -> ElementTree.Element:
    try:
        root = ElementTree.fromstring(figure.svg)
    except ElementTree.ParseError as error:
        raise WritingError(f"figure {figure.name!r} is not well-formed SVG: {error}") from error
    if root.tag.rpartition("}")[2] != "svg":
        raise WritingError(f"figure {figure.name!r} is not SVG")
    return root


def _make_local(element: ElementTree.Element, prefix: str, figure: Figure) -> None:
    element.tag = element.tag.rpartition("}")[2]
    if element.tag in _REFUSED:
        raise WritingError(f"figure {figure.name!r} holds <{element.tag}>, which drawings may not")
    if element.tag == "style" and element.text:
        element.text = _prefixed_urls(element.text, prefix)
    for name, value in list(element.attrib.items()):
        del element.attrib[name]
        element.set(*_local_attribute(name.rpartition("}")[2], value, prefix, figure))


def _local_attribute(name: str, value: str, prefix: str, figure: Figure) -> tuple[str, str]:
    if name.startswith("on"):
        raise WritingError(f"figure {figure.name!r} holds the attribute {name!r}, which drawings may not")
    if name == "href":
        if not value.startswith("#"):
            raise WritingError(f"figure {figure.name!r} refers to {value!r}, outside itself")
        return name, f"#{prefix}{value[1:]}"
    if name == "id":
        return name, prefix + value
    if name in ("aria-labelledby", "aria-describedby"):
        return name, " ".join(prefix + word for word in value.split())
    return name, _prefixed_urls(value, prefix)


def _prefixed_urls(text: str, prefix: str) -> str:
    return _LOCAL_URL.sub(lambda match: f"url(#{prefix}{match[1]})", text)
