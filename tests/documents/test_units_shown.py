"""No figure stands on a page in a unit of the other system, but where the museum wrote it so."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from itertools import combinations
from pathlib import Path
from shutil import copytree, ignore_patterns
from tempfile import TemporaryDirectory

import pytest

from tenderwright.documents.edition import Column, Edition, Figure, Heading, Prose, Row, Table, plain
from tests.documents.composed import Composed, changed, compiled, composed, walk, words
from tests.documents.drawings.ship import texts
from tests.pipeline.packages import MARRAM, edit

_METRIC = (
    "m|mm|cm|km|µm|um|m²|m³|m2|m3|cm²|mm²|cm2|mm2|m⁴|kg|g|mg|t|t/m|t/cm|t/m³|t/m3|kg/m³|kg/m3|t·m|t·m/cm|kg/m²|kg/m2|"
    "mg/m²|mg/m2|t/m²|kN|MN|MN/m|MPa|kPa|bar|Pa|N|°C|degC|K|L|m²/L|m³/h|m3/h|m/s|mm/yr|mA/m²|mA/m2|A/m²|kg/m|person-h/t"
)
_CUSTOMARY = (
    "ft|in(?=[,.;:)]|$)|mil|yd|ft²|ft2|in²|in2|ft³|ft3|ft⁴|lbs?|lbf|long[ _]ton|US[ _]gal|psi|psf|kn|mil/yr|°F|degF|"
    "lb/ft|lb/ft²|lb/ft³|µg/cm²"
)


def _pattern(units: str) -> re.Pattern[str]:
    number = r"(?<![\w.,/])([−-]?\d+(?:[ ,]\d{3})*(?:\.\d+)?)"
    return re.compile(rf"{number}[ \u00a0]?({units})(?![\w/·²³⁴])", re.MULTILINE)


KESTREL_BANK = Path(__file__).parents[1] / "packages" / "kestrel-bank"
METRIC, CUSTOMARY = _pattern(_METRIC), _pattern(_CUSTOMARY)
_SAME = str.maketrans({"−": "", "-": "", "²": "2", "³": "3", "µ": "u", "·": "*", "\u00a0": None, " ": None, "_": None})
_ALIKE = {"°C": "degC", "°F": "degF"}
PATCH = "3 mL on 12.5 cm²"
"""The patch of the standard by which salts are measured is no figure of a ship."""
PUBLISHED = ("Formula", "Source", "Valid for", "Caution")
"""What the record of calculation prints of a published formula, in the units of its source."""


def _plain(text: str) -> str:
    for one, other in _ALIKE.items():
        text = text.replace(one, other)
    return text.translate(_SAME)


@cache
def _written(root: Path, units: re.Pattern[str]) -> frozenset[str]:
    """Give every figure of a system that stands in the files of a package."""
    files = (path for path in root.rglob("*") if path.suffix in (".yaml", ".md", ".csv") and path.is_file())
    text = re.sub(r"\s+", " ", " ".join(path.read_text("utf-8") for path in files))
    return frozenset(_plain(match[0]) for match in units.finditer(text))


@cache
def _written_heads(root: Path) -> frozenset[str]:
    """Give the heads of columns that the museum wrote with their unit, in the tables of its items."""
    texts = (path.read_text("utf-8") for path in sorted((root / "items").glob("*.yaml")))
    return frozenset(
        f"{name}, {unit}" for text in texts for name, unit in re.findall(r"column: ([^,]+), [^}]*unit: (\S+) ", text)
    )


def _visible(edition: Edition) -> Iterator[tuple[str, str]]:
    """Give every text that a reader sees, with the name of its part."""
    for part in (*edition.parts, *(part for sheet in edition.sheets.values() for part in sheet.parts)):
        priced = part.anchor == "price-basis"  # each line in the unit in which the museum has it priced
        for thing in walk(part.blocks) if not priced else ():
            if isinstance(thing, Figure):
                yield part.anchor, f"{thing.caption}\n{thing.alternative}"
                yield part.anchor, "\n".join(re.findall(r"<text[^>]*>([^<]*)</text>", thing.svg))
            elif isinstance(thing, Row) and part.anchor == "asked":
                continue  # quantities of lines, each in the unit in which the museum has it priced
            elif isinstance(thing, Row):
                yield part.anchor, "\n".join(plain(cell) for cell in thing.cells)
            elif isinstance(thing, Heading):
                yield part.anchor, thing.text
            elif isinstance(thing, Prose):
                yield part.anchor, words(thing)
            elif isinstance(thing, Table):
                yield part.anchor, f"{thing.caption}\n{plain(thing.note)}"
            elif type(thing).__name__ == "Facts":
                yield part.anchor, "\n".join(plain(what) for name, what in thing.pairs if name not in PUBLISHED)
            elif type(thing).__name__ in ("Paragraph", "Bullets"):
                yield part.anchor, words(thing)


def _heads(edition: Edition) -> Iterator[tuple[str, str]]:
    for part in edition.parts:
        for thing in walk(part.blocks):
            if isinstance(thing, Column):
                yield part.anchor, thing.title


def strange(package: Composed, root: Path, units: re.Pattern[str]) -> list[tuple[str, str]]:
    """List the figures, and heads of columns, in units of a system that the museum did not write."""
    written, found = _written(root, units), []
    for edition in map(package.edition, ("yard", "owner", "priced")):
        for part, text in _visible(edition):
            for match in units.finditer(text.replace(PATCH, "")):
                if _plain(match[0]) not in written:
                    found.append((f"{edition.name}: {part}", match[0]))
        for part, title in _heads(edition):
            if (
                title not in _written_heads(root)
                and ", " in title
                and units.fullmatch(f"1 {title.rpartition(', ')[2]}")
            ):
                found.append((f"{edition.name}: {part}", title))
    return found


@cache
def _american_marram() -> tuple[Composed, Path]:
    with TemporaryDirectory() as folder:
        root = Path(copytree(MARRAM, Path(folder) / "marram", ignore=ignore_patterns(".git")))
        edit(root, "package.yaml", "units: metric", "units: us")
        return compiled(root), MARRAM


def test_no_metric_figure_stands_on_the_pages_of_a_package_in_customary_units() -> None:
    package, root = _american_marram()
    assert strange(package, root, METRIC) == []


def test_a_ship_that_was_written_in_customary_units_is_shown_in_them() -> None:
    assert strange(compiled(KESTREL_BANK), KESTREL_BANK, METRIC) == []


def test_the_starter_too_is_told_in_customary_units() -> None:
    package = changed(lambda root: edit(root, "package.yaml", "units: metric", "units: us"))
    text = re.sub(r"\s+", " ", " ".join(source.text for source in composed("starter").compiled.files.sources.values()))
    written = {_plain(match[0]) for match in METRIC.finditer(text)}
    told = [
        (part, match[0])
        for part, shown in _visible(package.edition("yard"))
        for match in METRIC.finditer(shown.replace(PATCH, ""))
        if _plain(match[0]) not in written
    ]
    assert told == []


@pytest.mark.parametrize("name", ["yard", "owner"])
def test_no_customary_figure_stands_on_metric_pages(name: str) -> None:
    package, written = composed("marram"), _written(MARRAM, CUSTOMARY)
    told = [
        (part, match[0])
        for part, text in _visible(package.edition(name))
        for match in CUSTOMARY.finditer(text)
        if _plain(match[0]) not in written
    ]
    assert told == []


def test_a_figure_of_the_other_system_would_be_found() -> None:
    assert [match[0] for match in METRIC.finditer("12.4 m, 45 t/m and 7 t")] == ["12.4 m", "45 t/m", "7 t"]
    assert [match[0] for match in CUSTOMARY.finditer("733.2 long ton, 3 in.")] == ["733.2 long ton", "3 in"]


def test_dates_money_and_scales_follow_the_custom_of_the_place() -> None:
    package, _ = _american_marram()
    shown = "\n".join(text for _, text in _visible(package.edition("owner")))
    assert re.search(r"\b[A-Z][a-z]+ \d{1,2}, 20\d\d\b", shown)
    assert not re.search(r"\b\d{1,2} (?:January|May|June|July) 20\d\d\b", "\n".join(
        text for part, text in _visible(package.edition("yard")) if part in ("dock-sheet-landing", "cover")
    ))  # fmt: skip
    assert re.search(r"Scale (?:\d/\d+ in = 1|1 in = \d+) ft", shown)
    assert re.search(r"EUR \d{1,3},\d{3}\.\d\d", shown)


def test_where_both_are_asked_for_the_tables_give_both_and_no_words_lie_on_others() -> None:
    with TemporaryDirectory() as folder:
        root = Path(copytree(KESTREL_BANK, Path(folder) / "kestrel-bank"))
        edit(root, "package.yaml", "units: us", "units: both")
        edition = compiled(root).edition("yard")
    shown = "\n".join(text for _, text in _visible(edition))
    assert re.search(r"\d t \(\d+\.\d long ton\)", shown)
    assert re.search(r"\d m \(\d+\.\d\d ft\)", shown)
    drawn = [thing for part in edition.parts for thing in part.blocks if isinstance(thing, Figure)]
    assert len(drawn) > 4
    for figure in drawn:
        assert [(a.content, b.content) for a, b in combinations(texts(figure), 2) if a.overlaps(b)] == []
