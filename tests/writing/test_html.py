"""The HTML: self-contained, escaped, every link with its anchor."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tenderwright.documents.edition import Edition, Figure, Paragraph, Part, Span, inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.html import check_anchors, part_html, screen_page

from .sample import draft_edition, prose, sample_edition, tank_plan


def _with(*blocks: object) -> Edition:
    edition = sample_edition(0)
    part = Part("a", "1", "Title", "front", "Group", tuple(blocks))  # type: ignore[arg-type]
    return replace(edition, parts=(part,))


def test_screen_page_loads_nothing() -> None:
    page = screen_page(sample_edition())
    assert not re.search(r"<(link|img|iframe|object|embed|base|form)\b", page)
    assert not re.search(r"\ssrc\s*=", page)
    assert not re.search(r"@import|url\(\s*['\"]?(?!#)", page)
    loaded = [target for target in re.findall(r'\shref="([^"]*)"', page) if not target.startswith("#")]
    assert {target.partition("/a/")[0] for target in loaded} <= {"https://example.org"}
    assert "default-src 'none'" in page


def test_screen_page_holds_every_part_and_its_entry_in_the_contents() -> None:
    edition = sample_edition()
    page = screen_page(edition)
    for part in edition.parts:
        assert page.count(f'id="{part.anchor}"') == 1
        if part.kind not in ("cover", "contents"):
            assert f'<li data-part="{part.anchor}"><a href="#{part.anchor}">' in page


def test_screen_page_of_a_confidential_draft_says_so() -> None:
    page = screen_page(draft_edition())
    assert page.count("CONFIDENTIAL · DRAFT") >= 2


def test_words_of_the_package_are_escaped() -> None:
    hostile = '<script>alert("x")</script>'
    edition = replace(
        _with(Paragraph(inline(hostile, Span(hostile, strong=True))), prose(hostile)), title=hostile, tender='"><b>'
    )
    for page in (screen_page(edition), part_html(edition, edition.parts[0])):
        assert hostile not in page
        assert "&lt;script&gt;" in page
        assert '"><b>' not in page


def test_a_link_without_an_anchor_is_refused() -> None:
    with pytest.raises(WritingError, match="nowhere"):
        screen_page(_with(Paragraph(inline(Span("there", target="nowhere")))))


def test_an_anchor_given_twice_is_refused() -> None:
    with pytest.raises(WritingError, match="twice: same"):
        check_anchors('<p id="same"></p><p class="b" id="same"></p>')


def test_a_reference_left_unresolved_is_refused() -> None:
    with pytest.raises(WritingError, match="item:420"):
        screen_page(_with(prose("See <item:420>.")))


def test_figures_keep_their_names_apart() -> None:
    one, two = (Figure(name, tank_plan(), "Caption", f"Words of {name}") for name in ("one", "two"))
    page = screen_page(_with(one, two))
    for name in ("one", "two"):
        assert f'id="{name}--hatch"' in page
        assert f"url(#{name}--hatch)" in page
        assert f"<title>Words of {name}</title>" in page
    assert "url(#hatch)" not in page


def test_style_rules_of_a_figure_stay_inside_it() -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg"><style>.a { fill: none }</style><path class="a"/></svg>'
    edition = _with(Figure("one", svg, "Caption", "Words"))
    assert "<style>#one--drawing { .a { fill: none } }</style>" in screen_page(edition)
    assert "<style>.a { fill: none }</style>" in part_html(edition, edition.parts[0])


@pytest.mark.parametrize(
    ("svg", "complaint"),
    [
        ("<svg><script>1</script></svg>", "script"),
        ('<svg><path onclick="x"/></svg>', "onclick"),
        ('<svg xmlns:x="http://www.w3.org/1999/xlink"><use x:href="https://example.org/a.svg"/></svg>', "outside"),
        ("<svg><path></svg>", "well-formed"),
        ("<p/>", "not SVG"),
    ],
)
def test_a_drawing_that_runs_or_loads_or_is_broken_is_refused(svg: str, complaint: str) -> None:
    with pytest.raises(WritingError, match=complaint):
        screen_page(_with(Figure("one", svg, "Caption", "Words")))


def test_a_picture_in_prose_becomes_words() -> None:
    page = screen_page(_with(prose("![The *stern*](stern.png)")))
    assert "The stern (<code>stern.png</code>)" in page


def test_headings_in_prose_stay_below_the_part() -> None:
    page = screen_page(_with(prose("# One\n\n### Three")))
    assert "<h3>One</h3>" in page
    assert "<h4>Three</h4>" in page


def test_part_html_stands_alone_or_without_its_style() -> None:
    edition = sample_edition(1)
    part = edition.parts[-3]
    assert "@font-face" in part_html(edition, part)
    assert "<style>" not in part_html(edition, part, with_style=False)


def test_a_drawing_opens_large_on_a_tap_and_closes_again_on_the_screen_alone() -> None:
    edition = _with(Figure("one", tank_plan(), "Caption", "Words"))
    page = screen_page(edition)
    assert '<div class="drawn" id="one--large">' in page
    assert 'href="#one--large"' in page
    assert 'href="#one--caption"' in page
    assert '<figcaption id="one--caption">' in page
    assert "one--large" not in part_html(edition, edition.parts[0])
