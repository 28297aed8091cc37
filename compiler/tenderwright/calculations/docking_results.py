"""What the docking calculations give besides single values: for the drawings and pages of the docking chapter.

Lengths in m, masses in kg, pressures in Pa, angles in rad; x forward of the after perpendicular, y to port, z above the
keel line.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from msgspec import Struct

if TYPE_CHECKING:
    from tenderwright.calculations.blocks.frame_shift import LeastShift
    from tenderwright.calculations.blocks.overturning import Overturning
    from tenderwright.calculations.condition.floating import FloatingPosition
    from tenderwright.calculations.landing.curve import LandingCurve
    from tenderwright.calculations.landing.settling import Landing
    from tenderwright.calculations.verdict import Verdict


Kind = Literal["keel", "side"]
Why = Literal["changed", "slack", "to be dry"]
"""Contents changed since docking; a free surface; nothing should be in it."""


@dataclass(frozen=True)
class Footprint:
    """The rectangle that one block covers on the hull, seen in plan."""

    docking: str
    """`plan` for the plan of this tender, otherwise the identifier of the earlier docking."""
    kind: Kind
    position: str
    """As written, or by the nearest frame."""
    aft: float
    forward: float
    right: float
    """Least y."""
    left: float
    """Greatest y."""

    @property
    def x(self) -> float:
        """Give its middle along the ship."""
        return 0.5 * (self.aft + self.forward)

    @property
    def y(self) -> float:
        """Give its middle across the ship, to port."""
        return 0.5 * (self.right + self.left)

    @property
    def side(self) -> str:
        """Name the side it stands on."""
        return "centreline" if self.right < 0.0 < self.left else "port" if self.y > 0 else "starboard"


class Conflict(Struct, frozen=True):
    """A block nearer to a thing on the hull than the clearance wanted."""

    footprint: Footprint
    kind: str
    """`opening`, `docking plug`, `anode`, `bilge keel`."""
    name: str
    gap: float
    """From the edge of the cap to the edge of the thing; 0 where it covers it."""
    wanted: float


class Strip(Struct, frozen=True):
    """A strip of bottom covered by blocks at two or more dockings running, so that nobody could paint it."""

    aft: float
    forward: float
    right: float
    left: float
    dockings: tuple[str, ...]
    """In order of time; the last is `plan` where the plan of this tender would cover it again."""


class Work(Struct, frozen=True):
    """A block that covers plating on which an item works: it is moved for that item, or the item loses the place."""

    footprint: Footprint
    item: str
    what: str


@dataclass(frozen=True)
class KeelBlockResult:
    """One keel block of the plan, from aft."""

    number: int
    position: str
    x: float
    length: float
    width: float
    height: float | None
    """Of its top above the dock floor."""
    stiffness: float | None
    """N/m; None where the layers are not known."""
    rigid: float | None = None
    """Load by the area-moment method, rigid hull; None where it could not be found."""
    elastic: float | None = None
    """Load with the hull as an elastic girder."""
    line_load: float | None = None
    """Greater load over the length that the block holds up, kg/m."""
    pressure: float | None = None
    """Of the greater load on the width in contact."""

    @property
    def load(self) -> float | None:
        """Give the greater of the two loads."""
        loads = [one for one in (self.rigid, self.elastic) if one is not None]
        return max(loads, default=None)


class SideBlockResult(Struct, frozen=True):
    """One pair of side blocks of the plan, from aft; the figures are those of either block."""

    number: int
    position: str
    x: float
    off_centre: float
    length: float
    width: float
    shell: float
    """Height of the shell over the middle of the cap, above the keel line."""
    shell_inner: float
    """The same at the inboard edge of the cap."""
    shell_outer: float
    """The same at the outboard edge."""
    height: float | None
    """Of the middle of the cap above the dock floor."""
    bevel: float
    """Slope of the cap across the ship, rising outboard, rad."""
    fore_and_aft: float
    """Slope of the cap along the ship, rising forward, rad."""
    wind: float | None = None
    """Load of the lee block from wind, kg."""
    earthquake: float | None = None
    """Load of the lee block from the sideways acceleration, kg."""
    pressure: float | None = None
    """Of the greater of the two."""


class Stage(Struct, frozen=True):
    """A stage of the water falling, in order."""

    name: str
    water: float
    """Over the top of the keel blocks at the first block touched."""
    draft_aft: float
    """Above the underside of the keel."""
    draft_forward: float
    upthrust: float
    gm: float | None
    """The lesser of the two virtual metacentric heights."""


class TankState(Struct, frozen=True):
    """What is in a tank at one of the conditions."""

    liquid: str
    volume: float
    mass: float
    sounding: float | None
    """On her pipe at the trim of that condition; None without a pipe, or where the liquid does not reach it."""


class Undocking(Struct, frozen=True):
    """The condition in which she is floated."""

    position: FloatingPosition
    unlevel: tuple[str, ...]
    """In what she does not float off level: trim or list beyond what the package allows."""
    stable: bool
    """Whether the metacentric height, floated off and as the last block leaves, is what the package asks for."""
    reasons: tuple[str, ...]
    """Why not; empty where she floats off level and stable."""
    least_gm: float | None
    """The lesser virtual metacentric height as the last block leaves her, m."""
    to_sound: tuple[tuple[str, Why], ...]
    """Tanks to be sounded above all before flooding, each with the reason."""

    @property
    def level(self) -> bool:
        """Tell whether trim and list are within what the package allows."""
        return not self.unlevel

    @property
    def sound_before_flooding(self) -> tuple[str, ...]:
        """Name those tanks."""
        return tuple(name for name, _ in self.to_sound)


@dataclass
class DockingResults:
    """Everything about the docking; a part that could not be calculated is None or empty."""

    # Always: cheap, and the trade checks look at them.
    keel_blocks: tuple[KeelBlockResult, ...] = ()
    """With loads, where they could be calculated."""
    side_blocks: tuple[SideBlockResult, ...] = ()
    footprints: tuple[Footprint, ...] = ()
    """Of the plan."""
    earlier: dict[str, tuple[Footprint, ...]] = field(default_factory=dict)
    """By earlier docking, oldest first."""
    conflicts: tuple[Conflict, ...] = ()
    nearest: tuple[Conflict, ...] = ()
    """The block nearest to each opening of the bottom, near enough to be looked at."""
    strips: tuple[Strip, ...] = ()
    works: tuple[Work, ...] = ()
    bare_area: float | None = None
    """Covered by the blocks of the plan, m2."""
    estimate: Landing | None = None
    """By the hand method at the trim wanted, liquids as on arrival."""

    # In the docking condition.
    position: FloatingPosition | None = None
    """In which she is docked: the tanks moved for the trim wanted, or as on arrival."""
    tanks: dict[str, TankState] = field(default_factory=dict)
    """On docking, by tank."""
    exact: Landing | None = None
    held: Landing | None = None
    curve: LandingCurve | None = None
    held_curve: LandingCurve | None = None
    greatest_trim: float | None = None
    """Greatest trim on entering that leaves the metacentric height required."""
    stages: tuple[Stage, ...] = ()
    slenderness: float | None = None
    """Lambda L of the keel line."""
    rigid_justified: bool | None = None
    side: Overturning | None = None
    shift: LeastShift | None = None
    """Of the plan's keel blocks."""
    shift_of_last: LeastShift | None = None
    """Of the keel blocks of the last docking, were they set again where they stood."""
    undocking: Undocking | None = None
    tanks_undocking: dict[str, TankState] = field(default_factory=dict)
    facilities: dict[str, Verdict] = field(default_factory=dict)
