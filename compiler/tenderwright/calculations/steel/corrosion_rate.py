"""Rate at which plate has lost thickness between two dates."""

from __future__ import annotations

import math

from tenderwright.calculations.method import OutOfRange


def corrosion_rate(earlier: float, later: float, time: float) -> float:
    """Find the mean loss of thickness in a time.

    Formula: r = (t1 - t2) / dt. Symbols: earlier t1 and later t2 thickness in m, time dt between them in s;
    r in m/s, less than nothing where the later reading is the thicker (no measurable loss, not growth).
    Source: NAVFAC P-1010. Raises OutOfRange for a time that is not above nothing or a thickness below it.
    """
    if not (math.isfinite(time) and time > 0.0):
        raise OutOfRange(f"the time between readings must be more than nothing, got {time:g} s")
    for value in (earlier, later):
        if not (math.isfinite(value) and value >= 0.0):
            raise OutOfRange(f"a thickness cannot be less than nothing, got {value:g} m")
    return (earlier - later) / time
