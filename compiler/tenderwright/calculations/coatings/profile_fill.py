"""Paint that fills the blast profile before it builds a film: the dead volume."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.coatings.ranges import (
    require_loss,
    require_not_negative,
    require_volume_solids,
)
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

LEAST_FACTOR = 0.5
DEFAULT_PROFILE_FACTOR = 1.0
"""Dead film per profile height k: 0.5 to 1.0 is met (common practice, no source); the greater is on the safe side."""


def dead_volume(area: float, profile: float, profile_factor: float = DEFAULT_PROFILE_FACTOR) -> float:
    """Find the volume of dry paint that the profile swallows.

    Formula: V_dead = k Rz A, in m³ of solids. Symbols: area in m², profile Rz in m, profile_factor k.
    Source: volume of the troughs of a profile (derived); k is common practice, no source. Raises OutOfRange.
    """
    require_not_negative("area", area)
    require_not_negative("profile", profile)
    if not LEAST_FACTOR <= profile_factor <= 1.0:
        raise OutOfRange(f"the profile factor is {LEAST_FACTOR} to 1.0, got {profile_factor:g}")
    return profile_factor * profile * area


def profile_fill(
    area: float,
    profile: float,
    volume_solids: float,
    loss: float,
    profile_factor: float = DEFAULT_PROFILE_FACTOR,
) -> float:
    """Find the further paint, as supplied, that the profile takes in the first coat.

    Formula: V = A k Rz / (VS (1 - LF)), in m³. Symbols as in `dead_volume`; volume_solids VS and loss LF as
    fractions. Source: as `dead_volume`. Raises OutOfRange.
    """
    require_volume_solids(volume_solids)
    require_loss(loss)
    return dead_volume(area, profile, profile_factor) / (volume_solids * (1.0 - loss))


def _kernel(
    area: float,
    profile: float,
    volume_solids: float,
    loss: float,
    profile_factor: float = DEFAULT_PROFILE_FACTOR,
) -> Mapping[str, float]:
    return {
        "paint": profile_fill(area, profile, volume_solids, loss, profile_factor),
        "dead_film": profile_factor * profile,
    }


METHOD = Method(
    name="coating.profile-fill",
    title="Paint that fills the blast profile",
    formula="V = A · k · Rz / (VS · (1 − loss))",
    source=Citation("Volume of the troughs of a profile; the factor k", standing="common practice, no source"),
    valid="the first coat on blasted steel; k of 0.5 to 1.0",
    inputs={
        "area": quantity("area", "Blasted area."),
        "profile": quantity("length", "Height of the blast profile, peak to valley."),
        "volume_solids": quantity("fraction", "Solids by volume, of the paint as supplied."),
        "loss": quantity("fraction", "Fraction of the paint used that does not end on the surface."),
        "profile_factor": number("Dead film per profile height; 1 unless given.", minimum=0),
    },
    outputs=(
        Symbol("paint", "further paint as supplied", "volume", "L"),
        Symbol("dead_film", "dry film lost in the profile", "length", "um"),
    ),
    kernel=_kernel,
    example={"area": "929.03 m2", "profile": "50 um", "volume_solids": "79 %", "loss": "25 %"},
    optional=frozenset({"profile_factor"}),
    cautions=("k = 1 follows an abrasive supplier's example; no standard gives the dead volume",),
)
