"""The comparison of bids on paper: a first page for trustees, and behind it every figure that the comparison found."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.commands.bids_compare import compared
from tenderwright.documents.bid_report import bid_report, evaluated_table, lines_table
from tenderwright.documents.edition import Edition, Figure, Stamp, Table, plain
from tenderwright.pricing.money import written
from tenderwright.writing.html import screen_page
from tests.fixtures.returned_bids import bids_package, both_sides, compared_bids
from tests.pipeline.packages import edit

from .composed import part, rows, tables, words

STAMP = Stamp("no-git", "DRAFT: compiled outside git")
ABSOLUTE = ("package.yaml", "arithmetic: unit price governs", "arithmetic: total absolute")


@pytest.fixture(scope="module")
def report() -> Edition:
    return bid_report(*compared_bids(), STAMP)


def table(edition: Edition, anchor: str, first: str) -> Table:
    """Find the table of a part whose first column has a title."""
    return next(one for one in tables(part(edition, anchor)) if one.columns[0].title == first)


def test_it_is_confidential_and_numbered(report: Edition) -> None:
    assert report.confidential
    assert [one.number for one in report.parts] == ["", "", *map(str, range(1, 9))]
    assert report.issued.isoformat() == "2027-12-11", "the day on which the last bid came"


def test_the_first_page_ranks_and_says_what_could_change_it(report: Edition) -> None:
    ranking = rows(table(report, "bids-summary", "Rank"))
    assert [row[:6] for row in ranking] == [
        ["1", "Ostrey Dock", "44 810.00", "41 185.00", "48 275.00", "pass: water over the blocks"],
        ["2", "Wrackness Yard", "43 420.00", "43 420.00", "51 440.00", "not known"],
        ["3", "Saltholm Slip", "42 030.00", "42 030.00", "54 170.00", "not known"],
    ]
    assert "1 figure to confirm" in ranking[0][6]
    assert "unbalanced, and it may matter" in ranking[0][6]
    assert "no total on the form" in ranking[1][6]
    assert "perhaps a decimal slip" in ranking[2][6]
    text = words(part(report, "bids-summary"))
    assert "Ostrey Dock, EUR 48 275.00; Wrackness Yard follows EUR 3 165.00 behind, 7 % of it." in text
    assert "comes to more than 67 no., Ostrey Dock becomes dearer than Wrackness Yard" in text
    meant = "were its rate meant as it stands, the evaluated price would be EUR 50 075.00, and the bid would rank 2 in"
    assert meant in text
    assert "Three bids were returned." in text
    assert "a reasonable doubt" in text
    assert "It sets no bid aside and accepts none." in text


def test_no_page_refuses_a_bid(report: Edition) -> None:
    text = words(report).casefold()
    for word in ("is rejected", "must be rejected", "is refused by", "non-responsive", "winner", "is awarded"):
        assert word not in text


def test_the_parts_of_every_evaluated_price_add_up(report: Edition) -> None:
    _, found = compared_bids()
    build = rows(table(report, "bids-evaluated", ""))
    start = next(place for place, row in enumerate(build) if row[0] == "Parts of the evaluated price") + 1
    end = next(place for place, row in enumerate(build) if row[0] == "Evaluated price")
    for column, bid in enumerate(found.bids, start=1):
        amounts = [row[column] for row in build[start:end]]
        added = sum((Decimal(text.replace(" ", "").replace("−", "-")) for text in amounts if text != "–"), Decimal(0))
        assert written(added) == build[end][column] == written(bid.total)


def test_ranks_stand_beside_the_totals_of_every_case(report: Edition) -> None:
    _, found = compared_bids()
    shown = rows(table(report, "bids-evaluated", "Case"))
    assert [row[0] for row in shown] == [entry.case.title for entry in found.cases]
    for row, entry in zip(shown, found.cases, strict=True):
        assert row[1:] == [f"{written(entry.totals[bid.name])} ({entry.ranks[bid.name]})" for bid in found.bids]


def test_costs_that_the_rule_may_not_name_are_pointed_out(report: Edition) -> None:
    text = words(part(report, "bids-evaluated"))
    assert "the owner's cost of travel to the bidder's dock;" in text
    assert "Not counted" not in text
    assert "Some of what is left out is priced by the owner and not by the rule" in text
    assert "the days of Ostrey Dock, Wrackness Yard and Saltholm Slip are not counted at the day cost published" in text


def test_corrections_show_before_after_and_what_counts(report: Edition) -> None:
    found = [rows(one) for one in tables(part(report, "bids-corrections"))]
    assert found[0][0] == [
        "Line 420.a",
        "quantity times rate governs over the amount in the row",
        "4 250.00",
        "625.00",
        "625.00",
        "to confirm",
    ]
    slip = next(row for table in found for row in table if "slip" in row[1])
    assert slip[2:5] == ["4 550.00", "455.00", "4 550.00"], "a slip is not mended"


def test_under_total_absolute_nothing_is_mended_and_it_is_said() -> None:
    absolute = bid_report(*compared_bids(ABSOLUTE), STAMP)
    corrections = part(absolute, "bids-corrections")
    first = rows(tables(corrections)[0])[0]
    assert first[4:] == ["4 250.00", "disqualifies"]
    assert "nothing is corrected, and a wrong sum disqualifies" in words(corrections)
    assert "1 wrong sum, which disqualifies" in words(part(absolute, "bids-summary"))


def test_line_by_line_marks_and_words(report: Edition) -> None:
    shown = {row[0]: row for row in rows(table(report, "bids-lines", "Line"))}
    assert shown["320.a"][5:] == ["205.00 ↑", "88.00", "92.00"]
    assert shown["420.a"][5:] == ["12.50* ↓", "96.00", "91.00*"]
    assert shown["130.a"][5:] == ["41.00", "45.00", "included"]
    assert shown["140.b"][5:] == ["380.00", "400.00*", "no bid"]
    assert shown["110.c"][5:] == ["450.00", "empty", "500.00"]


def test_the_drawing_stands_with_the_break_even(report: Edition) -> None:
    (figure,) = [one for one in part(report, "bids-break-even").blocks if isinstance(one, Figure)]
    assert figure.name == "bid-sensitivity"
    assert "Wrackness Yard cost the same at 67.1 no.; Ostrey" in figure.alternative


def test_what_is_left_out_and_by_whom_it_is_priced(report: Edition) -> None:
    text = words(part(report, "bids-exclusions"))
    assert "highest figure, of Ostrey Dock" in text
    assert "stated by the owner; the waste firm's letter" in text
    assert "The dock is free from May" in text


def test_points_beside_price(report: Edition) -> None:
    shown = {row[0]: row[1:] for row in rows(table(report, "bids-responsive", "Point"))}
    assert shown["Closing day"][1] == "Waived: received 2027-12-11, closing 2027-12-10; the post was late for all"
    assert shown["Site visit"][1].startswith("Missed: visit of 2027-11-05")
    criteria = rows(table(report, "bids-responsive", "No."))
    assert [row[2:] for row in criteria] == [
        ["to be judged", "to be judged", "not met: the slip ends short of her forefoot"],
        ["to be judged"] * 3,
    ]


JUDGED = """criteria:
  - { bid: ostrey-dock, criterion: 1, met: true, why: her drawing laid over the dock }
  - { bid: wrackness-yard, criterion: 1, met: false, why: the sill is 0.2 m too high }
  - { bid: ostrey-dock, criterion: 2, met: true, why: the visitors' book }
responsive:
"""


def test_criteria_are_shown_as_the_owner_judges_them() -> None:
    judged = bid_report(*compared_bids(("owner/evaluation.yaml", "responsive:\n", JUDGED)), STAMP)
    criteria = rows(table(judged, "bids-responsive", "No."))
    assert [row[0] for row in criteria] == ["1", "2"]
    assert [row[2:] for row in criteria] == [
        [
            "met: her drawing laid over the dock",
            "not met: the sill is 0.2 m too high",
            "not met: the slip ends short of her forefoot",
        ],
        ["met: the visitors' book", "to be judged", "to be judged"],
    ]
    text = words(part(judged, "bids-summary"))
    assert "criterion 1 missed; waive with a reason, or not (part 8)." in text


def test_a_sub_total_to_confirm_keeps_the_letter_of_its_section() -> None:
    wrong = ("owner/bids/ostrey-dock.yaml", "section_totals: { A: ", "section_totals: { A: 1")
    text = words(part(bid_report(*compared_bids(wrong), STAMP), "bids-summary"))
    assert "sub-total of section A" in text


def test_it_says_that_p50_and_p80_are_of_every_quantity_at_once(report: Edition) -> None:
    note = plain(table(report, "bids-evaluated", "Case").note)
    assert "every quantity that is open is taken at its own P50 or P80, all at once" in note


def test_every_figure_is_in_the_tables() -> None:
    _, found = compared_bids()
    lines, evaluated = lines_table(found), evaluated_table(found)
    assert len(lines.rows) == len(found.lines) * len(found.bids)
    amount = lines.header.index("amount")
    for bid in found.bids:
        added = _sum(row[amount] for row in lines.rows if row[lines.header.index("bid")] == bid.name)
        assert added == sum((one.amount for one in bid.corrected.lines.values()), Decimal(0))
        components = [row[5] for row in evaluated.rows if row[0] == bid.name and row[2] == "component"]
        assert _sum(components) == bid.total
        ranks = [row[6] for row in evaluated.rows if row[0] == bid.name and row[2] == "case"]
        assert ranks == [entry.ranks[bid.name] for entry in found.cases]


def _sum(cells: Iterable[object]) -> Decimal:
    return sum((cell for cell in cells if isinstance(cell, Decimal)), Decimal(0))


def test_one_bid_alone_is_composed_too(tmp_path: Path) -> None:
    root = bids_package(tmp_path / "p")
    for path in ("bids/saltholm-slip.yaml", "bids/wrackness-yard.yaml", "evaluation.yaml"):
        (root / "owner" / path).unlink()
    edit(root, "package.yaml", ", owner's days, towing, travel]", "]")
    desk, found, _ = compared(*both_sides(root))
    made = bid_report(desk, found, STAMP)
    assert "One bid was returned, Ostrey Dock; its evaluated price is EUR 41 185.00." in words(
        part(made, "bids-summary")
    )
    assert not [one for one in part(made, "bids-break-even").blocks if isinstance(one, Figure)]


def test_a_comparison_that_is_not_whole_prints_no_rank_and_lists_what_is_wanted() -> None:
    adder = (
        "  - { bid: saltholm-slip, exclusion: Disposal of spent abrasive, amount: 1150, why: the waste firm's letter }"
    )
    desk, found = compared_bids(
        ("owner/evaluation.yaml", "towing: { amount: 2400 }, ", ""),
        ("owner/evaluation.yaml", f"adders:\n{adder}", "adders: []"),
    )
    assert not found.whole
    made = bid_report(desk, found, STAMP)
    summary = words(part(made, "bids-summary"))
    assert "So no bid is ranked" in summary
    assert "Saltholm Slip: the owner's cost of towing: `towing` under `bids` in owner/evaluation.yaml" in summary
    assert "Saltholm Slip: a price for the exclusion “Disposal of spent abrasive”" in summary
    assert "could change the ranking" not in summary
    assert [row[0] for row in rows(table(made, "bids-summary", "Rank"))] == ["–"] * 3
    assert not any("(1)" in cell for row in rows(table(made, "bids-evaluated", "Case")) for cell in row)
    assert {row[6] for row in evaluated_table(found).rows} == {None}
    assert "Sum of what is known" in words(part(made, "bids-evaluated"))
    assert "Not worked out" in words(part(made, "bids-break-even"))
    assert (found.break_evens, found.deciding, found.unbalance[found.bids[0].name].doubts) == ((), None, ())


def test_remarks_stand_beside_exclusions_with_who_settled_them(report: Edition) -> None:
    text = words(part(report, "bids-exclusions"))
    assert "Ship manager: before the day of docking" in text


def test_the_screen_page_has_no_dead_link_and_no_anchor_twice(report: Edition) -> None:
    page = screen_page(report)
    assert "What quantities decide" in page
    assert plain(table(report, "bids-summary", "Rank").note) in page.replace("&#39;", "'")


def test_the_workbook_that_a_bid_was_read_from_is_named() -> None:
    digest = "0123456789abcdef" * 4
    old = "received: 2027-12-08"
    read = ("owner/bids/ostrey-dock.yaml", old, f"{old}\nfile: price-form-ostrey.xlsx\nsha256: {digest}")
    found = words(part(bid_report(*compared_bids(read), STAMP), "bids-summary"))
    assert f"Ostrey Dock: read from price-form-ostrey.xlsx, SHA-256 {digest}." in found
