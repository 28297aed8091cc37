"""The owner's checklist of the contract: gaps first, the worst moment with its day, and no legal advice."""

from __future__ import annotations

from tenderwright.documents.edition import Edition, Heading
from tenderwright.documents.owner.contract_checklist import STEM
from tests.documents.composed import composed, rows, tables, walk, words
from tests.planning.test_contract import CONTRACT, made


def checklist(contract: str, taken: str = "refloat: 4000\ntow: 2500\n") -> Edition:
    """Give the paper of the starter with a contract."""
    return made(contract, taken).edition("owner").sheets[STEM]


def test_gaps_stand_first_with_what_they_take() -> None:
    paper = checklist(CONTRACT + "matters:\n  agreed-value: { answer: not settled, words: A valuer's figure }\n")
    heads = [one.text for one in walk(paper.parts) if isinstance(one, Heading)]
    assert heads == ["Gaps", "What may be lost, where the yard fails", "What is answered"]
    gaps = {row[0]: row for row in rows(tables(paper.parts)[0])}
    assert gaps["Agreed value"][1:3] == ["Not settled", "A valuer's figure"]
    assert gaps["Disputes"][1] == "Not answered"
    assert gaps["Disputes"][2].startswith("Name the expert and a second")
    assert "common practice, no source, but where another source is named" in words(paper.parts)
    assert "gives no legal advice" in words(paper.parts)
    assert "from memory, 40 USC 3131" in words(paper.parts)


def test_the_worst_moment_is_told_with_its_day_or_what_it_takes() -> None:
    told = words(checklist(CONTRACT, "refloat: 4000\ntow: 2500\ntow_basis: A letter\n").parts)
    assert "To tow her: A letter." in told
    assert "At most EUR" in told
    assert "2028: EUR" in told
    assert "Not calculated: it needs owner/contract.yaml" in words(checklist(CONTRACT, "").parts)


def test_nothing_of_it_is_the_yards_and_a_package_without_a_contract_has_none() -> None:
    assert STEM not in composed("starter").edition("owner").sheets
    found = made(CONTRACT)
    assert found.edition("owner").sheets[STEM].confidential
    assert "may be lost" not in words(found.edition("yard").parts)
