"""A hull of wood: what of her planking, seams and fastenings is renewed, her hog, and how long she may stand dry."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked, without_file
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.timber.borings import METHOD as BORINGS
from tenderwright.calculations.timber.days_dry import METHOD as DAYS_DRY
from tenderwright.calculations.timber.fastenings import METHOD as FASTENINGS
from tenderwright.calculations.timber.hog import METHOD as HOG
from tenderwright.calculations.timber.hog_by_drafts import METHOD as HOG_BY_DRAFTS
from tenderwright.calculations.timber.moisture import METHOD as MOISTURE
from tenderwright.calculations.timber.planking import METHOD as PLANKING
from tenderwright.calculations.timber.seams import METHOD as SEAMS
from tenderwright.calculations.value import Given, given
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.tender import Programme
from tenderwright.model.timber import FastenedZone, Plank, Timber, TimberPractice
from tenderwright.quantities.quantity import Quantity

FILE = "vessel/timber.yaml"
CONFIDENCE = Given(0.95, "95 %, none is stated", "common practice, no source")
AIM = (-0.60, -0.55)
"""Potentials at which bonded metals on wood are held, V against silver/silver chloride (from memory)."""
_DAY = 86400.0


def of_wood(particulars: Particulars | None) -> bool:
    """Tell whether the shell of the ship is of planks."""
    return particulars is not None and particulars.hull is not None and particulars.hull.of_wood


@step()
def wood(package: Package) -> Timber | Absent:
    """Give the condition of a hull of wood."""
    hull = package.particulars.hull if package.particulars is not None else None
    if hull is not None and hull.composite:
        return NotAsked("her hull is composite, planks on frames of metal, which is not supported")
    if hull is None or not hull.of_wood:
        return NotAsked("her hull is not of wood")
    if package.timber is not None:
        return package.timber
    return without_file(package, FILE)


@step()
def timber_practice(wood: Timber) -> TimberPractice | Absent:
    """Give the limits and practice for the hull of wood."""
    return wood.practice or Lacking(f"it needs `practice` in {FILE}")


def renewed_planks(wood: Timber) -> tuple[Plank, ...]:
    """Give the planks that the survey says are to be renewed."""
    return tuple(plank for plank in wood.planks if plank.condition == "renew")


@step_of(PLANKING, "timber.planking")
def planking_to_renew(wood: Timber, timber_practice: TimberPractice) -> Uses | Absent:
    """Sum up the planks to renew, and the board for them."""
    if not wood.planks:
        return Lacking(f"it needs `planks` in {FILE}")
    if timber_practice.waste is None:
        return _practice("waste")
    planks = [
        {"length": abs(one.to.x - one.from_.x), "width": one.width.si, "thickness": one.thickness.si}
        for one in renewed_planks(wood)
    ]
    names = ", ".join(one.plank for one in renewed_planks(wood)) or "none"
    inputs = {"planks": Given(planks, names, wood.planks[0].here), "waste": given(timber_practice.waste)}
    return Uses("planks that the survey says are to be renewed", inputs, wood.here)


@step_of(SEAMS, "timber.seams")
def seams_by_state(wood: Timber) -> Uses | Absent:
    """Sum up the seams by their state."""
    if not wood.seams:
        return Lacking(f"it needs `seams` in {FILE}")
    seams = [{"length": one.length.si, "state": one.state} for one in wood.seams]
    words = "; ".join(f"{one.seam}, {one.length}, {one.state}" for one in wood.seams)
    return Uses("seams of the survey", {"seams": Given(seams, words, wood.seams[0].here)}, wood.here)


@step_of(BORINGS, "timber.borings")
def borings_judged(wood: Timber, timber_practice: TimberPractice) -> Uses | Absent:
    """Hold each boring against the share of its thickness that may be unsound."""
    if not wood.borings:
        return Lacking(f"it needs `borings` in {FILE}")
    if timber_practice.unsound is None:
        return _practice("unsound")
    cores = [{"through": one.through.si, "sound_from": one.sound_from.si} for one in wood.borings]
    words = "; ".join(f"{one.core} {one.sound_from} of {one.through}" for one in wood.borings)
    inputs = {"cores": Given(cores, words, wood.borings[0].here), "limit": given(timber_practice.unsound)}
    return Uses("borings of the survey", inputs, wood.borings[0].here)


@step_of(MOISTURE, "timber.moisture")
def moisture_judged(wood: Timber, timber_practice: TimberPractice) -> Uses | Absent:
    """Hold the readings of moisture against the limit."""
    if not wood.moisture:
        return Lacking(f"it needs `moisture` in {FILE}")
    if timber_practice.moisture is None:
        return _practice("moisture")
    inputs = {
        "readings": _all([one.reading for one in wood.moisture]),
        "limit": given(timber_practice.moisture),
    }
    return Uses("readings of the survey", inputs, wood.moisture[0].here)


@step()
def fastened_zones(wood: Timber) -> dict[str, FastenedZone] | Absent:
    """Give the zones of fastenings, by name."""
    return {one.zone: one for one in wood.fastenings} or Lacking(f"it needs `fastenings` in {FILE}")


@step_of(FASTENINGS, "timber.fastenings.{}", each="fastened_zones")
def zone_fastenings(zone: FastenedZone, timber_practice: TimberPractice) -> Uses | Absent:
    """Reckon how many fastenings of a zone have failed."""
    if not zone.drawn:
        return Lacking(f"it needs fastenings of zone `{zone.zone}` under `drawn` in {FILE}")
    if timber_practice.fastening_loss is None:
        return _practice("fastening_loss")
    drawn = [{"new": one.new.si, "now": one.now.si} for one in zone.drawn]
    words = "; ".join(f"{one.fastening} {one.now} of {one.new}" for one in zone.drawn)
    confidence = timber_practice.confidence
    inputs = {
        "drawn": Given(drawn, words, zone.drawn[0].here),
        "limit": given(timber_practice.fastening_loss),
        "number": Given(zone.number, str(zone.number), zone.here),
        "confidence": CONFIDENCE if confidence is None else given(confidence),
    }
    return Uses(f"fastenings of {zone.name}", inputs, zone.here, of=zone.name)


@step_of(HOG, "timber.hog")
def hog_measured(wood: Timber) -> Uses | Absent:
    """Find the hog of the keel from its measured line."""
    if wood.hog is None or not wood.hog.keel:
        return Lacking(f"it needs `keel` under `hog` in {FILE}")
    keel = [{"x": one.at.x, "z": one.height.si} for one in wood.hog.keel]
    words = "; ".join(f"{one.height} at {one.at}" for one in wood.hog.keel)
    inputs = {"keel": Given(keel, words, wood.hog.keel[0].here)}
    return Uses(f"{wood.hog.by}, {wood.hog.day}", inputs, wood.hog.here)


@step_of(HOG_BY_DRAFTS, "timber.hog-by-drafts", names={"hog": "hog"})
def hog_from_drafts(wood: Timber) -> Uses | Absent:
    """Find the hog from drafts read afloat."""
    if wood.hog is None or wood.hog.drafts is None:
        return NotAsked("no drafts were read for it")
    drafts = wood.hog.drafts
    inputs = {"forward": given(drafts.forward), "midships": given(drafts.midships), "aft": given(drafts.aft)}
    return Uses(f"drafts of {wood.hog.day}", inputs, drafts.here)


@step_of(DAYS_DRY, "timber.days-dry")
def planking_dry(wood: Timber, timber_practice: TimberPractice, programme: Programme) -> Uses | Absent:
    """Judge how long the planking is to stand dry."""
    if timber_practice.days_dry is None:
        return _practice("days_dry")
    days = (programme.undocking - programme.docking).days
    inputs = {
        "planned": Given(days * _DAY, f"{days} d on blocks", programme.here),
        "limit": Given(
            timber_practice.days_dry * _DAY,
            f"{timber_practice.days_dry} d ({timber_practice.source})",
            timber_practice.here,
        ),
    }
    return Uses("days on blocks of the programme", inputs, timber_practice.here)


def _practice(field: str) -> Lacking:
    return Lacking(f"it needs `{field}` under `practice` in {FILE}")


def _all(quantities: Sequence[Quantity]) -> Given:
    return Given([one.si for one in quantities], ", ".join(map(str, quantities)), quantities[0].at)
