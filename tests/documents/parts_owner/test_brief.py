"""The brief for trustees: one story of money that adds up, in words; what is not known is said where it would stand."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from tenderwright.documents.edition import Edition, Figure, Heading, Table
from tenderwright.documents.owner.brief_money import needed, rounded
from tenderwright.writing.pdf import Typesetter
from tests.documents.composed import changed, compiled, composed, rows, tables, walk, words
from tests.pipeline.packages import MARRAM, edit

WITHY = MARRAM.parent / "tests" / "packages" / "withy"


@cache
def brief(package: str) -> Edition:
    if package == "withy":
        return compiled(WITHY).edition("owner").sheets["brief"]
    return composed(package).edition("owner").sheets["brief"]  # type: ignore[arg-type]


def figure(edition: Edition) -> Figure:
    (found,) = [one for one in walk(edition.parts) if isinstance(one, Figure)]
    return found


def amounts(svg: str) -> list[str]:
    return re.findall(r'class="dw-amount">([^<]*)<', svg)


def number(text: str) -> int:
    return int(re.sub(r"[^\d−-]", "", text).replace("−", "-"))


def test_the_bridge_adds_up_as_it_is_printed_from_the_contract_to_the_sum_to_have_in_hand() -> None:
    desk = composed("marram").owner_desk()
    steps = [number(one) for one in amounts(figure(brief("marram")).svg)]
    contract, found, likely, *more = steps[:7]
    assert contract + found == likely
    assert likely + sum(more[:3]) == more[3]
    assert more[3] == int(rounded(desk)(needed(desk)))
    assert more[3] == 1_401_000
    money = steps[7:]
    assert money == [646_000, 390_000, 505_000, 12_000]


def test_what_is_still_to_be_found_is_what_is_neither_in_hand_nor_promised() -> None:
    assert "Still to be found: EUR\N{NO-BREAK SPACE}365\N{NO-BREAK SPACE}000." in words(brief("marram"))


@pytest.mark.parametrize("package", ["marram", "starter", "withy"])
def test_a_trustee_reads_no_mark_of_an_engineer(package: str) -> None:
    text = words(brief(package).parts)
    assert not re.findall(r"\bP\d\d\b|\bFr \d|\b\d{3}\.[a-z]\b|\b[a-z]+\.[a-z]+\.[a-z]+\b", text)
    assert "{" not in text
    assert brief(package).confidential
    assert brief(package).audience == "owner"


def test_rungs_are_told_by_what_they_add_and_days_by_what_is_decided() -> None:
    rungs, days = tables(brief("marram"))[-2:]
    assert rows(rungs)[0][1] == "Money in hand"
    assert rows(rungs)[0][2].startswith("Not yet enough for what must be done (EUR")
    assert rows(rungs)[1][2].startswith("Pays for: everything that must be done (20 pieces); ")
    when = [row[0] for row in rows(days)]
    assert (when[0], when[-1]) == ("22 February 2027", "31 December 2028")
    assert any("Money in hand and promised pays for 40 of 53 pieces of work." in row[1] for row in rows(days))
    gates = [row[1] for row in rows(days) if "gate" in row[1]]
    assert len(gates) == 2
    assert gates[0].endswith("needed within 2 days, or she waits on the blocks.")


def test_what_follows_where_nothing_is_done_comes_from_the_forecast_and_the_items() -> None:
    text = words(brief("marram"))
    assert "She will have been afloat for 20 years when she is docked. 12 of her plates are past their limit" in text
    assert "A sea valve that cannot be shut has no second barrier; the insurer asked for this work." in text


def test_what_is_not_known_is_said_where_it_would_stand_with_what_it_would_take() -> None:
    text = words(brief("starter"))
    for wanting in ("owner/risks.yaml", "owner/programme.yaml", "owner/funding.yaml", "owner/scope.yaml"):
        assert wanting in text
    assert "Not known: it needs owner/scope.yaml (what each piece of work is worth)." in words(brief("withy"))
    headings = [one.text for one in walk(brief("starter").parts) if isinstance(one, Heading)]
    assert headings == [one.text for one in walk(brief("marram").parts) if isinstance(one, Heading)]


@pytest.mark.parametrize("package", ["marram", "withy"])
def test_it_is_two_pages(package: str) -> None:
    assert Typesetter().typeset(brief(package), 1_822_635_000, "brief").page_count == 2


def test_no_table_of_the_brief_is_without_a_row() -> None:
    for package in ("marram", "starter", "withy"):
        assert all(one.rows for one in walk(brief(package).parts) if isinstance(one, Table))


def _oddly(root: Path) -> None:
    edit(root, "owner/rates.yaml", "base_month: ", "base_month: 2027-13 # ")
    rates = root / "owner" / "rates.yaml"
    rates.write_text(re.sub(r"(rate|low|high): [\d.]+", r"\1: 0", rates.read_text("utf-8")), "utf-8")


def test_a_docking_that_costs_nothing_and_a_month_that_is_none_are_told_as_they_are() -> None:
    text = words(changed(_oddly).edition("owner").sheets["brief"])
    assert "Prices of 2027-13;" in text
