"""The area of the hull that stays bare under blocks, and what earlier dockings covered before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.blocks.covered import Strip, covered_running, union_area
from tenderwright.calculations.blocks.footprint import Footprint, footprints_from_input, rectangles
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import listed, quantity, record, text


class Bare(Struct, frozen=True):
    """What stays bare under the blocks of a plan, and what earlier dockings have covered; areas in m2."""

    area: float
    strips: tuple[Strip, ...]
    """Covered at two dockings running or more, the last or this one among them; numbered as `dockings`."""
    dockings: tuple[str, ...]
    """Earlier dockings in order of time; the plan comes after them."""
    keel_count: int
    side_count: int

    @property
    def covered_twice(self) -> float:
        """Give the area that the plan covers again."""
        return sum(one.area for one in self.strips if one.last == len(self.dockings))

    @property
    def never_painted(self) -> float:
        """Give the area that was covered at the last two dockings or more and is free now."""
        return sum(one.area for one in self.strips if one.last != len(self.dockings))


def in_contact(keel: Sequence[Footprint], sides: Sequence[Footprint], keel_width: float) -> list[Footprint]:
    """Give what blocks touch: under the keel no more than the keel's own width, m. Source: geometry (derived)."""
    return [*(replace(one, width=min(one.width, keel_width)) for one in keel), *sides]


def bare_area(
    keel_blocks: Sequence[Mapping[str, Any]],
    side_blocks: Sequence[Mapping[str, Any]],
    keel_width: float,
    earlier: Sequence[Mapping[str, Any]] = (),
) -> Bare:
    """Find the area under the blocks of a plan, and the strips that dockings running have covered.

    Symbols: rectangles as middle, length and width [m]; width of the keel [m]; earlier dockings in order of time.
    Source: geometry (derived). Raises OutOfRange.
    """
    own = _touched({"keel": keel_blocks, "sides": side_blocks}, keel_width)
    groups = [*(_touched(one, keel_width) for one in earlier), own]
    # A run that ended before the last docking was painted then.
    strips = [one for one in covered_running(groups) if one.last >= len(groups) - 2]
    names = tuple(one["name"] for one in earlier)
    return Bare(union_area(own), tuple(strips), names, len(keel_blocks), len(side_blocks))


def _touched(docking: Mapping[str, Any], keel_width: float) -> list[Footprint]:
    keel, sides = (footprints_from_input(docking[kind], kind) for kind in ("keel", "sides"))
    return in_contact(keel, sides, keel_width)


def outputs_of(found: Bare) -> Mapping[str, float]:
    """Give what stays bare as outputs."""
    return {
        "bare_area": found.area,
        "covered_twice": found.covered_twice,
        "never_painted": found.never_painted,
        "keel_count": float(found.keel_count),
        "side_count": float(found.side_count),
    }


METHOD = Method(
    name="blocks.bare-area",
    title="Area of the hull that stays bare under blocks",
    formula="A = area of the union of the places in contact; keel blocks bear on the width of the keel",
    source=Citation("Geometry", standing="derived"),
    valid="blocks that are not moved while she is dry",
    inputs={
        "keel_blocks": rectangles("Caps of the keel blocks planned."),
        "side_blocks": rectangles("Caps of the side blocks planned, of both sides."),
        "keel_width": quantity("length", "Width of the keel."),
        "earlier": listed(
            record(
                "An earlier docking.",
                ("name", "keel", "sides"),
                name=text("Which."),
                keel=rectangles("Caps of its keel blocks."),
                sides=rectangles("Caps of its side blocks, of both sides."),
            ),
            "Earlier dockings, in order of time.",
            0,
        ),
    },
    outputs=(
        Symbol("bare_area", "area under the blocks of the plan", "area", "m2"),
        Symbol("covered_twice", "area that the plan covers again after the last docking", "area", "m2"),
        Symbol("never_painted", "area covered at the last two dockings or more", "area", "m2"),
        Symbol("keel_count", "keel blocks", "each", "each"),
        Symbol("side_count", "side blocks, both sides", "each", "each"),
    ),
    kernel=bare_area,
    figures=outputs_of,
    example={
        "keel_blocks": [{"x": f"{x} m", "y": "0 m", "length": "0.4 m", "width": "1.0 m"} for x in (10, 12, 14)],
        "side_blocks": [{"x": "12 m", "y": f"{y} m", "length": "0.4 m", "width": "0.6 m"} for y in (2, -2)],
        "keel_width": "200 mm",
        "earlier": [
            {"name": "2007", "keel": [{"x": "10.1 m", "y": "0 m", "length": "0.4 m", "width": "1.0 m"}], "sides": []}
        ],
    },
    optional=frozenset({"earlier"}),
)
