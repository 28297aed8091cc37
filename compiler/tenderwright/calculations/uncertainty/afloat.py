"""How sure it is how she floats and lands: weights, soundings, water and lines carried through to each figure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import atan, hypot
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.cradle.line_load import line_load
from tenderwright.calculations.hydrostatics.buoyant import HULL, Buoyant, buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.landing.exact import Lander
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.landing.settling import BLOCK_INPUTS
from tenderwright.calculations.method import BY_ROW, Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, listed, number, quantity, record, text
from tenderwright.calculations.uncertainty.combined import GUM, Combined, combined

STEP = 1e-4
"""Part of a condition by which it is changed to see what follows: small, and far above what rounding leaves."""
ROUNDS = 3
"""Of the search for the upthrust at settling, which starts from that of the condition itself."""

TRIMMED = 0.6
"""Standard uncertainty of KM by a table for an even keel, as a share by the slope of the trim: what hulls known by
their lines gave (derived)."""
WEIGHED = ("displacement", "line_load", "block")
"""What follows from the weights alone."""

FIGURES = {
    "displacement": ("displacement", "mass", "t"),
    "trim": ("trim", "length", "m"),
    "draft_aft": ("draft at the after perpendicular", "length", "m"),
    "draft_forward": ("draft at the forward perpendicular", "length", "m"),
    "list": ("list", "angle", "deg"),
    "gm": ("metacentric height afloat", "length", "m"),
    "upthrust": ("upthrust of the first block as she settles", "mass", "t"),
    "gm_at_settling": ("metacentric height as she settles", "length", "m"),
    "line_load": ("greatest load on the straight keel, dry", "line_load", "t/m"),
    "block": ("greatest load of a keel block under a rigid hull", "mass", "t"),
}
"""Each figure: what it is, its dimension, and its unit."""


class Afloat(Struct, frozen=True):
    """The condition that is uncertain: mass [kg], its moments about AP, centreline and baseline [kg m], and the water
    [kg/m3]."""

    mass: float
    along: float
    across: float
    up: float
    density: float


class HowSure(Struct, frozen=True):
    """The standard uncertainty of each figure."""

    figures: Mapping[str, Combined]

    def u(self, figure: str) -> float | None:
        """Give the standard uncertainty of a figure; None where the figure is not known."""
        return self.figures[figure].u if figure in self.figures else None


def how_sure(
    weights: Sequence[Mapping[str, Any]],
    tanks: Sequence[Mapping[str, Any]] = (),
    density: float = 1025.0,
    density_uncertainty: float = 0.0,
    breadth_uncertainty: float = 0.0,
    free_surface_moment: float = 0.0,
    block_aft: float | None = None,
    block_forward: float | None = None,
    declivity: float = 0.0,
    keel: float = 0.0,
    keel_aft: float | None = None,
    keel_forward: float | None = None,
    keel_blocks: Sequence[Mapping[str, float]] = (),
    offsets: Mapping[str, Any] | HullForm | None = None,
    curves: Mapping[str, Any] | HullCurves | None = None,
    volume_uncertainty: float = 0.0,
    centre_uncertainty: float = 0.0,
    metacentre_uncertainty: float = 0.0,
    rake: float = 0.0,
) -> HowSure:
    """Carry the uncertainty of weights, soundings, water and lines through to how she floats and lands.

    Formula: u(f)^2 = sum (df/dc . e_i)^2 over sources i, where c = (W, W x, W y, W z, rho) and e_i is what one
        standard uncertainty of the source adds to c: a mass u: (u, u x, u y, u z, 0); its place along: (0, W u, 0, 0,
        0), and so across and up; a sounding u_s: a mass rho A u_s beside a share of the mass for the tank's table;
        breadths larger by a share b: f as in water denser by b, and BM (1 + b)^2; the volume alone likewise, without
        the latter; the centre of buoyancy out by u_x: (0, W u_x, 0, 0, 0) for what follows from the trim. Of a table of
        hydrostatics KM is out by 0.6 |t|/L, for I_T does not follow the trim. df/dc by central differences.
    Symbols: weights with mass [kg], x, y, z [m] and u_mass, u_x, u_y, u_z; tanks with mass, x, y, z, density [kg/m3],
        surface [m2], u_level [m], u_share [of one], and u_x, u_y, u_z [m] for a tank by its capacity plan.
    Source: JCGM 100:2008, 5.1.2 and 5.1.3; the statics as in `docking.landing`.
    Range: sources that have nothing to do with each other; free-surface moment and tanks' centres held. Raises
        OutOfRange.
    """
    form = buoyant(offsets, curves)
    base = _summed([*weights, *tanks], density)
    blocks = ends = None
    if block_aft is not None and block_forward is not None:
        blocks = BlockLine(block_aft, block_forward, declivity)
    if keel_aft is not None and keel_forward is not None:
        ends = (keel_aft, keel_forward)
    line = tuple(Block(one["x"], one["length"], one["width"]) for one in keel_blocks)
    condition = _Condition(form, free_surface_moment, blocks, keel, ends, line, rake)
    start = condition.start(base)
    slopes = _slopes(condition, base, start)
    sources = [*_sources(weights, tanks), ("density of the water", Afloat(0.0, 0.0, 0.0, 0.0, density_uncertainty))]
    found: dict[str, list[tuple[str, float]]] = {name: [] for name in slopes}
    for name, effect in sources:
        for figure, slope in slopes.items():
            found[figure].append((name, float(slope @ _row(effect))))
    stiffer = condition.stiffer(start)
    lines, centre = "breadths of the lines", "centre of buoyancy between sections"
    if isinstance(form, HullCurves):
        lines = "hydrostatics as estimated" if centre_uncertainty else "table of hydrostatics"
        centre = "centre of buoyancy as estimated"
    for figure, slope in slopes.items():
        part = (slope[-1] * density + stiffer.get(figure, 0.0)) * breadth_uncertainty
        found[figure].append((lines, float(part)))
        centred = 0.0 if figure in WEIGHED else slope[1] * base.mass * centre_uncertainty
        for name, drawn in (
            ("volume between sections", slope[-1] * density * volume_uncertainty),
            (centre, centred),
            ("metacentre between sections", metacentre_uncertainty if figure in stiffer else 0.0),
        ):
            found[figure].append((name, float(drawn)))
    if isinstance(form, HullCurves):
        part = TRIMMED * abs(start.free.trim) / form.length * start.free.km_transverse
        found["gm"].append(("table of hydrostatics, for an even keel", part))
    return HowSure({figure: combined(parts) for figure, parts in found.items()})


class _Start(Struct, frozen=True):
    """The condition itself: how she floats, and the first block with its upthrust as she settles."""

    free: Hydrostatics
    first_block: float | None
    upthrust: float
    per_trim: float
    """Upthrust that takes off a metre of trim by the hand method, kg/m."""


class _Condition(Struct, frozen=True):
    """What is held while the condition changes a little."""

    form: Buoyant
    free_surface_moment: float
    blocks: BlockLine | None
    keel: float
    ends: tuple[float, float] | None
    line: tuple[Block, ...]
    rake: float = 0.0

    def ship(self, at: Afloat) -> Lander:
        blocks = self.blocks or BlockLine(0.0, self.form.length)
        lcg, vcg = at.along / at.mass, at.up / at.mass
        moment = self.free_surface_moment
        return Lander(self.form, at.mass, lcg, vcg, at.density, blocks, self.keel, moment, rake=self.rake)

    def start(self, at: Afloat) -> _Start:
        ship = self.ship(at)
        free = ship.afloat
        if self.blocks is None:
            return _Start(free, None, 0.0, 0.0)
        x, upthrust = ship.contact
        return _Start(free, x, upthrust, free.moment_to_change_trim(ship.vcg) / (free.lcf - x))

    def figures(self, at: Afloat, start: _Start) -> dict[str, float]:
        ship = self.ship(at)
        free = ship.afloat
        gm = free.km_transverse - ship.vcg - self.free_surface_moment / at.mass
        found = {
            "displacement": at.mass,
            "trim": free.trim,
            "draft_aft": free.draft_aft,
            "draft_forward": free.draft_forward,
            "gm": gm,
        }
        if gm > 0:
            found["list"] = atan(-at.across / at.mass / gm)
        if start.first_block is not None:
            upthrust, settled = start.upthrust, free
            for _ in range(ROUNDS):
                settled = ship.under(upthrust, start.first_block)
                upthrust += start.per_trim * (settled.trim - ship.resting_trim)
            found |= {"upthrust": upthrust, "gm_at_settling": ship.stability(settled).gm}
        if self.ends is not None:
            found["line_load"] = line_load(at.mass, ship.lcg, *self.ends).peak
        if self.line:
            found["block"] = max(area_moment(at.mass, ship.lcg, self.line).reactions)
        return found

    def stiffer(self, start: _Start) -> dict[str, float]:
        """Give what broader lines add to the metacentric heights beside being as in denser water, per share."""
        return dict.fromkeys(("gm", "gm_at_settling"), 2 * start.free.bm_transverse)


def _summed(weights: Sequence[Mapping[str, Any]], density: float) -> Afloat:
    along, across, up = (sum(one["mass"] * one.get(axis, 0.0) for one in weights) for axis in ("x", "y", "z"))
    mass = sum(one["mass"] for one in weights)
    if mass <= 0:
        raise OutOfRange("the weights must sum to more than nothing")
    return Afloat(mass, along, across, up, density)


def _sources(weights: Sequence[Mapping[str, Any]], tanks: Sequence[Mapping[str, Any]]) -> list[tuple[str, Afloat]]:
    """Give each source with what one standard uncertainty of it adds to the condition."""
    found = []
    for one in weights:
        found += [(f"{one['name']}: mass", _more(one, one["u_mass"])), *_places(one)]
    for one in tanks:
        by_sounding = one["density"] * one["surface"] * one["u_level"]
        found.append((f"{one['name']}: contents", _more(one, hypot(by_sounding, one["mass"] * one["u_share"]))))
        if any(name in one for name in ("u_x", "u_y", "u_z")):
            found += _places(one)
    return found


def _places(one: Mapping[str, Any]) -> list[tuple[str, Afloat]]:
    name, (x, y, z) = one["name"], (one["mass"] * one.get(u, 0.0) for u in ("u_x", "u_y", "u_z"))
    return [
        (f"{name}: place along her", Afloat(0.0, x, 0.0, 0.0, 0.0)),
        (f"{name}: place off the centreline", Afloat(0.0, 0.0, y, 0.0, 0.0)),
        (f"{name}: height", Afloat(0.0, 0.0, 0.0, z, 0.0)),
    ]


def _more(one: Mapping[str, Any], u: float) -> Afloat:
    return Afloat(u, u * one["x"], u * one.get("y", 0.0), u * one["z"], 0.0)


def _row(at: Afloat) -> Any:
    return np.array([at.mass, at.along, at.across, at.up, at.density])


def _slopes(condition: _Condition, base: Afloat, start: _Start) -> dict[str, Any]:
    """Give the slope of each figure against mass, its three moments and the density, by central differences."""
    length = condition.form.length
    sizes = {
        "mass": base.mass * STEP,
        "along": base.mass * length * STEP,
        "across": base.mass * STEP,
        "up": base.mass * STEP,
        "density": base.density * STEP,
    }
    by_channel = []
    for channel, size in sizes.items():
        high, low = (
            condition.figures(replace(base, **{channel: getattr(base, channel) + step}), start)
            for step in (size, -size)
        )
        by_channel.append({figure: (high[figure] - low[figure]) / (2 * size) for figure in high if figure in low})
    return {figure: np.array([one[figure] for one in by_channel]) for figure in by_channel[0]}


def outputs_of(found: HowSure) -> dict[str, Any]:
    """Give the standard uncertainties as outputs, and what drives each."""
    outputs: dict[str, Any] = {name: one.u for name, one in found.figures.items()}
    outputs["drivers"] = [
        {
            "figure": FIGURES[name][0],
            "dimension": FIGURES[name][1],
            "uncertainty": one.u,
            "driver": one.driver,
            "share": one.shares[0][1] if one.shares else 0.0,
        }
        for name, one in found.figures.items()
    ]
    return outputs


_WEIGHT = record(
    "A weight and how well it is known.",
    ("name", "mass", "x", "z", "u_mass", "u_x", "u_y", "u_z"),
    name=text("Name."),
    mass=quantity("mass", "Mass."),
    x=length("Forward of AP."),
    y=length("To port; 0 where left out."),
    z=length("Above the baseline."),
    u_mass=quantity("mass", "Standard uncertainty of the mass."),
    u_x=length("Of its place along her."),
    u_y=length("Of its place across her."),
    u_z=length("Of its height."),
)
_TANK = record(
    "A tank and how well its contents are known.",
    ("name", "mass", "x", "z", "density", "surface", "u_level", "u_share"),
    name=text("Name."),
    mass=quantity("mass", "Mass of liquid."),
    x=length("Forward of AP."),
    y=length("To port; 0 where left out."),
    z=length("Above the baseline."),
    density=quantity("density", "Density of the liquid."),
    surface=quantity("area", "Free surface; nothing where the tank is full or empty."),
    u_level=length("Standard uncertainty of the sounding."),
    u_share=quantity("fraction", "Of the tank's table, as a share of the mass."),
    u_x=length("Of where the liquid lies along her, for a tank whose form is not known."),
    u_y=length("Across her."),
    u_z=length("Of its height."),
)

METHOD = Method(
    name="uncertainty.afloat",
    title="How sure it is how she floats and lands",
    formula="u(f)² = Σ (∂f/∂c · e_i)², c = (W, Wx, Wy, Wz, ρ), e_i what one standard uncertainty of a source adds to c",
    source=Citation(GUM, "5.1.2 and 5.1.3"),
    valid="to first order; sources that have nothing to do with each other; upright, deck edge clear of the water",
    inputs={
        **HULL,
        "weights": listed(_WEIGHT, "Lightship and fixed weights."),
        "tanks": listed(_TANK, "Tanks with liquid in them.", 0),
        "density": quantity("density", "Density of the water."),
        "density_uncertainty": quantity("density", "Its standard uncertainty."),
        "breadth_uncertainty": quantity(
            "fraction", "Standard uncertainty of all breadths of the lines, or of what a table of hydrostatics gives."
        ),
        "volume_uncertainty": quantity("fraction", "Of the volume, where the lines are drawn between few sections."),
        "centre_uncertainty": length("Of the centre of buoyancy along the ship, where few sections or none are known."),
        "metacentre_uncertainty": length("Of the transverse metacentre, where they are."),
        "free_surface_moment": quantity("moment", "Sum over the slack tanks.", "20 t*m"),
        **BLOCK_INPUTS,
        "keel": quantity("length", "Keel that the blocks touch, above the baseline; minus for a bar keel.", "-0.18 m"),
        "rake": number("Rise of that keel forward against the baseline, per length; then `keel` is at AP."),
        "keel_aft": length("After end of the straight keel.", "2 m"),
        "keel_forward": length("Forward end of the straight keel.", "38 m"),
        "keel_blocks": listed(
            record(
                "A keel block.",
                ("x", "length", "width"),
                x=length("Middle of the block, forward of AP."),
                length=length("Bearing length along the ship."),
                width=length("Bearing width."),
            ),
            "The keel blocks, for the load of the one that carries most.",
            0,
        ),
    },
    outputs=(
        *(Symbol(name, f"standard uncertainty of {what}", of, unit) for name, (what, of, unit) in FIGURES.items()),
        Symbol(
            "drivers",
            "each figure's standard uncertainty and the source with the greatest share in it",
            "table",
            "",
            (
                Symbol("figure", "the figure", "text", ""),
                Symbol("dimension", "what it measures", "text", ""),
                Symbol("uncertainty", "standard uncertainty", BY_ROW, ""),
                Symbol("driver", "the source with the greatest share", "text", ""),
                Symbol("share", "its share of the square", "fraction", "%"),
            ),
        ),
    ),
    kernel=how_sure,
    figures=outputs_of,
    example={
        "offsets": EXAMPLE_OFFSETS,
        "weights": [
            {"name": "lightship", "mass": "440 t", "x": "18.9 m", "z": "3.1 m", "u_mass": "4 t", "u_x": "0.1 m",
             "u_y": "2 mm", "u_z": "0.1 m"},
        ],
        "tanks": [
            {"name": "fore peak", "mass": "10 t", "x": "35.5 m", "z": "2.4 m", "density": "1025 kg/m3",
             "surface": "6 m2", "u_level": "10 mm", "u_share": "1 %"},
        ],
        "density": "1012 kg/m3",
        "density_uncertainty": "0.5 kg/m3",
        "breadth_uncertainty": "0.3 %",
        "block_aft": "4 m",
        "block_forward": "36 m",
    },
    optional=frozenset({
        "offsets", "curves", "tanks", "density", "density_uncertainty", "breadth_uncertainty", "volume_uncertainty",
        "centre_uncertainty", "metacentre_uncertainty", "free_surface_moment", "block_aft", "block_forward",
        "declivity", "keel", "rake", "keel_aft", "keel_forward", "keel_blocks",
    }),
    cautions=("liquids and their free surfaces are taken to stay where they are",),
)  # fmt: skip
