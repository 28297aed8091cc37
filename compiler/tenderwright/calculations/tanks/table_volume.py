"""Volume from a tank's own table of soundings."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity


def table_volume(sounding: float, soundings: Sequence[float], volumes: Sequence[float]) -> dict[str, float]:
    """Read a volume from a table of soundings, straight between its rows.

    Symbols: sounding, corrected for trim [m]; soundings [m], rising, and volumes [m3], not falling, shape
    (n,).
    Source: linear interpolation of a calibration table (common practice; bunker surveys).
    Range: inside the table. Raises OutOfRange.
    """
    s, v = np.asarray(soundings, dtype=np.float64), np.asarray(volumes, dtype=np.float64)
    if s.size != v.size or s.size < 2:
        raise OutOfRange("a table needs two or more soundings, each with its volume")
    if np.any(np.diff(s) <= 0) or np.any(np.diff(v) < 0):
        raise OutOfRange("soundings in a table must rise, and volumes must not fall")
    if not s[0] <= sounding <= s[-1]:
        raise OutOfRange(f"a sounding of {sounding:.3f} m is outside the table, {s[0]:.3f} m to {s[-1]:.3f} m")
    return {"volume": float(np.interp(sounding, s, v))}


METHOD = Method(
    name="tank.table-volume",
    title="Volume from a table of soundings",
    formula="V = V1 + (V2 - V1) (s - s1)/(s2 - s1)",
    source=Citation("linear interpolation of a calibration table", "", "common practice, no source"),
    valid="sounding corrected for trim and inside the table",
    inputs={
        "sounding": quantity("length", "Sounding, corrected for trim."),
        "soundings": listed({"type": "string", "quantity": "length"}, "The table's soundings, rising.", 2),
        "volumes": listed({"type": "string", "quantity": "volume"}, "The volume at each sounding.", 2),
    },
    outputs=(Symbol("volume", "volume of liquid", "volume", "m3"),),
    kernel=table_volume,
    example={"sounding": "3.27 m", "soundings": ["3.20 m", "3.30 m"], "volumes": ["157.20 m3", "163.60 m3"]},
)
