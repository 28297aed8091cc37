"""Volume from a tank's own table of soundings."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.quantities.display import show


def table_volume(
    volumes: Sequence[float],
    sounding: float | None = None,
    soundings: Sequence[float] = (),
    ullage: float | None = None,
    ullages: Sequence[float] = (),
) -> dict[str, float]:
    """Read a volume from a table of soundings or of ullages, straight between its rows.

    Symbols: sounding or ullage, corrected for trim [m]; soundings or ullages [m], rising, and volumes [m3], not
    falling by sounding and not rising by ullage, shape (n,).
    Source: linear interpolation of a calibration table (common practice; bunker surveys).
    Range: inside the table. Raises OutOfRange.
    """
    if (sounding is None) == (ullage is None):
        raise OutOfRange("give either a sounding or an ullage")
    reading, rows, word = (sounding, soundings, "sounding") if sounding is not None else (ullage, ullages, "ullage")
    s, v = np.asarray(rows, dtype=np.float64), np.asarray(volumes, dtype=np.float64)
    if s.size != v.size or s.size < 2:
        raise OutOfRange(f"a table needs two or more {word}s, each with its volume")
    if np.any(np.diff(s) <= 0):
        raise OutOfRange(f"{word}s in a table must rise")
    if np.any(np.diff(v) * (1 if word == "sounding" else -1) < 0):
        raise OutOfRange("a deeper sounding, or a lesser ullage, must not be less liquid")
    assert reading is not None
    if not s[0] <= reading <= s[-1]:
        raise OutOfRange(
            f"a {word} of {show(reading, 'centre', more=1)} is outside the table, "
            f"{show(s[0], 'centre', more=1)} to {show(s[-1], 'centre', more=1)}"
        )
    return {"volume": float(np.interp(reading, s, v))}


METHOD = Method(
    name="tank.table-volume",
    title="Volume from a table of soundings",
    formula="V = V1 + (V2 - V1) (s - s1)/(s2 - s1)",
    source=Citation("linear interpolation of a calibration table", "", "common practice, no source"),
    valid="sounding or ullage corrected for trim and inside the table",
    inputs={
        "sounding": quantity("length", "Sounding, corrected for trim."),
        "soundings": listed({"type": "string", "quantity": "length"}, "The table's soundings, rising.", 2),
        "volumes": listed({"type": "string", "quantity": "volume"}, "The volume at each sounding or ullage.", 2),
        "ullage": quantity("length", "Ullage, corrected for trim, in place of a sounding."),
        "ullages": listed({"type": "string", "quantity": "length"}, "The table's ullages, rising.", 2),
    },
    outputs=(Symbol("volume", "volume of liquid", "volume", "m3"),),
    kernel=table_volume,
    example={"sounding": "3.27 m", "soundings": ["3.20 m", "3.30 m"], "volumes": ["157.20 m3", "163.60 m3"]},
    optional=frozenset({"sounding", "soundings", "ullage", "ullages"}),
)
