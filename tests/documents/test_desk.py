"""How things are named and shown in running text: labels, quantities, values, prose."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.calculations.method import BY_ROW, Symbol
from tenderwright.calculations.value import Value
from tenderwright.documents.desk import Desk, capital, joined, set_units
from tenderwright.documents.edition import Span, plain
from tenderwright.model.build import Prose as WrittenProse
from tenderwright.notices import Place
from tenderwright.quantities.customs import day
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.reading.source import Source
from tenderwright.writing.html import screen_page
from tenderwright.writing.prose import prose_html
from tests.pipeline.packages import edit
from tests.replacing import replace

from .composed import Composed, changed, composed, part, words


def _prose(text: str) -> WrittenProse:
    source = Source("items/1-a.yaml", text)
    return WrittenProse(text, Place("items/1-a.yaml"), source, ())


@pytest.fixture
def desk() -> Desk:
    return composed("starter").desk()


def _html(desk: Desk, text: str) -> str:
    return prose_html(desk.prose(_prose(text)).tokens).strip()


@pytest.mark.parametrize(
    ("kind", "name", "label"),
    [
        ("item", "320", "item 320"),
        ("frame", "5", "Fr 5"),
        ("clause", "hot-work", "clause 2.1 (Hot work)"),
        ("clause", "changes", "clause 2.2 (Changes and condition found)"),
        ("drawing", "d-01", "D-01"),
        ("tank", "bilge-oil", "Bilge oil tank"),
        ("zone", "underwater", "Underwater shell"),
        ("scheme", "underwater-spot", "Underwater, bare spots"),
        ("strake", "A", "strake A"),
        ("docking", "docking-2021", "docking of 2021"),
        ("value", "coating.underwater-spot.area", "45.9 m²"),
    ],
)
def test_labels(kind: str, name: str, label: str, desk: Desk) -> None:
    assert desk.label(kind, name) == label


def test_an_autolink_is_labelled_and_linked(desk: Desk) -> None:
    assert _html(desk, "See <item:320>.") == '<p>See <a href="#item-320">item 320</a>.</p>'
    assert _html(desk, "See <clause:hot-work>.") == '<p>See <a href="#clause-hot-work">clause 2.1 (Hot work)</a>.</p>'


def test_a_link_keeps_its_own_words(desk: Desk) -> None:
    assert _html(desk, "Clean [this **tank**](tank:bilge-oil).") == (
        '<p>Clean <a href="#tank-bilge-oil">this <strong>tank</strong></a>.</p>'
    )


def test_frames_and_in_the_yard_edition_values_are_words_without_a_link(desk: Desk) -> None:
    assert _html(desk, "From <frame:5> to [there](frame:39).") == "<p>From Fr 5 to there.</p>"
    assert _html(desk, "Coat <value:coating.underwater-spot.area>, <item:320>.") == (
        '<p>Coat 45.9 m², <a href="#item-320">item 320</a>.</p>'
    )


def test_in_the_owners_papers_an_item_leads_to_its_price_and_nothing_else_of_the_specification_is_linked() -> None:
    priced = composed("starter").owner_desk()
    assert _html(priced, "Coat <value:coating.underwater-spot.area> by <item:320> and <clause:hot-work>.") == (
        '<p>Coat 45.9 m² by <a href="#item-320">item 320</a> and clause 2.1 (Hot work).</p>'
    )


def test_references_in_code_stay_as_written(desk: Desk) -> None:
    assert _html(desk, "Write `<item:320>` so.") == "<p>Write <code>&lt;item:320&gt;</code> so.</p>"


def test_the_words_of_the_package_are_not_changed_by_showing_them(desk: Desk) -> None:
    before = _html(desk, "See <item:320> of 3 m2.")
    assert _html(desk, "See <item:320> of 3 m2.") == before


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "a <b onclick='x'>b</b>",
        "<!-- hidden -->",
        "<img src=x onerror=alert(1)>",
        "<style>*{}",
    ],
)
def test_raw_html_is_inert(text: str, desk: Desk) -> None:
    html = _html(desk, text)
    assert "<script" not in html
    assert "<img" not in html
    assert "<!--" not in html
    assert "<style" not in html
    assert "<b " not in html
    assert "&lt;" in html


def test_a_link_to_a_script_is_text(desk: Desk) -> None:
    assert "<a " not in _html(desk, "[b](javascript:alert(1)) [c](data:text/html,x) [d](vbscript:x)")


@pytest.mark.parametrize(
    ("text", "shown", "live"),
    [
        (
            "See [the *makers'* sheet](https://example.org/a_b) now.",
            "<p>See the <em>makers'</em> sheet (https://example.org/a_b) now.</p>",
            '<p>See <a href="https://example.org/a_b">the <em>makers\'</em> sheet</a> now.</p>',
        ),
        (
            "<http://a.example> <b@a.example>",
            "<p>http://a.example b@a.example</p>",
            '<p><a href="http://a.example">http://a.example</a> <a href="mailto:b@a.example">b@a.example</a></p>',
        ),
        (
            "[x][y]\n\n[y]: mailto:a@example.org",
            "<p>x (mailto:a@example.org)</p>",
            '<p><a href="mailto:a@example.org">x</a></p>',
        ),
    ],
)
def test_a_web_address_is_text_but_where_the_package_allows_links(text: str, shown: str, live: str, desk: Desk) -> None:
    assert _html(desk, text) == shown
    allowed = replace(desk, package=replace(desk.package, tender=replace(desk.tender, web_links=True)))
    assert _html(allowed, text) == live


def test_a_cell_holds_text_links_code_and_web_addresses(desk: Desk) -> None:
    spans = desk.words(_prose("See <item:320> and **three** [sheets](https://example.org/a) by `x y`.\n\nMore."))
    assert plain(spans) == "See item 320 and three sheets (https://example.org/a) by x y. More."
    assert Span("item 320", "item-320") in spans
    assert Span("three", strong=True) in spans
    assert Span("x y", code=True) in spans
    assert [span.target for span in spans if span.target] == ["item-320"]
    assert plain(desk.words(_prose("As <https://example.org/a>."))) == "As https://example.org/a."


def test_a_cell_loses_no_words_of_a_list_a_picture_or_a_block_of_code(desk: Desk) -> None:
    spans = desk.words(_prose("Two:\n\n- one\n- other ![plan](a.png)\n\n      as drawn\n"))
    assert plain(spans).split() == ["Two:", "one", "other", "plan", "as", "drawn"]


SYSTEMS = {"metric": "1.9 m above", "us": "6.23 ft above", "both": "1.9 m (6.23 ft) above"}


@pytest.fixture(scope="module", params=SYSTEMS)
def in_units(request: pytest.FixtureRequest) -> tuple[str, Composed]:
    system = str(request.param)
    return system, changed(lambda root: edit(root, "package.yaml", "units: metric", f"units: {system}"))


def test_quantities_are_shown_as_the_package_asks(in_units: tuple[str, Composed]) -> None:
    system, package = in_units
    assert SYSTEMS[system] in words(part(package.edition("yard"), "particulars"))


def test_values_are_shown_as_the_package_asks(in_units: tuple[str, Composed]) -> None:
    system, package = in_units
    shown = {"metric": "45.9 m²", "us": "494 ft²", "both": "45.9 m² (494 ft²)"}
    assert package.desk().label("value", "coating.underwater-spot.area") == shown[system]
    assert shown[system] in screen_page(package.edition("yard"))


@pytest.mark.parametrize(
    ("text", "dimension", "us", "both"),
    [
        ("1.9 m", "length", "6.23 ft", "1.9 m (6.23 ft)"),
        ("300 mm", "length", "11.8 in", "300 mm (11.8 in)"),
        ("9.5 mm", "length", "0.374 in", "9.5 mm (0.374 in)"),
        ("150 um", "length", "5.91 mil", "150 µm (5.91 mil)"),
        ("0 m", "length", "0 ft", "0 m (0 ft)"),
        ("12.5 kg", "mass", "27.6 lb", "12.5 kg (27.6 lb)"),
        ("112 t", "mass", "110 long ton", "112 t (110 long ton)"),
        ("6 ft 3 in", "length", "6 ft 3 in", "1.905 m (6 ft 3 in)"),
        ("3/8 in", "length", "3/8 in", "9.525 mm (3/8 in)"),
        ("24 h", "time", "24 h", "24 h"),
    ],
)
def test_customary_units_suit_the_size(
    text: str, dimension: str, us: str, both: str, in_units: tuple[str, Composed]
) -> None:
    system, package = in_units
    written = parse_quantity(text, dimension)
    metric = text.replace("um", "µm")
    assert package.desk().quantity(written) == {"metric": metric, "us": us, "both": both}[system]


def test_what_has_no_customary_unit_stays_as_written(in_units: tuple[str, Composed]) -> None:
    _, package = in_units
    plan = words(package.edition("yard").sheets["inspection-plan"])
    assert "240 h" not in plan
    assert "24 h" in plan


def test_units_do_not_change_what_is_priced(in_units: tuple[str, Composed]) -> None:
    _, package = in_units
    assert package.yard[1].sections == composed("starter").yard[1].sections
    assert package.owner.estimate is not None
    expected = composed("starter").owner.estimate
    assert expected is not None
    assert package.owner.estimate.everything == expected.everything


def test_units_are_set_as_in_print() -> None:
    assert (
        set_units("60 m2, 3 m3, 1.2 kg/m2, 4 t/m3, 5 cm2, 20 mA/m2")
        == "60 m², 3 m³, 1.2 kg/m², 4 t/m³, 5 cm², 20 mA/m²"
    )
    assert set_units("frame m2 and 60 m20 and H2") == "frame m2 and 60 m20 and H2"


def test_written_quantities_are_set_as_in_print(desk: Desk) -> None:
    offsets = composed("starter").compiled.package.zones[0].add
    assert [desk.quantity(entry.area) for entry in offsets] == ["7.6 m²", "4.2 m²"]
    assert desk.quantity(None, "–") == "–"
    assert desk.quantity("as found") == "as found"
    marks = composed("starter").compiled.package.particulars
    assert marks is not None
    assert [desk.quantity(mark.datum) for mark in marks.draft_marks] == ["−0.15 m", "−0.15 m"]


def test_small_words() -> None:
    from datetime import date

    assert day(date(2027, 5, 3)) == "3 May 2027"
    assert day(None) == "–"
    assert joined(["a"]) == "a"
    assert joined(["a", "b"]) == "a and b"
    assert joined(["a", "b", "c"], "or") == "a, b or c"
    assert (capital("the end"), capital("")) == ("The end", "")


def _scripts(root: Path) -> None:
    """Put markup into every kind of text."""
    tag = "<script>alert(1)</script>"
    edit(root, "package.yaml", "title: Docking of the steam tug Sandling, 2028", f"title: {tag}")
    edit(root, "package.yaml", "name: Brackwater Tug Trust", f"name: {tag}")
    edit(root, "package.yaml", "    The lowest evaluated price", f"    {tag} The lowest evaluated price")
    edit(root, "items/320-rivets-renew.yaml", "title: Rivets, renew", f"title: {tag} Rivets")
    edit(root, "items/320-rivets-renew.yaml", "scope: |\n", f"scope: |\n  {tag}\n\n")
    edit(root, "items/320-rivets-renew.yaml", "text: Renew one rivet", f"text: {tag}")
    edit(root, "items/320-rivets-renew.yaml", "test: Hose test at 2 bar", f"test: {tag} at 2 bar")
    edit(root, "vessel/tanks.yaml", "name: Forepeak", f"name: '{tag}'")
    edit(root, "vessel/zones.yaml", "name: Underwater shell", f"name: '\"><svg onload=alert(1)> {tag}'")
    edit(root, "drawings.yaml", "title: General arrangement", f"title: '{tag}'")
    edit(root, "clauses/01-hot-work.md", "# Hot work", f"# {tag}")
    edit(root, "owner/closing/docking-2021.yaml", "work: docking and 11 days", f"work: {tag}")
    edit(root, "facilities/ostrey-dock.yaml", "name: ", f"name: {tag} ")


def test_markup_in_any_text_is_escaped_in_both_editions() -> None:
    package = changed(_scripts)
    for name in ("yard", "priced"):
        edition = package.edition(name)
        page = screen_page(edition)
        assert page.count("<script") == screen_page(composed("starter").edition(name)).count("<script") == 1
        assert "<svg onload" not in page
        assert page.count("&lt;script&gt;") > 12
        assert not [
            figure for part in edition.parts for figure in part.blocks if "<script" in getattr(figure, "svg", "")
        ]


def test_a_table_is_shown_row_by_row_in_its_units() -> None:
    columns = (
        Symbol("figure", "the figure", "text", ""),
        Symbol("dimension", "what it measures", "text", ""),
        Symbol("spread", "how sure", BY_ROW, ""),
        Symbol("share", "its share", "fraction", "%"),
        Symbol("met", "whether", "truth", ""),
    )
    table = Symbol("drivers", "what drives it", "table", "", columns)
    rows = [
        {"figure": "draft aft", "dimension": "length", "spread": 0.025, "share": 0.5, "met": True},
        {"figure": "displacement", "dimension": "mass", "spread": 2500.0, "share": None, "met": False},
    ]
    value = Value("drivers", rows, table, next(iter(composed("starter").compiled.record.values.values())).working)
    shown = composed("starter").desk().figure(value)
    assert shown == "draft aft, 0.0250 m, 50.0 %, yes; displacement, 2.50 t, not known, no"
