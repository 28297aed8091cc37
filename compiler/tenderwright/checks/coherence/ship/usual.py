"""Figures are of the size that such figures have.

Ground: bounds beyond which a slip of unit or point is likelier than the figure: common practice, no source, set well
outside what is found in the trade.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from statistics import median

from tenderwright.checks.coherence.ship.held import held, held_number, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.coating import Coat, Scheme
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.shell_condition import RenewalPractice
from tenderwright.model.ship_condition import Climate, ShipCondition
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "beyond-usual"
_USUAL = "is usual (common practice, no source)"
_ANTIFOULING = re.compile(r"anti-?fouling")
_GRADE = re.compile(r"(Sa|St|Wa)\s*([0-9])")
_GRADES = {"Sa": ("1", "2", "3"), "St": ("2", "3"), "Wa": ("1", "2")}
"""First figures of the grades of ISO 8501-1 and ISO 8501-4."""
_YEAR = 365.25 * 86400.0
_HOUR, _DAY = 3600.0, 86400.0
Row = tuple[str, Quantity | None, float, float, str]
"""What, the figure, the least and the most in SI, and the range in words."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report figures beyond the usual in the docking plan, the condition and the coating schemes."""
    package = ship.package
    if package.docking_plan is not None:
        yield from _plan(ship, package.docking_plan)
    if package.condition is not None:
        yield from _condition(ship, package.condition)
    for scheme in package.schemes:
        yield from _scheme(ship, scheme)


def _rows(*rows: Row) -> Iterator[Notice]:
    for what, stated, low, high, words in rows:
        yield from held(CODE, what, stated, low, high, f"{words} {_USUAL}")


def _plan(ship: Ship, plan: DockingPlan) -> Iterator[Notice]:
    draft, length = ship.draft or 4.0, ship.length or 60.0
    dimensions = ship.package.particulars.dimensions if ship.package.particulars is not None else None
    beam = dimensions.beam.si if dimensions is not None else length / 5

    def of(noun: object) -> Quantity | None:
        value = getattr(noun, "value", None)
        return value if isinstance(value, Quantity) else None

    yield from _rows(
        ("slope of the block line", of(plan.declivity), -0.105, 0.105, "up to 6 deg"),
        ("pressure allowed on the caps", of(plan.allowable), 0.3e6, 25e6, "from 0.3 to 25 MPa"),
        ("clearance of blocks", of(plan.clearance), 0.02, 2.0, "from 20 mm to 2 m"),
        ("margin between footprints", of(plan.margin), 0.0, 1.0, "up to 1 m"),
        (
            "water under the keel",
            of(plan.under_keel),
            0.05,
            0.7 * draft,
            f"from 0.05 m to {show(0.7 * draft, 'draft', more=-1)}",
        ),
        (
            "water over the sill",
            of(plan.over_sill),
            0.05,
            0.7 * draft,
            f"from 0.05 m to {show(0.7 * draft, 'draft', more=-1)}",
        ),
        ("clearance beside her", of(plan.beside), 0.1, beam, f"from 0.1 m to {show(beam, 'centre', more=-1)}"),
        (
            "clearance at the ends",
            of(plan.ends),
            0.1,
            0.5 * length,
            f"from 0.1 m to {show(0.5 * length, 'centre', more=-2)}",
        ),
    )
    if plan.girder is not None:
        yield from _rows(
            ("modulus of the hull's steel or iron", plan.girder.modulus, 150e9, 220e9, "from 150 to 220 GPa"),
        )
        yield from _girder(ship, plan)
    if plan.wind is not None:
        wind, depth = plan.wind, (dimensions.depth.si if dimensions is not None else 5.0)
        side = length * depth
        yield from _rows(
            ("speed of the wind", wind.speed, 8.0, 75.0, "from 8 to 75 m/s"),
            (
                "side area",
                wind.area,
                0.4 * side,
                6 * side,
                f"from {0.4 * side:.0f} to {show(6 * side, 'area', more=-1)} for her size",
            ),
            (
                "height of the side area's centre",
                wind.height,
                0.3 * depth,
                3 * depth,
                f"{0.3 * depth:.1f} to {show(3 * depth, 'centre', more=-2)}",
            ),
        )
        words = f"from 0.3 to 2 {_USUAL}"
        yield from held_number(CODE, "coefficient of the wind", wind.coefficient, wind.here, 0.3, 2.0, words)
    if plan.earthquake is not None:
        words = f"up to 0.6 of gravity {_USUAL}"
        coefficient = plan.earthquake.coefficient
        yield from held_number(
            CODE, "coefficient of the earthquake", coefficient, plan.earthquake.here, 0.0, 0.6, words
        )
    if plan.friction is not None:
        words = f"from 0.05 to 0.9 {_USUAL}"
        yield from held_number(CODE, "friction on the caps", plan.friction.value, plan.friction.here, 0.05, 0.9, words)


def _girder(ship: Ship, plan: DockingPlan) -> Iterator[Notice]:
    """Hold the second moment against a thin box of her breadth, depth and plating."""
    shell, strakes = ship.shell, ship.package.strakes
    plates = [plate.thickness.si for strake in strakes for plate in strake.plates]
    if shell is None or not plates or plan.girder is None:
        return
    box = median(plates) * shell.depth**2 * (shell.beam / 2 + shell.depth / 6)
    against = (
        f"her plating of about {show(median(plates), 'thickness', more=-1)} makes some "
        f"{like(box, plan.girder.second_moment)}"
    )
    what = "second moment of the midship section"
    yield from held(CODE, what, plan.girder.second_moment, 0.12 * box, 6 * box, against)


def _condition(ship: Ship, condition: ShipCondition) -> Iterator[Notice]:
    yield from _rows(
        ("time to the next docking", condition.next_docking, 0.5 * _YEAR, 30 * _YEAR, "from half a year to 30 years"),
        ("uncertainty of a gauge", condition.gauge_uncertainty, 5e-6, 1.5e-3, "up to 1.5 mm"),
        *(
            (f"what plate may lose in zone `{zone.zone}`", zone.allowable, 0.05, 0.5, "from 5 % to 50 %")
            for zone in condition.zones
        ),
    )
    if condition.members is not None:
        yield from _rows(("what members may lose", condition.members.allowable, 0.05, 0.5, "from 5 % to 50 %"))
    yield from _rows(*(("share of pits", pitted.share, 0.001, 0.7, "up to 70 %") for pitted in condition.pitted))
    if condition.renewal is not None:
        yield from _renewal(condition.renewal)
    if condition.climate is not None:
        yield from _climate(condition.climate)
    if condition.tightness is not None:
        tightness = condition.tightness
        yield from _rows(("head on the tanks", tightness.tank_head, 0.1, 6.0, "from 0.1 m to 6 m"))
        hull = ship.package.particulars.hull if ship.package.particulars is not None else None
        if hull is not None and hull.fastening in ("riveted", "welded") and hull.fastening != tightness.structure:
            message = f"boundaries are said to be {tightness.structure}, and the hull is {hull.fastening}"
            yield Notice(CODE, tightness.here, message, hints=("mend `structure`, or `fastening` of the hull",))
    for clearance in condition.clearances:
        yield from _rows((f"limit of {clearance.what}", clearance.limit, 1e-4, 0.03, "from 0.1 mm to 30 mm"))
        against = f"{clearance.limit} is the limit, and nobody leaves five times that"
        most = 5 * clearance.limit.si
        for found in clearance.found:
            yield from held(CODE, clearance.what, found.clearance, 0.0, most, against)


def _renewal(practice: RenewalPractice) -> Iterator[Notice]:
    rivet = practice.rivet
    yield from _rows(("rivets of the shell", rivet, 0.008, 0.04, "from 8 mm to 40 mm"))
    if 0.008 <= rivet.si <= 0.04:
        yield from _rows(
            ("pitch along seams", practice.seam_pitch, 2.4 * rivet.si, 9 * rivet.si, f"2.4 to 9 times the {rivet}"),
            ("pitch along frames", practice.frame_pitch, 3 * rivet.si, 14 * rivet.si, f"3 to 14 times the {rivet}"),
        )
    yield from _rows(
        ("least side of an insert", practice.least_size, 0.05, 1.5, "from 50 mm to 1.5 m"),
        ("mill tolerance", practice.mill_tolerance, 0.0, 0.15, "up to 15 %"),
    )
    words = f"from 2 to 20 thicknesses {_USUAL}"
    yield from held_number(CODE, "radius of corners", practice.corner, practice.here, 1, 20, words)
    words = f"from 30 to 2000 man-hours a tonne {_USUAL}"
    yield from held_number(CODE, "hours for a tonne", practice.hours_rate, practice.here, 30, 2000, words)


def _climate(climate: Climate) -> Iterator[Notice]:
    numbers = [month.month for month in climate.months]
    for month in climate.months:
        what = f"of month {month.month}"
        if numbers.count(month.month) > 1 and month is not climate.months[numbers.index(month.month)]:
            yield Notice(CODE, month.here, f"month {month.month} is listed twice", hints=("look at its number",))
        yield from _rows(
            (f"mean temperature {what}", month.mean, -35.0, 38.0, "from -35 to 38 degC"),
            (f"humidity {what}", month.humidity, 0.25, 1.0, "from 25 % to 100 %"),
            (f"hours of rain {what}", month.rain, 0.0, 500 * _HOUR, "up to 500 h"),
            (f"wind {what}", month.wind, 0.3, 20.0, "from 0.3 to 20 m/s"),
        )
        words = f"from 1 to 25 K {_USUAL}"
        yield from held_number(CODE, f"daily range {what}", month.range, month.here, 1, 25, words)
        beside = [one for one in climate.months if (one.month - month.month) % 12 in (1, 11)]
        if beside:
            rain = max(one.rain.si for one in beside)
            against = f"a month beside it has {max(beside, key=lambda one: one.rain.si).rain}"
            yield from held(CODE, f"hours of rain {what}", month.rain, 0.15 * rain, 5 * rain, against)
            wind = max(one.wind.si for one in beside)
            against = f"a month beside it has {max(beside, key=lambda one: one.wind.si).wind}"
            yield from held(CODE, f"wind {what}", month.wind, 0.2 * wind, 5 * wind, against)
        if len(beside) == 2:
            fair = sum(one.mean.si for one in beside) / 2
            against = f"the months beside it have {beside[0].mean} and {beside[1].mean}"
            yield from held(CODE, f"mean temperature {what}", month.mean, fair - 6, fair + 6, against, exact=True)


def _scheme(ship: Ship, scheme: Scheme) -> Iterator[Notice]:
    of, preparation = f"of scheme `{scheme.scheme}`", scheme.preparation
    yield from _rows(
        (f"least profile {of}", preparation.profile_low, 10e-6, 150e-6, "from 10 to 150 um"),
        (f"greatest profile {of}", preparation.profile_high, 20e-6, 250e-6, "from 20 to 250 um"),
        (f"salts allowed {of}", preparation.salts, 5e-6, 500e-6, "from 5 to 500 mg/m2"),
    )
    if (grade := _GRADE.match(preparation.grade)) and grade[2] not in _GRADES[grade[1]]:
        message = f"grade {of} is {preparation.grade}, and {grade[1]} has {' and '.join(_GRADES[grade[1]])}"
        yield Notice(CODE, preparation.here, message, hints=("look at the figure of the grade",))
    low, high = preparation.profile_low, preparation.profile_high
    if low is not None and high is not None and low.si >= high.si:
        yield Notice(CODE, low.at, f"least profile {of} is {low}, and the greatest {high}", hints=("swap the two?",))
    if scheme.abrasive is not None:
        abrasive = scheme.abrasive
        yield from _rows(
            (f"abrasive {of}", abrasive.rate, 8.0, 150.0, "from 8 to 150 kg/m2"),
            (f"old paint {of}", abrasive.old_paint, 30e-6, 4e-3, "from 30 um to 4 mm"),
            (f"density of the old paint {of}", abrasive.old_paint_density, 900.0, 4000.0, "from 0.9 to 4 t/m3"),
            (f"rust {of}", abrasive.rust, 0.0, 8.0, "up to 8 kg/m2"),
        )
    if scheme.profile_fill is not None:
        yield from _rows((f"profile to fill {of}", scheme.profile_fill.rz, 15e-6, 200e-6, "from 15 to 200 um"))
    yield from _antifouling(ship, scheme)
    for number, coat in enumerate(scheme.coats, start=1):
        if coat.coat != number:
            message = f"coat {coat.coat} {of} stands in place {number}"
            yield Notice(CODE, coat.here, message, hints=("coats are counted from the steel out",))
        yield from _coat(f"of coat {coat.coat} {of}", coat)


def _antifouling(ship: Ship, scheme: Scheme) -> Iterator[Notice]:
    """Tell of antifouling under another coat, or on a zone that begins above the water."""
    fouling = [_ANTIFOULING.match(coat.product.lower()) is not None for coat in scheme.coats]
    for coat, here, above in zip(scheme.coats, fouling, fouling[1:], strict=False):
        if here and not above:
            message = f"coat {coat.coat} of scheme `{scheme.scheme}` is antifouling, and another paint covers it"
            yield Notice(CODE, coat.here, message, hints=("look at the order of the coats",))
    zone = next((zone for zone in ship.package.zones if zone.zone == scheme.zone.name), None)
    lower = zone.lower.si if zone is not None and isinstance(zone.lower, Quantity) else 0.0
    if zone is not None and any(fouling) and ship.draft is not None and lower > 1.05 * ship.draft:
        message = f"scheme `{scheme.scheme}` puts antifouling on zone `{zone.zone}`, which begins at {zone.lower}"
        yield Notice(CODE, scheme.here, message, hints=(f"she draws {show(ship.draft, 'draft')}: look at the zone",))


def _coat(of: str, coat: Coat) -> Iterator[Notice]:
    thickest = 400 if "antifouling" in coat.product.lower() else 1200
    yield from _rows(
        (f"film {of}", coat.dft, 20e-6, thickest * 1e-6, f"from 20 to {thickest} um"),
        (f"solids {of}", coat.volume_solids, 0.2, 1.0, "from 20 % to 100 %"),
        (f"loss {of}", coat.loss, 0.04, 0.7, "from 4 % to 70 %"),
        (f"thinner {of}", coat.thinning, 0.0, 0.3, "up to 30 %"),
        (f"set {of}", coat.set_size, 0.4e-3, 0.25, "from 0.4 L to 250 L"),
        (f"shortest wait {of}", coat.overcoat_least, 0.2 * _HOUR, 7 * _DAY, "from a quarter of an hour to 7 days"),
        (f"longest wait {of}", coat.overcoat_most, 2 * _HOUR, 400 * _DAY, "from 2 hours to a year"),
    )
    least, most = coat.overcoat_least, coat.overcoat_most
    if least is not None and most is not None and least.si >= most.si:
        message = f"shortest wait {of} is {least}, and the longest {most}"
        yield Notice(CODE, least.at, message, hints=("look at the units of both",))
    if coat.stripe is not None:
        yield from _rows(
            (f"length of the stripe coat {of}", coat.stripe.length, 1.0, 2e4, "from 1 m to 20 km"),
            (f"width of the stripe coat {of}", coat.stripe.width, 0.02, 0.4, "from 20 mm to 400 mm"),
        )
