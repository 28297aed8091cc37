"""No style of a page reaches into a drawing, and nothing in it is too thin, too small or too pale to print."""

from __future__ import annotations

from importlib.resources import files
from xml.etree import ElementTree

import cssselect2
import pytest
import tinycss2

from tenderwright.documents.drawings import pen
from tenderwright.documents.edition import Figure
from tenderwright.writing.figures import figure_svg

from .ship import figures, of_every_ship, root

EVERY = pytest.mark.parametrize(
    "drawn", [one for _, one in of_every_ship()], ids=[f"{of}-{one.name}" for of, one in of_every_ship()]
)
STYLES = [one for one in (files("tenderwright.writing") / "styles").iterdir() if one.name.endswith(".css")]
HARMLESS = {"box-sizing"}
"""What a rule for everything on a page may set."""


def _rules(content: str) -> list[tuple[str, list[tinycss2.ast.Node]]]:
    """Give every rule of a style sheet with its selector, those within media and pages too."""
    found, left = [], tinycss2.parse_stylesheet(content, skip_comments=True, skip_whitespace=True)
    while left:
        rule = left.pop()
        if rule.type == "qualified-rule":
            found.append((tinycss2.serialize(rule.prelude), rule.content))
        elif rule.type == "at-rule" and rule.lower_at_keyword == "media" and rule.content is not None:
            left += tinycss2.parse_rule_list(rule.content, skip_comments=True, skip_whitespace=True)
    return found


def _sets_more(content: list[tinycss2.ast.Node]) -> bool:
    declared = tinycss2.parse_blocks_contents(content, skip_comments=True, skip_whitespace=True)
    return bool({one.lower_name for one in declared if one.type == "declaration"} - HARMLESS)


@pytest.mark.parametrize("sheet", STYLES, ids=lambda one: one.name)
def test_no_style_of_a_page_reaches_into_a_drawing(sheet: object) -> None:
    content = next(one for one in STYLES if one is sheet).read_text(encoding="utf-8")
    page = "".join(f'<div class="drawn" id="{one.name}">{figure_svg(one)}</div>' for one in figures())
    tree = cssselect2.ElementWrapper.from_html_root(
        ElementTree.fromstring(f'<html><body><section class="part"><figure>{page}</figure></section></body></html>')
    )
    inside = [node for node in tree.query_all("*") if any(above.local_name == "svg" for above in node.ancestors)]
    assert len(inside) > 1000
    for selector, declared in _rules(content):
        if not _sets_more(declared):
            continue
        for one in cssselect2.compile_selector_list(selector):
            if one.pseudo_element is None:
                assert not any(map(one.test, inside)), selector


@EVERY
def test_every_class_in_a_drawing_carries_the_prefix(drawn: Figure) -> None:
    classes = {name for node in root(drawn).iter() for name in node.get("class", "").split()}
    assert classes
    assert all(name.startswith(pen.PREFIX) for name in classes)
    assert not any(pen.PREFIX in sheet.read_text(encoding="utf-8") for sheet in STYLES)


@EVERY
def test_lines_have_one_of_three_weights(drawn: Figure) -> None:
    weights = {node.get("stroke-width") for node in root(drawn).iter()} - {None}
    assert weights <= {pen.number(one) for one in (pen.FINE, pen.MEDIUM, pen.HEAVY)}


@EVERY
def test_lines_and_letters_stand_out_in_grey(drawn: Figure) -> None:
    colours = {node.get("stroke") for node in root(drawn).iter()} - {None}
    colours |= {node.get("fill") for node in root(drawn).iter() if node.tag.endswith("text")}
    assert colours
    for colour in colours:
        assert colour is not None
        assert 1.05 / (_luminance(colour) + 0.05) >= 4.5, colour


def _luminance(colour: str) -> float:
    """Give the relative luminance of a colour, as WCAG 2.1 defines it."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in shares]
    return sum(weight * one for weight, one in zip((0.2126, 0.7152, 0.0722), linear, strict=True))
