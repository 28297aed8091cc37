"""What bidders read of the contract: payments, securities, what stands beside the clauses, and what is not asked."""

from __future__ import annotations

from tenderwright.documents.parts.contract import contract_terms
from tenderwright.documents.parts.front import revision_record
from tests.documents.composed import changed, composed, words

CONTRACT = """\
agreement: The trust's own form
payments:
  - { stage: She is washed, share: 40 %, item: "210" }
  - { stage: Afloat again, share: 55 %, event: undocking }
  - { stage: The last, share: 5 %, event: redelivery, on: redelivery + 14 d }
securities:
  - kind: performance security
    share: 10 %
    form: conditional
    issuer: A surety
    released: redelivery
    valid_to: redelivery + 60 d
retention:
  share: 5 %
  releases:
    - { share: 50 %, at: redelivery }
    - { share: 50 %, item: "420" }
floatable: 48 h
matters:
  disputes: { answer: settled, words: "An expert answers, as for <item:320>." }
  liens: { answer: settled, words: What the clause says, clause: hot-work }
  early-bonus: { answer: left out, words: Nothing is gained }
  agreed-value: { answer: not settled, words: A valuation }
"""


def told(contract: str) -> str:
    """Give the words of the rules of the starter's tender with a contract."""
    made = changed(lambda root: (root / "contract.yaml").write_text(contract, "utf-8") and None)
    assert not [one for one in made.compiled.notices if one.severity == "error"]
    return words(revision_record(made.desk()))


def test_payments_securities_and_what_is_held_back_are_told() -> None:
    rules = told(CONTRACT)
    assert "210 Hull" in rules
    assert "undocking, planned for 19 April 2028" in rules
    assert "planned for 24 April 2028" in rules
    assert "not before redelivery + 14 d (8 May 2028)" in rules
    assert "A surety: 10 % of the contract price, conditional; valid until redelivery + 60 d (23 June 2028)" in rules
    assert (
        "5 % of each payment; of that, 50 % at redelivery (24 April 2028) and 50 % when item 420 is accepted" in rules
    )
    assert "within 48 h" in rules


def test_what_a_clause_holds_or_nobody_settled_is_not_printed_for_yards() -> None:
    rules = told(CONTRACT)
    assert "An expert answers, as for" in rules
    assert "What the clause says" not in rules
    assert "A valuation" not in rules
    assert "Nothing is gained" not in rules
    assert "Bonus for early redelivery." in rules


def test_a_package_without_a_contract_says_so_in_a_line() -> None:
    (said,) = contract_terms(composed("starter").desk())
    assert "they need contract.yaml" in words(said)


def test_marrams_clause_refers_to_where_the_stages_are_printed() -> None:
    made = composed("marram")
    shares = (
        [one.share.text for one in made.compiled.package.contract.payments] if made.compiled.package.contract else []
    )
    assert shares == ["10 %", "25 %", "25 %", "30 %", "10 %"]
    clause = next(one for one in made.compiled.package.clauses if one.clause == "price-and-payment")
    assert "<part:revision-record>" in clause.text.text
    assert "25 %" not in clause.text.text
