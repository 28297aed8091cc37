"""The train of cars under the hull: blocks, cars with their loads, rails, and what is dimensioned below them."""

from __future__ import annotations

from tenderwright.calculations.cradle.train import CarLoad, Train
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.view import View
from tenderwright.model.facility import Facility
from tenderwright.quantities.display import in_column, show
from tenderwright.quantities.position import FrameTable

CAR, WHEEL = 5.6, 0.7
"""Height of a car's body and radius of its wheels on paper, mm; neither is to scale."""
NOMINAL_BLOCKS = 4.0
"""Height of the blocks on paper where it is not given, mm."""
TIMBER = Hatch((0,), 1.2, pen.FINE, "", pen.FAINT)


def blocks_height(facility: Facility, scale: int) -> float:
    """Give the height of the keel blocks on paper, mm: to scale where it is given."""
    cars = facility.cars.block_height if facility.cars else None
    given = cars or facility.limits.block_height
    return given.si * 1000 / scale if given else NOMINAL_BLOCKS


def train_marks(train: Train, facility: Facility, view: View, keel: float, blocks: float) -> str:
    """Draw blocks from `keel` down, cars under them, and the rails."""
    there = facility.cars.number if facility.cars else len(train.cars)
    axles = facility.cars.axles if facility.cars else None
    top = keel + blocks
    rail = top + CAR + 2 * WHEEL
    marks = [pen.line((view.x(train.start) - 4, rail), (view.x(train.end) + 4, rail), pen.HEAVY)]
    for index, car in enumerate(train.cars):
        if car.contact > 0:
            ends = max(car.start, train.keel_aft), min(car.end, train.keel_forward)
            marks.append(_blocks(view.x(ends[0]), view.x(ends[1]), keel, top))
        marks.append(_car(car, index + 1, view, top, index < there, train.load is not None))
        marks.append(_wheels(view.x(car.start), view.x(car.end), top + CAR + WHEEL, axles))
    return "".join(marks)


def _blocks(left: float, right: float, keel: float, top: float) -> str:
    box = [(left, keel), (right, keel), (right, top), (left, top)]
    return TIMBER.over([box]) + pen.polygon(box, pen.FINE)


def _wheels(left: float, right: float, middle: float, axles: int | None) -> str:
    count = axles or 2
    places = [left + (right - left) * (i + 0.5) / count for i in range(count)]
    return "".join(pen.circle((x, middle), WHEEL, pen.FINE, pen.PAPER) for x in places)


def _car(car: CarLoad, index: int, view: View, top: float, there: bool, loaded: bool) -> str:
    left, right = view.x(car.start), view.x(car.end)
    box = [(left, top), (right, top), (right, top + CAR), (left, top + CAR)]
    body = pen.polygon(box, pen.MEDIUM, "" if there else pen.HIDDEN, fill=pen.PAPER)
    middle, load = (left + right) / 2, show(car.load, "weight")
    if not loaded:
        return body + pen.text((middle, top + 3.8), f"{index}", pen.NORMAL, "middle", True, kind="car")
    if pen.text_width(load, pen.NORMAL) + 6.5 <= right - left:
        return (
            body
            + pen.circle((left + 2.6, top + CAR / 2), 1.8, pen.FINE)
            + pen.text((left + 2.6, top + CAR / 2 + 0.9), f"{index}", pen.SMALL, "middle", True, kind="car")
            + pen.text((middle + 1.6, top + 3.8), load, pen.NORMAL, "middle", kind="car-load")
        )
    if pen.text_width(load, pen.SMALL) > right - left - 0.5:
        load = in_column(car.load, "weight")
    return (
        body
        + pen.text((middle, top + 2.5), f"{index}", pen.SMALL, "middle", True, kind="car")
        + pen.text((middle, top + 5.1), load, pen.SMALL, "middle", kind="car-load")
    )


def dimensions(train: Train, frames: FrameTable | None, view: View, top: float, width: float) -> str:
    """Dimension the train and the straight keel with what of it is not held up, in two rows on a sheet so wide."""

    def place(x: float) -> str:
        return frames.label(x) if frames else f"{show(x, 'centre')}"

    cars = f"{len(train.cars)} cars coupled" if len(train.cars) > 1 else "1 car"
    over = f"{cars}, {place(train.start)} to {place(train.end)}: {show(train.coupled_length, 'distance')}"
    length = show(train.keel_forward - train.keel_aft, "distance")
    keel = f"straight keel, {place(train.keel_aft)} to {place(train.keel_forward)}: {length}"
    free = train.unsupported_aft, train.unsupported_forward
    if max(free) < 0.005:
        keel += ", no end unsupported"
    return "".join(
        [
            _dimension(view.x(train.start), view.x(train.end), top + 2, over),
            _unsupported(free[0], view.x(train.supported_aft), view.x(train.keel_aft), top + 6, -1, width),
            _unsupported(free[1], view.x(train.supported_forward), view.x(train.keel_forward), top + 6, 1, width),
            _dimension(view.x(train.keel_aft), view.x(train.keel_forward), top + 6, keel),
        ]
    )


def _unsupported(metres: float, held: float, end: float, y: float, out: int, width: float) -> str:
    """Mark the keel beyond the last support, from where it is held up to its end, with its length beside it."""
    if metres < 0.005:
        return ""
    shown = f"{show(metres, 'distance')} unsupported"
    wide = pen.text_width(shown, pen.SMALL, True) + 1
    at = max(end - 1.2, wide) if out < 0 else min(end + 1.2, width - wide)
    return (
        pen.line((held, y - 1), (held, y + 1), pen.MEDIUM)
        + pen.line((held, y), (end, y), pen.HEAVY, colour=pen.RED)
        + pen.label((at, y), shown, pen.SMALL, "end" if out < 0 else "start", True, kind="unsupported")
    )


def _dimension(left: float, right: float, y: float, words: str) -> str:
    """Draw a dimension line with strokes across its ends and words on its middle."""
    slants = [((x - 0.7, y + 0.7), (x + 0.7, y - 0.7)) for x in (left, right)]
    ends = [((x, y - 1.3), (x, y + 1.3)) for x in (left, right)]
    shown = pen.label(((left + right) / 2, y), words, pen.SMALL, kind="dimension")
    return (
        pen.line((left, y), (right, y), pen.FINE)
        + pen.strokes(ends, pen.FINE)
        + pen.strokes(slants, pen.MEDIUM)
        + shown
    )
