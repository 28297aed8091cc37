"""A root of a continuous function between two values of unlike sign."""

from __future__ import annotations

from collections.abc import Callable

from tenderwright.calculations.method import OutOfRange

ROUNDS = 80


def root_between(f: Callable[[float], float], low: float, high: float, near: float) -> float:
    """Find where f is nothing between low and high, to within `near`, by false position with halving (Illinois).

    Source: Dowell and Jarratt, A modified regula falsi method, BIT 11, 1971 (from memory). Raises OutOfRange where
    f has one sign at both ends.
    """
    at_low, at_high = f(low), f(high)
    if at_low == 0.0:
        return low
    if at_high == 0.0:
        return high
    if at_low * at_high > 0:
        raise OutOfRange("the function has one sign at both ends")
    for _ in range(ROUNDS):
        x = high - at_high * (high - low) / (at_high - at_low)
        y = f(x)
        if y == 0.0 or abs(high - low) < near or abs(x - high) < near:
            return x
        if y * at_high < 0:
            low, at_low = high, at_high
        else:
            at_low *= 0.5
        high, at_high = x, y
    raise OutOfRange("the root did not settle")
