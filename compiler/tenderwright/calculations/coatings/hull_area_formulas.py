"""Areas of a hull's outside from her principal dimensions, by the trade's formulas."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import require_not_negative, require_positive
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity
from tenderwright.quantities.display import plainly

TRADE_SHEET = Citation("Area formulas of paint makers' sheets", standing="common practice, no source")

UNDERWATER_COEFFICIENTS = {"large tanker": 0.90, "bulk carrier": 0.85, "dry cargo liner": 0.725}
"""Coefficient P of the underwater area, from `TRADE_SHEET`; the middle of 0.70 to 0.75 for a liner.
None is given for tugs, tenders, warships or sailing hulls."""

DECK_COEFFICIENTS = {"tanker": 0.915, "bulk carrier": 0.915, "liner": 0.88, "coaster": 0.845}
"""Coefficient N of the weather deck, from `TRADE_SHEET`; the middle of each range."""


def underwater_area(lpp: float, beam: float, draught: float, coefficient: float) -> float:
    """Find the underwater area, boot-top included, m².

    Formula: A = (2d + B) Lpp P. Symbols: lpp Lpp, beam B (extreme), greatest draught d in m; coefficient P.
    Range: merchant hulls, P of 0.70 to 0.90. Source: `TRADE_SHEET`. Raises OutOfRange.
    """
    require_dimensions(lpp, beam, draught)
    require_coefficient(coefficient)
    return (2.0 * draught + beam) * lpp * coefficient


def boottop_area(lpp: float, beam: float, height: float) -> float:
    """Find the area of the boot-top on both sides, m²: A = 2h (Lpp + B/2), height h of the band in m.

    Source: `TRADE_SHEET`. Raises OutOfRange.
    """
    require_dimensions(lpp, beam)
    require_not_negative("height of the boot-top", height)
    return 2.0 * height * (lpp + 0.5 * beam)


def topside_area(loa: float, beam: float, height: float) -> float:
    """Find the area of the topsides, m²: A = 2H (Loa + B/2), height H = depth - draught in m.

    Range: the inboard side of bulwarks and the overlap of a transom are not counted.
    Source: `TRADE_SHEET`. Raises OutOfRange.
    """
    require_dimensions(loa, beam)
    require_not_negative("height of the topsides", height)
    return 2.0 * height * (loa + 0.5 * beam)


def weather_deck_area(loa: float, beam: float, coefficient: float) -> float:
    """Find the area of the weather decks with the tops of houses and hatches, m²: A = Loa B N.

    Source: `TRADE_SHEET`, which differ from each other in the second digit of N. Raises OutOfRange.
    """
    require_dimensions(loa, beam)
    require_coefficient(coefficient)
    return loa * beam * coefficient


def require_dimensions(length: float, beam: float, draught: float | None = None) -> None:
    """Refuse dimensions that no hull has."""
    require_positive("length", length)
    require_positive("beam", beam)
    if draught is not None:
        require_not_negative("draught", draught)
    if beam > length:
        raise OutOfRange(f"a beam of {plainly(beam, 'centre')} is more than the length of {plainly(length, 'centre')}")


def require_coefficient(value: float) -> None:
    """Refuse a coefficient of form that is not above 0 and at most 1."""
    if not 0.0 < value <= 1.0:
        raise OutOfRange(f"a coefficient of form is above 0 and at most 1, got {value:g}")


def _kernel(
    lpp: float,
    loa: float,
    beam: float,
    draught: float,
    depth: float,
    underwater_coefficient: float,
    boottop_height: float = 0.0,
    deck_coefficient: float | None = None,
) -> Mapping[str, float | None]:
    if depth < draught:
        raise OutOfRange(
            f"a depth of {plainly(depth, 'centre')} is less than the draught of {plainly(draught, 'centre')}"
        )
    underwater = underwater_area(lpp, beam, draught, underwater_coefficient)
    boottop = boottop_area(lpp, beam, boottop_height)
    return {
        "underwater": underwater,
        "boottop": boottop,
        "underwater_less_boottop": underwater - boottop,
        "topsides": topside_area(loa, beam, depth - draught),
        "weather_deck": None if deck_coefficient is None else weather_deck_area(loa, beam, deck_coefficient),
    }


METHOD = Method(
    name="coating.hull-area",
    title="Areas of a hull's outside from her principal dimensions",
    formula="underwater (2d + B) Lpp P; boot-top 2h (Lpp + B/2); topsides 2H (Loa + B/2); deck Loa B N",
    source=TRADE_SHEET,
    valid="merchant hulls; no coefficients are given for tugs, tenders, warships or sailing hulls",
    inputs={
        "lpp": quantity("length", "Length between perpendiculars."),
        "loa": quantity("length", "Length over all."),
        "beam": quantity("length", "Extreme beam."),
        "draught": quantity("length", "Greatest draught."),
        "depth": quantity("length", "Depth to deck."),
        "underwater_coefficient": number(
            "P: 0.90 large tankers, 0.85 bulk carriers, 0.70 to 0.75 dry cargo liners.", exclusiveMinimum=0, maximum=1
        ),
        "boottop_height": quantity("length", "Height of the boot-top band."),
        "deck_coefficient": number(
            "N: 0.91 to 0.92 tankers and bulk carriers, 0.88 liners, 0.84 to 0.85 coasters.",
            exclusiveMinimum=0,
            maximum=1,
        ),
    },
    outputs=(
        Symbol("underwater", "underwater area, boot-top included", "area", "m2"),
        Symbol("boottop", "area of the boot-top", "area", "m2"),
        Symbol("underwater_less_boottop", "underwater area below the boot-top", "area", "m2"),
        Symbol("topsides", "area of the topsides", "area", "m2"),
        Symbol("weather_deck", "area of weather decks, houses and hatch tops", "area", "m2"),
    ),
    kernel=_kernel,
    example={
        "lpp": "46 m",
        "loa": "51 m",
        "beam": "9.2 m",
        "draught": "3.4 m",
        "depth": "4.6 m",
        "underwater_coefficient": 0.72,
        "boottop_height": "0.6 m",
    },
    optional=frozenset({"boottop_height", "deck_coefficient"}),
    cautions=(
        "no published worked example of these formulas was found; measure from the lines where there are any",
        "bilge keels, rudder, bar keel and appendages are not counted",
    ),
)
