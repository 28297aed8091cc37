"""Build heights of keel blocks from the declivity of the block line, the rake of the keel and its shape."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import atan, tan
from typing import Any

import numpy as np

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.landing.held import LARGEST_DECLIVITY
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record
from tenderwright.quantities.display import show


def build_heights(
    places: Sequence[float],
    datum: float,
    datum_height: float,
    keel: Sequence[tuple[float, float]] = (),
    declivity: float = 0.0,
    floor_declivity: float = 0.0,
    rake: float = 0.0,
) -> Floats:
    """Give the height of each block's top over the dock floor at its place, m.

    Formula: H(x) = H0 + (x - x0)(tan d - tan d_f) + c(x) - c(x0), c(x) = z(x) - rake x: the keel's height off its own
        straight line.
    Symbols: x [m forward of AP]; H0 at x0; d declivity of the block line under the straight keel, d_f of the floor,
        both falling aft [rad]; z keel above the baseline as points (x, z) [m], straight between, level beyond; rake of
        the straight keel against the baseline, rise per length forward [-].
    Source: geometry (derived). Raises OutOfRange where a block has no height.
    """
    x = np.asarray(places, dtype=np.float64)
    shape = np.array(sorted(keel) or [(0.0, 0.0)], dtype=np.float64)
    if np.any(np.diff(shape[:, 0]) <= 0):
        raise OutOfRange("the keel's points must be at different places")
    at = np.append(x, datum)
    # With a rake and no shape, the keel is its own straight line.
    off = np.interp(at, shape[:, 0], shape[:, 1]) - rake * at if keel else np.zeros(at.size)
    heights: Floats = datum_height + (x - datum) * (tan(declivity) - tan(floor_declivity)) + off[:-1] - off[-1]
    if np.any(heights <= 0):
        raise OutOfRange(
            f"a block at {show(float(x[np.argmin(heights)]), 'metacentric height')} would stand below the dock floor"
        )
    return heights


def _kernel(
    places: Sequence[float],
    datum: float,
    datum_height: float,
    keel: Sequence[Mapping[str, float]] = (),
    declivity: float = 0.0,
    floor_declivity: float = 0.0,
    rake: float = 0.0,
) -> Mapping[str, Any]:
    slopes = (declivity, floor_declivity, atan(rake))
    if max(map(abs, slopes)) > LARGEST_DECLIVITY:
        raise OutOfRange("declivity, floor and rake must each be within 10 degrees")
    points = [(one["x"], one["z"]) for one in keel]
    found = build_heights(places, datum, datum_height, points, declivity, floor_declivity, rake)
    return {"heights": found.tolist(), "least": float(found.min()), "greatest": float(found.max())}


METHOD = Method(
    name="blocks.heights",
    title="Build heights of keel blocks",
    formula="H(x) = H₀ + (x − x₀)(tan δ − tan δ_f) + c(x) − c(x₀), c = z − rake·x",
    source=Citation("Geometry", standing="derived"),
    valid="slopes within 10 degrees; the keel straight between the points given",
    inputs={
        "places": listed(quantity("length", "Forward of AP."), "Where blocks stand."),
        "datum": quantity("length", "Place where the height is known."),
        "datum_height": quantity("length", "Height of the block top over the floor there."),
        "keel": listed(
            record(
                "A point of the keel.",
                ("x", "z"),
                x=quantity("length", "Forward of AP."),
                z=quantity("length", "Underside of the keel above the baseline."),
            ),
            "Shape of the keel.",
            0,
        ),
        "declivity": quantity("angle", "Angle by which the block line falls aft."),
        "floor_declivity": quantity("angle", "Angle by which the dock floor falls aft.", "0.1 deg"),
        "rake": number("Rise of the straight keel forward against the baseline, per length."),
    },
    outputs=(
        Symbol("heights", "height of each block, in the order of places", "length", "m"),
        Symbol("least", "least of them", "length", "m"),
        Symbol("greatest", "greatest of them", "length", "m"),
    ),
    kernel=_kernel,
    example={
        "places": ["4 m", "20 m", "36 m", "42 m"],
        "datum": "4 m",
        "datum_height": "1.4 m",
        "keel": [{"x": "0 m", "z": "-0.18 m"}, {"x": "38 m", "z": "-0.18 m"}, {"x": "44 m", "z": "0.2 m"}],
        "declivity": "0.2 deg",
    },
    optional=frozenset({"keel", "declivity", "floor_declivity", "rake"}),
    cautions=("heights are before the caps crush; the dockmaster sights the line in",),
)
