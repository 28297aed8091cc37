"""A facility is one that can be: deep, broad and strong as docks are, and its own figures go together.

Ground: geometry of docks, slips and lifts; bounds beyond which none is built: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.coherence.ship.held import held, held_number, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.facility import Cars, Facility, FacilityLimits, Hoists, Slope
from tenderwright.notices import Notice
from tenderwright.quantities.display import plainly, show

CODE = "facility-contradicts"


def check(ship: Ship) -> Iterator[Notice]:
    """Report facilities whose figures contradict each other, or are those of no dock there is."""
    for facility in ship.package.facilities:
        yield from _limits(facility, facility.limits)
        if facility.cars is not None:
            yield from _cars(facility, facility.cars)
        if facility.hoists is not None:
            yield from _hoists(facility, facility.hoists)
        if facility.slope is not None:
            yield from _slope(facility, facility.slope)
        yield from _kind(facility)
        against = "a ship is towed from next door to the other end of a sea"
        yield from held(CODE, f"tow to `{facility.facility}`", facility.tow, 100.0, 3e6, against)


def _kind(facility: Facility) -> Iterator[Notice]:
    """Tell of parts that a facility of its kind has not."""
    for part, stated, kinds in (
        ("sill", facility.limits.sill, ("graving dock", "slipway")),
        ("hoists", facility.hoists, ("shiplift",)),
        ("slope", facility.slope, ("slipway",)),
    ):
        if stated is not None and facility.kind not in kinds:
            message = f"`{facility.facility}` is a {facility.kind}, and has {part if part == 'hoists' else f'a {part}'}"
            hint = f"delete `{part}`, or correct its kind"
            yield Notice(CODE, facility.here, message, hints=(hint,))


def _limits(facility: Facility, limits: FacilityLimits) -> Iterator[Notice]:
    of = f"of `{facility.facility}`"
    for what, stated, low, high in (
        ("length", limits.length, 5.0, 500.0),
        ("breadth", limits.beam, 2.0, 90.0),
        ("water over the sill", limits.sill, 0.5, 18.0),
        ("water over the blocks", limits.blocks, 0.5, 16.0),
        ("height of the blocks", limits.block_height, 0.4, 3.5),
        ("clearance on the way", limits.air_draft, 2.0, 120.0),
    ):
        against = f"one is from {plainly(low, 'centre')} to {plainly(high, 'centre')} (common practice, no source)"
        yield from held(CODE, f"{what} {of}", stated, low, high, against)
    length, beam, line, lift = limits.length, limits.beam, limits.line_load, limits.lift
    if length is not None and beam is not None and beam.si <= 90:
        against = f"it is {length} long"
        yield from held(CODE, f"breadth {of}", beam, length.si / 15, length.si / 1.5, against, exact=True)
    if limits.sill is not None and limits.blocks is not None and limits.block_height is not None:
        floor = limits.blocks.si + limits.block_height.si
        blocks = f"{limits.blocks} over blocks of {limits.block_height}"
        against = f"the floor lies {like(floor, limits.sill)} under water, {blocks}"
        if all(0.5 <= one.si <= 18 for one in (limits.sill, limits.blocks)) and limits.block_height.si <= 3.5:
            yield from held(
                CODE, f"water over the sill {of}", limits.sill, floor - 5.0, floor + 0.5, against, exact=True
            )
    if line is not None:
        against = "a keel line carries from 3 to 300 t/m"
        yield from held(CODE, f"line load {of}", line, 3e3, 3e5, against)
        if lift is not None and length is not None:
            whole = line.si * length.si
            against = f"{line} over {length} come to {like(whole, lift)}"
            yield from held(CODE, f"lift {of}", lift, 0.15 * whole, 1.5 * whole, against)


def _cars(facility: Facility, cars: Cars) -> Iterator[Notice]:
    of, limits = f"of `{facility.facility}`", facility.limits
    against = "a car is from 1 m to 20 m long"
    yield from held(CODE, f"length of a car {of}", cars.length, 1.0, 20.0, against)
    against = f"a car is {cars.length} long"
    yield from held(CODE, f"gap between cars {of}", cars.gap, 0.0, 0.4 * cars.length.si, against)
    run = cars.number * cars.length.si + (cars.number - 1) * cars.gap.si
    if limits.length is not None and run > 3 * limits.length.si:
        message = (
            f"{cars.number} cars of {cars.length} {of} are {show(run, 'centre', more=-2)} long, and the "
            f"facility takes {limits.length}"
        )
        yield Notice(CODE, cars.here, message, hints=("look at the number and the length of the cars",))
    if limits.lift is not None:
        low, high = limits.lift.si / cars.number / 3, 4 * limits.lift.si / cars.number
        against = f"{cars.number} of them carry a lift of {limits.lift}"
        yield from held(CODE, f"capacity of a car {of}", cars.capacity, low, high, against)
    if cars.axles is not None and cars.axle_limit is not None:
        low, high = 0.8 * cars.capacity.si / cars.axles, 6 * cars.capacity.si / cars.axles
        against = f"{cars.axles} axles carry a car of {cars.capacity}"
        yield from held(CODE, f"limit of an axle {of}", cars.axle_limit, low, high, against)
    against = f"it carries {cars.capacity}"
    yield from held(
        CODE, f"mass of a car {of}", cars.own_mass, 0.01 * cars.capacity.si, 0.6 * cars.capacity.si, against
    )
    if cars.line_limit is not None:
        along = cars.capacity.si / cars.length.si
        against = f"{cars.capacity} on {cars.length} come to {like(along, cars.line_limit)}"
        yield from held(CODE, f"limit along the cars {of}", cars.line_limit, 0.2 * along, 6 * along, against)
    against = "blocks are from 0.4 m to 3.5 m high"
    yield from held(CODE, f"height of the blocks on the cars {of}", cars.block_height, 0.4, 3.5, against)
    against = f"there are {cars.number} of them"
    yield from held_number(CODE, f"most cars coupled {of}", cars.most_coupled, cars.here, 1, 3 * cars.number, against)


def _hoists(facility: Facility, hoists: Hoists) -> Iterator[Notice]:
    of, limits = f"of `{facility.facility}`", facility.limits
    if limits.lift is not None:
        low, high = limits.lift.si / hoists.pairs, 6 * limits.lift.si / hoists.pairs
        against = f"{hoists.pairs} pairs lift {limits.lift}"
        yield from held(CODE, f"capacity of a pair of hoists {of}", hoists.pair_capacity, low, high, against)
    if limits.length is not None and hoists.pairs > 1:
        run = limits.length.si / (hoists.pairs - 1)
        against = f"{hoists.pairs} pairs stand along a platform of {limits.length}"
        yield from held(CODE, f"distance between the hoists {of}", hoists.spacing, 0.5 * run, 1.5 * run, against)
    against = f"a pair lifts {hoists.pair_capacity}"
    most = 0.6 * hoists.pair_capacity.si
    yield from held(CODE, f"mass of a bay {of}", hoists.bay_mass, 0.01 * most, most, against)


def _slope(facility: Facility, slope: Slope) -> Iterator[Notice]:
    of, limits = f"of `{facility.facility}`", facility.limits
    run = float(slope.gradient.partition(":")[2])
    against = "a slip rises one in 8 to one in 40 (common practice, no source)"
    yield from held_number(CODE, f"gradient {of}, one in so many,", run, facility.here, 8, 40, against)
    if slope.haul is not None and limits.lift is not None and 8 <= run <= 40:
        pull = limits.lift.si * 9.80665 / run
        against = f"{limits.lift} on {slope.gradient} pull with {like(pull, slope.haul)}"
        yield from held(CODE, f"pull of the winch {of}", slope.haul, 0.5 * pull, 6 * pull, against)
    if slope.track is not None and limits.length is not None:
        low, high = limits.length.si, 40 * limits.length.si
        yield from held(CODE, f"track {of}", slope.track, low, high, f"its cradle is {limits.length} long")
