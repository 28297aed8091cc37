"""Diminution of plate against its thickness as built, and the class that a limit puts each reading in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Literal

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.limits import (
    SUBSTANTIAL_SHARE,
    renewal_thickness,
    require_allowable,
    substantial_thickness,
)
from tenderwright.calculations.thickness.readings import require_thickness
from tenderwright.calculations.verdict import within_each

State = Literal["sound", "substantial", "renew"]
STATES: tuple[State, ...] = ("sound", "substantial", "renew")
SOUND, SUBSTANTIAL, RENEW = 0, 1, 2
"""Codes of the classes: their places in `STATES`."""

_ROUND_OFF = 1e-9


class Diminution(Struct, frozen=True, eq=False):
    """What readings have lost; one element per reading."""

    loss: Floats
    """Loss of thickness, m, nothing where the reading is above nominal."""
    fraction: Floats
    """Loss as a fraction of the thickness as built."""
    above_nominal: Flags
    """Whether the reading is above the thickness as built: normal within rolling tolerance, never negative loss."""
    excess: Floats
    """How far a reading stands above nominal, m, nothing where it does not."""


def diminution(as_built: Floats, measured: Floats) -> Diminution:
    """Find what each reading has lost.

    Formula: D = max(0, t0 - tm) / t0. Symbols: as_built t0 and measured tm in m, arrays of one length.
    Range: t0 is the thickness of the plan as built, not a thickness of rules; a plate may have been rolled over its
    nominal thickness, which the flags tell and the loss never averages away.
    Source: LR Naval Survey Guidance, Ch. 11, 2.1.3; tolerance in TB 55-1900-201-45/1, E-11. Raises OutOfRange.
    """
    if as_built.shape != measured.shape:
        raise OutOfRange("there must be a thickness as built for each reading")
    require_thickness(as_built, "as built")
    require_thickness(measured, "measured")
    lost = as_built - measured
    loss = np.maximum(lost, 0.0)
    return Diminution(loss, loss / as_built, lost < -_ROUND_OFF, np.maximum(-lost, 0.0))


def classify(fraction: Floats, allowable: float | Floats) -> NDArray[np.int8]:
    """Put readings in classes: 0 sound, 1 substantial, 2 renew.

    Formula: renew where D > a; else substantial where D > 0.75 a; both strictly above, so that plate just at a
    limit is within it. Symbols: fraction D; allowable a, one number or one for each reading.
    Source: IMO 2011 ESP Code, 1.2.9 ("in excess of 75 %"). Raises OutOfRange.
    """
    allowed = np.asarray(allowable, np.float64)
    if allowed.size:
        require_allowable(float(allowed.min()))
        require_allowable(float(allowed.max()))
    state = within_each(fraction, SUBSTANTIAL_SHARE * allowed, strict=True, at_least=True).astype(np.int8)
    state += within_each(fraction, allowed, strict=True, at_least=True)
    return state


def _kernel(as_built: float, measured: Sequence[float], allowable: float) -> Mapping[str, Any]:
    taken = np.array(measured, np.float64)
    found = diminution(np.full(taken.size, as_built), taken)
    state = classify(found.fraction, allowable)
    return {
        "loss": found.loss.tolist(),
        "diminution": found.fraction.tolist(),
        "state": [STATES[code] for code in state.tolist()],
        "above_nominal": float(found.above_nominal.sum()),
        "mean": float(taken.mean()),
        "mean_diminution": float(found.fraction.mean()),
        "renewal_thickness": float(renewal_thickness(as_built, allowable)),
        "substantial_thickness": float(substantial_thickness(as_built, allowable)),
    }


METHOD = Method(
    name="thickness.diminution",
    title="Diminution of plate from thickness readings",
    formula="D = max(0, t₀ − t) / t₀; renew below t₀(1 − a), substantial corrosion below t₀(1 − 0.75 a)",
    source=Citation("IMO 2011 ESP Code", "1.2.9; LR Naval Survey Guidance, Ch. 11, 2.1.3"),
    valid="general wastage against the thickness as built; pits have rules of their own",
    inputs={
        "as_built": quantity("length", "Thickness as built, from the plan; a pound-plate name may be used."),
        "measured": listed(quantity("length", "One reading."), "The readings of one plate."),
        "allowable": quantity("fraction", "What the plate may lose before it is renewed, as its source says."),
    },
    outputs=(
        Symbol("loss", "loss of each reading", "length", "mm"),
        Symbol("diminution", "diminution of each reading", "fraction", "%"),
        Symbol("state", "sound, substantial or renew", "text", ""),
        Symbol("above_nominal", "readings above the thickness as built", "each", "each"),
        Symbol("mean", "mean of the readings", "length", "mm"),
        Symbol("mean_diminution", "mean of the diminutions, those above nominal as nothing", "fraction", "%"),
        Symbol("renewal_thickness", "thickness below which plate is renewed", "length", "mm"),
        Symbol("substantial_thickness", "thickness below which corrosion is substantial", "length", "mm"),
    ),
    kernel=_kernel,
    example={"as_built": "12.5 mm", "measured": ["10.8 mm", "9.4 mm", "12.7 mm"], "allowable": "25 %"},
    cautions=(
        "the allowable diminution is an input: the naval architect or surveyor decides which one holds",
        "a reading above nominal may hide loss, for plate is often rolled over its nominal thickness",
    ),
)
