"""The forecast against the money: restricted money pays for its own work alone, and matched money needs its match."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.build import Reference
from tenderwright.model.funding import Funding, FundingSource
from tenderwright.notices import Place
from tenderwright.planning.in_dock.money import Funds, funds
from tenderwright.pricing.in_dock.account import account
from tests.pricing.in_dock.conftest import Docked
from tests.replacing import replace

HERE = Place("owner/funding.yaml")
ON = date(2028, 4, 9)


def _funds(docked: Docked, *sources: FundingSource) -> Funds:
    made, owner = docked
    assert owner.ledger is not None
    found = funds(account(owner.ledger, ON), Funding(sources=sources), made.package)
    assert found is not None
    return found


def _source(amount: int, status: str = "in hand", only: tuple[str, ...] = (), kept: int = 0) -> FundingSource:
    items = tuple(Reference("item", name, HERE) for name in only)
    return FundingSource(
        source="s", name="S", amount=Decimal(amount), here=HERE, kept_back=Decimal(kept), status=status, only=items
    )


def test_the_demonstration_by_hand(docked: Docked) -> None:
    """Items 320 and 420 come to 12055, so that the appeal can give its 9000; the county gives what is matched."""
    made, owner = docked
    assert owner.ledger is not None
    found = funds(account(owner.ledger, ON), owner.papers.funding, made.package)
    assert found is not None
    assert (found.in_hand, found.promised, found.applied) == (Decimal(39000), Decimal(6000), Decimal(70000))
    assert (found.by_hand, found.by_promise) == (Decimal(39000), Decimal(6000))
    assert found.short == Decimal("2651.00")


def test_restricted_money_pays_no_more_than_its_work_comes_to(docked: Docked) -> None:
    """Item 210 comes to 3000, whatever is given for it."""
    found = _funds(docked, _source(9000, only=("210",)), _source(1000))
    assert (found.in_hand, found.by_hand, found.not_free) == (Decimal(10000), Decimal(4000), Decimal(6000))


def test_two_sources_for_one_item_do_not_pay_it_twice(docked: Docked) -> None:
    found = _funds(docked, _source(2500, only=("210",)), _source(2500, "promised", only=("210",)))
    assert (found.by_hand, found.by_promise) == (Decimal(2500), Decimal(500))


def test_what_is_kept_back_is_no_money(docked: Docked) -> None:
    assert _funds(docked, _source(5000, kept=4000)).in_hand == Decimal(1000)


def test_without_sources_nothing_is_told(docked: Docked) -> None:
    made, owner = docked
    assert owner.ledger is not None
    assert funds(account(owner.ledger, ON), None, made.package) is None


sources = st.lists(
    st.builds(
        _source,
        st.integers(0, 60000),
        st.sampled_from(["in hand", "promised", "hoped for"]),
        st.sampled_from([(), ("210",), ("320", "420"), ("110",)]),
    ),
    max_size=4,
)


@given(sources)
def test_nothing_is_paid_twice_or_beyond_what_there_is(docked: Docked, given_: list[FundingSource]) -> None:
    named = [replace(one, source=f"s{n}") for n, one in enumerate(given_)]
    found = _funds(docked, *named)
    assert 0 <= found.by_hand <= found.in_hand
    assert 0 <= found.by_promise <= found.promised
    assert found.by_hand + found.by_promise + found.short == found.forecast
