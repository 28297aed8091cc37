from __future__ import annotations

from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.pricing.money import (
    CENT,
    ZERO,
    cents,
    cents_down,
    in_proportion,
    rounding,
    share_out,
    total,
    up,
    written,
)
from tenderwright.quantities.customs import telling_in

amounts = st.integers(-(10**11), 10**11).map(lambda n: n * CENT)
weights = st.lists(st.decimals(0, 10**6, places=3), min_size=1, max_size=12).filter(lambda w: sum(w) > 0)


@given(amounts, weights)
def test_the_parts_add_up_to_the_cent(amount: Decimal, by: list[Decimal]) -> None:
    parts = share_out(amount, by)
    assert sum(parts) == amount
    assert all(part == cents(part) for part in parts)


@given(amounts, weights)
def test_no_part_is_a_cent_or_more_from_its_exact_share(amount: Decimal, by: list[Decimal]) -> None:
    whole = sum(by)
    for part, weight in zip(share_out(amount, by), by, strict=True):
        assert abs(part - amount * weight / whole) < CENT
        assert part * amount >= 0


@given(amounts.filter(lambda a: a > 0), weights)
def test_more_weight_never_gets_less(amount: Decimal, by: list[Decimal]) -> None:
    pairs = sorted(zip(by, share_out(amount, by), strict=True))
    for (less, small), (more, large) in pairwise(pairs):
        assert large >= small or (less == more and small - large <= CENT)


@given(amounts, weights)
def test_what_is_owed_back_is_shared_like_what_is_owed(amount: Decimal, by: list[Decimal]) -> None:
    assert share_out(-amount, by) == [-part for part in share_out(amount, by)]


@given(st.integers(0, 10**6), weights)
def test_the_cents_left_go_to_the_largest_remainders(hundredths: int, by: list[Decimal]) -> None:
    amount, whole = hundredths * CENT, sum(by)
    exact = [amount * weight / whole / CENT for weight in by]
    parts = [int(part / CENT) for part in share_out(amount, by)]
    got = [share - int(share) for share, part in zip(exact, parts, strict=True) if part > int(share)]
    without = [share - int(share) for share, part in zip(exact, parts, strict=True) if part == int(share)]
    assert min(got, default=Decimal(1)) >= max(without, default=Decimal(0))


@pytest.mark.parametrize(
    ("amount", "by", "parts"),
    [
        ("100.00", [1, 1, 1], ["33.34", "33.33", "33.33"]),  # earlier parts first
        ("0.02", [1, 1, 1], ["0.01", "0.01", "0.00"]),
        ("-1.00", [1, 1, 1], ["-0.34", "-0.33", "-0.33"]),
        ("10.00", [0, 3], ["0.00", "10.00"]),
        ("1.00", [3, 1], ["0.75", "0.25"]),
        ("0.01", [1, 2, 3], ["0.00", "0.00", "0.01"]),
        ("0.00", [1, 2], ["0.00", "0.00"]),
    ],
)
def test_sums_shared_out(amount: str, by: list[int], parts: list[str]) -> None:
    assert share_out(Decimal(amount), [Decimal(w) for w in by]) == [Decimal(part) for part in parts]


@pytest.mark.parametrize("by", [[], [0, 0], [2, -1]])
def test_there_must_be_something_to_share_by(by: list[int]) -> None:
    for amount in ("1.00", "-1.00"):
        with pytest.raises(ValueError, match="weights"):
            share_out(Decimal(amount), [Decimal(w) for w in by])


@pytest.mark.parametrize(
    ("exact", "rounded"),
    [("0.005", "0.01"), ("0.015", "0.02"), ("-0.005", "-0.01"), ("2.344999", "2.34"), ("7", "7.00")],
)
def test_halves_round_away_from_nothing(exact: str, rounded: str) -> None:
    assert str(cents(Decimal(exact))) == rounded


@pytest.mark.parametrize(
    ("amount", "text"),
    [("1234567.8", "1 234 567.80"), ("-1250", "−1 250.00"), ("0", "0.00"), ("999.999", "1 000.00")],
)
def test_amounts_as_written(amount: str, text: str) -> None:
    spaces = dict.fromkeys(map(ord, "\u00a0\u202f\u2009"), " ")
    assert written(Decimal(amount)).translate(spaces) == text


def test_nothing_adds_up_to_nothing() -> None:
    assert total([]) == ZERO
    assert str(total([Decimal("0.10")] * 3)) == "0.30"


parts = st.lists(amounts, min_size=1, max_size=12)


@given(amounts, parts.filter(lambda p: sum(p) != 0))
def test_shares_in_proportion_add_up_to_the_cent_credits_among_them(amount: Decimal, by: list[Decimal]) -> None:
    shares = in_proportion(amount, by)
    assert sum(shares) == amount
    for share, part in zip(shares, by, strict=True):
        assert share == cents(share)
        assert abs(share - amount * part / sum(by)) <= CENT


@given(parts.filter(lambda p: sum(p) != 0))
def test_the_whole_in_proportion_is_the_parts_themselves(by: list[Decimal]) -> None:
    assert in_proportion(sum(by, ZERO), by) == by


def test_an_amount_cannot_be_shared_in_proportion_to_nothing() -> None:
    assert in_proportion(ZERO, [ZERO, ZERO]) == [ZERO, ZERO]
    with pytest.raises(ValueError, match="nothing"):
        in_proportion(CENT, [Decimal(5), Decimal(-5)])


@given(st.decimals(-(10**6), 10**6, places=5))
def test_what_may_not_be_exceeded_is_rounded_down(amount: Decimal) -> None:
    assert amount - CENT < cents_down(amount) <= amount


@pytest.mark.parametrize(
    ("these", "shown"),
    [((1_401_171, 64_700), "EUR 1 401 000"), ((32_041,), "EUR 32 000"), ((4_126,), "EUR 4 130"), ((812,), "EUR 812")],
)
def test_money_is_rounded_by_the_greatest_amount_of_the_paper(these: tuple[int, ...], shown: str) -> None:
    about = rounding("EUR", map(Decimal, these))
    assert about.money(Decimal(these[0])).replace("\N{NO-BREAK SPACE}", " ") == shown


def test_money_follows_the_custom_of_the_place() -> None:
    with telling_in("us", american=True):
        assert rounding("USD", [Decimal(250_400)]).money(Decimal(250_400)) == "$250,000"


@given(st.integers(0, 10**9), st.sampled_from([1, 100]))
def test_what_is_asked_of_a_giver_is_rounded_up_to_a_whole_unit(cents_: int, unit: int) -> None:
    amount = Decimal(cents_) / 100
    assert 0 <= up(amount, unit) - amount < unit
    assert up(amount, unit) % unit == 0
