"""An application agrees with the estimate to the cent, whatever is chosen, whoever is asked, however it is put."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.funding import Funding, Granted
from tenderwright.model.grant import Grant, GrantAlternative, GrantPhase, InKind, OutsideCost
from tenderwright.planning.application import Application, Split
from tenderwright.pricing.money import CENT, ZERO, cents, total
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .applications import HERE, grant, items, marram, name, profiles

NUMBERS = [one.item.number for one in marram().estimate.items]
SOURCES = ["", "lights-and-harbours", "provincial-monuments", "clean-harbour", "town-loan"]
WORDS = ["professional fees", "tow", "volunteers", "contingency", "evaluation"]

money = st.integers(0, 10**7).map(lambda n: n * CENT)


def outside(amount: Decimal, word: str, eligible: bool) -> OutsideCost:
    return OutsideCost(
        what="a cost", category=name(word), amount=amount, basis="a letter", here=HERE, eligible=eligible
    )


def given_in_kind(hours: int, rate: Decimal) -> InKind:
    return InKind(
        what="help",
        hours=parse_quantity(f"{hours} h", "time"),
        rate=rate,
        category=name("volunteers"),
        basis="pay of the place",
        here=HERE,
    )


@st.composite
def applications(draw: st.DrawFn) -> Application:
    profile = profiles()[draw(st.sampled_from(sorted(profiles())))]
    profile = replace(
        profile,
        contingency=draw(st.sampled_from(["allowed", "own line", "refused"])),
        shared=draw(st.sampled_from(["apportioned", "whole", "not eligible"])),
    )
    asked = draw(st.none() | money)
    ids = [category.category for category in profile.categories]
    overridden = draw(st.dictionaries(st.sampled_from([*NUMBERS, "310.a", "110.b"]), st.sampled_from(ids), max_size=4))
    made = grant(
        profile.name.name,
        *draw(st.lists(st.sampled_from(NUMBERS), unique=True)),
        source=draw(st.sampled_from(SOURCES)),
        confidence=draw(st.sampled_from(["P50", "P80"])),
        categories=overridden,
    )
    grants = draw(st.lists(st.builds(granted, st.sampled_from([*NUMBERS, "310.a", "110.b"]), money), max_size=4))
    costs = draw(st.lists(st.builds(outside, money, st.sampled_from(WORDS), st.booleans()), max_size=3))
    gifts = draw(st.lists(st.builds(given_in_kind, st.integers(1, 900), money), max_size=2))
    phased = draw(
        st.none() | st.lists(st.sampled_from(["first", "second", ""]), min_size=len(NUMBERS), max_size=len(NUMBERS))
    )
    asking = replace(made, asked=asked, costs=tuple(costs), in_kind=tuple(gifts), phases=phases(phased or []))
    return marram().work_out(asking, profile, granting("town-loan", *grants))


def phases(of: list[str], *asked: Decimal) -> tuple[GrantPhase, ...]:
    """Put the items of the demonstration into phases, each named for the item at its place."""
    found = []
    for place, phase in enumerate(sorted({*of} - {""})):
        inside = items(*(number for number, one in zip(NUMBERS, of, strict=True) if one == phase))
        sum_ = asked[place] if asked else None
        found.append(GrantPhase(phase=phase, title=phase, items=inside, asked=sum_, here=HERE))
    return tuple(found)


def granted(work: str, amount: Decimal) -> Granted:
    return Granted(work=name(work), amount=amount, here=HERE)


def granting(source: str, *grants: Granted) -> Funding:
    """Give the sources of the demonstration, one of which has granted something for certain work."""
    funding = marram().owner.papers.funding
    assert funding is not None
    sources = [replace(one, granted=grants) if one.source == source else one for one in funding.sources]
    return replace(funding, sources=tuple(sources))


def adds_up(split: Split) -> bool:
    return split.total == total([split.granted, split.grant, split.match, split.not_eligible])


@given(applications())
def test_every_sum_agrees_to_the_cent(made: Application) -> None:
    sums = made.reconciliation
    assert sums.whole == sums.by_category == sums.by_row == sums.by_payer
    assert sums.holds
    for amount in (sums.direct, sums.shared, sums.contingency, sums.outside, sums.in_kind):
        assert amount == cents(amount)


@given(applications())
def test_every_row_is_paid_by_grant_match_or_not_at_all(made: Application) -> None:
    rows = [row.split for group in made.groups for row in group.rows]
    rows += [group.split for group in made.groups]
    rows += [row.split for row in made.rows]
    rows += [row.split for row in made.phases]
    assert all(adds_up(split) for split in [*rows, made.whole])
    if made.phases:
        assert total([row.split.total for row in made.phases]) == made.whole.total
        assert total([row.split.grant for row in made.phases]) == made.whole.grant
    assert total([row.likely for row in made.rows]) + total([row.contingency for row in made.rows]) == made.whole.total


@given(applications())
def test_what_is_asked_by_itself_never_exceeds_what_may_be_asked(made: Application) -> None:
    if made.grant.asked is None:
        assert made.too_much <= 0
        assert made.source is None or made.asked <= made.source.amount - made.source.kept_back
    if made.asked <= made.ceiling and made.whole.grant:
        wanted = Decimal(repr(made.source.match.si)) if made.source and made.source.match else ZERO
        assert made.whole.match >= made.asked * wanted
        assert made.whole.grant == made.asked


@given(applications())
def test_no_more_is_drawn_than_the_match_and_each_source(made: Application) -> None:
    for drawn in made.drawn:
        granted = total([one.amount for one in drawn.source.granted])
        assert ZERO < drawn.amount <= drawn.source.amount - drawn.source.kept_back - granted
        assert drawn.source is not made.source
    if made.cash_match >= 0:
        assert total([one.amount for one in made.drawn]) <= made.cash_match


@pytest.mark.parametrize("profile", ["object-classes", "capital-activity"])
def test_the_chosen_items_carry_what_the_estimate_apportions_to_them(profile: str) -> None:
    made = marram().work_out(grant(profile, "310", "315", "420"), profiles()[profile])
    items = [one for one in marram().estimate.items if one.item.number in ("310", "315", "420")]
    assert made.reconciliation.direct == total([one.direct for one in items])
    assert made.reconciliation.shared == total([one.shared for one in items])
    assert total([one.direct + one.shared for one in items]) == total([one.loaded for one in items])


@pytest.mark.parametrize("profile", ["object-classes", "capital-activity"])
def test_all_items_together_come_to_the_whole_estimate(profile: str) -> None:
    sums = marram().work_out(grant(profile), profiles()[profile]).reconciliation
    assert sums.direct + sums.shared == marram().estimate.everything


def test_at_the_confidence_wanted_each_item_has_its_part_of_the_whole() -> None:
    made = marram().work_out(grant("capital-activity", "310", "630"), profiles()["capital-activity"])
    for row in made.of_sort("work"):
        assert row.split.total == marram().outlook.by_item[row.number][0.80]


def test_contingency_stands_where_the_profile_wants_it() -> None:
    own = marram().work_out(grant("capital-activity", "310"), profiles()["capital-activity"])
    refused = marram().work_out(grant("object-classes", "310"), profiles()["object-classes"])
    allowed = replace(profiles()["capital-activity"], contingency="allowed")
    inside = marram().work_out(grant("capital-activity", "310"), allowed)
    by_category = {row.category.category: row.split for group in own.groups for row in group.rows}
    assert by_category["contingency"].total == own.reconciliation.contingency > 0
    assert by_category["contingency"].not_eligible == 0
    assert refused.whole.not_eligible == refused.reconciliation.contingency
    within = {row.category.category: row.split for group in inside.groups for row in group.rows}
    assert within["contingency"].total == 0
    assert inside.whole == own.whole


def test_a_service_that_is_named_enters_whole_only_where_the_profile_says_so() -> None:
    apportioned = profiles()["capital-activity"]
    whole = replace(apportioned, shared="whole")
    by_part = marram().work_out(grant("capital-activity", "110", "310"), apportioned)
    entire = marram().work_out(grant("capital-activity", "110", "310"), whole)
    dock = next(one for one in marram().estimate.items if one.item.number == "110")
    assert [row.number for row in by_part.of_sort("work")] == ["310"]
    assert next(row for row in by_part.of_sort("service") if row.number == "110").likely < dock.direct
    assert next(row for row in entire.of_sort("work") if row.number == "110").likely == dock.direct
    assert all(row.number != "110" for row in entire.of_sort("service"))


def test_shared_services_may_be_shown_and_not_paid_for() -> None:
    shown = replace(profiles()["capital-activity"], shared="not eligible")
    made = marram().work_out(grant("capital-activity", "310"), shown)
    services = made.of_sort("service")
    assert services
    assert all(row.split.not_eligible == row.split.total for row in services)


def test_match_of_one_for_one_leaves_half() -> None:
    made = marram().work_out(
        grant("capital-activity", "310", source="lights-and-harbours"), profiles()["capital-activity"]
    )
    eligible = made.whole.total - made.whole.not_eligible
    assert made.asked == made.ceiling
    assert eligible / 2 - CENT < made.ceiling <= eligible / 2


def test_gifts_in_kind_count_on_the_side_of_the_match_alone() -> None:
    profile = profiles()["capital-activity"]
    plain = grant("capital-activity", "310", source="lights-and-harbours")
    gift = given_in_kind(100, Decimal("15"))
    before, after = marram().work_out(plain, profile), marram().work_out(replace(plain, in_kind=(gift,)), profile)
    assert after.in_kind == Decimal("1500.00")
    assert after.ceiling - before.ceiling == Decimal("750.00")
    assert next(iter(after.of_sort("in kind"))).split.grant == 0


def test_more_than_may_be_asked_is_told_in_figures() -> None:
    profile = profiles()["capital-activity"]
    most = marram().work_out(grant("capital-activity", "310", source="lights-and-harbours"), profile).ceiling
    made = grant("capital-activity", "310", source="lights-and-harbours", asked=str(most + 5))
    assert marram().work_out(made, profile).too_much == Decimal("5.00")
    rich = grant("capital-activity", "520", "620", source="insurer-contribution", asked="12001")
    assert marram().work_out(rich, profile).too_much == Decimal("1.00")


def test_work_that_the_source_does_not_pay_for_is_shown_with_the_reason() -> None:
    made = marram().work_out(
        grant("capital-activity", "310", "440", "820", source="lights-and-harbours"), profiles()["capital-activity"]
    )
    why = {row.number: row.barred for row in made.of_sort("work")}
    assert why["310"] == ""
    assert why["440"] == why["820"] == "the source pays for other items"
    shares = {row.number: row.split.grant for row in made.of_sort("work")}
    assert shares["440"] == 0
    assert {one.why for one in made.not_eligible} == {"the source pays for other items"}


def test_names_that_stand_for_nothing_are_refused() -> None:
    profile = profiles()["capital-activity"]
    with pytest.raises(KeyError, match="nobody"):
        marram().work_out(grant("capital-activity", source="nobody"), profile)
    with pytest.raises(KeyError, match="nowhere"):
        marram().work_out(grant("capital-activity", categories={"310": "nowhere"}), profile)


@pytest.mark.parametrize("profile", ["object-classes", "capital-activity"])
def test_the_two_applications_of_the_demonstration_agree(profile: str) -> None:
    grants: list[Grant] = [one for one in marram().owner.papers.grants.values() if one.profile.name == profile]
    assert grants
    for one in grants:
        made = marram().work_out(one, profiles()[profile])
        assert made.reconciliation.holds
        assert made.too_much <= 0
        assert made.to_be_found == 0


def test_an_application_is_cut_again_for_another_funder_with_what_was_granted_taken_off() -> None:
    profile = profiles()["capital-activity"]
    made = grant("capital-activity", "310", "315", source="lights-and-harbours")
    before = marram().work_out(made, profile)
    funding = granting("provincial-monuments", granted("310", Decimal("20000")), granted("315.a", Decimal("3000")))
    after = marram().work_out(made, profile, funding)
    assert after.whole.total == before.whole.total
    assert after.whole.granted == Decimal("23000.00")
    assert before.ceiling - after.ceiling == Decimal("11500.00"), "one for one, half of what is left"
    line = next(one for one in after.entries if one.number == "315.a")
    assert (line.granted, line.eligible) == (Decimal("3000.00"), line.amount - 3000)
    assert all(one.source.source != "provincial-monuments" or one.amount <= 187000 for one in after.drawn)
    own = marram().work_out(replace(made, source=name("provincial-monuments")), profile, funding)
    assert own.whole.granted == 0, "its own grant is what it is asked for"


def test_no_more_is_taken_off_than_the_application_counts() -> None:
    profile = profiles()["capital-activity"]
    made = grant("capital-activity", "310", source="lights-and-harbours")
    much = marram().work_out(made, profile, granting("town-loan", granted("310", Decimal(10**6))))
    assert much.whole.granted == much.whole.total == total([one.amount for one in much.taken_off])
    assert much.asked == much.ceiling == 0
    assert much.taken_off[0].beyond == 10**6 - much.whole.total
    dock = next(one for one in marram().estimate.items if one.item.number == "110")
    part = marram().work_out(made, profile, granting("town-loan", granted("110", dock.direct)))
    assert part.whole.granted == part.chosen.part_of(dock), "of a shared service, what the work carries of it"


def test_phases_have_their_own_sums_and_leave_those_of_the_whole_as_they_are() -> None:
    profile = profiles()["capital-activity"]
    whole = marram().work_out(grant("capital-activity", "310", "315", "420", source="lights-and-harbours"), profile)
    of = ["shell" if one in ("310", "315") else "coat" if one == "420" else "" for one in NUMBERS]
    made = grant("capital-activity", source="lights-and-harbours")
    coat, shell = (made := marram().work_out(replace(made, phases=phases(of)), profile)).phases
    assert (made.whole, made.ceiling) == (whole.whole, whole.ceiling)
    item = next(one for one in marram().estimate.items if one.item.number == "420")
    own = [one for one in made.entries if one.phase == "coat" and not one.contingency]
    services = len([one for one in own if one.sort == "service"])
    assert abs(total([one.amount for one in own]) - item.direct - item.shared) <= CENT * services, "each to the cent"
    assert shell.split.grant + coat.split.grant == made.asked


def test_what_is_asked_for_a_phase_is_paid_for_its_own_costs() -> None:
    profile = profiles()["capital-activity"]
    of = ["shell" if one == "310" else "coat" if one == "420" else "" for one in NUMBERS]
    made = grant("capital-activity", source="lights-and-harbours")
    asking = replace(made, phases=phases(of, Decimal("7000.01"), Decimal("9000.02")))
    coat, shell = (worked := marram().work_out(asking, profile)).phases
    assert (coat.split.grant, shell.split.grant, worked.asked) == (
        Decimal("7000.01"),
        Decimal("9000.02"),
        Decimal("16000.03"),
    )


def test_of_what_is_asked_either_or_each_is_an_application_of_its_own() -> None:
    profile = profiles()["capital-activity"]
    either = GrantAlternative(title="plates", items=items("310"), here=HERE)
    other = GrantAlternative(title="rivets", items=items("315"), asked=Decimal(5000), here=HERE)
    made = grant("capital-activity", "420", source="lights-and-harbours")
    worked = marram().work_out(replace(made, alternatives=(either, other)), profile)
    first, second = worked.alternatives
    plain = marram().work_out(grant("capital-activity", "420", "310", source="lights-and-harbours"), profile)
    assert worked.whole == first.application.whole == plain.whole
    assert [one.item.number for one in second.application.chosen.work] == ["315", "420"]
    assert second.application.asked == 5000
    assert second.application.reconciliation.holds


def test_what_is_granted_for_an_item_comes_off_its_lines_before_its_contingency() -> None:
    made = grant("object-classes", "310", source="lights-and-harbours")
    funding = granting("town-loan", granted("310", Decimal(1000)))
    worked = marram().work_out(made, profiles()["object-classes"], funding)
    assert total([one.granted for one in worked.entries if one.contingency]) == 0
    assert total([one.granted for one in worked.entries]) == 1000
