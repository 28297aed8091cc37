"""What each yard is asked of the dock that it offers: what the facility calculations take, and the certificate.

One table serves the price form, the reading of what comes back, and the comparison.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from msgspec import Struct

from tenderwright.model.kinds import DOCK_TYPES as KINDS
from tenderwright.quantities.customs import system
from tenderwright.quantities.purposes import PURPOSES

TEXT, COUNT, DAY, GRADIENT, KIND = "text", "count", "day", "gradient", "kind"


class DockFigure(Struct, frozen=True):
    """One figure that is asked."""

    path: str
    """Where it stands in the bid, such as `limits.length`."""
    label: str
    hint: str
    form: str
    """What a quantity is for, such as `clearance`; or text, count, day, gradient, kind."""
    needed_by: tuple[str, ...] = ()
    """The kinds of dock of which nothing can be judged without it."""
    least: str = ""
    most: str = ""

    @property
    def dimension(self) -> str:
        """Give what it measures; nothing where it is no quantity."""
        return PURPOSES[self.form].dimension if self.form in PURPOSES else ""

    @property
    def unit(self) -> str:
        """Give the unit in which it is asked, in the system that is told in."""
        if self.form not in PURPOSES:
            return "year-month-day" if self.form == DAY else ""
        purpose = PURPOSES[self.form]
        return (purpose.us if system() == "us" else purpose.metric).unit


_LIFTING = ("floating dock", "shiplift", "slipway", "boat hoist")
_STANDING = tuple(kind for kind in KINDS if kind != "boat hoist")
FIGURES: tuple[tuple[str, tuple[DockFigure, ...]], ...] = (
    (
        "Every dock",
        (
            DockFigure("name", "Name of the dock", "and berth, bay or platform", TEXT),
            DockFigure("kind", "Kind of dock", ", ".join(KINDS), KIND, KINDS),
            DockFigure(
                "limits.length", "Clear length", "at the floor, on the platform or on the cradle", "clearance", KINDS
            ),
            DockFigure("limits.beam", "Clear breadth", "at the narrowest place that she passes", "clearance", KINDS),
            DockFigure(
                "limits.blocks", "Depth of water over the keel blocks", "at the tide named below", "clearance", KINDS
            ),
            DockFigure("limits.block_height", "Height of the keel blocks", "above the floor or the rail", "clearance"),
            DockFigure("block_spacing", "Spacing of the keel blocks", "centre to centre", "clearance"),
            DockFigure(
                "limits.line_load",
                "Greatest line load along the keel",
                "as certified, blocks and cradle taken off",
                "line load",
                _STANDING,
            ),
            DockFigure("limits.lift", "Greatest weight lifted", "none for a graving dock", "weight", _LIFTING),
            DockFigure(
                "limits.sill", "Depth of water over the sill", "at the tide named below", "clearance", ("graving dock",)
            ),
            DockFigure("limits.tide", "Tide at which these depths hold", "such as mean high water neaps", TEXT),
            DockFigure(
                "limits.air_draft", "Clear height on the way in", "under a bridge or a line, if any", "clearance"
            ),
            DockFigure("density", "Density of the water", "as measured", "density", (), "950 kg/m3", "1100 kg/m3"),
        ),
    ),
    (
        "Rail cars, if she stands on cars",
        (
            DockFigure("cars.number", "Number of cars", "that may be put under her", COUNT),
            DockFigure("cars.length", "Length of a car", "", "clearance"),
            DockFigure("cars.gap", "Gap between coupled cars", "", "clearance"),
            DockFigure("cars.capacity", "Greatest load of a car", "", "weight"),
            DockFigure("cars.line_limit", "Greatest line load on a car", "", "line load"),
            DockFigure("cars.axles", "Axles of a car", "", COUNT),
            DockFigure("cars.axle_limit", "Greatest load of an axle", "the car's own weight included", "weight"),
            DockFigure("cars.most_coupled", "Most cars coupled", "", COUNT),
            DockFigure("cars.own_mass", "Own weight of a car", "with its blocks", "weight"),
            DockFigure("cars.block_height", "Top of the keel blocks above the rail", "", "clearance"),
        ),
    ),
    (
        "Hoists of a shiplift",
        (
            DockFigure("hoists.pairs", "Number of pairs of hoists", "", COUNT, ("shiplift",)),
            DockFigure(
                "hoists.spacing", "Distance from one pair of hoists to the next", "", "clearance", ("shiplift",)
            ),
            DockFigure("hoists.pair_capacity", "Greatest load of a pair of hoists", "", "weight", ("shiplift",)),
            DockFigure("hoists.bay_mass", "Weight of the platform that a pair carries", "", "weight"),
        ),
    ),
    (
        "Track of a slipway",
        (
            DockFigure("slope.gradient", "Slope of the track", "one in so much, such as 1:16", GRADIENT, ("slipway",)),
            DockFigure("slope.haul", "Pull of the hauling winch", "", "force"),
            DockFigure("slope.track", "Length of the track", "", "clearance", (), "", "2000 m"),
        ),
    ),
    (
        "Certificate of the dock",
        (
            DockFigure("certificate.by", "Body that certified the dock", "attach a copy", TEXT, _LIFTING),
            DockFigure("certificate.number", "Number of the certificate", "", TEXT),
            DockFigure("certificate.valid_until", "Last day of its validity", "", DAY, _LIFTING),
        ),
    ),
)
ALL = tuple(figure for _, figures in FIGURES for figure in figures)
WHOLE = {
    "cars": ("number", "length", "gap", "capacity"),
    "hoists": ("pairs", "spacing", "pair_capacity"),
    "slope": ("gradient",),
    "certificate": ("by", "valid_until"),
}
"""What a part of a dock is nothing without."""


def lacking(given: Collection[str], kind: str) -> tuple[str, ...]:
    """Name the figures that are wanted of a dock of a kind and not among the paths given."""
    parts = {path.partition(".")[0] for path in given if "." in path}
    return tuple(
        figure.label
        for figure in ALL
        if figure.path not in given
        and (
            kind in figure.needed_by
            or (not kind and figure.path == "kind")
            or any(figure.path == f"{part}.{name}" for part in parts & WHOLE.keys() for name in WHOLE[part])
        )
    )


def stated(dock: object, figure: DockFigure) -> Any:
    """Give what is stated of a dock, one that is offered or one of the list; None where it is not."""
    found: Any = dock
    for name in figure.path.split("."):
        found = getattr(found, name, None)
    return None if found in (None, "") else found
