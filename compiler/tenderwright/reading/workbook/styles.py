"""How the cells of a workbook are lettered: struck out, raised, or in the colour of their ground."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from xml.etree.ElementTree import Element

_WHITE = ("theme 0", "indexed 1", "indexed 9", "indexed 65")
_LIGHT = 0.8
"""Of full light; letters and ground that are both lighter are told apart by nobody."""


@dataclass(frozen=True)
class Lettering:
    """What is odd of the letters of a cell or of a run in it."""

    struck: bool = False
    raised: bool = False
    light: bool = False

    @property
    def told(self) -> str:
        """Say what is odd; empty where nothing is."""
        odd = (("struck out", self.struck), ("raised or lowered", self.raised))
        return " and ".join(words for words, is_so in odd if is_so)


def local(tag: str) -> str:
    """Give the name of an element without its namespace."""
    return tag.rpartition("}")[2]


def children(element: Element | None, name: str) -> list[Element]:
    """List the children of a name."""
    return [one for one in element if local(one.tag) == name] if element is not None else []


def child(element: Element | None, name: str) -> Element | None:
    """Give the first child of a name."""
    return next(iter(children(element, name)), None)


def lettering(font: Element | None) -> Lettering:
    """Read the properties of a font, as of a cell or of a run of text."""
    struck = child(font, "strike")
    raised = child(font, "vertAlign")
    colour = child(font, "color")
    return Lettering(
        struck is not None and struck.get("val", "1") not in ("0", "false"),
        raised is not None and raised.get("val", "baseline") != "baseline",
        colour is not None and _light(colour),
    )


def letterings(styles: Element | None) -> list[tuple[Lettering, bool]]:
    """Give by number of style how its cells are lettered, and whether letters and ground are alike light."""
    fonts = [lettering(font) for font in children(child(styles, "fonts"), "font")]
    grounds = [_light_ground(fill) for fill in children(child(styles, "fills"), "fill")]
    return list(_formats(child(styles, "cellXfs"), fonts, grounds))


def _formats(formats: Element | None, fonts: list[Lettering], grounds: list[bool]) -> Iterator[tuple[Lettering, bool]]:
    for one in children(formats, "xf"):
        font, ground = _number(one.get("fontId")), _number(one.get("fillId"))
        letters = fonts[font] if font < len(fonts) else Lettering()
        yield letters, letters.light and (ground >= len(grounds) or grounds[ground])


def _number(text: str | None) -> int:
    return int(text) if text is not None and text.isascii() and text.isdigit() and len(text) < 9 else 0


def _light_ground(fill: Element) -> bool:
    pattern = child(fill, "patternFill")
    if pattern is None:
        return child(fill, "gradientFill") is None
    if pattern.get("patternType", "none") == "none":
        return True
    ground = child(pattern, "fgColor")
    return ground is None or _light(ground)


def _light(colour: Element) -> bool:
    for key in ("theme", "indexed"):
        if key in colour.attrib:
            return f"{key} {colour.get(key)}" in _WHITE and not colour.get("tint", "0").startswith("-")
    written = colour.get("rgb", "")[-6:]
    try:
        red, green, blue = (int(written[at : at + 2], 16) / 255 for at in (0, 2, 4))
    except ValueError:
        return False
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue > _LIGHT
