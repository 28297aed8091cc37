"""An earlier docking."""

from typing import Annotated

from msgspec import field

from tenderwright.model.build import Prose
from tenderwright.model.found import (
    ClearanceTaken,
    CoatApplied,
    DaysLost,
    Deferred,
    DockingDrafts,
    FilledRow,
    NotPainted,
    PhotographKept,
    PlugDrawn,
    RivetsRenewed,
    SoundingTaken,
    SteelRenewed,
    TankTested,
    TimberFound,
    UsedBlock,
    UsedBlocks,
    ValveFound,
)
from tenderwright.model.kinds import (
    AnodeRef,
    Area,
    AreaDensity,
    Date,
    Days,
    DockType,
    Fraction,
    Identifier,
    Length,
    Mass,
    Time,
    ZoneRef,
)
from tenderwright.model.marks import Kept, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

__all__ = ["Deferred", "DockingDrafts", "UsedBlock", "UsedBlocks"]


class Finding(Noun, frozen=True, kw_only=True):
    """Something found."""

    where: Annotated[str, Key("Where in the ship it was found.", "strake F, starboard, Fr 51 to Fr 53")]
    found: Annotated[Prose, Key("What was found there.", "Pitting to 3 mm under old cement.")]
    done: Annotated[Prose | None, Key("What was done about it.", "Blasted, filled and coated.")] = None
    extent: Annotated[str, Key("How much, with unit.", "14 m2")] = ""


class CoatingApplied(Noun, frozen=True, kw_only=True):
    """A coating applied at a docking."""

    zone: Annotated[ZoneRef, Key("The zone that was coated.", "underwater")]
    system: Annotated[str, Key("The coats in a few words.", "two coats of tar epoxy, one of antifouling")]
    area: Annotated[Area | None, Key("Area that was coated.", "310 m2")] = None
    preparation: Annotated[str, Key("How the steel was prepared.", "spot blast to Sa 2")] = ""
    profile: Annotated[Length | None, Key("Profile of the blasted steel, mean of the readings.", "68 um")] = None
    salts: Annotated[AreaDensity | None, Key("Greatest reading of soluble salts.", "32 mg/m2")] = None
    dust: Annotated[int | None, Key("Dust, greatest quantity class."), Within(least=0, most=5)] = None
    coats: Annotated[
        tuple[CoatApplied, ...],
        Key("Coats as applied."),
        Kept("`system` names the coats, and the docking report prints them in full"),
    ] = ()


class AnodesFound(Noun, frozen=True, kw_only=True):
    """What was left of anodes, or of one, and what was fitted."""

    what: Annotated[str, Key("Which anodes, in words.", "shell anodes, port")]
    left: Annotated[Fraction | None, Key("Share of them that was left.", "45 %")] = None
    renewed: Annotated[int | None, Key("How many of them were renewed."), Within(most=1000)] = None
    anode: Annotated[AnodeRef | None, Key("The anode, where one is meant.", "p1")] = None
    left_mass: Annotated[Mass | None, Key("Mass that was left, where it was weighed.", "2.9 kg")] = None
    fitted: Annotated[Mass | None, Key("Mass of the new one fitted.", "6.5 kg")] = None
    alloy: Annotated[str, Key("Alloy of the anodes that were fitted.", "zinc")] = ""


class HoursUsed(Noun, frozen=True, kw_only=True):
    """Hours of one trade used of the pool."""

    work: Annotated[str, Key("The trade that worked the hours.", "boilermaker, riveter or welder")]
    offered: Annotated[Time | None, Key("Hours of the pool as tendered.", "320 h")] = None
    used: Annotated[Time, Key("Hours that were used.", "212 h")]


class EarlierDocking(Noun, frozen=True, kw_only=True):
    """One earlier docking: where and when, how she stood, what was found and what was done."""

    docking: Annotated[Identifier, Key("Identifier, by which rates and closings name the docking.", "docking-2008")]
    tender: Annotated[
        str,
        Key(
            "Number of the tender by which she was docked: where it is not that of this package, the items named here are of that tender.",
            "HPT-2027-01",
        ),
    ] = ""
    yard: Annotated[str, Key("Name of the yard that docked her.", "Corve Dock and Engineering")]
    place: Annotated[str, Key("Town or harbour of the yard.", "Corve")] = ""
    dock_type: Annotated[DockType, Key("What kind of dock it was.")]
    docked: Annotated[Date, Key("Day on which she landed on the blocks.", "2008-09-02")]
    undocked: Annotated[Date, Key("Day on which she floated again.", "2008-09-26")]
    drafts: Annotated[DockingDrafts | None, Key("Her drafts when she was docked.")] = None
    undocking_drafts: Annotated[DockingDrafts | None, Key("Her drafts when she floated again.")] = None
    soundings: Annotated[tuple[SoundingTaken, ...], Key("What was in the tanks on docking.")] = ()
    undocking_soundings: Annotated[tuple[SoundingTaken, ...], Key("What was in the tanks on undocking.")] = ()
    blocks: Annotated[UsedBlocks, Key("The blocks on which she stood.")] = field(default_factory=UsedBlocks)
    not_painted: Annotated[tuple[NotPainted, ...], Key("Places left without coating.")] = ()
    plugs: Annotated[tuple[PlugDrawn, ...], Key("Docking plugs drawn and refitted.")] = ()
    findings: Annotated[tuple[Finding, ...], Key("What was found, and what was done about it.")] = ()
    renewed: Annotated[tuple[SteelRenewed, ...], Key("Plates, floors and frames that were renewed.")] = ()
    rivets: Annotated[tuple[RivetsRenewed, ...], Key("Rivets renewed or mended.")] = ()
    timber: Annotated[
        tuple[TimberFound, ...], Key("Planks, fastenings, seams, frames and bolts of a hull of wood.")
    ] = ()
    valves: Annotated[tuple[ValveFound, ...], Key("Sea valves and other closures in the shell.")] = ()
    clearances: Annotated[tuple[ClearanceTaken, ...], Key("Clearances of shaft and rudder.")] = ()
    tank_tests: Annotated[tuple[TankTested, ...], Key("Tests of tanks and spaces.")] = ()
    tables: Annotated[tuple[FilledRow, ...], Key("Tables of the tender as the yard filled them.")] = ()
    coatings: Annotated[tuple[CoatingApplied, ...], Key("Coatings applied, by zone.")] = ()
    anodes: Annotated[tuple[AnodesFound, ...], Key("What was left of the anodes, and what was fitted.")] = ()
    deferred: Annotated[tuple[Deferred, ...], Key("Work that was put off.")] = ()
    left_open: Annotated[
        tuple[Annotated[str, Key("A point or a row, and how it stood.", "item 410 H2, open")], ...],
        Key("What the inspection plan and the register of openings still had open when the docking was closed."),
    ] = ()
    days: Annotated[Days | None, Key("How many days she stood on blocks.")] = None
    days_lost: Annotated[tuple[DaysLost, ...], Key("Days lost, by cause.")] = ()
    hours_used: Annotated[tuple[HoursUsed, ...], Key("Hours used of the pool.")] = ()
    guarantee_until: Annotated[Date | None, Key("Last day of the guarantee.", "2027-05-19")] = None
    lessons: Annotated[
        Prose | None, Key("What to do otherwise next time.", "Order the rivets before she is docked.")
    ] = None
    photographs: Annotated[tuple[PhotographKept, ...], Key("Photographs that are kept, or sets of them.")] = ()
    here: Place
