"""The figures of the dock that a yard offers: read in the unit asked, told of where they are not, never guessed."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from tenderwright.commands.bids_read import check_text
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.model.bid import DockOffered
from tenderwright.pricing.dock_figures import ALL, FIGURES, stated
from tenderwright.writing.yaml_file import yaml_text

from .filled import YARD, Fill, codes, only, put_at, returned, row_of

LIFT: dict[str, object] = {
    "Kind of dock": "Shiplift",
    "Depth of water over the sill": None,
    "Greatest weight lifted": "1500 t",
    "Number of pairs of hoists": 11,
    "Distance from one pair of hoists to the next": 7,
    "Greatest load of a pair of hoists": 280,
    "Body that certified the dock": "classification society",
    "Last day of its validity": date(2028, 3, 31),
}


def put(label: str, figure: object) -> Fill:
    return put_at(YARD, label, 4, figure)


def dock_of(*fills: Fill) -> DockOffered:
    found = returned(*fills)
    assert found.notices == ()
    assert found.bid.dock is not None
    check_text("owner/bids/corve.yaml", yaml_text(bid_entry(found.bid)), found.bid)
    return found.bid.dock


def test_every_figure_has_a_label_of_its_own() -> None:
    assert len({figure.label for figure in ALL}) == len({figure.path for figure in ALL}) == len(ALL) > 30


def test_figures_are_read_in_the_unit_asked_or_in_their_own() -> None:
    dock = dock_of(put("Height of the keel blocks", "4 ft"), put("Density of the water", 1.012))
    assert (dock.name, dock.kind, dock.lacking) == ("Head berth", "graving dock", ())
    assert dock.limits is not None
    assert [str(one) for one in (dock.limits.length, dock.limits.beam, dock.limits.line_load)] == [
        "96 m",
        "14.6 m",
        "45 t/m",
    ]
    assert str(dock.limits.block_height) == "4 ft"
    assert str(dock.density) == "1.012 t/m3"


def test_a_shiplift_is_read_with_its_hoists_and_certificate() -> None:
    dock = dock_of(*(put(label, figure) for label, figure in LIFT.items()))
    assert dock.hoists is not None
    assert (dock.hoists.pairs, str(dock.hoists.pair_capacity)) == (11, "280 t")
    assert dock.certificate is not None
    assert dock.certificate.valid_until == date(2028, 3, 31)


@pytest.mark.parametrize(
    ("label", "figure", "path"),
    [
        ("Clear length", "about ninety", "limits.length"),
        ("Clear length", "96 kg", "limits.length"),
        ("Clear length", -96, "limits.length"),
        ("Clear length", "14,6 m", "limits.length"),
        ("Density of the water", 1012, "density"),
        ("Kind of dock", "dry", "kind"),
        ("Axles of a car", 2.5, "cars.axles"),
        ("Axles of a car", 51, "cars.axles"),
        ("Slope of the track", "steep", "slope.gradient"),
        ("Last day of its validity", "03/04/2028", "certificate.valid_until"),
    ],
)
def test_what_cannot_be_read_is_quoted_and_not_guessed(label: str, figure: object, path: str) -> None:
    found = returned(put(label, figure))
    assert set(codes(found)) <= {"bid-incomplete", "bid-unread"}
    assert any(f"`{figure}` is not read as" in notice.message for notice in found.notices)
    assert found.bid.dock is not None
    assert stated(found.bid.dock, next(one for one in ALL if one.path == path)) is None


def test_what_a_dock_of_its_kind_lacks_is_named_and_kept() -> None:
    found = returned(put("Depth of water over the sill", None))
    assert only(found).message == "of the dock is not given: Depth of water over the sill"
    assert found.bid.dock is not None
    assert found.bid.dock.lacking == ("Depth of water over the sill",)


def test_a_part_that_is_not_whole_names_what_it_wants() -> None:
    found = returned(put("Number of cars", 8), put("Greatest load of a car", 160))
    assert only(found).message == "of the dock is not given: Length of a car, Gap between coupled cars"
    assert found.bid.dock is not None
    assert found.bid.dock.cars is None


def test_a_dock_of_which_nothing_is_said_is_told_of_once() -> None:
    def clear(book: Any) -> None:
        for _, figures in FIGURES:
            for figure in figures:
                book[YARD].cell(row_of(book[YARD], figure.label), 4).value = None

    found = returned(clear)
    assert found.bid.dock is None
    assert "the figures of the dock are not given" in only(found).message


def test_a_form_that_asked_for_no_dock_is_not_blamed() -> None:
    def older(book: Any) -> None:
        sheet = book[YARD]
        sheet.delete_rows(1, row_of(sheet, "Asked") - 1)

    found = returned(older)
    assert found.bid.dock is None
    assert set(codes(found)) == {"bid-form-reworded"}
