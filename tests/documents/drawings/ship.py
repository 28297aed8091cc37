"""The demo ship compiled once, and readers of a drawing's SVG."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.steps.step import Step
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.all import drawings, figures_of
from tenderwright.documents.drawings.at_facilities import at_facilities
from tenderwright.documents.edition import Figure
from tenderwright.model.load import load_package
from tenderwright.model.package import Package
from tenderwright.quantities.customs import telling_in
from tenderwright.reading.package import read_package
from tenderwright.shapes.shape import shape
from tests.outcomes import Altered

ROOT = Path(__file__).parents[3] / "package_src"
SVG = "{http://www.w3.org/2000/svg}"


LACKING = Lacking("it needs some file")


SHIPS = {
    "Marram": ROOT,
    "Kestrel Bank": ROOT.parent / "tests" / "packages" / "kestrel-bank",
    "Withy": ROOT.parent / "tests" / "packages" / "withy",
}
"""Every ship whose drawings are looked at: metric on A4, in feet on Letter, and small in both systems."""


def compiled(of: str = "Marram") -> tuple[Package, Calculated]:
    files = read_package(SHIPS[of]).without_owner()
    mistakes, _ = shape(files)
    package, _ = load_package(files, mistakes)
    return package, calculate(package)


@cache
def marram() -> tuple[Package, Calculated]:
    return compiled()


def every_drawing(package: Package, calculated: Calculated) -> dict[str, list[Figure] | Absent]:
    """Make the drawings of the specification and those of the facilities, which are the owner's."""
    return drawings(package, calculated) | at_facilities(package, calculated)


@cache
def figures(of: str = "Marram") -> tuple[Figure, ...]:
    package, calculated = marram() if of == "Marram" else compiled(of)
    with telling_in(package.units, american=package.american):
        return tuple(figures_of(every_drawing(package, calculated)))


def of_every_ship() -> list[tuple[str, Figure]]:
    return [(of, drawn) for of in SHIPS for drawn in figures(of)]


def altered(instead: Mapping[Step[Any], Any]) -> Calculated:
    """Give what was calculated of her with other outcomes of some steps."""
    return Altered(marram()[1], instead)


def figure(name: str) -> Figure:
    return next(one for one in figures() if one.name == name)


def root(drawn: Figure) -> ElementTree.Element:
    return ElementTree.fromstring(drawn.svg)


@dataclass(frozen=True)
class Text:
    """A text of a drawing with the box it takes, mm."""

    content: str
    kind: str
    size: float
    left: float
    right: float
    baseline: float

    @property
    def middle(self) -> float:
        return (self.left + self.right) / 2

    def overlaps(self, other: Text) -> bool:
        high = min(self.baseline, other.baseline) - max(self.top, other.top)
        return high > 0 and min(self.right, other.right) - max(self.left, other.left) > 0

    @property
    def top(self) -> float:
        """Digits and capitals stand about seven tenths of the size over the baseline."""
        return self.baseline - 0.7 * self.size


def texts(drawn: Figure) -> list[Text]:
    found = []
    for node in root(drawn).iter(f"{SVG}text"):
        size, x = float(node.attrib["font-size"]), float(node.attrib["x"])
        wide = pen.text_width(node.text or "", size, "font-weight" in node.attrib)
        left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[node.get("text-anchor", "start")]
        found.append(
            Text(
                node.text or "",
                node.get("class", "").removeprefix(pen.PREFIX),
                size,
                left,
                left + wide,
                float(node.attrib["y"]),
            )
        )
    return found


def of_kind(drawn: Figure, kind: str) -> list[str]:
    return [text.content for text in texts(drawn) if text.kind == kind]


def paths(drawn: Figure, **attributes: str) -> list[list[tuple[float, float]]]:
    """Give the corners of every path with the attributes, mm."""
    found = []
    for node in root(drawn).iter(f"{SVG}path"):
        if all(node.get(name.replace("_", "-")) == value for name, value in attributes.items()):
            data = node.attrib["d"].replace("M", " ").replace("L", " ").replace("Z", " ").split()
            found.append(list(zip(map(float, data[::2]), map(float, data[1::2]), strict=True)))
    return found


def scale(drawn: Figure) -> int:
    return int(next(t.content for t in texts(drawn) if t.content.startswith("Scale 1:")).split(":")[1])
