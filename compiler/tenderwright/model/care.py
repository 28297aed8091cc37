"""The care of the ship between dockings: what the owner wants otherwise than is usual, and how readings are written."""

from typing import Annotated

from tenderwright.model.kinds import Date, Identifier, Time, Volume, ZoneRef
from tenderwright.model.marks import Key, Measured, OneOf, Within
from tenderwright.model.noun import Noun, keys_of
from tenderwright.notices import Place

KINDS = (
    *("potential", "anode", "leak", "pump", "humidity", "moisture"),
    *("alarm", "mooring", "diver", "boot-top", "bilge", "openings", "borers", "stability", "other", "action"),
)
"""What may be recorded of her between dockings; those of the first line are measured."""


class CareTask(Noun, frozen=True, kw_only=True):
    """A task that is done otherwise than usual, or one of her own."""

    task: Annotated[
        Identifier,
        Key(
            "Identifier: that of a usual task, as the care plan prints it, to change it; any other is a task of her own.",
            "bilge",
            "capstan",
        ),
    ]
    what: Annotated[str, Key("What is done, for a task of her own.", "Turn the capstan, and grease its bearings")] = ""
    every: Annotated[
        Time | None, Key("How often it is done, where that is not as usual.", "1 d", "26 weeks"), Within(most="20 yr")
    ] = None
    by: Annotated[str, Key("Who does it, by office.", "shipkeeper on watch")] = ""
    left_out: Annotated[str, Key("Why the task is not done here.", "she has no bilge alarm yet: item 130")] = ""
    because: Annotated[
        str,
        Key("Why it is done so, or who says so.", "the insurer's letter of 2026-05-11", "common practice, no source"),
    ] = ""


class CoatingLife(Noun, frozen=True, kw_only=True):
    """How long the coating of a zone lasts."""

    zone: Annotated[ZoneRef, Key("The coating zone that it is of.", "underwater")]
    lasts: Annotated[
        Time,
        Key("Time from its application until it must be renewed; `± 2 yr` may follow.", "10 yr", "10 yr ± 2 yr"),
        Measured("20 %", "common practice, no source"),
    ]
    source: Annotated[
        str, Key("Who says so, or `common practice, no source`.", "data sheet of the maker, four coats in sea water")
    ]
    here: Place


class BilgePump(Noun, frozen=True, kw_only=True):
    """What the pump of a space delivers, by which its hours become litres."""

    place: Annotated[str, Key("The space, as the readings name it.", "engine room bilge")]
    in_an_hour: Annotated[Volume, Key("What the pump delivers in an hour.", "10 m3")]


class LeakLimit(Noun, frozen=True, kw_only=True):
    """How much water a space may make in a day."""

    place: Annotated[str, Key("The space, as the readings name it.", "engine room bilge")]
    in_a_day: Annotated[Volume, Key("The most that it may make in a day before she is docked.", "400 L")]
    source: Annotated[str, Key("Who says so, with the paper.", "insurer's letter of 2026-05-11")]
    here: Place


class Called(Noun, frozen=True, kw_only=True):
    """Somebody who is called when something is wrong, by office and never by name."""

    who: Annotated[str, Key("The office that is called.", "Ship manager")]
    when: Annotated[str, Key("What they are called for.", "water over the bilge plates, or any alarm")]
    how: Annotated[
        str, Key("How they are reached, without a private number.", "duty telephone, number inside the wheelhouse door")
    ] = ""


class CarePlan(Noun, frozen=True, kw_only=True):
    """What the owner wants otherwise than usual in the care of the ship between dockings. All of it may be left out: without the file, the care plan is made of usual tasks, and of what the rest of the package says."""

    begins: Annotated[
        Date | None,
        Key(
            "Day from which tasks are counted that no reading shows as done; that of redelivery, or of the last reading, unless given.",
            "2026-01-05",
        ),
    ] = None
    tasks: Annotated[tuple[CareTask, ...], Key("Tasks that are done otherwise than usual, and those of her own.")] = ()
    coatings: Annotated[tuple[CoatingLife, ...], Key("How long the coatings last.")] = ()
    pumps: Annotated[tuple[BilgePump, ...], Key("What the pumps deliver.")] = ()
    leaks: Annotated[tuple[LeakLimit, ...], Key("How much water spaces may make in a day.")] = ()
    calls: Annotated[tuple[Called, ...], Key("Whom to call, for the page on the wall of the wheelhouse.")] = ()
    moored: Annotated[
        str, Key("How she lies, in a few words.", "bow and stern to bollards, two springs, four fenders, tide of 2.1 m")
    ] = ""
    storm: Annotated[
        str,
        Key("What is done before heavy weather, and at which wind.", "from 17 m/s forecast: lines doubled, gangway in"),
    ] = ""
    here: Place


class CareRow(Noun, frozen=True, kw_only=True):
    """What was read and done aboard between dockings, a row for each; the first row names the columns, in any order, and those that are not used may be left out. Thicknesses belong into surveys/, also those gauged afloat."""

    date: Annotated[Date, Key("Day on which it was read or done.", "2026-05-04")]
    kind: Annotated[
        str,
        Key(
            "What it is a reading of; `action` is what was done about an earlier reading of the same place.",
            "potential",
        ),
        OneOf(*KINDS),
    ]
    place: Annotated[
        str,
        Key("Where, always in the same words; for `anode` its identifier.", "Fr 24 port", "engine room bilge"),
    ]
    value: Annotated[
        str,
        Key(
            "The figure, without its unit; of what is only looked at `in order` or `fault`, or nothing.",
            "-0.93",
            "in order",
        ),
    ] = ""
    unit: Annotated[
        str,
        Key(
            "The unit of the figure: of a potential `V` or `mV`, of an anode `%` that is left, of a leak the volume in a day, of a pump the time it ran in a day, of air and of wood `%`.",
            "V",
        ),
    ] = ""
    method: Annotated[
        str,
        Key(
            "How it was read; for a potential the reference cell, one of `silver`, `silver gel`, `copper`, `calomel` and `zinc`.",
            "silver",
        ),
    ] = ""
    by: Annotated[str, Key("Who read it, by office.", "shipkeeper")] = ""
    salinity: Annotated[float | None, Key("Salinity of the water in g/kg.", 24), Within(least=0, most=45)] = None
    temperature: Annotated[
        float | None, Key("Temperature of the water, or of the air, in degC.", 11), Within(least=-30, most=50)
    ] = None
    remark: Annotated[str, Key("What else is to be said; for an action, what was done.", "slack water")] = ""


COLUMNS = tuple(key for _, key in keys_of(CareRow))
"""The columns of a file of readings."""
