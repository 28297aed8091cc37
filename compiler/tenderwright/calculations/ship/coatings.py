"""Quantities of every coating scheme: area, paint, containers, abrasive and waste."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.coatings.abrasive import METHOD as ABRASIVE
from tenderwright.calculations.coatings.abrasive import OLD_PAINT_DENSITY
from tenderwright.calculations.coatings.patch_area import METHOD as PATCH
from tenderwright.calculations.coatings.patch_area import rusted_fraction
from tenderwright.calculations.coatings.scheme import METHOD as SCHEME
from tenderwright.calculations.coatings.scheme import Coat as PaintCoat
from tenderwright.calculations.coatings.scheme import paint_scheme
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.results import Results
from tenderwright.calculations.value import Given, Record, Value, given
from tenderwright.model.coating import Coat, Scheme
from tenderwright.model.package import Package

SHARE: Method[Any] = Method(
    name="coating.area",
    title="Area that a scheme covers",
    formula="A = share x A_zone",
    source=Citation("Share of a zone, as surveyed", standing="derived"),
    valid="share between 0 and 100 %",
    inputs={},
    outputs=(Symbol("area", "area of the scheme", "area", "m2"),),
    kernel=lambda: {},
    example={},
)


def coating_values(package: Package, results: Results, record: Record) -> None:
    """Keep area, paint, abrasive and waste of every scheme."""
    for scheme in package.schemes:
        prefix = f"coating.{scheme.scheme}"
        zone = record.values.get(f"zone.{scheme.zone.name}.area")
        if zone is None:
            names = ("area", "paint", "thinner", "dry-film", "abrasive", "spent")
            record.failed |= {f"{prefix}.{name}": "the area of its zone could not be calculated" for name in names}
            continue
        area = _area(scheme, zone, prefix, record)
        results.areas[scheme.scheme] = area.si
        try:
            paint = paint_scheme(area.si, [_coat(scheme, coat, first=i == 0) for i, coat in enumerate(scheme.coats)])
        except OutOfRange as error:
            record.fail(SCHEME, prefix, f"{scheme.name or scheme.scheme}: {error}", scheme.here)
            continue
        results.paint[scheme.scheme] = paint
        inputs = {"area": given(area, f"{area.si:.1f} m2")}
        for coat in scheme.coats:
            words = f"{coat.product}, {coat.dft}, solids {coat.volume_solids}, loss {coat.loss}"
            inputs[f"coat {coat.coat}"] = Given(None, words, coat.here)
        outputs = {"dry_film": paint.dry_film, "paint": paint.paint, "thinner": paint.thinner}
        record.keep(SCHEME, prefix, scheme.name or scheme.scheme, inputs, outputs)
        _abrasive(scheme, area, prefix, record)


def _area(scheme: Scheme, zone: Value, prefix: str, record: Record) -> Value:
    extent = scheme.extent
    inputs = {"zone": given(zone, f"{zone.si:.1f} m2")}
    area = zone.si
    method = SHARE
    if extent is not None and extent.area is not None:
        inputs["stated"] = given(extent.area)
        area = extent.area.si
    elif extent is not None and extent.share is not None:
        inputs["share"] = given(extent.share)
        area = zone.si * extent.share.si
    elif extent is not None and extent.rust_grade is not None:
        greatest = rusted_fraction(extent.rust_grade, "ASTM D610").greatest
        words = f"at most {greatest:.0%} rusted at grade {extent.rust_grade}"
        inputs["rust grade"] = Given(greatest, words, f"{PATCH.source}; {extent.here}")
        area = zone.si * greatest
    else:
        inputs["share"] = Given(1.0, "100 %", "the whole zone, since no extent is given")
    record.keep(method, prefix, scheme.name or scheme.scheme, inputs, {"area": area})
    return record.values[f"{prefix}.area"]


def _coat(scheme: Scheme, coat: Coat, *, first: bool) -> PaintCoat:
    fill = scheme.profile_fill if first else None
    stripe = coat.stripe
    return PaintCoat(
        product=coat.product,
        volume_solids=coat.volume_solids.si,
        dry_film=coat.dft.si,
        loss=coat.loss.si,
        thinning=coat.thinning.si if coat.thinning else 0.0,
        stripe_length=stripe.length.si if stripe else 0.0,
        stripe_width=stripe.width.si if stripe else 0.0,
        stripe_coats=stripe.coats if stripe else 1,
        profile=fill.rz.si if fill else 0.0,
        profile_factor=fill.k if fill else 0.0,
        container=coat.set_size.si if coat.set_size else None,
    )


def _abrasive(scheme: Scheme, area: Value, prefix: str, record: Record) -> None:
    abrasive = scheme.abrasive
    if abrasive is None:
        return
    inputs = {"area": given(area, f"{area.si:.1f} m2"), "rate": given(abrasive.rate)}
    if abrasive.old_paint is not None:
        inputs["old_film"] = given(abrasive.old_paint)
        density = abrasive.old_paint_density
        inputs["paint_density"] = (
            given(density) if density else Given(OLD_PAINT_DENSITY, "1.4 t/m3", "common practice, no source")
        )
    if abrasive.rust is not None:
        inputs["rust"] = given(abrasive.rust)
    names = {"abrasive": "abrasive", "spent": "spent"}
    record.run(ABRASIVE, prefix, f"{scheme.name or scheme.scheme}: {abrasive.source}", inputs, abrasive.here, names)
