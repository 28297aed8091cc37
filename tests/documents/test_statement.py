"""The statement for trustees: what stands on it, and that its lines make the forecast to the cent."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.documents.desk import CAUTION
from tenderwright.documents.edition import Edition, Facts, Figure, Heading, Paragraph, Stamp, Table, plain
from tenderwright.documents.statement import statement
from tenderwright.documents.statement_desk import StatementDesk, cut
from tenderwright.planning.in_dock.standing import standing
from tests.pricing.in_dock.conftest import Docked
from tests.pricing.in_dock.sandling import AWARD, WEEK, compiled, write_docked

APPROVALS = """approvals:
  - approval: consent
    title: Consent
    kind: heritage
    gates: [start]
    given_by: Monuments office
    granted: 2028-03-01
    conditions:
      - { what: Photographs, before: flooding }
  - approval: move
    title: Move home
    kind: harbour
    gates: [departure home]
    given_by: Harbour master
    lead: 30 d
"""
STAMP = Stamp("no-git", "DRAFT: a test")


def composed(docked: Docked, on: date) -> Edition:
    made, owner = docked
    assert owner.ledger is not None
    stood = standing(owner.ledger, on, owner.papers, made.package, owner.schedule)
    desk = StatementDesk(made.package, made.links, made.calculated, standing=stood, papers_hash="abc")
    return statement(desk, STAMP)


@pytest.fixture(scope="module")
def docked(tmp_path_factory: pytest.TempPathFactory) -> Docked:
    return compiled(write_docked(tmp_path_factory.mktemp("docked") / "sandling"))


@pytest.fixture(scope="module")
def page(docked: Docked) -> Edition:
    return composed(docked, date(2028, 4, 9))


def words(edition: Edition) -> str:
    """Give all words of the page, spaces that do not break turned into plain ones."""
    found: list[str] = []
    for block in edition.parts[0].blocks:
        if isinstance(block, Heading):
            found.append(block.text)
        elif isinstance(block, Paragraph):
            found.append(plain(block.text))
        elif isinstance(block, Facts):
            found += [f"{name}: {plain(text)}" for name, text in block.pairs]
        elif isinstance(block, Table):
            found += [" | ".join(plain(cell) for cell in row.cells) for row in block.rows]
            found.append(plain(block.note))
    return "\n".join(found).replace("\N{NO-BREAK SPACE}", " ")


def test_it_is_one_confidential_part_with_the_usual_caution(page: Edition) -> None:
    (part,) = page.parts
    assert page.confidential
    assert page.issued == date(2028, 4, 9)
    assert (part.kind, part.caution, page.caution) == ("statement", True, CAUTION)


@pytest.mark.parametrize(
    "told",
    [
        "Day 5 of 14 on blocks; 9 days left.",
        "The docking will come to EUR 47 651.00 if all that waits is accepted; 1 109.00 of the contingency would be",
        "3 decisions are needed, the first by 9 April 2028.",
        "Days on blocks: 14 tendered; 5 used, 9 left. What waits would add 2. Undocking by contract 19 April.",
        "by the owner's programme: just as many as are left.",
        "Work: Of the items ordered, 1 finished, 2 under way and 3 not begun; 13 % of their value is done.",
        "Contract as awarded |  |  | 36 760.00",
        "Changes: condition found | 1 |  | 4 800.00",
        "Changes: owner's change | 1 |  | 1 436.00",
        "Quantities as measured | 1 |  | −225.00",
        "Ordered so far |  |  | 42 771.00",
        "Changes to be signed | 1 |  | 500.00",
        "Conditions found, to be answered or ordered | 2 | 2 | 2 980.00",
        "Further days that changes bring, at line 110.b |  | 2 | 1 400.00",
        "Forecast of the final account |  |  | 47 651.00",
        "Contingency: 12 000.00 was set aside; 6 011.00 beyond the contract is ordered; 1 109.00 would be left",
        "39 000.00 in hand pays 39 000.00 of the forecast; 6 000.00 promised pays 6 000.00; 2 651.00 is missing.",
        "Hours pool: 160.a: 20 of 60 h ordered; materials EUR 300.00 of 2 000.00 ordered",
        "CF-02 | Item 320, Floors at Fr 16: Cement broken, bracket wasted. | 1 900.00 | 2 | 9 April, 15:30",
        "CF-03 | Item 420, Boot-top: Old coating loose. | 1 080.00 | – | 9 April",
        "CO-03 | Item 110: one block moved | 500.00 | – | to be signed",
        "320 Rivets, renew | 4 800.00 | 3.0 | Its item does not say.",
        "The forecast holds if all that waits is accepted as asked; no more is found or ordered, and what is not",
        "the work left takes the likely days of the owner's programme, with the days that changes bring for",
        "Quantities: owner/award.yaml does not say how far they may go before rates are open (`rates_hold`).",
        "Basis: The bid of Ostrey Slip Company as awarded on 31 January 2028.",
    ],
)
def test_what_it_says(page: Edition, told: str) -> None:
    assert told in words(page)


def test_decisions_stand_in_the_order_of_their_hours(page: Edition) -> None:
    text = words(page)
    assert text.index("CF-02 |") < text.index("CF-03 |") < text.index("CO-03 |")


def test_an_overdue_answer_is_told_first(docked: Docked) -> None:
    text = words(composed(docked, date(2028, 4, 11)))
    assert "2 of them are overdue. The papers from the dock reach to 9 April 2028." in text
    assert "9 April, 15:30 overdue 2 d" in text


def test_days_short_stand_on_a_row_of_their_own_with_their_conditions(docked: Docked) -> None:
    """Two days after the papers end, the 9 days of work left are 2 more than the 7 left: 2 at 700."""
    text = words(composed(docked, date(2028, 4, 11)))
    assert "by the owner's programme: 2 days too few, which the forecast prices." in text
    assert "Days that the work is short of, at line 110.b |  | 2 | 1 400.00" in text
    assert "Forecast of the final account |  |  | 49 051.00" in text
    assert "49 051.00 if all that waits is accepted and 2 days short are paid, 291.00 beyond" in text
    assert "the yard is not itself the cause of the days short, for which nothing is paid then." in text


def test_quantities_outside_their_range_and_changes_in_parts_are_told(tmp_path: Path) -> None:
    """60 of 50 m2 are 120 %; 15 and 10 rivets at 100 are 2500, and the ship keeper may sign 2000."""
    change = "line: 320.a, quantity: {0} each, cause: weather, what: rivets, by: Ship keeper, signed: 2028-04-09"
    more = "".join(
        f"  - {{ change: CO-{name}, day: 2028-04-09, {change.format(rivets)} }}\n"
        for name, rivets in ((7, 15), (8, 10))
    )
    week = WEEK.replace("47.5 m2 }", "60 m2 }").replace("changes:\n", f"changes:\n{more}")
    award = AWARD + "rates_hold: { from: 85 %, to: 115 % }\n"
    text = words(composed(compiled(write_docked(tmp_path / "s", award=award, week_1=week)), date(2028, 4, 9)))
    assert [one for one in text.splitlines() if one.startswith("Quantities: ")] == [
        "Quantities: Outside 85 % to 115 % of those tendered: 420.a: 60 of 50 m² (rate not settled)."
    ]
    together = "CO-7 and CO-8, of line 320.a for item 320, come to 2 500.00 together, and Ship keeper may sign up to"
    assert f"Signatures: {together} 2 000.00." in text


def test_days_without_a_rate_are_said_not_to_be_priced(tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s", award=AWARD.replace("days_line: 110.b\n", ""))
    text = words(composed(compiled(root), date(2028, 4, 9)))
    assert "Further days that changes bring |  | 2 | 0.00" in text
    assert "2 further days are not priced, since the award names no `days_line`." in text


def test_before_she_is_docked(docked: Docked) -> None:
    text = words(composed(docked, date(2028, 3, 1)))
    assert "She is to be docked on 5 April 2028, for 14 days." in text
    assert "No decision is needed." in text
    assert "Decisions needed" not in text


def test_after_she_was_undocked_nothing_is_put_off(tmp_path: Path) -> None:
    week = WEEK.replace("dry: 2028-04-05 }", "dry: 2028-04-05, undocked: 2028-04-09 }")
    text = words(composed(compiled(write_docked(tmp_path / "s", week_1=week)), date(2028, 4, 9)))
    assert "She was undocked on 9 April 2028, after 4 days on blocks." in text
    assert "What can still be put off" not in text
    assert "Critical path" not in text


def test_what_is_missing_is_said(tmp_path: Path) -> None:
    award = AWARD.replace("contingency: 12000\n", "")
    root = write_docked(tmp_path / "s", award=award)
    for name in ("funding", "scope", "programme"):
        (root / "owner" / f"{name}.yaml").unlink()
    text = words(composed(compiled(root), date(2028, 4, 9)))
    assert "10 891.00 above the contract." in text
    assert "The award sets none." in text
    assert "owner/funding.yaml does not say where it comes from." in text
    assert "owner/scope.yaml does not say what must be done" in text


def test_approvals_that_are_open_before_she_floats_and_leaves_are_counted(tmp_path: Path, page: Edition) -> None:
    root = write_docked(tmp_path / "s")
    (root / "owner" / "approvals.yaml").write_text(APPROVALS, "utf-8")
    told = words(composed(compiled(root), date(2028, 4, 9)))
    assert (
        "Approvals: Open before she floats, 1 condition; before she leaves for home, 1 approval. Late: Move home."
        in told
    )
    assert "Approvals" not in words(page), "no register is kept there"


def test_its_lines_tell_cause_and_remedy_and_what_came_back(tmp_path: Path) -> None:
    found = "    found: Old coating loose.\n"
    told = f"{found}    cause: Salts under it.\n    repair: Blast and prime.\n"
    back = "restored:\n  - { work: 130.a, day: 2028-04-09, why: needed after all, by: Trustees }\n"
    root = write_docked(tmp_path / "s", week_1=WEEK.replace(found, told) + back)
    table = composed(compiled(root), date(2028, 4, 9)).tables["statement-lines"]
    lines = [dict(zip(table.header, row, strict=True)) for row in table.rows]
    (report,) = [one for one in lines if one["number"] == "CF-03"]
    assert report["text"] == "Boot-top: Old coating loose. Cause: Salts under it. The yard recommends: Blast and prime."
    (line,) = [one for one in lines if one["number"] == "130.a" and one["kind"] == "contract"]
    assert line["note"] == "in the contract again since 2028-04-09, by Trustees: needed after all"


@pytest.mark.parametrize("day", [5, 6, 7, 9, 11])
def test_its_lines_add_up_to_the_forecast(docked: Docked, day: int) -> None:
    made, owner = docked
    page = composed(docked, date(2028, 4, day))
    table = page.tables["statement-lines"]
    column = table.header.index("in forecast")
    amounts = [row[column] for row in table.rows]
    assert owner.ledger is not None
    stood = standing(owner.ledger, date(2028, 4, day), owner.papers, made.package, owner.schedule)
    assert sum((amount for amount in amounts if isinstance(amount, Decimal)), Decimal(0)) == stood.account.forecast


def test_its_lines_hold_what_does_not_fit_the_page(page: Edition) -> None:
    rows = [
        dict(zip(page.tables["statement-lines"].header, row, strict=True))
        for row in page.tables["statement-lines"].rows
    ]
    by_kind = {kind: [row for row in rows if row["kind"] == kind] for kind in {str(row["kind"]) for row in rows}}
    assert len(by_kind["contract"]) == 12
    assert {row["number"]: row["state"] for row in by_kind["change"]} == {
        "CO-01": "signed by Trustees, 2028-04-07",
        "CO-02": "signed by Ship keeper, 2028-04-08",
        "CO-03": "to be signed",
    }
    accepted = next(row for row in by_kind["condition found"] if row["number"] == "CF-01")
    assert (accepted["state"], accepted["note"], accepted["in forecast"]) == (
        "accepted 2028-04-07 by Trustees",
        "answered by CO-01",
        Decimal("0.00"),
    )


def test_the_drawing_tells_the_same_sums(page: Edition) -> None:
    (figure,) = [block for block in page.parts[0].blocks if isinstance(block, Figure)]
    assert figure.alternative == (
        "Bars to one scale, EUR. cost: contract 36 760.00, ordered 6 011.00, waiting 4 880.00; money: in hand "
        "39 000.00, promised 6 000.00. The contract is 36 760.00, with its contingency 48 760.00."
    )


@pytest.mark.parametrize(
    ("text", "most", "wanted"),
    [
        ("Short.", 20, "Short."),
        ("One sentence. And more of it.", 20, "One sentence."),
        ("words without any stop in them", 20, "words without any …"),
    ],
)
def test_a_long_text_is_cut_at_a_word_and_says_so(text: str, most: int, wanted: str) -> None:
    assert cut(text, most) == wanted
