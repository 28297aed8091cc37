"""Nothing of the files stands raw on a page: no identifier where a name belongs, no unit as it is typed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from markdown_it.token import Token

from tenderwright.documents.edition import Edition, Figure, Heading, Paragraph, Prose, Span, Table, inline, plain
from tenderwright.documents.in_print import Names, in_print
from tests.documents.composed import Composed, anchors, compiled, composed, targets, walk

_PACKAGES = Path(__file__).parents[1] / "packages"
_RAW_UNIT = re.compile(r"\d ?(?:um|degC|degF|(?:[ckm]?m|ft|in|yd)[23])\b|\b(?:k?g|mg|t|mA|lb)/(?:[ckm]?m|ft|in)[23]\b")


@cache
def _package(name: str) -> Composed:
    if name == "marram":
        return composed("marram")
    return composed("starter") if name == "starter" else compiled(_PACKAGES / name)


def _texts(edition: Edition) -> Iterator[tuple[str, str]]:
    """Give all that is read on the pages of an edition and of the sheets beside it, code apart, with its part."""
    yield "facts", "\n".join(f"{term}\n{words}" for term, words in edition.facts)
    for part in edition.parts:
        yield part.anchor, part.title
        for thing in walk((part.blocks, part.on_screen)):
            if isinstance(thing, Span):
                yield part.anchor, "" if thing.code else thing.text
            elif isinstance(thing, Token):
                yield part.anchor, thing.content if thing.type == "text" else ""
            elif isinstance(thing, Figure):
                yield part.anchor, f"{thing.title}\n{thing.caption}\n{thing.alternative}"
                yield part.anchor, "\n".join(re.findall(r"<(?:text|tspan)[^<>]*>([^<]+)", thing.svg))
            elif isinstance(thing, Heading):
                yield part.anchor, thing.text
            elif isinstance(thing, Table):
                yield part.anchor, "\n".join((thing.caption, *(column.title for column in thing.columns)))
            elif type(thing).__name__ == "Facts":
                yield part.anchor, "\n".join(term for term, _ in thing.pairs)
    for sheet in edition.sheets.values():
        yield from _texts(sheet)


@pytest.mark.parametrize("edition", ["yard", "owner"])
@pytest.mark.parametrize("name", ["marram", "starter", "kestrel-bank", "withy"])
def test_no_identifier_and_no_unit_stands_on_a_page_as_it_is_typed(name: str, edition: str) -> None:
    package = _package(name)
    known = package.compiled.links.symbols
    numbers = [re.escape(one) for kind, one in known if kind == "drawing" and re.search(r"\d", one)]
    named = [rf"{kind} {re.escape(one)}" for kind, one in known if kind in ("clause", "scheme")]
    raw = re.compile(rf"(?<![\w/.-])(?:{'|'.join((*numbers, *named))})(?![\w-]|\.\w)")
    found = [
        (part, match[0])
        for part, text in _texts(package.edition(edition))
        for pattern in (raw, _RAW_UNIT)
        for match in pattern.finditer(text)
    ]
    assert found == []


def test_names_and_units_are_said_in_words() -> None:
    names = Names(composed("marram").desk())
    assert names.words("scheme underwater-spot, 125 um") == "scheme “Underwater shell, spot blast and prime”, 125 µm"
    assert names.words("by clause coatings-general") == "by clause 2.11 (Coatings in general)"
    assert names.words("Clause hot-work holds") == "Clause 2.7 (Hot work) holds"
    assert names.words("drawing d-05 and r-04.") == "drawing D-05 and R-04."
    assert names.words("Undocking - 3 d") == "Undocking − 3 d"
    assert names.words("tank oil-port, 6 m3 at 15 degC") == "Oil fuel, port, 6 m³ at 15 °C"


def test_words_that_name_nothing_stay() -> None:
    names = Names(composed("marram").desk())
    for text in ("a hot-work permit", "the boot-top", "tank forepeak", "drawings/d-05.pdf", "clause nowhere", "H2, m2"):
        assert names.words(text) == text


def test_a_name_is_linked_where_its_thing_stands_in_the_edition() -> None:
    edition = composed("marram").edition("yard")
    (item,) = [part for part in edition.parts if part.anchor == "item-640"]
    spans = [thing for thing in walk(item) if isinstance(thing, Span) and thing.text == "D-09"]
    assert {span.target for span in spans} == {"drawing-d-09"}
    assert set(targets(edition)) <= set(anchors(edition))
    alone = Names(composed("marram").desk())
    assert plain(alone.of(inline("as on d-09, see d-05"))) == "as on D-09, see D-05"
    assert targets(alone.of(inline("as on d-09"))) == []


def test_what_is_in_print_stays_as_it_is() -> None:
    package = composed("marram")
    edition = package.edition("yard")
    assert in_print(package.desk(), edition).parts is edition.parts
    block = Paragraph(inline("see ", Span("d-09", code=True)))
    assert Names(package.desk()).of(block) is block
    assert Names(package.desk()).of(Prose([])).tokens == []


@pytest.mark.parametrize("name", ["marram", "kestrel-bank"])
def test_the_price_form_names_things_as_the_pages_do_and_is_tied_to_what_was_typed(name: str) -> None:
    form = _package(name).yard[1]
    lines = [line for section in form.sections for line in section.lines]
    assert [line.number for line in lines if _RAW_UNIT.search(line.text)] == []
    if name == "marram":
        (line,) = [line for line in lines if line.number == "410.a"]
        assert line.text.endswith("by scheme “Underwater shell, spot blast and prime”")
        assert line.written.endswith("by scheme underwater-spot")
