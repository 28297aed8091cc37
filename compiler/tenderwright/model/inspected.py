"""What was inspected in dock, and what became of the rows of the register of openings."""

from typing import Annotated

from tenderwright.model.build import Name
from tenderwright.model.kinds import AnyQuantity, Date, ItemRef, OpeningRef, TankRef
from tenderwright.model.marks import Form, Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class InspectionResult(Noun, frozen=True, kw_only=True):
    """What an inspection, a test or the reading of a report of the inspection plan came to."""

    item: Annotated[ItemRef, Key("The item that the point belongs to.", "310")]
    point: Annotated[
        Name,
        Key(
            "The point as the inspection plan numbers it: H1 a hold or witness point, T1 the first test of the item, R1 its first report.",
            "H2",
        ),
        Form("^[HTR][0-9]+$", "Number of a point", "H1", "T2", "R1"),
    ]
    where: Annotated[
        str, Key("At which place it was, where the point comes up at several.", "strake D port, Fr 61 to Fr 63")
    ] = ""
    day: Annotated[Date, Key("Day on which it was inspected.", "2027-05-12")]
    result: Annotated[
        str,
        Key(
            "How it came out: the whole point passed, part of it passed so far, it failed and is inspected again, or it is not reached since its work is left out.",
            "passed",
        ),
        OneOf("passed", "passed in part", "failed", "not reached"),
    ]
    value: Annotated[
        AnyQuantity | None,
        Key("The worst figure that was read; it is held against the figure of the item.", "0.08 mm", "0.2 ohm"),
    ] = None
    yard: Annotated[str, Key("Who signed for the yard.", "K. Holm, foreman")] = ""
    owner: Annotated[str, Key("Who signed for the owner.", "Ship manager")] = ""
    again: Annotated[Date | None, Key("Day set for inspecting again what failed.", "2027-05-14")] = None
    note: Annotated[str, Key("What else is to be said of it.", "two laps open beside Fr 62")] = ""
    here: Place


class RegisterEntry(Noun, frozen=True, kw_only=True):
    """What became of a row of the register of openings; a later entry adds to an earlier one of the same row."""

    opening: Annotated[OpeningRef | None, Key("A plug, valve or other opening of the hull.", "plug-forepeak")] = None
    tank: Annotated[TankRef | None, Key("A tank or void whose manhole was opened.", "forepeak")] = None
    block: Annotated[Name | None, Key("A keel block that was taken out, as the docking plan names it.", "Fr 12")] = None
    shell: Annotated[
        ItemRef | None, Key("The item that took off plates, drew rivets or cut holes in the shell.", "310")
    ] = None
    hole: Annotated[
        str, Key("Number of the one hole, plate or group of rivets of that item; left out, all of them.", "3")
    ] = ""
    anodes: Annotated[ItemRef | None, Key("The item whose anodes were covered or taken off.", "640")] = None
    opened: Annotated[Date | None, Key("Day on which it was opened, drawn or taken out.", "2027-05-06")] = None
    closed: Annotated[Date | None, Key("Day on which it was closed again.", "2027-05-28")] = None
    tested: Annotated[Date | None, Key("Day on which it was tested.", "2027-05-28")] = None
    result: Annotated[str, Key("How the test came out.", "passed"), OneOf("passed", "failed")] = ""
    yard: Annotated[str, Key("Who signed for the yard that it is closed.", "Dockmaster")] = ""
    owner: Annotated[str, Key("Who signed for the owner that it is closed.", "Ship manager")] = ""
    note: Annotated[str, Key("What else is to be said of it.", "thread re-tapped one size larger")] = ""
    here: Place

    @property
    def named(self) -> tuple[tuple[str, str], ...]:
        """Give what it names, by the key and the name; an entry names one thing."""
        written = (
            ("opening", self.opening),
            ("tank", self.tank),
            ("block", self.block),
            ("shell", self.shell),
            ("anodes", self.anodes),
        )
        return tuple((key, one.name) for key, one in written if one is not None)
