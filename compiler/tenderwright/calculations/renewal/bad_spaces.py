"""Frame spaces in which shell plate is renewed: thin now, thin before the next docking, or with too deep a pit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.shell_grid import Flags
from tenderwright.calculations.renewal.shell_plan import SHELL, ShellPlan, shell_from_input
from tenderwright.calculations.schema import length, listed, record, text
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.shell_forecast import (
    EXAMPLE_FORECAST,
    FORECAST_INPUT,
    ShellCondition,
    forecast_from_input,
)

NOW, NEXT, PIT = 3, 2, 1
WHY = {
    NOW: "beyond its limit at this docking",
    NEXT: "beyond its limit before the next docking",
    PIT: "a pit calls for a local insert",
}
_ROUND_OFF = 1e-12


class BadSpaces(Struct, frozen=True, eq=False):
    """Frame spaces to renew; arrays by side, strake and frame space."""

    plan: ShellPlan
    why: NDArray[np.int8]
    """Why each is renewed, by the codes of `WHY`; 0 where it is not."""
    gauged: Flags
    """Spaces with plate of the latest readings, or pits."""
    apart: Mapping[str, Flags]
    """Spaces that items of their own renew, by item: the whole of each, whatever was read there."""

    @property
    def others(self) -> Flags:
        """Mark the spaces that items of their own renew."""
        marked = np.zeros(self.gauged.shape, np.bool_)
        for cells in self.apart.values():
            marked |= cells
        return marked

    def spaces(self) -> list[dict[str, Any]]:
        """List the spaces to renew, each by its middle; those of items of their own last."""
        told = self._listed(np.where(self.others, 0, self.why), "")
        for item, cells in self.apart.items():
            told += self._listed(np.where(cells, np.maximum(self.why, 1), 0), item)
        return told

    def _listed(self, why: NDArray[np.int8], item: str) -> list[dict[str, Any]]:
        frames, own = self.plan.grid.frames, {"item": item} if item else {}
        return [
            {
                "strake": self.plan.strakes[strake],
                "side": SIDES[side],
                "at": 0.5 * float(frames[bay] + frames[bay + 1]),
                "why": "renewed by an item of its own" if item else WHY[int(why[side, strake, bay])],
                **own,
            }
            for side, strake, bay in np.argwhere(why > 0).tolist()
        ]

    def by_strake(self) -> list[dict[str, Any]]:
        """Count the spaces of each strake, both sides together, plate of items of their own left out."""
        kept = ~self.others
        counts = {
            "sampled": self.gauged & kept,
            "bad": (self.why >= NEXT) & kept,
            "renewed": (self.why > 0) & kept,
            "unsampled": self.plan.exists & kept & ~self.gauged,
        }
        sums = {name: cells.sum(axis=(0, 2)).tolist() for name, cells in counts.items()}
        return [
            {"strake": name} | {key: sums[key][row] for key in counts} for row, name in enumerate(self.plan.strakes)
        ]


def bad_spaces(
    shell: Mapping[str, Any] | ShellPlan,
    forecast: Mapping[str, Any] | ShellCondition,
    pits: Sequence[Mapping[str, Any]] = (),
    apart: Sequence[Mapping[str, Any]] = (),
) -> BadSpaces:
    """Find the frame spaces in which plate is renewed.

    Formula: bad where a latest reading, carried on, is below t0 (1 - a) at the docking or before the next one; or
    where a pit calls for a local insert. Symbols: shell, the plan; forecast, the shell carried on; pits, the places of
    those that call for an insert; apart, stretches of strakes that items of their own renew. Source: derived; limits
    and pits as their own methods say. Raises OutOfRange.
    """
    plan, ahead = shell_from_input(shell), forecast_from_input(forecast)
    readings, latest = ahead.readings, ahead.analysis.latest
    limit = renewal_thickness(readings.as_built, ahead.allowable)
    why = np.zeros((len(SIDES), plan.grid.strakes, plan.grid.bays), np.int8)
    gauged = np.zeros(why.shape, np.bool_)
    for side, name in enumerate(SIDES):
        of_side = latest & (readings.side == side)
        with_pits = _cells(plan, [pit for pit in pits if pit["side"] == name])
        why[side][with_pits] = PIT
        gauged[side] = with_pits | plan.grid.cells(readings.strake[of_side], readings.x[of_side])
        for code, thickness in ((NEXT, ahead.at_next), (NOW, ahead.at_docking)):
            thin = of_side & (thickness < limit - _ROUND_OFF)
            why[side][plan.grid.cells(readings.strake[thin], readings.x[thin])] = code
    why[:, ~plan.exists], gauged[:, ~plan.exists] = 0, False
    return BadSpaces(plan, why, gauged, _apart(plan, apart))


def _cells(plan: ShellPlan, places: Sequence[Mapping[str, Any]]) -> Flags:
    strake = np.array([_strake(plan, one) for one in places], np.int64)
    return plan.grid.cells(strake, np.array([one["at"] for one in places], np.float64))


def _strake(plan: ShellPlan, one: Mapping[str, Any]) -> int:
    if one["strake"] not in plan.strakes:
        raise OutOfRange(f"`{one['strake']}` is not one of the strakes")
    return plan.strakes.index(one["strake"])


def _apart(plan: ShellPlan, apart: Sequence[Mapping[str, Any]]) -> dict[str, Flags]:
    """Mark the spaces whose middle lies on a stretch that an item of its own renews."""
    middle = 0.5 * (plan.grid.frames[:-1] + plan.grid.frames[1:])
    found: dict[str, Flags] = {}
    for one in apart:
        cells = found.setdefault(one["item"], np.zeros((len(SIDES), plan.grid.strakes, plan.grid.bays), np.bool_))
        strake = _strake(plan, one)
        along = (middle > one["from"]) & (middle < one["to"]) & plan.exists[strake]
        for side, name in enumerate(SIDES):
            if one.get("side", name) == name:
                cells[side, strake] |= along
    return found


def outputs_of(found: BadSpaces) -> Mapping[str, Any]:
    """Give the spaces as the outputs of the method."""
    spaces = found.spaces()
    why = np.where(found.others, 0, found.why)
    return {
        "spaces": float((why > 0).sum()),
        "now": float((why == NOW).sum()),
        "next": float((why == NEXT).sum()),
        "pits": float((why == PIT).sum()),
        "apart": float(found.others.sum()),
        "list": [{column.name: space.get(column.name, "") for column in SPACES.columns} for space in spaces],
        "strakes": found.by_strake(),
    }


SPACES = Symbol(
    "list",
    "the frame spaces to renew",
    "table",
    "",
    (
        Symbol("strake", "strake", "text", ""),
        Symbol("side", "side", "text", ""),
        Symbol("at", "its middle, forward of the after perpendicular", "length", "m"),
        Symbol("why", "why", "text", ""),
        Symbol("item", "the item of its own that renews it, if one does", "text", ""),
    ),
)

_PLACE: Mapping[str, Any] = {
    "strake": text("Its strake."),
    "side": {"type": "string", "enum": list(SIDES), "description": "Its side."},
}

METHOD = Method(
    name="shell.bad-spaces",
    title="Frame spaces in which plate is to be renewed",
    formula="t(next docking) < t0 (1 - a), or a pit that calls for a local insert",
    source=Citation("Limits and pits by their own methods", standing="derived"),
    valid="readings of the latest survey that gauged each plate; what nobody gauged is expected apart",
    inputs={
        "shell": SHELL,
        "forecast": FORECAST_INPUT,
        "pits": listed(
            record(
                "One pit.",
                ("strake", "side", "at"),
                **_PLACE,
                at=length("Its place, forward of the after perpendicular."),
            ),
            "Pits that call for a local insert.",
            0,
        ),
        "apart": listed(
            record(
                "One stretch of a strake.",
                ("item", "strake", "from", "to"),
                item=text("The item that renews it."),
                **_PLACE,
                **{"from": length("Its after end."), "to": length("Its forward end.")},
            ),
            "Plate that items of their own renew, whole; both sides where none is named.",
            0,
        ),
    },
    outputs=(
        Symbol("spaces", "frame spaces to renew, those of items of their own left out", "each", "each"),
        Symbol("now", "of them, beyond their limit at this docking", "each", "each"),
        Symbol("next", "beyond their limit before the next docking", "each", "each"),
        Symbol("pits", "with sound plate between pits that call for a local insert", "each", "each"),
        Symbol("apart", "frame spaces that items of their own renew", "each", "each"),
        SPACES,
        Symbol(
            "strakes",
            "frame spaces by strake, both sides",
            "table",
            "",
            (
                Symbol("strake", "strake", "text", ""),
                Symbol("sampled", "gauged", "each", "each"),
                Symbol("bad", "of those, thin at this docking or before the next", "each", "each"),
                Symbol("renewed", "to renew, those with pits besides", "each", "each"),
                Symbol("unsampled", "not gauged", "each", "each"),
            ),
        ),
    ),
    kernel=bad_spaces,
    figures=outputs_of,
    example={
        "shell": {
            "frames": ["12.0 m", "12.6 m", "13.2 m", "13.8 m", "14.4 m"],
            "seams": [["0.10 m"] * 4, ["1.12 m"] * 4, ["2.22 m"] * 4],
            "strakes": [
                {"strake": "B", "thickness": ["9.5 mm"] * 4, "butts": []},
                {"strake": "C", "thickness": ["9.5 mm"] * 4, "butts": []},
            ],
        },
        "forecast": EXAMPLE_FORECAST,
        "pits": [{"strake": "B", "side": "port", "at": "13.4 m"}],
        "apart": [{"item": "335", "strake": "B", "side": "starboard", "from": "12.0 m", "to": "13.2 m"}],
    },
    optional=frozenset({"pits", "apart"}),
    cautions=("which plate is renewed the naval architect decides, on readings taken in dock",),
)
