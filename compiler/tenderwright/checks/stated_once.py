"""What the trade's words state one figure of: how it is found in a text, and where the package's data hold it too."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from msgspec import Struct

from tenderwright.checks.texts import pattern
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.quantities.quantity import Quantity

_N = r"(?P<figure>\d+(?:\.\d+)?)"
_OR_N = r"(?P<figure_too>\d+(?:\.\d+)?)"
_SUM = r"[A-Z]{3} (?P<figure>\d[\d,]*)"


class Datum(Struct, frozen=True):
    """A figure of the data: the number in the unit in which texts state it, as written, and its place."""

    number: float
    text: str
    at: Place


class Subject(Struct, frozen=True):
    """Something of which the trade's words state one figure: how it is found, and in what sentences."""

    name: str
    words: str
    """Words, or parts of them, that all stand in any text that states it, so that the others need not be searched."""
    found: re.Pattern[str]
    unit: str
    told: re.Pattern[str] | None = None
    """What the sentence holds besides; None where the figure's own words are enough."""
    data: Callable[[Package], Datum | None] | None = None
    """The figure in the data of the package, where it stands there too."""

    def may_stand_in(self, text: str) -> bool:
        """Tell whether a text may state it, by its words."""
        return all(word in text for word in self.words.split())


def _of(quantity: Quantity | None, factor: float = 1.0) -> Datum | None:
    return Datum(quantity.si * factor, str(quantity), quantity.at) if quantity is not None else None


def _trim(package: Package) -> Datum | None:
    docking = package.lightship.docking if package.lightship is not None else None
    return _of(docking.trim if docking is not None else None)


def _list(package: Package) -> Datum | None:
    docking = package.lightship.docking if package.lightship is not None else None
    return _of(docking.most_list if docking is not None else None, math.degrees(1.0))


def _least_gm(package: Package) -> Datum | None:
    return _of(package.docking_plan.least_gm if package.docking_plan is not None else None)


def _block_height(package: Package) -> Datum | None:
    return _of(package.docking_plan.block_height if package.docking_plan is not None else None)


def _tank_head(package: Package) -> Datum | None:
    tightness = package.condition.tightness if package.condition is not None else None
    return _of(tightness.tank_head if tightness is not None else None)


def _keel_depth(package: Package) -> Datum | None:
    return _of(package.particulars.keel.depth if package.particulars is not None else None, 1e3)


def _length(package: Package) -> Datum | None:
    return _of(package.particulars.dimensions.length_overall if package.particulars is not None else None)


def _valid(package: Package) -> Datum | None:
    return _of(package.tender.dates.valid if package.tender is not None else None, 1.0 / 86400.0)


def _dock_days(package: Package) -> Datum | None:
    programme = package.tender.programme if package.tender is not None else None
    if programme is None or programme.dock_days is None:
        return None
    return Datum(float(programme.dock_days), f"{programme.dock_days} d", programme.here)


def _damages(package: Package) -> Datum | None:
    damages = package.tender.damages if package.tender is not None else None
    return Datum(float(damages.a_day), f"{damages.a_day}", damages.here) if damages is not None else None


def _grace(package: Package) -> Datum | None:
    damages = package.tender.damages if package.tender is not None else None
    return Datum(float(damages.after), f"{damages.after} d", damages.here) if damages is not None else None


_WATCH = pattern(rf"{_N} (?P<unit>min|h)\b after")
_DEW_POINT = pattern(rf"{_N} (?:K|°C|degC) (?:or more )?above (?:the )?dew point")
_VAPOUR = pattern(rf"below {_N} % of the lower explosive limit")
_LEAD = pattern(rf"{_N} mg/kg of lead\b|lead limit {_OR_N} mg/kg")
_PCB = pattern(rf"{_N} mg/kg of polychlorinated|PCB limit {_OR_N} mg/kg")
_CERTIFICATE = pattern(r"certificate (?P<figure>\d\.\d) to EN 10204|EN 10204 (?P<figure_too>\d\.\d)")
_LENGTH = pattern(rf"ship of {_N} m length|{_OR_N} m long over all")
_TANK_AIR = pattern(rf"\bair (?:above|at) {_N} bar|\bAir at {_OR_N} bar")
_GM = pattern(rf"[Mm]etacentric height (?:of )?{_N} m or more at the critical instant")
_DOCK_DAYS = pattern(
    rf"with {_N} dock days|keep her there for {_OR_N} d\b|blocks beyond the (?P<figure_else>\d+) in the price"
)

SUBJECTS = (
    Subject("the fire watch after hot work", "atch after", _WATCH, "", re.compile(r"\b[Ww]atch\b")),
    Subject("relative humidity for coating", "humidity", pattern(rf"humidity (?:of |is )?{_N} % or less"), "%"),
    Subject("steel above the dew point for coating", "dew", _DEW_POINT, "K"),
    Subject("the hose test", "ose bar", pattern(rf"[Hh]oses?(?: test)? at {_N} bar"), "bar"),
    Subject(
        "the age of a certificate for hot work",
        "ertif",
        pattern(rf"(?:each|every) {_N} h\b"),
        "h",
        re.compile(r"[Cc]ertif.*[Hh]ot.work|[Hh]ot.work.*certif"),
    ),
    Subject("vapour for hot work", "explosive", _VAPOUR, "%", re.compile(r"[Hh]ot.work")),
    Subject("vapour for entry", "explosive", _VAPOUR, "%", re.compile(r"^(?!.*[Hh]ot.work)")),
    Subject("silica in the abrasive", "silica", pattern(rf"less than {_N} % of free crystalline silica"), "%"),
    Subject("lead in old coating", "mg/kg", _LEAD, "mg/kg"),
    Subject("PCB in old coating", "mg/kg", _PCB, "mg/kg"),
    Subject("adhesion of the patch", "adhesion", pattern(rf"class {_N} or better"), "", re.compile(r"[Aa]dhesion")),
    Subject("wind for blasting", "wind", pattern(rf"wind is above {_N} m/s"), "m/s", re.compile(r"[Bb]last")),
    Subject("diminution", "diminution", pattern(rf"diminution (?:of|is) {_N} %"), "%"),
    Subject("the certificate of steel", "10204", _CERTIFICATE, ""),
    Subject(
        "the grade of hull steel", "ull steel", pattern(r"[Hh]ull steel(?: plate)?,? grade (?P<figure>[A-E])\b"), ""
    ),
    Subject("the quality of welds", "5817", pattern(r"ISO 5817 level (?P<figure>[B-D])\b"), ""),
    Subject("the liability insurance", "iability", pattern(_SUM), "", re.compile(r"[Ll]iability")),
    Subject(
        "the sum beyond which the trustees decide",
        "trustees",
        pattern(rf"(?:up to|above) {_SUM}"),
        "",
        re.compile(r"[Tt]rustees"),
    ),
    Subject("damages for a day", "pays", pattern(rf"pays {_SUM}"), "", re.compile(r"[Rr]edelivery|[Ll]ate"), _damages),
    Subject("the days before damages begin", "contract", pattern(rf"{_N} d after the contract day"), "d", None, _grace),
    Subject("how long bids stay open", "bids stay open", pattern(rf"bids stay open for {_N} d\b"), "d", None, _valid),
    Subject("the days on blocks in the price", "dock", _DOCK_DAYS, "d", None, _dock_days),
    Subject("metacentric height at the critical instant", "etacentric", _GM, "m", None, _least_gm),
    Subject("trim by the stern for docking", "trim", pattern(rf"to a trim of {_N} m by the stern"), "m", None, _trim),
    Subject("list", "list under degrees", pattern(rf"list under {_N} degrees"), "degrees", None, _list),
    Subject("the height of the blocks", "blocks", pattern(rf"keel blocks,? {_N} m high"), "m", None, _block_height),
    Subject("air in a tank", "air bar", _TANK_AIR, "bar", re.compile(r"[Tt]ank|[Cc]offerdam|[Bb]oundar")),
    Subject("the head of a tank test", "above tank top", pattern(rf"{_N} m above the tank top"), "m", None, _tank_head),
    Subject("the depth of the bar keel", "keel", pattern(rf"bar keel is {_N} mm deep"), "mm", None, _keel_depth),
    Subject("her length over all", "ng", _LENGTH, "m", None, _length),
)
"""In the order in which they are looked for. Sums are without their currency, which is the tender's."""
