"""A few sections scaled from a plan, from which the hull is lofted where there is no table of offsets."""

from typing import Annotated

from tenderwright.model.kinds import Fraction, Length, SignedLength
from tenderwright.model.marks import Count, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class HullSection(Noun, frozen=True, kw_only=True):
    """A section of the hull, read from its keel up to the deck edge."""

    section: Annotated[str, Key("Name of the section, as the plan has it.", "Fr 30")] = ""
    at: Annotated[Position, Key("Where it stands: a frame, or a distance forward of the after perpendicular.", "Fr 30")]
    heights: Annotated[
        tuple[Annotated[SignedLength, Key("A height above the keel line.", "1.0 m")], ...],
        Key(
            "Heights above the keel line at which it was read, rising: the first at the keel, the last at the deck edge.",
            ["0 m", "0.3 m", "1.0 m", "2.0 m", "3.0 m", "4.7 m"],
        ),
        Count(3),
    ]
    half_breadths: Annotated[
        tuple[Annotated[Length, Key("A half-breadth at that place.", "3.21 m")], ...],
        Key(
            "Half-breadth at each of these heights, to the moulded line.",
            ["0.10 m", "2.6 m", "3.8 m", "4.3 m", "4.5 m", "4.55 m"],
        ),
        Count(3),
    ]
    here: Place


class EndProfile(Noun, frozen=True, kw_only=True):
    """The profile of an end of the hull, stem or stern, from the keel up to the deck."""

    at: Annotated[
        tuple[Annotated[Position, Key("A place of the profile.", "47.2 m")], ...],
        Key("Places of the profile, from the end of the keel outward.", ["43.5 m", "46.6 m", "48.0 m", "49.0 m"]),
        Count(2),
    ]
    heights: Annotated[
        tuple[Annotated[SignedLength, Key("A height above the keel line.", "0.9 m")], ...],
        Key("Height of each above the keel line; the last at the deck.", ["0 m", "0.9 m", "3.2 m", "5.6 m"]),
        Count(2),
    ]
    half_breadth: Annotated[Length | None, Key("Half the width of the stem bar or post.", "40 mm")] = None
    deck_half_breadth: Annotated[
        Length | None, Key("Half-breadth of the deck at its very end, where it is not a point.", "0.4 m")
    ] = None
    here: Place


_SECTIONS = [
    {"at": at, "heights": heights, "half_breadths": breadths}
    for at, heights, breadths in (
        ("3 m", ["0 m", "1.0 m", "2.0 m", "3.0 m", "5.1 m"], ["0.1 m", "0.2 m", "0.5 m", "1.8 m", "3.1 m"]),
        ("12 m", ["0 m", "0.5 m", "1.5 m", "3.0 m", "4.8 m"], ["0.1 m", "1.7 m", "3.0 m", "4.0 m", "4.3 m"]),
        ("24 m", ["0 m", "0.5 m", "1.5 m", "3.0 m", "4.6 m"], ["0.1 m", "3.3 m", "4.3 m", "4.5 m", "4.55 m"]),
        ("36 m", ["0 m", "0.5 m", "1.5 m", "3.0 m", "5.0 m"], ["0.1 m", "1.5 m", "2.8 m", "3.6 m", "4.1 m"]),
        ("45 m", ["0.3 m", "1.5 m", "3.0 m", "5.3 m"], ["0.1 m", "0.5 m", "0.9 m", "1.8 m"]),
    )
]


class Sections(Noun, frozen=True, kw_only=True):
    """A few sections scaled from a plan, with the profile of stem and stern; the hull is lofted through them."""

    source: Annotated[
        str, Key("Which plan they were read from, and by whom.", "scaled from the docking plan, drawing D-09")
    ]
    scale: Annotated[
        float,
        Key(
            "How many times the ship is larger than the plan: 100 for 1:100, 48 for 1/4 in to the foot, 1 for a tape.",
            100,
        ),
        Within(least=1, most=1000),
    ]
    reading: Annotated[
        Length | None,
        Key("Standard uncertainty of one reading, on the paper; 0.5 mm where left out.", "0.5 mm"),
        Within(least="0.01 mm", most="100 mm"),
    ] = None
    uncertainty: Annotated[
        Fraction | None,
        Key(
            "Standard uncertainty of all half-breadths together, as where a paper plan has shrunk; 0.3 % where left out.",
            "0.5 %",
        ),
    ] = None
    sections: Annotated[
        tuple[HullSection, ...],
        Key(
            "Five to nine sections from aft to forward: one near each end, one at each shoulder, one amidships.",
            _SECTIONS,
        ),
        Count(5),
    ]
    stern: Annotated[
        EndProfile | None, Key("Profile of the stern; left out where the aftermost section is a flat transom.")
    ] = None
    stem: Annotated[
        EndProfile | None, Key("Profile of the stem; left out where the foremost section is a flat bow.")
    ] = None
    here: Place
