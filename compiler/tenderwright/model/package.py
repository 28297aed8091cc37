"""The package as a whole: what every later stage works from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cached_property
from typing import TypeVar

from msgspec import Struct, field
from msgspec.structs import replace

from tenderwright.model.build import Prose
from tenderwright.model.care import CarePlan
from tenderwright.model.care_readings import CareReading
from tenderwright.model.coating import Scheme, Zone
from tenderwright.model.contract import Contract
from tenderwright.model.curves import CurvesOfForm
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.facility import Facility
from tenderwright.model.history import EarlierDocking
from tenderwright.model.item import Item, Line
from tenderwright.model.lightship import Lightship
from tenderwright.model.noun import Noun
from tenderwright.model.particulars import Particulars
from tenderwright.model.photograph import Photograph
from tenderwright.model.question import Question
from tenderwright.model.sections import Sections
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.survey import Survey
from tenderwright.model.tank import Tank
from tenderwright.model.tender import Drawing, Tender
from tenderwright.model.timber import Timber
from tenderwright.model.tow import Tow
from tenderwright.model.vessel import Anode, AnodeFamily, Appendage, Offsets, Opening, Strake
from tenderwright.notices import Notice, Place
from tenderwright.notices.codes import CODES
from tenderwright.quantities.position import FrameTable
from tenderwright.reading.photograph_files import PhotographFile
from tenderwright.reading.travelling import Travelling
from tenderwright.shapes.todos import Todo


class Clause(Noun, frozen=True, kw_only=True):
    """A clause of the general requirements."""

    clause: str
    number: str
    title: str
    text: Prose
    here: Place


T = TypeVar("T")


def sound(part: T | None) -> T:
    """Give a part that every sound package has, such as its tender; raises ValueError where it is missing."""
    if part is None:
        raise ValueError("a part is missing that a sound package has")
    return part


ANY = "*"
"""Stands for a name that cannot be read: any name of its kind may be the one."""


class Broken(Struct, frozen=True):
    """Names whose files or entries have mistakes: known to exist, though not built."""

    names: frozenset[tuple[str, str]] = frozenset()
    files: frozenset[str] = frozenset()
    waiting: Mapping[tuple[str, str], str] = {}
    """Names of those left out only since something in them is still `todo`, with the sentence that says so."""
    waiting_files: Mapping[str, str] = {}

    def awaits(self, kind: str) -> str:
        """Say what keeps a thing of a kind from being known; empty where nothing does."""
        return next((why for (waiting, _), why in self.waiting.items() if waiting == kind), "")

    def may_hold(self, kind: str, name: str) -> bool:
        """Tell whether a name that stands for nothing may be that of something left out."""
        return (kind, name) in self.names or (kind, ANY) in self.names

    def among(self, *beginnings: str) -> bool:
        """Tell whether a file whose path begins with one of these has mistakes."""
        return any(path.startswith(beginnings) for path in self.files)

    def hold_back(self, notices: Iterable[Notice]) -> list[Notice]:
        """Leave out the notices that may be there only since something that they rest on has mistakes."""
        return [one for one in notices if not self.among(*CODES[one.code].rests_on)]

    def told(self, notices: Iterable[Notice]) -> Broken:
        """Count the files in which mistakes are told among the broken ones."""
        told = {one.place.path for one in notices if one.severity == "error"}
        return replace(self, files=self.files | told)

    def joined(self, other: Broken) -> Broken:
        """Give what is broken here and there."""
        waiting, files = {**self.waiting, **other.waiting}, {**self.waiting_files, **other.waiting_files}
        return Broken(self.names | other.names, self.files | other.files, waiting, files)


NOTHING = Broken()
"""What is broken where nothing is."""


class Package(Struct, frozen=True, dict=True):
    """Everything but what lies under owner/; a part whose file is missing or broken is None or left out."""

    tender: Tender | None
    particulars: Particulars | None
    frames: FrameTable | None
    offsets: Offsets | None
    lightship: Lightship | None
    curves: CurvesOfForm | None = None
    sections: Sections | None = None
    docking_plan: DockingPlan | None = None
    condition: ShipCondition | None = None
    timber: Timber | None = None
    contract: Contract | None = None
    tow: Tow | None = None
    care: CarePlan | None = None
    care_readings: tuple[CareReading, ...] = ()
    """What was read and done between dockings, in order of time."""
    drawings: tuple[Drawing, ...] = ()
    tanks: tuple[Tank, ...] = ()
    openings: tuple[Opening, ...] = ()
    appendages: tuple[Appendage, ...] = ()
    strakes: tuple[Strake, ...] = ()
    zones: tuple[Zone, ...] = ()
    schemes: tuple[Scheme, ...] = ()
    anodes: tuple[Anode, ...] = ()
    anode_families: tuple[AnodeFamily, ...] = ()
    history: tuple[EarlierDocking, ...] = ()
    facilities: tuple[Facility, ...] = ()
    items: tuple[Item, ...] = ()
    clauses: tuple[Clause, ...] = ()
    surveys: tuple[Survey, ...] = ()
    questions: tuple[Question, ...] = ()
    photographs: tuple[Photograph, ...] = ()
    travelling: Mapping[str, Travelling] = field(default_factory=dict)
    """The files that go along with the tender as they are, by path."""
    photograph_files: Mapping[str, PhotographFile] = field(default_factory=dict)
    """The files that lie in photographs/, by path."""
    frame_notes: Prose | None = None
    """How the numbering of the frames is known."""
    withdrawn_lines: Mapping[str, tuple[Line, ...]] = field(default_factory=dict)
    """By the number of their item; they are no longer among its lines."""
    broken: Broken = field(default_factory=Broken)
    todos: tuple[Todo, ...] = ()
    """What is still `todo`, outside owner/."""

    @property
    def number(self) -> str:
        """Give the number of the tender; empty while it is not written."""
        return self.tender.tender.number if self.tender is not None else ""

    def is_of(self, tender: str) -> bool:
        """Tell whether what names a tender, or none, is of the tender of this package, so that its items are these."""
        return tender in ("", self.number)

    @property
    def units(self) -> str:
        """Name the system of units in which figures are told; metric where no tender says."""
        return self.tender.units if self.tender else "metric"

    @property
    def american(self) -> bool:
        """Tell whether dates and money are written the American way: where prices are in dollars, or units are so."""
        return self.tender is not None and (self.tender.currency == "USD" or self.tender.units == "us")

    @cached_property
    def item_by_name(self) -> Mapping[str, Item]:
        """Give the items by number as text."""
        return {item.number: item for item in self.items}
