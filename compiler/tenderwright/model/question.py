"""A question asked during the tender, and the answer that every yard gets; who asked is in the owner's papers."""

from collections.abc import Mapping
from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import Date, ItemRef, OfTender
from tenderwright.model.marks import Form, Kept, Key, Keys, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Question(Noun, frozen=True, kw_only=True):
    """One question asked during the tender, and the answer that every yard gets. Who asked never stands here: it may stand in owner/questions.yaml."""

    question: Annotated[int, Key("Number, from 1; never changed or reused.", 3), Within(least=1, most=9999)]
    asked: Annotated[Date, Key("Day on which it was asked.", "2027-02-16")]
    about: Annotated[tuple[Annotated[ItemRef, Key("An item.", "420")], ...], Key("Items it is about.")] = ()
    ask: Annotated[
        Prose, Key("The question, in words that do not tell who asked.", "May the blocks under the keel be moved once?")
    ]
    answer: Annotated[
        Prose | None,
        Key(
            "The answer. It explains; what it changes is changed in the item itself.",
            "Yes, once, by the block plan of the item.",
        ),
    ] = None
    answered: Annotated[Date | None, Key("Day of the answer.", "2027-04-19")] = None
    addendum: Annotated[
        int | None, Key("Number of the addendum that issues the answer.", 1), Within(least=1, most=99)
    ] = None
    here: Place

    @property
    def number(self) -> str:
        """Give the number as printed."""
        return str(self.question)


class Asker(Noun, frozen=True, kw_only=True):
    """Who asked a question."""

    yard: Annotated[
        str,
        Key("Name of the yard that asked, which no paper tells.", "Ostrey Dock Company"),
    ]
    how: Annotated[
        str,
        Key("How it came, and where it is kept.", "letter of 2027-02-16"),
        Kept("every answer goes to all yards alike, and who asked is not told"),
    ] = ""
    here: Place


class AskedBy(Noun, frozen=True, kw_only=True):
    """The owner's record of who asked what, by the number of the question."""

    tender: OfTender = ""
    asked_by: Annotated[
        Mapping[str, Asker],
        Key("By number of the question, the yard that asked it."),
        Keys(Form("^[1-9][0-9]*$", "Number of a question", "3")),
    ]
