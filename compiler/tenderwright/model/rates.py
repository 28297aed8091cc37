"""What the owner expects the work to cost: rates by line and how each is come by, labour, price indices, simulation."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.build import Prose
from tenderwright.model.kinds import LINE, AnyQuantity, DockingRef, Fraction, Identifier, ItemRef, Money, OfTender, Time
from tenderwright.model.marks import Count, Form, Key, Keys, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class EarlierPrice(Noun, frozen=True, kw_only=True):
    """A price paid for a unit at an earlier docking, to be escalated by an index."""

    docking: Annotated[DockingRef, Key("The earlier docking that it comes from.", "docking-2007")]
    work: Annotated[str, Key("The work as its list of prices has it.", "high-pressure wash")]
    index: Annotated[Identifier, Key("The index; left out, the one that stands under `index`.", "repair-prices")] = ""
    here: Place


class Factor(Noun, frozen=True, kw_only=True):
    """A factor for access or location."""

    factor: Annotated[float, Key("By how much the rate is multiplied.", 1.12), Within(above=0, most=100)]
    why: Annotated[str, Key("What makes the work slower or quicker here.", "bottom shell, under the bilge")]


class Rate(Noun, frozen=True, kw_only=True):
    """The owner's rate for one line: stated, taken from an earlier docking, or built from man-hours."""

    rate: Annotated[Money | None, Key("Likely rate or lump sum. Or give `history`, or `hours`.", 84.5)] = None
    low: Annotated[
        Money | None, Key("Low, before factors. Left out, it follows from the class of the estimate.", 72)
    ] = None
    high: Annotated[
        Money | None, Key("High, before factors. Left out, it follows from the class of the estimate.", 110)
    ] = None
    basis: Annotated[str, Key("Where it comes from.", "2008 docking, escalated")] = ""
    note: Annotated[str, Key("What else should be known of the rate.", "The yard in Corve asked a third more.")] = ""
    history: Annotated[
        EarlierPrice | None, Key("Takes the price for each unit paid at an earlier docking, escalated by an index.")
    ] = None
    hours: Annotated[Time | None, Key("Man-hours for each unit of the line.", "38 h")] = None
    labour: Annotated[Identifier, Key("Which labour, of those under `labour`.", "shipwright")] = ""
    materials: Annotated[Money | None, Key("Materials for each unit of the line, beside the hours.", 6.4)] = None
    factors: Annotated[tuple[Factor, ...], Key("Factors for access and location, multiplied.")] = ()
    quantity_low: Annotated[AnyQuantity | None, Key("Least quantity that may be needed.", "0 kg")] = None
    quantity_high: Annotated[AnyQuantity | None, Key("Greatest quantity that may be needed.", "900 kg")] = None
    evidence: Annotated[
        str,
        Key("What the price rests on; it gives the class of the estimate."),
        OneOf("earlier docking", "judgement", "survey", "specification", "tariff", "letter", "quotation", "opened up"),
    ] = ""
    here: Place


class Labour(Noun, frozen=True, kw_only=True):
    """The rate of a labour for an hour."""

    rate: Annotated[Money, Key("Likely rate for an hour.", 68)]
    basis: Annotated[str, Key("Where it comes from.", "yards' tariffs, 2026")] = ""


class Shared(Noun, frozen=True, kw_only=True):
    """How shared services are spread over the items."""

    items: Annotated[
        tuple[Annotated[ItemRef, Key("An item whose cost is shared.", "110")], ...],
        Key("The items whose cost is spread over the others."),
    ]
    rule: Annotated[
        str, Key("By what the cost is spread.", "by direct value"), OneOf("by direct value", "by dock days", "equally")
    ]


class Contingency(Noun, frozen=True, kw_only=True):
    """Contingency, shown and never buried."""

    share: Annotated[Fraction, Key("The contingency, as a share of the sum of all lines.", "20 %")]
    why: Annotated[str, Key("What the contingency is for.", "The shell inside the bunkers was not surveyed")]


class Simulation(Noun, frozen=True, kw_only=True):
    """How the cost is simulated."""

    within: Annotated[Fraction, Key("Correlation of the prices of one section.", "50 %")]
    across: Annotated[Fraction, Key("Correlation of any two prices.", "25 %")]
    trials: Annotated[int, Key("Trials; left out, 100000."), Within(least=1000, most=200000)] = 100000
    seed: Annotated[int, Key("Seed; left out, 1."), Within(least=0)] = 1
    why: Annotated[str, Key("Why these figures were taken.", "prices of one yard move together")] = ""
    here: Place


class Rates(Noun, frozen=True, kw_only=True):
    """What the owner expects each line to cost."""

    tender: OfTender = ""
    base_month: Annotated[str, Key("Month of the prices.", "2026-10"), Form("^[0-9]{4}-[0-9]{2}$", "Month")]
    lines: Annotated[
        Mapping[str, Rate],
        Key("By line, such as 420.a."),
        Keys(LINE),
    ]
    shared: Annotated[Shared | None, Key("How the cost of shared services is spread over the items for reporting.")] = (
        None
    )
    dock_days: Annotated[
        Mapping[str, Annotated[float, Within(least=0), Key("Days on blocks that this item drives.", 3)]],
        Key("Days on blocks that each item drives, for the rule by dock days."),
    ] = field(default_factory=dict)
    contingency: Annotated[Contingency | None, Key("Contingency, shown and never buried.")] = None
    labour: Annotated[
        Mapping[str, Labour],
        Key("Rates of labour, by name."),
        Keys(Form("^[a-z0-9]+(-[a-z0-9]+)*$", "Identifier", "shipwright")),
    ] = field(default_factory=dict)
    index: Annotated[
        Identifier,
        Key("Index by which prices of earlier dockings are escalated, from owner/indices.yaml.", "repair-prices"),
    ] = ""
    simulation: Annotated[Simulation | None, Key("How the cost is simulated.")] = None
    here: Place

    def of(self, number: str) -> Rate | None:
        """Give the rate of a line; a row of a table without one of its own has that of its line."""
        return self.lines.get(number) or self.lines.get(".".join(number.split(".")[:2]))


class PriceIndex(Noun, frozen=True, kw_only=True):
    """A published index of prices by month."""

    index: Annotated[Identifier, Key("Identifier, by which rates name the index.", "repair-prices")]
    name: Annotated[str, Key("Name under which it is published.", "Repair of ships and boats, prices paid")]
    code: Annotated[str, Key("Code or table under which it is published.", "Table 7, row 30.11")] = ""
    publisher: Annotated[str, Key("Who publishes the index.", "national statistical office")] = ""
    adjusted: Annotated[bool, Key("Whether it is seasonally adjusted.")] = False
    carries: Annotated[Time | None, Key("The age of a price that it can carry.", "20 yr")] = None
    months: Annotated[
        Mapping[str, Annotated[float, Key("Figure of that month, as published.", 165.2), Within(above=0)]],
        Key("Figure of each month."),
        Keys(Form("^[0-9]{4}-(0[1-9]|1[0-2])$", "Month", "2026-10")),
        Count(1),
    ]
    notes: Annotated[
        Prose | None,
        Key(
            "Notes: what it covers, and what to do if it ends.",
            "Covers labour and materials; if it ends, the one for engineering.",
        ),
    ] = None
    here: Place


class PriceIndices(Noun, frozen=True, kw_only=True):
    """Published indices by which old prices are brought to the month of the estimate."""

    indices: Annotated[tuple[PriceIndex, ...], Key("The published indices, each with its figures by month.")]
