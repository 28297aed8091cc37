"""Painted areas of a hull by formula, where there are no offsets."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol

BAND = 0.10
"""Half-width of the error band, as a part of the result: common practice, no source."""


def hull_areas(
    length: float,
    length_overall: float,
    breadth: float,
    draft: float,
    depth: float,
    underwater_coefficient: float,
    deck_coefficient: float,
    boottop_height: float = 0.0,
) -> dict[str, float]:
    """Estimate underwater, boottop, topside and weather deck areas from principal dimensions.

    Formula: underwater (boottop within it) = (2T + B)*L_pp*P; boottop = 2*h*(L_pp + 0.5*B);
    topside = 2*(D - T)*(L_oa + 0.5*B); weather deck with houses = L_oa*B*N.
    Symbols: L_pp, L_oa, breadth extreme B, greatest draft T, depth D, boottop height h [m]; P, N [-]; areas
    [m2].
    Source: paint makers' area sheets; P 0.90 large tankers, 0.85 bulk carriers, 0.70-0.75 dry cargo liners; N
    0.84 to 0.92 (weak source: transcriptions disagree in the second digit, and no published example exists).
    Range: P 0.5 to 1, N 0.5 to 1, draft less than depth. Raises OutOfRange.
    """
    if min(length, length_overall, breadth, draft) <= 0 or boottop_height < 0:
        raise OutOfRange("lengths, breadth and draft must be positive")
    if draft >= depth:
        raise OutOfRange(f"the draft, {draft:.2f} m, is not less than the depth, {depth:.2f} m")
    for name, value in (("underwater", underwater_coefficient), ("deck", deck_coefficient)):
        if not 0.5 <= value <= 1.0:
            raise OutOfRange(f"the {name} coefficient is {value:.3f}, outside 0.5 to 1")
    underwater = (2 * draft + breadth) * length * underwater_coefficient
    return {
        "underwater": underwater,
        "underwater_low": underwater * (1 - BAND),
        "underwater_high": underwater * (1 + BAND),
        "boottop": 2 * boottop_height * (length + 0.5 * breadth),
        "topside": 2 * (depth - draft) * (length_overall + 0.5 * breadth),
        "weather_deck": length_overall * breadth * deck_coefficient,
    }


def _length(description: str) -> dict[str, str]:
    return {"type": "string", "quantity": "length", "description": description}


METHOD = Method(
    name="hydrostatics.hull-areas",
    title="Painted hull areas by formula",
    formula="underwater = (2T + B) Lpp P; boottop = 2h (Lpp + 0.5B); topside = 2(D - T)(Loa + 0.5B); "
    "deck = Loa B N",
    source=Citation("paint makers' area sheets", "no published worked example", "common practice, no source"),
    valid="P 0.90 large tankers, 0.85 bulk carriers, 0.70-0.75 dry cargo liners; no value for tugs, "
    "warships or "
    "sailing hulls",
    inputs={
        "length": _length("Length between perpendiculars."),
        "length_overall": _length("Length overall."),
        "breadth": _length("Breadth extreme."),
        "draft": _length("Greatest draft."),
        "depth": _length("Depth to the weather deck."),
        "underwater_coefficient": {"type": "number", "description": "P, by type of ship."},
        "deck_coefficient": {"type": "number", "description": "N, by type of ship."},
        "boottop_height": _length("Height of the boottop; none where left out."),
    },
    outputs=(
        Symbol("underwater", "underwater area with the boottop", "area", "m2"),
        Symbol("underwater_low", "lower end of the error band", "area", "m2"),
        Symbol("underwater_high", "upper end of the error band", "area", "m2"),
        Symbol("boottop", "boottop area", "area", "m2"),
        Symbol("topside", "topside area", "area", "m2"),
        Symbol("weather_deck", "weather decks with houses and hatch tops", "area", "m2"),
    ),
    kernel=hull_areas,
    example={
        "length": "45 m",
        "length_overall": "49 m",
        "breadth": "8.5 m",
        "draft": "3.2 m",
        "depth": "4.6 m",
        "underwater_coefficient": 0.72,
        "deck_coefficient": 0.84,
        "boottop_height": "0.8 m",
    },
    optional=frozenset({"boottop_height"}),
    cautions=(
        "A first estimate, taken as good to about 10 % (common practice, no source); measure from "
        "offsets instead.",
        "Bulwarks inboard, appendages and the overlap at a transom are not included.",
    ),
)
