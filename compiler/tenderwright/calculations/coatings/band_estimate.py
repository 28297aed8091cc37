"""Area of a band of shell by formula, for a ship that has no table of offsets; it says how good it is."""

from __future__ import annotations

from tenderwright.calculations.coatings.hull_area_formulas import boottop_area, topside_area
from tenderwright.calculations.coatings.ranges import require_positive
from tenderwright.calculations.hydrostatics.denny import denny_surface
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly

BETWEEN, TO_DECK = 0.06, 0.20
"""Standard uncertainty of an area by formula, between heights and up to the deck, whose sheer is not known, as a share
(derived: the tests hold it against hulls known by their offsets)."""


def band_estimate(
    beam: float,
    length_between_perpendiculars: float | None = None,
    length_overall: float | None = None,
    depth: float | None = None,
    draft: float | None = None,
    displacement: float | None = None,
    density: float | None = None,
    lower: float | None = None,
    upper: float | None = None,
) -> dict[str, float]:
    """Estimate the area of a band of shell, both sides, m².

    Formula: from the keel 1.7 L T + V/T + 2(z - T)(Lpp + B/2), V = displacement/density; between heights
    2h(Lpp + B/2); to the deck 2H(Loa + B/2).
    Symbols: lengths, depth, draft T and heights lower and upper z in m, None for the keel below and the deck above;
    displacement in kg, density of the water in kg/m³.
    Source: UFC 4-159-03, Eq. 18; paint makers' area sheets (common practice). Range: ordinary displacement hulls.
    Raises OutOfRange, also where the band needs a figure that is not given.
    """
    if depth is not None and upper is not None and upper > depth:
        raise OutOfRange(f"the band ends at {plainly(upper, 'centre')}, above the depth of {plainly(depth, 'centre')}")
    if upper is None:
        height = _given("depth", depth) - (lower if lower is not None else 0.0)
        return _sure(topside_area(_given("length overall", length_overall), beam, height), TO_DECK)
    between = _given("length between perpendiculars", length_between_perpendiculars)
    if lower is not None:
        return _sure(boottop_area(between, beam, upper - lower), BETWEEN)
    mean, mass, water = (
        _given(name, value) for name, value in (("draft", draft), ("displacement", displacement), ("density", density))
    )
    require_positive("density of the water", water)
    wetted = denny_surface(between, mean, mass / water)["wetted_surface"]
    return _sure(wetted + (upper - mean) * 2 * (between + 0.5 * beam), BETWEEN)


def _sure(area: float, share: float) -> dict[str, float]:
    return {"area": area, "uncertainty": share * area}


def _given(name: str, value: float | None) -> float:
    if value is None:
        raise OutOfRange(f"without offsets the area of this band needs the {name}")
    return value


METHOD = Method(
    name="zone.band-estimate",
    title="Area of a band of shell by formula, without offsets",
    formula="from the keel 1.7 L T + V/T, and 2h(Lpp + B/2) above the stated draft; between heights 2h(Lpp + B/2); "
    "to the deck 2H(Loa + B/2)",
    source=Citation(
        "UFC 4-159-03, Design: Moorings, Eq. 18; paint makers' area sheets", "", "common practice, no source"
    ),
    valid="ordinary displacement hulls; heights within the stated depth",
    inputs={
        "beam": _length("Extreme beam."),
        "length_between_perpendiculars": _length("For a band that does not reach the deck."),
        "length_overall": _length("For a band up to the deck.", "51 m"),
        "depth": _length("For a band up to the deck.", "4.6 m"),
        "draft": _length("For a band from the keel."),
        "displacement": quantity("mass", "At that draft, for a band from the keel."),
        "density": quantity("density", "Of the water in which she displaces it."),
        "lower": _length("Lower edge above the keel line; the keel where left out.", "2.9 m"),
        "upper": _length("Upper edge above the keel line; the deck where left out."),
    },
    outputs=(
        Symbol("area", "area of the band, both sides", "area", "m2"),
        Symbol("uncertainty", "its standard uncertainty", "area", "m2"),
    ),
    kernel=band_estimate,
    example={
        "beam": "9.2 m",
        "length_between_perpendiculars": "46 m",
        "draft": "3.1 m",
        "displacement": "640 t",
        "density": "1025 kg/m3",
        "upper": "2.9 m",
    },
    optional=frozenset(
        {
            "length_between_perpendiculars",
            "length_overall",
            "depth",
            "draft",
            "displacement",
            "density",
            "lower",
            "upper",
        }
    ),
    cautions=("An estimate without offsets, girths or sections: measure before the price rests on it.",),
)
