"""The contract weighed: what may be lost day by day, what that needs, and which matters are open."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.planning.contract_matters import answered
from tenderwright.planning.exposure import Exposure, exposure
from tests.documents.composed import Composed, changed
from tests.documents.parts_owner.seen import DAYS, lay_foreseen

CONTRACT = """\
payments:
  - { stage: Award, share: 20 %, event: award }
  - { stage: The rivets are in, share: 30 %, item: "320" }
  - { stage: Afloat again, share: 50 %, event: undocking }
securities:
  - kind: refund guarantee
    share: 20 %
    form: on demand
    issuer: A bank
    released: docking
    valid_to: docking + 30 d
  - kind: performance security
    share: 10 %
    form: conditional
    issuer: A surety
    released: redelivery
    valid_to: redelivery + 30 d
floatable: 72 h
"""
TAKEN = "refloat: 4000\ntow: 2500\n"


def made(contract: str = CONTRACT, taken: str = TAKEN, without: str = "") -> Composed:
    """Compile the starter with a programme and a contract."""

    def change(root: Path) -> None:
        lay_foreseen(root)
        (root / "contract.yaml").write_text(contract, "utf-8")
        if taken:
            (root / "owner" / "contract.yaml").write_text(taken, "utf-8")
        programme = root / "owner" / "programme.yaml"
        text = programme.read_text("utf-8")
        programme.write_text(text.replace(without, "") if without else text, "utf-8")

    return changed(change)


def weighed(found: Composed) -> Exposure | str:
    """Weigh its contract."""
    estimate = found.owner.estimate
    assert estimate is not None
    return exposure(found.compiled.package, found.owner.papers, estimate, found.owner.schedule)


def test_what_is_paid_secured_and_aboard_on_the_days_of_the_programme() -> None:
    found = weighed(made())
    assert isinstance(found, Exposure)
    price = float(found.price)
    award, undocking = found.at(date(2028, 1, 31)), found.at(date(2028, 4, 19))
    assert (award.paid, award.secured, award.leaving) == pytest.approx((0.2 * price, 0.2 * price, 0.0))
    assert found.at(date(2028, 4, 5)).secured == 0.0
    assert undocking.paid == pytest.approx(price)
    assert found.leaving.refloat + found.leaving.tow == Decimal(6500)
    assert found.leaving.rent > 0
    assert found.worst.exposure == max(one.exposure for one in found.moments)
    assert dict(found.reached)["Afloat again"] == date(2028, 4, 19)


def test_when_all_is_done_only_taking_her_away_may_be_lost() -> None:
    found = weighed(made())
    assert isinstance(found, Exposure)
    last = found.moments[-1]
    assert last.paid - last.aboard == pytest.approx(0.0, abs=0.02)


def test_what_is_held_back_is_paid_when_it_is_released() -> None:
    held = "retention:\n  share: 10 %\n  releases:\n    - { share: 100 %, at: redelivery + 100 d }\n"
    found = weighed(made(CONTRACT + held))
    assert isinstance(found, Exposure)
    assert found.at(date(2028, 4, 24)).paid == pytest.approx(0.9 * float(found.price))
    assert found.moments[-1].paid == pytest.approx(float(found.price))


@pytest.mark.parametrize(
    ("contract", "taken", "without", "wants"),
    [
        ("floatable: 72 h\n", TAKEN, "", "`payments`"),
        (CONTRACT, "", "", "owner/contract.yaml"),
        (CONTRACT.replace("floatable: 72 h\n", ""), TAKEN, "", "`floatable`"),
        (CONTRACT, TAKEN, DAYS, "`dock_day`"),
        (CONTRACT.replace(', item: "320"', ""), TAKEN, "", "falls due"),
        (CONTRACT.replace('"320"', '"130"'), TAKEN, "", "item 130, for which `The rivets are in` waits"),
    ],
)
def test_what_is_lacking_is_named(contract: str, taken: str, without: str, wants: str) -> None:
    found = weighed(made(contract, taken, without))
    assert isinstance(found, str)
    assert wants in found


def test_a_line_of_days_may_be_named_beside_the_programme() -> None:
    found = weighed(made(CONTRACT, f"{TAKEN}dock_day: 110.b\n", DAYS))
    assert isinstance(found, Exposure)
    assert found.leaving.rent == weighed_rent()


def weighed_rent() -> Decimal:
    """Give the rent by the programme's own line, which is the same."""
    found = weighed(made())
    assert isinstance(found, Exposure)
    return found.leaving.rent


def test_each_matter_is_answered_by_data_by_words_or_not() -> None:
    text = CONTRACT + (
        "matters:\n  liens: { answer: settled, words: Waivers come with each invoice }\n"
        "  agreed-value: { answer: not settled, words: A valuation }\n"
        "  early-bonus: { answer: left out, words: Nothing is gained }\n"
    )
    package = made(text).compiled.package
    assert package.contract is not None
    assert package.tender is not None
    states = {one.matter.key: one.state for one in answered(package.contract, package.tender)}
    settled = ("advance", "refund-guarantee", "performance-security", "payment-by-work", "liens")
    assert {states[key] for key in settled} == {"settled"}
    assert (states["agreed-value"], states["early-bonus"]) == ("not settled", "left out")
    assert (states["agreement"], states["damages"], states["disputes"]) == ("not answered",) * 3
    assert states["termination"] == "not settled"


def test_without_an_advance_no_refund_is_missed() -> None:
    package = made("payments:\n  - { stage: All, share: 100 %, on: 2028-04-10 }\n").compiled.package
    assert package.contract is not None
    assert package.tender is not None
    found = {one.matter.key: one for one in answered(package.contract, package.tender)}
    assert (found["advance"].state, found["refund-guarantee"].state) == ("left out", "left out")
    assert found["payment-by-work"].gap
    assert "wait for no work: All" in found["payment-by-work"].data
