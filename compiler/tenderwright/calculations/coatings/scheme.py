"""A paint scheme: several coats on one area, each with its paint, thinner and containers, and the totals."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import asdict

from tenderwright.calculations.coatings.containers import purchase
from tenderwright.calculations.coatings.profile_fill import DEFAULT_PROFILE_FACTOR, profile_fill
from tenderwright.calculations.coatings.ranges import require_not_negative
from tenderwright.calculations.coatings.stripe import stripe_volume
from tenderwright.calculations.coatings.volume import paint_volume
from tenderwright.calculations.coatings.wet_film import thinner_volume, wet_film
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, text


class Coat(Struct, frozen=True):
    """One coat as specified; fractions of 1, lengths in m, volumes in m³."""

    product: str
    volume_solids: float
    dry_film: float
    loss: float
    thinning: float = 0.0
    stripe_length: float = 0.0
    stripe_width: float = 0.0
    stripe_coats: int = 1
    """Stripe coats of this product, counted only where there is a stripe length."""
    stripe_loss: float | None = None
    """Loss of the stripe coat, which is brushed; that of the coat unless given."""
    profile: float = 0.0
    """Height of the blast profile that this coat fills; nothing but for the first coat."""
    profile_factor: float = DEFAULT_PROFILE_FACTOR
    container: float | None = None


class CoatRow(Struct, frozen=True):
    """What one coat takes; volumes in m³, films in m; None where no container size is known."""

    product: str
    dry_film: float
    wet_film: float
    coat: float
    """Paint for the film itself."""
    stripe: float
    profile: float
    paint: float
    """All paint of this coat."""
    thinner: float
    containers: int | None
    left_over: float | None


class Scheme(Struct, frozen=True):
    """All coats of an area, in order, and their totals."""

    rows: tuple[CoatRow, ...]

    @property
    def dry_film(self) -> float:
        """Give the film of all coats, m; stripe coats and profile not counted."""
        return sum(row.dry_film for row in self.rows)

    @property
    def paint(self) -> float:
        """Give the paint of all coats, m³."""
        return sum(row.paint for row in self.rows)

    @property
    def thinner(self) -> float:
        """Give the thinner of all coats, m³."""
        return sum(row.thinner for row in self.rows)

    @property
    def containers(self) -> dict[str, int | None]:
        """Give the containers by product, in order of first use; None where a size is not known."""
        counts: dict[str, int | None] = {}
        for row in self.rows:
            before = counts.get(row.product, 0)
            counts[row.product] = None if before is None or row.containers is None else before + row.containers
        return counts


def coat_row(area: float, coat: Coat) -> CoatRow:
    """Find what one coat takes on an area in m²: film, stripes and profile, thinner and whole containers.

    Formula: those of `paint_volume`, `stripe_volume`, `profile_fill`, `thinner_volume` and `purchase`.
    Source: as they state. Raises OutOfRange, as they do.
    """
    film = paint_volume(area, coat.volume_solids, coat.dry_film, coat.loss)
    stripe_loss = coat.loss if coat.stripe_loss is None else coat.stripe_loss
    stripe = stripe_volume(
        coat.stripe_length,
        coat.stripe_width,
        coat.volume_solids,
        coat.dry_film,
        stripe_loss,
        coat.stripe_coats,
    )
    profile = profile_fill(area, coat.profile, coat.volume_solids, coat.loss, coat.profile_factor)
    paint = film + stripe + profile
    bought = None if coat.container is None else purchase(paint, coat.container)
    return CoatRow(
        product=coat.product,
        dry_film=coat.dry_film,
        wet_film=wet_film(coat.dry_film, coat.volume_solids, coat.thinning),
        coat=film,
        stripe=stripe,
        profile=profile,
        paint=paint,
        thinner=thinner_volume(paint, coat.thinning),
        containers=None if bought is None else bought.containers,
        left_over=None if bought is None else bought.left_over,
    )


def paint_scheme(area: float, coats: Sequence[Coat]) -> Scheme:
    """Find what every coat of a scheme takes on one area, m².

    Only the first coat meets the blast profile. Containers are rounded up per coat.
    Raises OutOfRange: no coats, a profile on a later coat, or a coat outside its range.
    """
    require_not_negative("area", area)
    if not coats:
        raise OutOfRange("a scheme has at least one coat")
    for number, coat in enumerate(coats[1:], start=2):
        if coat.profile > 0.0:
            raise OutOfRange(f"only the first coat fills the blast profile, but coat {number} is given one")
    return Scheme(tuple(coat_row(area, coat) for coat in coats))


def _kernel(area: float, coats: list[Mapping[str, Any]]) -> Scheme:
    return paint_scheme(area, [Coat(**coat) for coat in coats])


def outputs_of(scheme: Scheme) -> Mapping[str, Any]:
    """Give the outputs of the method from a scheme."""
    return {
        "dry_film": scheme.dry_film,
        "paint": scheme.paint,
        "thinner": scheme.thinner,
        "coats": [asdict(row) for row in scheme.rows],
        "containers": [{"product": name, "containers": count} for name, count in scheme.containers.items()],
    }


_COAT = {
    "type": "object",
    "properties": {
        "product": text("Product, or kind of paint."),
        "volume_solids": quantity("fraction", "Solids by volume, as supplied."),
        "dry_film": quantity("length", "Dry film thickness."),
        "loss": quantity("fraction", "Fraction of the paint used that does not end on the surface."),
        "thinning": quantity("fraction", "Volume of thinner per volume of paint."),
        "stripe_length": quantity("length", "Length of edges, welds and rivet lines striped with this product."),
        "stripe_width": quantity("length", "Width of the striped band."),
        "stripe_coats": {"type": "integer", "minimum": 0, "description": "Number of stripe coats."},
        "stripe_loss": quantity("fraction", "Loss of the stripe coat; that of the coat unless given."),
        "profile": quantity("length", "Blast profile that the first coat fills."),
        "profile_factor": {"type": "number", "minimum": 0, "description": "Dead film per profile height."},
        "container": quantity("volume", "One container, or one mixed set."),
    },
    "required": ["product", "volume_solids", "dry_film", "loss"],
    "additionalProperties": False,
}

METHOD = Method(
    name="coating.scheme",
    title="Paint, thinner and containers of a whole scheme",
    formula="per coat: V = (A · DFT + n · l · b · DFT + A · k · Rz) / (VS · (1 − loss)); thinner = τ · V",
    source=Citation("MIL-HDBK-1110 (in UFC 3-190-06)", "2.1.5; stripe coats and thinner are derived"),
    valid="every coat over the whole area; profile in the first coat only",
    inputs={
        "area": quantity("area", "Area that every coat covers."),
        "coats": listed(_COAT, "The coats, first to last."),
    },
    outputs=(
        Symbol("dry_film", "dry film of all coats", "length", "um"),
        Symbol("paint", "paint of all coats", "volume", "L"),
        Symbol("thinner", "thinner of all coats", "volume", "L"),
        Symbol(
            "coats",
            "each coat",
            "table",
            "",
            (
                Symbol("product", "product", "text", ""),
                Symbol("dry_film", "dry film", "length", "um"),
                Symbol("wet_film", "wet film", "length", "um"),
                Symbol("coat", "paint of the coat itself", "volume", "L"),
                Symbol("stripe", "paint of the stripe coats", "volume", "L"),
                Symbol("profile", "paint that fills the profile", "volume", "L"),
                Symbol("paint", "paint in all", "volume", "L"),
                Symbol("thinner", "thinner", "volume", "L"),
                Symbol("containers", "containers to buy", "each", "each"),
                Symbol("left_over", "paint left over in them", "volume", "L"),
            ),
        ),
        Symbol(
            "containers",
            "containers by product",
            "table",
            "",
            (Symbol("product", "product", "text", ""), Symbol("containers", "containers to buy", "each", "each")),
        ),
    ),
    kernel=_kernel,
    example={
        "area": "620 m2",
        "coats": [
            {
                "product": "anticorrosive primer",
                "volume_solids": "71 %",
                "dry_film": "125 um",
                "loss": "30 %",
                "thinning": "5 %",
                "stripe_length": "340 m",
                "stripe_width": "80 mm",
                "stripe_loss": "10 %",
                "profile": "60 um",
                "container": "20 L",
            },
            {
                "product": "antifouling",
                "volume_solids": "55 %",
                "dry_film": "100 um",
                "loss": "30 %",
                "container": "20 L",
            },
        ],
    },
    figures=outputs_of,
)
