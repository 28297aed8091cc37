"""The profiles that come with the compiler have the shape of a profile, and take every kind of work."""

from __future__ import annotations

import pytest

from tenderwright.model.profile import Profile, shipped_profiles
from tenderwright.reading.profiles import shipped_profile_sources
from tenderwright.reading.source import Source
from tenderwright.shapes.schemas import load_schema
from tenderwright.shapes.validate import validate, validator_of

PROFILES = shipped_profiles()
KINDS = ["definite", "measured", "contingent", "option", "provisional", "credit"]


@pytest.mark.parametrize("source", shipped_profile_sources(), ids=lambda source: source.path)
def test_a_shipped_profile_fits_the_schema_under_its_name(source: Source) -> None:
    assert validate(source, "profile") == []
    assert [error.message for error in validator_of("profile").iter_errors(source.data)] == []
    assert source.path == f"profiles/{source.data['name']}.yaml"


def test_two_are_shipped() -> None:
    assert sorted(PROFILES) == ["capital-activity", "object-classes"]


@pytest.mark.parametrize("profile", PROFILES.values(), ids=str)
def test_names_in_a_shipped_profile_stand_for_something(profile: Profile) -> None:
    assert profile.default.category in {one.category for one in profile.categories}
    assert len({one.heading for one in profile.headings}) == len(profile.headings)
    assert len({one.category for one in profile.categories}) == len(profile.categories)


@pytest.mark.parametrize("profile", PROFILES.values(), ids=str)
def test_a_shipped_profile_takes_every_kind_of_work_and_every_content(profile: Profile) -> None:
    assert all(profile.category_taking(kind) is not None for kind in KINDS)
    every = load_schema("profile")["properties"]["headings"]["items"]["properties"]["takes"]["items"]["enum"]
    assert {content for heading in profile.headings for content in heading.takes} == set(every)


@pytest.mark.parametrize("profile", PROFILES.values(), ids=str)
def test_a_category_is_found_by_identifier_first_and_then_by_word(profile: Profile) -> None:
    for category in profile.categories:
        assert profile.category_named(category.category) is category
    tow = profile.category_named("tow")
    assert tow is not None
    assert "tow" in tow.takes
    assert profile.category_named("nothing-of-the-kind") is None
