"""The profile of a funder's form: its headings, its categories of expenditure, and how costs enter it."""

from typing import Annotated

from tenderwright.model.build import Builder, Prose
from tenderwright.model.kinds import Identifier, IdentifierName
from tenderwright.model.marks import Count, Kept, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.reading.profiles import shipped_profile_sources
from tenderwright.reading.source import Source


class LengthLimit(Noun, frozen=True, kw_only=True):
    """The greatest length that a funder takes."""

    most: Annotated[int, Key("The most of it.", 500), Within(least=1, most=1_000_000)]
    of: Annotated[
        str, Key("What the limit counts.", "words"), OneOf("words", "characters", "characters without spaces", "pages")
    ]
    counts: Annotated[
        tuple[Annotated[str, Key("What is counted besides."), OneOf("headings", "tables")], ...],
        Key("What is counted beside the running text; where pages are counted, all that stands on them is."),
    ] = ()
    here: Place


class ProfileHeading(Noun, frozen=True, kw_only=True):
    """A heading of the form, and which of the content we make goes under it."""

    heading: Annotated[Identifier, Key("Identifier, by which an application names the heading.", "need")]
    title: Annotated[str, Key("Heading as the funder's form words it.", "Need")]
    group: Annotated[str, Key("Group of headings that stand together on the same pages.", "The project")] = ""
    asks: Annotated[str, Key("One plain sentence on what belongs there.", "Why the work is needed now.")]
    takes: Annotated[
        tuple[
            Annotated[
                str,
                Key("What the section is made of."),
                OneOf(
                    "need",
                    "significance",
                    "condition",
                    "work",
                    "standards",
                    "team",
                    "schedule",
                    "approvals",
                    "budget",
                    "dependencies",
                    "match",
                    "outputs",
                    "maintenance",
                    "risks",
                    "documents",
                    "text",
                ),
            ],
            ...,
        ],
        Key("What is put there beside the owner's own words."),
        Count(1),
    ]
    limit: Annotated[
        LengthLimit | None,
        Key("How long it may be; a heading whose pages are counted stands on pages of its own."),
    ] = None
    here: Place


class ProfileCategory(Noun, frozen=True, kw_only=True):
    """A category of expenditure, and what is put into it."""

    category: Annotated[Identifier, Key("Identifier, by which an application names the category.", "repair")]
    title: Annotated[str, Key("Category as the funder's form words it.", "Repair and conservation")]
    group: Annotated[str, Key("Group under which it stands and is summed up.", "Capital costs")] = ""
    takes: Annotated[
        tuple[
            Annotated[
                str,
                Key("Kind of work, system, or word."),
                OneOf(
                    "definite",
                    "measured",
                    "contingent",
                    "option",
                    "provisional",
                    "credit",
                    "services",
                    "hull",
                    "coating",
                    "sea connections",
                    "shafting",
                    "rudder",
                    "cathodic protection",
                    "tanks",
                    "outfit",
                    "administration",
                    "shared services",
                    "contingency",
                    "professional fees",
                    "surveys",
                    "tow",
                    "travel",
                    "staff",
                    "staff benefits",
                    "owner-furnished",
                    "equipment",
                    "insurance",
                    "engagement",
                    "training",
                    "publicity",
                    "evaluation",
                    "indirect",
                    "volunteers",
                    "gifts in kind",
                ),
            ],
            ...,
        ],
        Key("What is put into it: kinds of work, systems, or words for costs outside the tender."),
    ] = ()
    here: Place


class Profile(Noun, frozen=True, kw_only=True):
    """The headings and categories of a funder's application form, in words of your own. Two come with the compiler, `object-classes` and `capital-activity`; one of yours with the name of one of them goes before it. A profile is generic: check the funder's current notice."""

    name: Annotated[IdentifierName, Key("Name by which applications and the command line call it.", "our-fund")]
    title: Annotated[str, Key("Title of the form, in words of your own.", "Capital, activity and other costs")]
    modelled_on: Annotated[
        str,
        Key(
            "Which published form headings it is modelled on, in your own words.",
            "a capital form in six parts, as published in 2026",
        ),
    ]
    check_notice: Annotated[
        str, Key("What to check in the funder's current notice.", "The greatest share of indirect costs")
    ]
    headings: Annotated[tuple[ProfileHeading, ...], Key("Headings, in the order of the form."), Count(1)]
    categories: Annotated[
        tuple[ProfileCategory, ...],
        Key("Categories of expenditure, in the order of the form; a cost goes into the first that takes it."),
        Count(1),
    ]
    default_category: Annotated[IdentifierName, Key("Category of what no other takes.", "repair")]
    contingency: Annotated[
        str,
        Key(
            "How contingency enters: in the category of the work, on a line of its own (in the category that takes `contingency`), or not paid for."
        ),
        OneOf("allowed", "own line", "refused"),
    ]
    shared: Annotated[
        str,
        Key(
            "How shared services enter: the part that the chosen items carry; whole where an item among those chosen; or by their part and not paid for."
        ),
        OneOf("apportioned", "whole", "not eligible"),
    ]
    limit: Annotated[LengthLimit | None, Key("How long all headings together may be.")] = None
    notes: Annotated[
        Prose | None,
        Key("What to look up in the funder's notice.", "The limit of indirect costs changes each year."),
        Kept("it is for whoever brings the profile up to date"),
    ] = None
    here: Place

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
