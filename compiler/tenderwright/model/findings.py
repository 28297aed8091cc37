"""The findings of a docking just done: what was found, done, tested and paid, before it becomes history."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.build import Prose
from tenderwright.model.found import (
    ClearanceTaken,
    CoatApplied,
    DaysLost,
    Deferred,
    DockingDrafts,
    NotPainted,
    PhotographKept,
    PlugDrawn,
    RivetsRenewed,
    SoundingTaken,
    SteelRenewed,
    TankTested,
    TimberFound,
    UsedBlocks,
    ValveFound,
)
from tenderwright.model.kinds import (
    AnodeRef,
    AnyQuantity,
    Area,
    AreaDensity,
    Cause,
    Currency,
    Date,
    Days,
    Density,
    DockType,
    FacilityRef,
    Fraction,
    ItemRef,
    Length,
    LineNumber,
    Mass,
    SchemeRef,
    Side,
    SignedAngle,
    SignedMoney,
    StrakeRef,
    TankRef,
    Time,
    ZoneRef,
)
from tenderwright.model.marks import Count, Form, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.model.survey_columns import SurveyColumns
from tenderwright.notices import Place


class DockingDates(Noun, frozen=True, kw_only=True):
    """The days of the docking."""

    arrived: Annotated[Date | None, Key("Day of arrival at the yard.", "2027-05-19")] = None
    docked: Annotated[Date, Key("Day on which she landed on the blocks.", "2027-05-05")]
    dry: Annotated[Date | None, Key("Day the dock was dry.", "2027-05-19")] = None
    undocked: Annotated[Date, Key("Day on which she floated again.", "2027-06-02")]
    departed: Annotated[Date | None, Key("Day she left the yard.", "2027-05-19")] = None
    here: Place


class Condition(Noun, frozen=True, kw_only=True):
    """How she floated on docking or undocking."""

    drafts: Annotated[DockingDrafts | None, Key("Drafts read at the marks.")] = None
    list_: Annotated[SignedAngle | None, Key("List, to starboard positive.", "0.4 deg")] = None
    displacement: Annotated[Mass | None, Key("Displacement that the drafts gave.", "612 t")] = None
    density: Annotated[
        Density | None, Key("Density of the water.", "1.021 t/m3"), Within(least="950 kg/m3", most="1100 kg/m3")
    ] = None
    soundings: Annotated[tuple[SoundingTaken, ...], Key("What was sounded in the tanks.")] = ()


class ReadingTaken(Noun, frozen=True, kw_only=True):
    """A thickness reading written in the findings themselves."""

    strake: Annotated[StrakeRef | None, Key("The strake on which the reading was taken.", "C")] = None
    frame: Annotated[
        float | None, Key("Frame, with decimals between two frames.", 44.3), Within(least=-200, most=2000)
    ] = None
    side: Side = ""
    tank: Annotated[TankRef | None, Key("Tank, for a reading inside it.", "forepeak")] = None
    member: Annotated[str, Key("The member inside a tank on which it was taken.", "floor at Fr 80")] = ""
    kind: Annotated[str, Key("Reading of the plate, or depth of a pit taken off it."), OneOf("plate", "pit")] = "plate"
    as_built: Annotated[Length, Key("Thickness when she was built.", "9.5 mm")]
    measured: Annotated[Length, Key("Thickness that the gauge showed.", "7.8 mm")]
    day: Annotated[Date, Key("Day on which it was taken.", "2027-05-19")]
    instrument: Annotated[str, Key("Instrument and method of the reading.", "ultrasonic, twin probe")]
    stage: Annotated[str, Key("Before or after blast.", "in dock, after blast")]
    here: Place


class AnodeLeft(Noun, frozen=True, kw_only=True):
    """What was left of one anode, and what was fitted in its place."""

    anode: Annotated[AnodeRef, Key("The anode, by its identifier in vessel/anodes.yaml.", "p1")]
    left: Annotated[Fraction | None, Key("Share of it that was left.", "45 %")] = None
    left_mass: Annotated[Mass | None, Key("Mass of it that was left, where it was weighed.", "2.9 kg")] = None
    fitted: Annotated[Mass | None, Key("Mass of the new one fitted.", "6.5 kg")] = None
    alloy: Annotated[str, Key("Alloy of the new one.", "zinc")] = ""
    note: Annotated[str, Key("What else was seen or done.", "stump rebuilt on a pad")] = ""
    here: Place


class PaintLog(Noun, frozen=True, kw_only=True):
    """The coating of one zone as it was done."""

    zone: Annotated[ZoneRef, Key("The zone that was coated.", "underwater")]
    scheme: Annotated[SchemeRef | None, Key("The scheme by which it was coated.", "underwater-spot")] = None
    area: Annotated[Area | None, Key("Area that was coated.", "178 m2")] = None
    grade: Annotated[str, Key("Grade of preparation that was reached.", "Sa 2 1/2")]
    profile: Annotated[Length | None, Key("Profile of the blasted steel, mean of the readings.", "68 um")] = None
    salts: Annotated[AreaDensity | None, Key("Greatest reading of soluble salts.", "32 mg/m2")] = None
    dust: Annotated[int | None, Key("Dust, greatest quantity class."), Within(least=0, most=5)] = None
    holidays: Annotated[int | None, Key("Holidays found and made good."), Within(least=0)] = None
    coats: Annotated[tuple[CoatApplied, ...], Key("Coats, from the steel out."), Count(1)]
    here: Place


class ConditionFound(Noun, frozen=True, kw_only=True):
    """A condition-found report."""

    report: Annotated[str, Key("Number of the report.", "CF-01")]
    day: Annotated[Date, Key("Day on which it was found.", "2027-05-12")]
    item: Annotated[ItemRef | None, Key("The item of the tender that it belongs to.", "310")] = None
    where: Annotated[str, Key("Where in the ship it was found.", "strake F, starboard, Fr 51 to Fr 53")]
    extent: Annotated[str, Key("How much, with unit.", "1.4 m2")] = ""
    found: Annotated[Prose, Key("What was found there.", "Plate wasted to 5.1 mm along the limber.")]
    cause: Annotated[Prose | None, Key("Why it came about.", "Water stood under the cement.")] = None
    repair: Annotated[Prose | None, Key("What repair was recommended.", "Crop and renew 1.4 m2.")] = None
    decision: Annotated[Prose | None, Key("What the owner decided.", "Accepted, riveted.")] = None
    decided: Annotated[Date | None, Key("Day on which the owner decided.", "2027-05-13")] = None
    done: Annotated[Prose | None, Key("What was done about it.", "An insert of 10 mm was welded in.")] = None
    here: Place


class Change(Noun, frozen=True, kw_only=True):
    """A change to the contract."""

    change: Annotated[str, Key("Number of the change.", "CO-01")]
    day: Annotated[Date, Key("Day on which it was agreed.", "2027-05-19")]
    line: Annotated[LineNumber, Key("The line that it changes.", "310.a")]
    cause: Annotated[Cause, Key("What kind of cause it has.", "condition found")]
    what: Annotated[str, Key("What the order changed.", "180 kg more plate in strake F")]
    amount: Annotated[SignedMoney, Key("Amount; negative where it takes off.", 2310)]
    days: Annotated[Days, Key("Days added to the contract.")] = 0
    condition: Annotated[str, Key("The condition-found report it answers.", "CF-01")] = ""
    here: Place


class PoolHours(Noun, frozen=True, kw_only=True):
    """Hours used of one line of the pool."""

    line: Annotated[LineNumber, Key("The line of the hours pool.", "850.a")]
    hours: Annotated[Time, Key("Hours that were drawn of it.", "212 h")]
    here: Place


class LinePaid(Noun, frozen=True, kw_only=True):
    """What one line came to in the end."""

    line: Annotated[LineNumber, Key("The line of the tender.", "310.a")]
    quantity: Annotated[AnyQuantity | None, Key("Quantity as measured at the end.", "1240 kg")] = None
    contract: Annotated[SignedMoney, Key("In the contract; negative for a credit, 0 for a line ordered later.", 18200)]
    changes: Annotated[SignedMoney, Key("All changes to it.", 2310)]
    final: Annotated[SignedMoney, Key("Paid in the end.", 20510)]
    note: Annotated[str, Key("What the figures do not say.", "Measured together with 310.b")] = ""
    here: Place


class Totals(Noun, frozen=True, kw_only=True):
    """Totals of the final account as the yard states them."""

    contract: Annotated[SignedMoney, Key("Sum of the contract.", 912000)]
    changes: Annotated[SignedMoney, Key("Sum of all changes; negative where they save.", 35410.5)]
    final: Annotated[SignedMoney, Key("Sum of the final account.", 947410.5)]


class Scrap(Noun, frozen=True, kw_only=True):
    """Scrap of one kind."""

    what: Annotated[str, Key("What material was landed.", "old plate")]
    mass: Annotated[Mass, Key("Mass by the weighbridge.", "2.1 t")]
    credit: Annotated[LineNumber, Key("Line of its credit.", "310.a")] = ""
    here: Place


class RowFilled(Noun, frozen=True, kw_only=True):
    """A row of a table of the tender, as the yard filled it in dock."""

    item: Annotated[ItemRef, Key("The item of the tender.", "520")]
    table: Annotated[str, Key("The table, by its identifier in the item.", "valves")]
    row: Annotated[str, Key("The row, by its identifier: that of the thing it is about.", "suction-fire")]
    cells: Annotated[
        Mapping[str, Annotated[str, Key("What the yard wrote, with its unit.", "0.3 mm")]],
        Key("What stands in the cells that the yard fills in dock, by heading."),
    ]
    here: Place


class Findings(Noun, frozen=True, kw_only=True):
    """What a docking found, did and cost: checked by `tenderwright close`, which writes the history entry and the docking report from it."""

    yard: Annotated[str, Key("Name of the yard that docked her.", "Corve Dock and Engineering")]
    place: Annotated[str, Key("Town or harbour of the yard.", "Corve")] = ""
    facility: Annotated[
        FacilityRef | None, Key("The facility of this package that took her.", "corve-graving-dock")
    ] = None
    dock_type: Annotated[DockType, Key("What kind of dock it was.")]
    dockmaster: Annotated[
        str, Key("Who was dockmaster, by office or by name as he agrees to.", "dockmaster of the yard")
    ] = ""
    weather: Annotated[Prose | None, Key("Weather on docking and undocking.", "Calm on both days.")] = None
    dates: Annotated[DockingDates, Key("Days of the docking, in this order.")]
    on_docking: Annotated[Condition, Key("As she entered the dock.")] = field(default_factory=Condition)
    on_undocking: Annotated[Condition, Key("As she left the blocks.")] = field(default_factory=Condition)
    blocks: Annotated[UsedBlocks, Key("The blocks on which she stood.")] = field(default_factory=UsedBlocks)
    not_painted: Annotated[tuple[NotPainted, ...], Key("Places left without coating.")] = ()
    plugs: Annotated[tuple[PlugDrawn, ...], Key("Docking plugs drawn and refitted.")] = ()
    readings: Annotated[tuple[ReadingTaken, ...], Key("Thickness readings, where there are few.")] = ()
    readings_file: Annotated[
        str,
        Key(
            "Thickness readings as CSV in the form of a survey: a path inside the folder of this file.",
            "thickness-2027.csv",
        ),
        Form("^[^/\\\\]+(/[^/\\\\]+)*\\.csv$", "Path of a CSV file"),
    ] = ""
    readings_columns: Annotated[
        SurveyColumns | None,
        Key("What the columns of that file hold, where it is a firm's own and stays as delivered."),
    ] = None
    renewed: Annotated[tuple[SteelRenewed, ...], Key("Plates, floors and frames that were renewed.")] = ()
    rivets: Annotated[tuple[RivetsRenewed, ...], Key("Rivets renewed or mended.")] = ()
    anodes: Annotated[tuple[AnodeLeft, ...], Key("What was found of the anodes, each by its identifier.")] = ()
    timber: Annotated[
        tuple[TimberFound, ...], Key("Planks, fastenings, seams, frames and bolts of a hull of wood.")
    ] = ()
    valves: Annotated[tuple[ValveFound, ...], Key("Sea valves and other closures in the shell.")] = ()
    clearances: Annotated[tuple[ClearanceTaken, ...], Key("Clearances of shaft and rudder.")] = ()
    tank_tests: Annotated[tuple[TankTested, ...], Key("Tests of tanks and spaces.")] = ()
    tables: Annotated[tuple[RowFilled, ...], Key("Tables of the tender, row by row as the yard filled them.")] = ()
    paint: Annotated[tuple[PaintLog, ...], Key("Paint log, by zone.")] = ()
    conditions_found: Annotated[
        tuple[ConditionFound, ...], Key("The condition-found reports, as they were decided.")
    ] = ()
    changes: Annotated[tuple[Change, ...], Key("The log of changes to the contract.")] = ()
    hours_used: Annotated[tuple[PoolHours, ...], Key("Hours used of the pool, by line.")] = ()
    currency: Annotated[Currency, Key("ISO 4217 code; that of package.yaml where left out.", "EUR")] = ""
    publish_prices: Annotated[
        bool, Key("Whether prices paid may stand in the docking report that others read too.")
    ] = False
    bid: Annotated[str, Key("Name of the awarded bid's file under owner/bids/, without .yaml.", "corve")] = ""
    prices: Annotated[tuple[LinePaid, ...], Key("Prices paid, by line.")] = ()
    totals: Annotated[Totals | None, Key("Totals of the final account, as the yard states them.")] = None
    scrap: Annotated[tuple[Scrap, ...], Key("Old material that was landed and weighed.")] = ()
    days_lost: Annotated[tuple[DaysLost, ...], Key("Days lost, by cause.")] = ()
    guarantee_until: Annotated[Date | None, Key("Last day of the guarantee.", "2027-05-19")] = None
    deferred: Annotated[tuple[Deferred, ...], Key("Work put off; an empty list where nothing was.")]
    lessons: Annotated[
        Prose | None, Key("What to do otherwise next time.", "Order the rivets before she is docked.")
    ] = None
    photographs: Annotated[tuple[PhotographKept, ...], Key("Photographs that are kept, or sets of them.")] = ()
    here: Place

    @property
    def docking(self) -> str:
        """Name the docking by the year she was docked."""
        return f"docking-{self.dates.docked.year}"

    @property
    def days(self) -> int:
        """Count the days on blocks, from the day docked to the day undocked."""
        return (self.dates.undocked - self.dates.docked).days
