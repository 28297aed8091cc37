"""The trim with which she may enter: the least of what stability, the first block and the tender allow."""

from __future__ import annotations

from collections.abc import Mapping
from math import tan
from typing import Any

from msgspec import Struct

from tenderwright.calculations.landing.upthrust import LARGEST_DECLIVITY
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, quantity, text
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, least, verdict, verdict_outputs

SETTLES = "metacentric height as she settles"
CRUSHES = "crushing of the block touched first"
TENDER = "trim that the tender allows"
STABILITY = "the least metacentric height asked for, by the lesser of both methods (derived)"


class EntryLimit(Struct, frozen=True):
    """The trims with which she may enter, m, each by the end that touches first."""

    limits: tuple[Limit, ...]
    """Of the trim wanted against each."""
    least_trim: float
    """The least that the tender allows; less than nothing where it allows some by the other end."""

    @property
    def verdict(self) -> Verdict:
        """Judge the trim wanted."""
        return verdict(self.limits)

    @property
    def governs(self) -> Limit:
        """Give the limit that governs: the least of those that are known."""
        found = least(self.limits)
        assert found is not None  # the tender's own is always known
        return found


def crushing_trim(
    allowable: float, contact_length: float, width: float, lever: float, moment_to_change_trim: float
) -> float:
    """Give the trim to be taken off at which the upthrust brings the first block to its allowable pressure, m.

    Formula: P = p a b/g; t_c = P l/MCT.
    Symbols: p [Pa]; a along the ship, b across it [m]; l block to centre of flotation [m]; MCT [kg m/m].
    Source: p = P g/(a b) with P = MCT t_c/l of Derrett, Ship Stability for Masters and Mates, pp. 246-249 (derived).
    Range: even bearing on the cap. Raises OutOfRange.
    """
    if min(allowable, contact_length, width, lever, moment_to_change_trim) <= 0:
        raise OutOfRange("allowable, contact, lever and MCTC must be more than nothing")
    return allowable * contact_length * width / GRAVITY * lever / moment_to_change_trim


def entry_limit(
    wanted: float,
    tolerance: float,
    tolerance_source: str,
    lever: float,
    moment_to_change_trim: float,
    contact_length: float,
    block_width: float,
    keel_width: float,
    length: float | None = None,
    declivity: float = 0.0,
    stability_held: float | None = None,
    stability_exact: float | None = None,
    allowable: float | None = None,
    allowable_source: str = "",
) -> EntryLimit:
    """Hold the trim wanted against each limit; see `crushing_trim`.

    Symbols: trims [m], positive by the end that touches first; tolerance either way [m]. Raises OutOfRange.
    """
    if tolerance < 0 or abs(declivity) >= LARGEST_DECLIVITY:
        raise OutOfRange("the tolerance must not be less than nothing, and the declivity within 10 degrees")
    if declivity and length is None:
        raise OutOfRange("blocks with declivity need the length over which the trim is measured")
    crushes = None
    if allowable is not None:
        width = min(block_width, keel_width)
        resting = (length or 0.0) * tan(declivity)
        crushes = resting + crushing_trim(allowable, contact_length, width, lever, moment_to_change_trim)
    stability = [one for one in (stability_held, stability_exact) if one is not None]
    settles = [Limit(SETTLES, "length", wanted, min(stability), source=STABILITY)] if stability else []
    limits = (
        *settles,
        Limit(CRUSHES, "length", wanted, crushes, source=allowable_source),
        Limit(TENDER, "length", wanted, wanted + tolerance, source=tolerance_source),
    )
    return EntryLimit(limits, wanted - tolerance)


def outputs_of(found: EntryLimit) -> Mapping[str, Any]:
    """Give the trims and the limits as outputs."""
    return {
        "trim": found.governs.limit,
        "governs": found.governs.name,
        "least_trim": found.least_trim,
        **verdict_outputs(found.verdict),
    }


METHOD = Method(
    name="docking.entry-limit",
    title="Trim on entering: the least of what stability, the first block and the tender allow",
    formula="t = min(t of the least GM; p a b l/(g MCTC) + L tan δ; trim wanted + tolerance)",
    source=Citation(
        "Derrett, Ship Stability for Masters and Mates",
        "Drydocking and grounding, pp. 246-249, for P = MCTC t/l; crushing and the least of all are derived",
    ),
    valid="trim by the end that touches first; particulars held constant; even bearing on the first block's cap",
    inputs={
        "wanted": quantity("length", "Trim wanted, by the end that touches first."),
        "tolerance": quantity("length", "What the tender allows either way."),
        "tolerance_source": text("Where the tolerance comes from."),
        "lever": quantity("length", "From the block touched first to the centre of flotation."),
        "moment_to_change_trim": quantity("mass", "Moment to change trim per unit of trim (MCTC)."),
        "contact_length": quantity("length", "Length of the first block's cap along the ship."),
        "block_width": quantity("length", "Width of its cap."),
        "keel_width": quantity("length", "Width of the keel on it, or of the plate that spreads the load."),
        "length": quantity("length", "Length over which the trim is measured; needed with declivity.", "44 m"),
        "declivity": quantity("angle", "Angle by which the block line falls to the end that touches first.", "0.2 deg"),
        "stability_held": quantity("length", "Greatest trim that keeps the least GM, particulars held."),
        "stability_exact": quantity("length", "The same with the hydrostatics read again.", "0.75 m"),
        "allowable": quantity("pressure", "Allowable pressure of the cap."),
        "allowable_source": text("Where the allowable comes from."),
    },
    outputs=(
        Symbol("trim", "greatest trim with which she may enter", "length", "m"),
        Symbol("governs", "limit that governs it", "text", ""),
        Symbol("least_trim", "least trim that the tender allows", "length", "m"),
        *VERDICT_SYMBOLS,
    ),
    kernel=entry_limit,
    figures=outputs_of,
    example={
        "wanted": "0.3 m",
        "tolerance": "0.1 m",
        "tolerance_source": "requirement of the tender",
        "lever": "21 m",
        "moment_to_change_trim": "8.5 t*m/cm",
        "contact_length": "300 mm",
        "block_width": "1.0 m",
        "keel_width": "200 mm",
        "stability_held": "0.77 m",
        "allowable": "3.10 MPa",
        "allowable_source": "S. J. Record, The Mechanical Properties of Wood, 1914: white oak, green, working stress",
    },
    optional=frozenset({"length", "declivity", "stability_held", "stability_exact", "allowable", "allowable_source"}),
    cautions=(
        "a keel that comes down at a slope bears on the edge of the cap first, and harder there than this says",
        "the docking plan and stability are for a naval architect and the dockmaster",
    ),
)
