"""What of a work item is inspected, tested and handed over."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import DayFromEvent, TankRef, Time
from tenderwright.model.marks import Count, Form, Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Test(Noun, frozen=True, kw_only=True):
    """A test and what passes."""

    __test__ = False

    test: Annotated[str, Key("Which test is made.", "Hose test of the hatch coamings")]
    accept: Annotated[Prose, Key("What passes, with a figure.", "No drop of pressure in 10 minutes.")]
    when: Annotated[str, Key("At what point of the work it is made.", "After the last weld, before coating")] = ""
    tanks: Annotated[
        tuple[Annotated[TankRef, Key("A tank.", "forepeak")], ...],
        Key("Tanks and voids whose tightness it proves, where the work opened their boundary."),
    ] = ()


class Hold(Noun, frozen=True, kw_only=True):
    """An inspection point."""

    hold: Annotated[str, Key("Number in the item.", "H1"), Form("^H[0-9]+$", "Number of a hold point")]
    at: Annotated[str, Key("What is inspected, and when.", "Blasted steel, before the first coat")]
    kind: Annotated[
        str, Key("hold: work stops until it is signed. witness: work may go on after notice."), OneOf("hold", "witness")
    ] = "hold"
    by: Annotated[
        tuple[
            Annotated[
                str,
                Key("Who attends, by office."),
                OneOf(
                    "owner",
                    "naval architect",
                    "class",
                    "coating inspector",
                    "marine chemist",
                    "competent person",
                    "port state",
                    "dockmaster",
                ),
            ],
            ...,
        ],
        Key("Who attends; the work waits for each of them."),
        Count(1),
    ]
    notice: Annotated[Time, Key("How long beforehand notice is given.", "24 h")]
    accept: Annotated[Prose, Key("What is accepted, with its figure.", "Sa 2 1/2, salts below 50 mg/m2.")]
    record: Annotated[str, Key("What is written down at it.", "Profile at ten places")] = ""
    release_before: Annotated[
        str,
        Key(
            "What may not happen until a hold is released. Left out, she is not floated before it; and where the item begins after undocking, she does not depart.",
            "departure",
        ),
        OneOf("docking", "flooding", "departure"),
    ] = ""
    here: Place


class Report(Noun, frozen=True, kw_only=True):
    """A report the yard hands over."""

    report: Annotated[str, Key("What is handed over.", "Film thickness readings of each coat")]
    due: Annotated[DayFromEvent, Key("When it is due.")]
    copies: Annotated[str, Key("In which form it is handed over, and how many of it.", "PDF, and two on paper")] = ""
    here: Place
