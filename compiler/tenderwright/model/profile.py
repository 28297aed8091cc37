"""The profile of a funder's form: its headings, its categories of expenditure, and how costs enter it."""

from __future__ import annotations

from dataclasses import dataclass, field

from tenderwright.model.build import Builder, Name, Prose
from tenderwright.notices import Place
from tenderwright.reading.profiles import shipped_profile_sources
from tenderwright.reading.source import Source


@dataclass(frozen=True)
class ProfileHeading:
    """A heading of the form, and which of the content we make goes under it."""

    heading: str
    title: str
    asks: str
    takes: tuple[str, ...]
    here: Place = field(compare=False)
    group: str = ""
    """The group of headings that stand together on the same pages."""


@dataclass(frozen=True)
class ProfileCategory:
    """A category of expenditure, and what is put into it."""

    category: str
    title: str
    here: Place = field(compare=False)
    group: str = ""
    """The group under which it stands and is summed up."""
    takes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Profile:
    """The profile of a funder's form."""

    name: Name
    title: str
    modelled_on: str
    check_notice: str
    headings: tuple[ProfileHeading, ...]
    categories: tuple[ProfileCategory, ...]
    default_category: Name
    contingency: str
    shared: str
    here: Place = field(compare=False)
    notes: Prose | None = None

    def category_taking(self, *words: str) -> ProfileCategory | None:
        """Give the first category that takes one of these words."""
        return next((one for one in self.categories if any(word in one.takes for word in words)), None)

    def category_named(self, name: str) -> ProfileCategory | None:
        """Give a category by its identifier, or by a word that it takes."""
        return next((one for one in self.categories if one.category == name), None) or self.category_taking(name)

    @property
    def default(self) -> ProfileCategory:
        """Give the category for what no other takes; raises KeyError."""
        found = next((one for one in self.categories if one.category == self.default_category.name), None)
        if found is None:
            raise KeyError(self.default_category.name)
        return found


def shipped_profiles() -> dict[str, Profile]:
    """Build the profiles that come with the compiler, by name."""
    profiles = (_built(source) for source in shipped_profile_sources())
    return {profile.name.name: profile for profile in profiles}


def _built(source: Source) -> Profile:
    return Builder(source).build(Profile, source.data)
