"""What holds for every drawing of the yard edition."""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.steps.outcome import Lacking, NotAsked
from tenderwright.documents.drawings.all import drawings, figures_of
from tenderwright.documents.drawings.framed import BLOCK, ROOMS
from tenderwright.documents.drawings.hull_marks import NOT_HER_FORM
from tenderwright.documents.drawings.view import Room
from tenderwright.documents.edition import Figure
from tenderwright.writing.figures import figure_size, figure_svg
from tests.outcomes import Altered
from tests.replacing import replace

from .ship import LACKING, compiled, every_drawing, figures, marram, of_every_ship, of_kind, root, texts

EVERY = pytest.mark.parametrize(
    "drawn", [one for _, one in of_every_ship()], ids=[f"{of}-{one.name}" for of, one in of_every_ship()]
)


def test_the_demo_ship_has_every_drawing() -> None:
    assert [drawn.name for drawn in figures()] == [
        "docking-plan",
        "docking-bottom-aft",
        "docking-bottom-forward",
        "docking-sections",
        "water-levels",
        "tank-states",
        "tank-plan",
        "coating-zones",
        "shell-expansion",
        "loss-by-zone",
        "tank-interiors",
        "anode-plan",
        "body-plan",
        "water-levels-at-facilities",
        "cradle-sallow-haven-shiplift",
        "cradle-tarnmouth-slipway",
    ]


@EVERY
def test_no_text_overlaps_another(drawn: Figure) -> None:
    assert [(a.content, b.content) for a, b in combinations(texts(drawn), 2) if a.overlaps(b)] == []


@EVERY
def test_text_stays_on_the_sheet_and_is_large_enough_to_read(drawn: Figure) -> None:
    width, height = figure_size(drawn)
    for text in texts(drawn):
        assert text.size >= 2.5
        assert text.left >= -0.01, text
        assert text.right <= width + 0.01, text
        assert text.top >= 0, text
        assert text.baseline <= height, text


@EVERY
def test_a_unit_of_the_view_box_is_a_millimetre(drawn: Figure) -> None:
    svg = root(drawn)
    assert svg.attrib["viewBox"] == f"0 0 {svg.attrib['width'][:-2]} {svg.attrib['height'][:-2]}"
    assert svg.attrib["width"].endswith("mm")


@EVERY
def test_it_fills_the_frame_of_its_page_and_no_more(drawn: Figure) -> None:
    width, height = figure_size(drawn)
    if framed(drawn):
        assert Room(width, height) in ROOMS.values()
    else:
        assert width <= 239.4
        assert height <= 125


@EVERY
def test_it_states_scale_tender_revision_and_caution(drawn: Figure) -> None:
    said = " ".join(text.content for text in texts(drawn))
    assert "Scale " in said or "Not to scale" in said
    assert re.search(r"Tender [A-Z]+-\d+", said)
    assert re.search(r"\d, \d{4}-\d\d-\d\d", " ".join(of_kind(drawn, "revision")))
    cautions = of_kind(drawn, "caution")
    assert len(cautions) in (2, 3)
    assert cautions[0].startswith("For tender. ")
    assert not any(words.endswith("…") for words in (*cautions, *of_kind(drawn, "title"), *of_kind(drawn, "data")))


@EVERY
def test_nothing_but_its_own_words_stands_on_the_title_block_or_on_the_frame(drawn: Figure) -> None:
    if not framed(drawn):
        return
    width, height = figure_size(drawn)
    own = {"title", "ship", "sheet", "scale", "revision", "data", "caution", "block-word", "bar"}
    for text in texts(drawn):
        assert text.left >= 1.5, text
        assert text.right <= width - 0.9, text
        assert text.top >= 1.5, text
        assert text.baseline <= height - 1.0, text
        if text.kind not in own:
            assert text.right <= width - BLOCK.width or text.baseline <= height - BLOCK.height, text


def test_the_sheets_of_an_edition_are_numbered_to_the_last() -> None:
    package, calculated = marram()
    made = figures_of(drawings(package, calculated))
    assert [of_kind(one, "sheet") for one in made] == [[f"Sheet {n} of {len(made)}"] for n in range(1, len(made) + 1)]
    assert len(made) <= 13


def framed(drawn: Figure) -> bool:
    return bool(of_kind(drawn, "sheet"))


@EVERY
def test_it_has_a_text_alternative_and_loads_nothing(drawn: Figure) -> None:
    svg = root(drawn)
    assert svg.attrib["role"] == "img"
    named = {node.get("id"): node.text for node in svg if node.get("id")}
    assert [bool(named[one]) for one in svg.attrib["aria-labelledby"].split()] == [True, True]
    assert drawn.alternative
    assert drawn.caption
    assert drawn.title
    assert "href" not in drawn.svg
    assert "url(" not in drawn.svg
    assert not any("nan" in value for node in svg.iter() for name, value in node.items() if name != "class")
    assert figure_svg(drawn)


def test_identifiers_are_unique_over_all_drawings() -> None:
    names = [node.attrib["id"] for drawn in figures() for node in root(drawn).iter() if "id" in node.attrib]
    assert len(names) == len(set(names)) > 0
    for drawn in figures():
        assert all(node.attrib["id"].startswith(drawn.name) for node in root(drawn).iter() if "id" in node.attrib)


def test_drawing_again_from_the_files_gives_the_same_bytes() -> None:
    assert figures_of(every_drawing(*compiled())) == list(figures())


def test_without_her_form_what_needs_no_form_is_drawn_on_an_outline_that_says_so() -> None:
    package = replace(marram()[0], offsets=None, surveys=())
    found = every_drawing(package, calculate(package))
    made = {one.name: one for one in figures_of(found)}
    assert set(made) == {
        "docking-plan", "docking-bottom-aft", "docking-bottom-forward", "tank-plan", "coating-zones", "anode-plan",
    }  # fmt: skip
    assert all("it is not her form" in one.caption for one in made.values())
    for name in ("docking-plan", "tank-plan", "coating-zones", "anode-plan"):
        assert NOT_HER_FORM in made[name].svg
    assert "Not drawn, since the package does not say where they lie" in made["docking-bottom-aft"].caption
    assert isinstance(found["Lines and body plan"], Lacking)
    assert isinstance(found["Docking plan: sections at side blocks"], Lacking)


def test_her_own_outline_is_not_called_a_stand_in() -> None:
    for one in figures():
        assert NOT_HER_FORM not in one.svg
        assert "not her form" not in one.caption


def test_drawings_that_lack_their_data_say_what_they_need() -> None:
    package = replace(
        marram()[0],
        zones=(), schemes=(), tanks=(), items=(), appendages=(), openings=(), anodes=(), surveys=(), history=(),
        lightship=None, docking_plan=None,
    )  # fmt: skip
    found = every_drawing(replace(package, tender=None, frames=None), calculate(package))
    (made,) = figures_of(found)
    assert made.name == "body-plan"
    assert "· Tender" not in made.svg
    told = {title: one.why for title, one in found.items() if isinstance(one, Lacking)}
    assert told == {
        "Docking plan: profile and keel blocks": "it needs vessel/docking-plan.yaml",
        "Docking plan: bottom from above": "it needs vessel/docking-plan.yaml",
        "Docking plan: sections at side blocks": "it needs vessel/docking-plan.yaml",
        "Levels of the water as she lands": "it needs vessel/lightship.yaml",
        "Levels of the water at each facility": "it needs vessel/lightship.yaml",
        "Tanks on docking and at undocking": "it needs vessel/lightship.yaml",
        "Tanks, with contents on arrival": "it needs the bounds or the plan of a tank or more in vessel/tanks.yaml",
        "Coating zones": "it needs a zone with `surface: shell band` in vessel/zones.yaml",
        "Shell expansion: readings and renewals": "it needs thickness readings under surveys/",
        "Loss of plate by zone, with forecast": "it needs thickness readings under surveys/",
        "Inside the tanks: wastage of members": "it needs thickness readings under surveys/",
        "Cradle at Sallow Haven Shiplift Company": "it needs vessel/lightship.yaml",
        "Cradle at Tarnmouth Slip and Engine Works": "it needs vessel/lightship.yaml",
    }
    assert all(isinstance(one, (list, Lacking, NotAsked)) for one in found.values())


def test_every_drawing_stands_without_frames_arrival_or_appendages() -> None:
    package = replace(marram()[0], appendages=(), openings=())
    calculated = Altered(calculate(package), {arrival: LACKING})
    bare = replace(package, frames=None, tender=None)
    assert len(figures_of(every_drawing(bare, calculated))) == len(figures())


def test_a_name_with_markup_is_drawn_as_text() -> None:
    package, calculated = marram()
    tanks = (replace(package.tanks[0], name="<Fore> & “aft”"), *package.tanks[1:])
    made = every_drawing(replace(package, tanks=tanks), calculated)
    drawn = next(one for one in figures_of(made) if one.name == "tank-plan")
    assert any(text.content == "<Fore> & “aft”" for text in texts(drawn))
