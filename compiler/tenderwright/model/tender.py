"""The tender: package.yaml and the reference documents."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Prose
from tenderwright.model.kinds import ItemRef, Time
from tenderwright.notices import Place


@dataclass(frozen=True)
class TenderTitle:
    """Number and title of the tender."""

    number: str
    title: str
    subtitle: str = ""


@dataclass(frozen=True)
class Owner:
    """Who invites the tender."""

    name: str
    place: str
    address: str = ""
    representative: str = "Owner's representative"
    contact: str = ""


@dataclass(frozen=True)
class SiteVisit:
    """The visit aboard for bidders."""

    date: date
    mandatory: bool
    where: str = ""


@dataclass(frozen=True)
class TenderDates:
    """Dates of the tender."""

    issued: date
    closing: date
    site_visit: SiteVisit | None = None
    questions_until: date | None = None
    valid: Time | None = None
    award: date | None = None


@dataclass(frozen=True)
class Programme:
    """Planned days of the docking."""

    arrival: date
    docking: date
    undocking: date
    redelivery: date
    here: Place = field(compare=False)
    dock_days: int | None = None


@dataclass(frozen=True)
class Award:
    """Rules of award, published to all."""

    arithmetic: str
    evaluated: Prose
    options_counted: bool = True
    day_cost: Decimal | None = None
    criteria: tuple[str, ...] = ()


@dataclass(frozen=True)
class NumberBlock:
    """A block of item numbers."""

    from_: int
    to: int
    title: str


@dataclass(frozen=True)
class Addendum:
    """An addendum already issued."""

    number: int
    date: date
    summary: str


@dataclass(frozen=True)
class YardQuestion:
    """Something the yard tells of itself."""

    ask: str
    hint: str = ""


@dataclass(frozen=True)
class ServiceAnswer:
    """The answer for one service of the checklist."""

    answer: str
    here: Place = field(compare=False)
    item: ItemRef | None = None
    why: str = ""


@dataclass(frozen=True)
class Tender:
    """The tender as a whole."""

    tender: TenderTitle
    ship: str
    owner: Owner
    dates: TenderDates
    programme: Programme
    currency: str
    award: Award
    sections: tuple[NumberBlock, ...]
    services: Mapping[str, ServiceAnswer]
    here: Place = field(compare=False)
    page_size: str = "A4"
    units: str = "metric"
    web_links: bool = False
    owner_papers: str = ""
    addenda: tuple[Addendum, ...] = ()
    yard_questions: tuple[YardQuestion, ...] = ()

    @property
    def events(self) -> dict[str, date | None]:
        """Give the dates from which days are counted."""
        plan = self.programme
        return {
            "award": self.dates.award,
            "arrival": plan.arrival,
            "docking": plan.docking,
            "undocking": plan.undocking,
            "redelivery": plan.redelivery,
        }


@dataclass(frozen=True)
class Drawing:
    """A reference document."""

    drawing: str
    title: str
    revision: str
    verified: str
    here: Place = field(compare=False)
    date: date | None = None
    kind: str = "drawing"
    holder: str = ""
    supplied: bool = False


@dataclass(frozen=True)
class Drawings:
    """The reference documents."""

    drawings: tuple[Drawing, ...]
