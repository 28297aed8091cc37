"""Coating zones and schemes: areas, preparation, coats and what they take."""

from __future__ import annotations

from tenderwright.calculations.climate.soluble_salts import soluble_salts
from tenderwright.calculations.coatings.grades import FLASH_RUST, flash_rust_of, preparation_grade
from tenderwright.calculations.coatings.scheme import Scheme as PaintScheme
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.coatings import scheme_abrasive, scheme_paint
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.zones import shell_bands, zone_area
from tenderwright.documents.desk import Desk, joined
from tenderwright.documents.edition import (
    Block,
    Column,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.not_calculated import absent_of, not_calculated_of
from tenderwright.documents.parts.item_lines import MARGIN
from tenderwright.documents.parts.notes import notes_on
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Preparation, Scheme, Zone
from tenderwright.model.common import AreaEntry
from tenderwright.model.item import Item
from tenderwright.quantities.display import head, in_column, show


def zones(desk: Desk) -> Part:
    """Compose the coating zones with their areas, and the index of schemes."""
    if not desk.package.zones and not desk.package.schemes:
        none = Paragraph(inline("No coating zone or scheme is listed: areas and paint stand in the items."))
        return Part("coating-zones", "", "Coating zones and schemes", "data", "The ship", (none,), audience="yard")
    rows = tuple(_zone_row(desk, zone) for zone in desk.package.zones)
    columns = (
        Column("Zone", width=1.9),
        Column("Bounds", width=2.3),
        Column("Added and taken away", width=5.4),
        Column(head("Area", "area"), "decimal", 1.1),
        Column(head("±", "area"), "decimal", 0.9),
    )
    areas, paint = desk.calculated.outcome(zone_area), desk.calculated.outcome(scheme_paint)
    blocks: list[Block] = [
        Table(
            columns,
            rows,
            note=inline(
                "Both sides together. ± is twice the standard uncertainty of the surface itself; what is added and "
                "taken away is as stated."
            ),
            small=True,
        ),
        *notes_on(desk, [(zone.name, zone.notes) for zone in desk.package.zones]),
        *not_calculated_of({zone.name: absent_of(areas, zone.zone) for zone in desk.package.zones}),
        *_schemes(desk),
        *not_calculated_of({_words(scheme): absent_of(paint, scheme.scheme) for scheme in desk.package.schemes}),
        *(
            one
            for scheme in desk.package.schemes
            if prints(desk, scheme) is None
            for one in scheme_blocks(desk, scheme)
        ),
    ]
    return Part("coating-zones", "", "Coating zones and schemes", "data", "The ship", tuple(blocks), audience="yard")


def _zone_row(desk: Desk, zone: Zone) -> Row:
    if zone.surface == "shell band":
        bounds = f"shell from {desk.quantity(zone.lower)} to {desk.quantity(zone.upper)}, {_evidence(desk, zone)}"
    elif zone.surface == "internal" and zone.tank:
        bounds = f"inside of {desk.label('tank', zone.tank.name)}, stiffening included"
    else:
        bounds = f"as stated: {zone.basis}" if zone.basis else "as stated"
    more = [_entry(desk, "+", one) for one in zone.add] + [_entry(desk, "−", one) for one in zone.less]
    area = desk.number(f"zone.{zone.zone}.area")
    sure = desk.record.values.get(f"zone.{zone.zone}.uncertainty")
    known = in_column(2 * sure.si, "area") if sure is not None else "–"
    cells = (inline(zone.name), inline(bounds), inline("; ".join(more) or "–"), inline(area), inline(known))
    return Row(cells, anchor=desk.anchor("zone", zone.zone))


def _evidence(desk: Desk, zone: Zone) -> str:
    """Say what the area of a band of shell was found from."""
    form = desk.calculated.found(hull)
    if zone.zone in (desk.calculated.found(shell_bands) or ()):
        return f"by {form.drawn_from}" if form is not None else "by her form"
    return f"by girths, {zone.girths.source}" if zone.girths is not None else "by formula from her dimensions"


def _entry(desk: Desk, sign: str, entry: AreaEntry) -> str:
    basis = f" ({entry.basis})" if entry.basis else ""
    return f"{sign} {entry.what} {desk.quantity(entry.area)}{basis}"


def _applied_by(desk: Desk, scheme: Scheme) -> Inline:
    """Name the items that apply a scheme."""
    spans: list[Span] = []
    for item in appliers(desk.package, scheme):
        spans += ([Span(", ")] if spans else []) + [desk.item_ref(item.number)]
    return tuple(spans) or inline("–")


def _schemes(desk: Desk) -> list[Block]:
    """Compose the index of schemes, with what each asks of the surface; nothing without schemes."""
    rows = []
    for scheme in desk.package.schemes:
        paint = _paint(desk, scheme)
        rows.append(
            Row(
                (
                    inline(_words(scheme)),
                    inline(desk.ref(scheme.zone)),
                    *(inline(cell) for cell in _asked(desk, scheme.preparation)),
                    inline(str(len(scheme.coats))),
                    inline(in_column(paint.dry_film, "film") if paint else "–"),
                    inline(desk.number(f"coating.{scheme.scheme}.area")),
                    _applied_by(desk, scheme),
                ),
                anchor=desk.anchor("scheme", scheme.scheme),
            )
        )
    columns = (
        Column("Scheme", width=2.5),
        Column("Zone", width=2.1),
        Column("Preparation", width=1.4),
        Column("Profile", width=1),
        Column("Salts, at most", "right", 0.9),
        Column("Dust, at most", "right", 0.7),
        Column("Coats", "right", 0.6),
        Column(head("Dry film", "film"), "right", 0.7),
        Column(head("Area", "area"), "decimal", 0.8),
        Column("Applied by", width=0.8),
    )
    note = inline(
        "Flash rust by ISO 8501-4. Salts as sodium chloride by ISO 8502-6 and -9: "
        f"{show(soluble_salts(1e-4), 'salts', more=1)} for each µS/cm, 3 mL on 12.5 cm². Dust by ISO 8502-3."
    )
    return [Heading("Schemes"), Table(columns, tuple(rows), note=note, small=True)] if rows else []


def _asked(desk: Desk, of: Preparation) -> list[str]:
    """Give what is asked of the surface: grade, profile, salts and dust."""
    profile = (desk.quantity(of.profile_low), desk.quantity(of.profile_high))
    return [
        f"{of.grade}, flash rust {of.flash_rust} or less" if of.flash_rust else of.grade,
        " to ".join(profile) if of.profile_low and of.profile_high else "–",
        desk.quantity(of.salts, "–"),
        str(of.dust) if of.dust is not None else "–",
    ]


def scheme_blocks(desk: Desk, scheme: Scheme) -> list[Block]:
    """Compose one scheme in full: what is prepared and to which grade, its coats, and what is assumed for planning."""
    name = f"coating.{scheme.scheme}"
    extent = scheme.extent
    basis = f" ({extent.basis})" if extent and extent.basis else ""
    asked = [_grade(scheme.preparation.grade), _cleanliness(desk, scheme.preparation)]
    told = f"{basis}. {'; '.join(filter(None, asked))}."
    if scheme.before_water:
        told += f" {desk.quantity(scheme.before_water)} from the last coat before water stands on it."
    words: list[str | Span] = [Span(f"{_words(scheme)}: ", strong=True), f"{desk.told(f'{name}.area')} of "]
    absent = {
        "Paint": absent_of(desk.calculated.outcome(scheme_paint), scheme.scheme),
        "Abrasive": absent_of(desk.calculated.outcome(scheme_abrasive), scheme.scheme),
    }
    return [
        Heading("Coating", 3, in_margin=True),
        Paragraph(inline(*words, desk.ref(scheme.zone), told)),
        _coats(desk, scheme),
        *not_calculated_of(absent),
    ]


def scheme_line(desk: Desk, scheme: Scheme) -> list[Block]:
    """Name a scheme in one line, for each of several items that apply it; the chapter of zones prints it in full."""
    film = _paint(desk, scheme)
    coats = f"{len(scheme.coats)} coat{'s' if len(scheme.coats) > 1 else ''}"
    thick = f" of {show(film.dry_film, 'film')} dry film" if film else ""
    area = desk.told(f"coating.{scheme.scheme}.area")
    name = Span(_words(scheme), desk.anchor("scheme", scheme.scheme))
    told = f": {area} of ", desk.ref(scheme.zone), f", {scheme.preparation.grade}, {coats}{thick}, as printed there."
    return [Heading("Coating", 3, in_margin=True), Paragraph(inline(name, *told))]


def prints(desk: Desk, scheme: Scheme) -> Item | None:
    """Give the item that prints a scheme in full, being the only one that lists it; None where the chapter does."""
    listing = [
        item
        for item in desk.package.items
        if not item.withdrawn and any(reference.name == scheme.scheme for reference in item.schemes)
    ]
    return listing[0] if len(listing) == 1 else None


def _words(scheme: Scheme) -> str:
    return scheme.name or scheme.scheme


def _paint(desk: Desk, scheme: Scheme) -> PaintScheme | None:
    found = desk.calculated.found(scheme_paint)
    return found.get(scheme.scheme) if found is not None else None


def _grade(grade: str) -> str:
    try:
        found = preparation_grade(grade)
    except OutOfRange:
        return grade
    same = [name for name in (found.iso, found.sspc, found.nace) if name and name != grade]
    return f"{grade}, {found.name}" + (f" (answers to {', '.join(same)})" if same else "")


def _cleanliness(desk: Desk, preparation: Preparation) -> str:
    words = []
    if preparation.profile_low and preparation.profile_high:
        words.append(f"profile {desk.quantity(preparation.profile_low)} to {desk.quantity(preparation.profile_high)}")
    if flash := preparation.flash_rust or flash_rust_of(preparation.grade):
        words.append(f"flash rust no more than {FLASH_RUST[flash]}, grade {flash} (ISO 8501-4)")
    if preparation.salts:
        words.append(f"soluble salts at most {desk.quantity(preparation.salts)} as sodium chloride (ISO 8502-6 and -9)")
    if preparation.dust is not None:
        words.append(f"dust quantity at most {preparation.dust} (ISO 8502-3)")
    return "; ".join(words)


def _coats(desk: Desk, scheme: Scheme) -> Table:
    paint = _paint(desk, scheme)
    rows = []
    for index, coat in enumerate(scheme.coats):
        row = paint.rows[index] if paint else None
        times = " to ".join(desk.quantity(t) for t in (coat.overcoat_least, coat.overcoat_most) if t)
        sets = str(row.containers) + f" × {desk.quantity(coat.set_size)}" if row and row.containers is not None else "–"
        rows.append(
            Row(
                (
                    inline(str(coat.coat)),
                    inline(coat.product + (f", {coat.colour}" if coat.colour else "")),
                    inline(desk.quantity(coat.dft)),
                    inline(show(row.wet_film, "film") if row else "–"),
                    inline(_stripe(desk, coat.stripe.coats if coat.stripe else 0)),
                    inline(times or "–"),
                    inline(in_column(row.paint, "paint") if row else "–"),
                    inline(sets),
                )
            )
        )
    columns = (
        Column("Coat", width=MARGIN),
        Column("Product", width=52),
        Column("Dry film", "right", 15),
        Column("Wet film", "right", 15),
        Column("Stripe", width=16),
        Column("Next coat after", width=25),
        Column(head("Paint", "paint"), "right", 14),
        Column("Sets", "right", 17.4),
    )
    return Table(columns, tuple(rows), note=inline(_planned(desk, scheme)), small=True)


def _planned(desk: Desk, scheme: Scheme) -> str:
    """Say what is assumed for abrasive, losses and the profile that the first coat fills, each with its source."""
    told = "Paint and sets are for planning; the yard prices its own."
    by_loss: dict[str, list[str]] = {}
    for coat in scheme.coats:
        source = f" ({coat.loss_source})" if coat.loss_source else ""
        by_loss.setdefault(f"{desk.quantity(coat.loss)}{source}", []).append(str(coat.coat))
    told += "".join(f" Loss {words} for coat {joined(coats)}." for words, coats in by_loss.items())
    fill = scheme.profile_fill
    if fill is not None:
        source = f" ({fill.source})" if fill.source else ""
        told += f" The first coat fills {fill.k:g} of a profile of {desk.quantity(fill.rz)}{source}."
    if scheme.abrasive:
        name = f"coating.{scheme.scheme}"
        rate = f"{desk.quantity(scheme.abrasive.rate)} ({scheme.abrasive.source})"
        told += f" Abrasive {desk.told(f'{name}.abrasive')} at {rate}; spent, with paint and rust, "
        told += f"{desk.told(f'{name}.spent')}."
    return told


def _stripe(desk: Desk, coats: int) -> str:
    return {0: "none", 1: "one coat"}.get(coats, f"{coats} coats")
