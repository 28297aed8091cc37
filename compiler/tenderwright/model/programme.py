"""The owner's programme: activities with durations, crews and order, and the lines whose quantity counts its days."""

from typing import Annotated

from tenderwright.model.kinds import Days, Identifier, ItemRef, LineNumber, Phase, SchemeRef, Time, ValueRef
from tenderwright.model.marks import Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Crew(Noun, frozen=True, kw_only=True):
    """A crew of which there are few."""

    crew: Annotated[Identifier, Key("Identifier, by which activities name the crew.", "riveters")]
    name: Annotated[str, Key("Name as the schedule prints it.", "Riveters")] = ""
    count: Annotated[int, Key("How many of them."), Within(least=1, most=1000)]
    here: Place


class Activity(Noun, frozen=True, kw_only=True):
    """Something that takes time."""

    activity: Annotated[Identifier, Key("Identifier, by which other activities name it.", "wash")]
    item: Annotated[ItemRef, Key("The item that it belongs to.", "210")]
    title: Annotated[str, Key("What is done; left out, the title of the item.", "Wash and inspect")] = ""
    kind: Annotated[
        str,
        Key(
            "work: days worked. cure: days that pass. decision: the owner's answering time, left out taken from the item. docking and undocking: the two that bound the days on blocks."
        ),
        OneOf("work", "cure", "decision", "docking", "undocking"),
    ] = "work"
    low: Annotated[Time | None, Key("Shortest time that it may take.", "1 d")] = None
    likely: Annotated[
        Time | None, Key("Time that it will most likely take; left out, the `duration` of its item.", "2 d")
    ] = None
    high: Annotated[Time | None, Key("Longest time that it may take.", "4 d")] = None
    after: Annotated[
        tuple[Annotated[Identifier, Key("An activity of the programme.", "wash")], ...],
        Key("Activities that come before, beside those of the items that its item depends on."),
    ] = ()
    applies: Annotated[SchemeRef | None, Key("The coating scheme of which it applies coats.", "underwater-overall")] = (
        None
    )
    coats: Annotated[
        tuple[Annotated[int, Key("Number of a coat."), Within(least=1, most=50)], ...],
        Key("Which coats of that scheme; left out, all of them.", [1, 2]),
    ] = ()
    crew: Annotated[Identifier, Key("The crew it needs, of those under `crews`.", "riveters")] = ""
    outdoors: Annotated[bool, Key("Whether it stops for the weather.")] = False
    phase: Annotated[Phase, Key("When it is done, where it differs from the item's.")] = ""
    afterwards: Annotated[
        bool,
        Key(
            "Whether it comes at the end, such as striking the staging, so that items that depend on its item do not wait for it. Undocking never holds them back."
        ),
    ] = False
    here: Place


class DayLine(Noun, frozen=True, kw_only=True):
    """A line whose quantity is a count of days of the programme."""

    line: Annotated[LineNumber, Key("The line whose quantity is a count of days.", "420.a")]
    days: Annotated[
        str,
        Key(
            "Which days. dock days: on blocks. further dock days: on blocks beyond those of the tender. yard days: from arrival to redelivery. wet days: in the yard but not on blocks."
        ),
        OneOf("dock days", "further dock days", "yard days", "wet days"),
    ]
    less: Annotated[Days, Key("Days taken off, such as the first that a lump sum holds.")] = 0
    here: Place


class Programme(Noun, frozen=True, kw_only=True):
    """How long the work takes: activities with their durations, crews and order. The order of the items (`depends_on`) and their phase hold without being written again."""

    week: Annotated[int, Key("Days worked in a week.", 5), Within(least=1, most=7)]
    workable: Annotated[
        ValueRef | None,
        Key("Value that gives the share of days on which work in the open can be done.", "climate.workable-share"),
    ] = None
    crews: Annotated[tuple[Crew, ...], Key("Crews that are few.")] = ()
    activities: Annotated[tuple[Activity, ...], Key("What is done, one after another or side by side.")]
    day_lines: Annotated[tuple[DayLine, ...], Key("Lines whose quantity is a count of days of this programme.")] = ()
    here: Place
