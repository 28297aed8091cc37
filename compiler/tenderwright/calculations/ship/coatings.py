"""Quantities of every coating scheme: area, paint, containers, abrasive and waste."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.coatings.abrasive import METHOD as ABRASIVE
from tenderwright.calculations.coatings.abrasive import OLD_PAINT_DENSITY
from tenderwright.calculations.coatings.scheme import METHOD as SCHEME
from tenderwright.calculations.coatings.scheme_area import METHOD as SCHEME_AREA
from tenderwright.calculations.steps.outcome import Absent, Each, Resting
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.coating import Abrasive, Coat, ProfileFill, Scheme
from tenderwright.notices import Place
from tenderwright.quantities.display import plainly, show

_PAINT = {"dry_film": "dry-film", "paint": "paint", "thinner": "thinner"}
_ABRASIVE = {"abrasive": "abrasive", "spent": "spent"}


@step_of(SCHEME_AREA, "coating.{}", each="schemes")
def scheme_area(scheme: Scheme, zone_area: Each[Mapping[str, Any]]) -> Uses | Absent:
    """Find the area that a scheme covers."""
    name = scheme.zone.name
    zone = zone_area.outcomes.get(name, Resting(f"there is no zone `{name}`"))
    if isinstance(zone, Absent):
        return zone.passed_on()
    inputs = {"zone": Given(zone["area"], show(zone["area"], "area"), f"zone.{name}.area")}
    extent = scheme.extent
    if extent is not None and extent.area is not None:
        inputs["measured"] = given(extent.area)
    elif extent is not None and extent.share is not None:
        inputs["share"] = given(extent.share)
    elif extent is not None and extent.rust_grade is not None:
        inputs["rust_grade"] = Given(extent.rust_grade, f"{extent.rust_grade} by ASTM D610", extent.here)
    else:
        inputs["share"] = Given(1.0, "100 %", "the whole zone, since no extent is given")
    return Uses(_words(scheme), inputs, scheme.here, of=_words(scheme))


@step_of(SCHEME, "coating.{}", names=_PAINT, each="schemes")
def scheme_paint(scheme: Scheme, scheme_area: Mapping[str, Any]) -> Uses:
    """Find what every coat of a scheme takes."""
    coats = [_coat(coat, scheme.profile_fill if i == 0 else None) for i, coat in enumerate(scheme.coats)]
    words = (
        f"{c.coat}: {c.product}, {c.dft}, solids {c.volume_solids}, loss {c.loss}{_by(c.loss_source)}"
        for c in scheme.coats
    )
    inputs = {"area": _area(scheme, scheme_area), "coats": Given(coats, "; ".join(words), scheme.coats[0].here)}
    return Uses(_words(scheme), inputs, scheme.here, of=_words(scheme))


class Blasted(Struct, frozen=True):
    """A scheme under which something is blasted."""

    scheme: Scheme
    abrasive: Abrasive

    @property
    def here(self) -> Place:
        """Give where the scheme stands."""
        return self.scheme.here


@step()
def blasted(schemes: tuple[Scheme, ...]) -> dict[str, Blasted]:
    """Give the schemes under which something is blasted."""
    return {one.scheme: Blasted(one, one.abrasive) for one in schemes if one.abrasive is not None}


@step_of(ABRASIVE, "coating.{}", names=_ABRASIVE, each="blasted")
def scheme_abrasive(of: Blasted, scheme_area: Each[Mapping[str, Any]]) -> Uses | Absent:
    """Find the abrasive that a scheme takes, and the waste that it becomes."""
    scheme, abrasive = of.scheme, of.abrasive
    area = scheme_area.outcomes[scheme.scheme]
    if isinstance(area, Absent):
        return area.passed_on()
    inputs = {"area": _area(scheme, area), "rate": given(abrasive.rate)}
    if abrasive.old_paint is not None:
        inputs["old_film"] = given(abrasive.old_paint)
        density = abrasive.old_paint_density
        usual = Given(OLD_PAINT_DENSITY, plainly(OLD_PAINT_DENSITY, "density"), "common practice, no source")
        inputs["paint_density"] = given(density) if density else usual
    if abrasive.rust is not None:
        inputs["rust"] = given(abrasive.rust)
    return Uses(f"{_words(scheme)}: {abrasive.source}", inputs, abrasive.here, of=_words(scheme))


def _words(scheme: Scheme) -> str:
    return scheme.name or scheme.scheme


def _by(source: str) -> str:
    return f" ({source})" if source else ""


def _area(scheme: Scheme, found: Mapping[str, Any]) -> Given:
    return Given(found["area"], show(found["area"], "area"), f"coating.{scheme.scheme}.area")


def _coat(coat: Coat, fill: ProfileFill | None) -> dict[str, Any]:
    """Give a coat as the method takes it."""
    found: dict[str, Any] = {
        "product": coat.product,
        "volume_solids": coat.volume_solids.si,
        "dry_film": coat.dft.si,
        "loss": coat.loss.si,
    }
    if coat.thinning:
        found["thinning"] = coat.thinning.si
    if coat.stripe:
        stripe = coat.stripe
        found |= {"stripe_length": stripe.length.si, "stripe_width": stripe.width.si, "stripe_coats": stripe.coats}
    if fill:
        found |= {"profile": fill.rz.si, "profile_factor": fill.k}
    if coat.set_size:
        found["container"] = coat.set_size.si
    return found
