"""The page of approvals: what is late first, what is still to be asked for, and nothing said as if it were law."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tenderwright.documents.edition import Edition, Heading
from tenderwright.writing.html import screen_page
from tests.documents.composed import Composed, changed, composed, part, rows, tables, walk, words

REGISTER = """until: 2028-03-01
approvals:
  - approval: tow
    title: Move of a dead ship
    kind: harbour
    gates: [departure]
    given_by: Harbour master
    lead: 60 d
    notes: He sits on Mondays.
  - approval: consent
    title: Consent to the rivets
    kind: heritage
    gates: [issue, start]
    items: ["320"]
    given_by: Monuments office
    lead: 60 d
    lead_source: its note of 2025
    granted: 2027-10-20
    afterwards: Letter of 2027-10-20, the issue is accepted
    paper: owner/documents/consent.pdf
    conditions:
      - { what: Photographs of each rivet, before: flooding }
  - approval: berth
    title: Berth dredged
    kind: landlord
    gates: [departure home]
    given_by: Harbour company
    asked: 2028-02-01
  - approval: load-line
    title: Exemption from load lines
    kind: flag
    gates: [departure]
    given_by: Flag administration
    not_needed: { why: She stays in the harbour, by: Flag administration, day: 2028-02-01 }
"""


def _with(text: str) -> Composed:
    def change(root: Path) -> None:
        (root / "owner" / "approvals.yaml").write_text(text, "utf-8")

    return changed(change)


@cache
def starters() -> Composed:
    return _with(REGISTER)


def page(found: Composed) -> Edition:
    return found.edition("owner").sheets["approvals"]


def headings(edition: Edition) -> list[str]:
    return [one.text for one in walk(edition.parts) if isinstance(one, Heading)]


def test_what_is_late_comes_first_and_says_why() -> None:
    found = page(starters())
    assert headings(found) == [
        "Late, missed or run out",
        "Still to be given, by the day to ask for it",
        "Conditions still to be met",
        "Given",
        "Not needed",
    ]
    late, still, conditions = tables(found)
    assert rows(late) == [
        [
            "3 February 2028",
            "Move of a dead ship (harbour). Harbour master. He sits on Mondays.",
            "Departure for the yard, 3 April 2028",
            "60 d (a)",
            "It was to be asked for by 3 February 2028. To be asked for",
        ]
    ]
    assert [(row[0], row[3]) for row in rows(still)] == [("–", "not known")]
    assert rows(conditions)[0][:2] == ["Flooding of the dock, 19 April 2028", "Photographs of each rivet"]
    assert "Letter of 2027-10-20, the issue is accepted" in words(found)


def test_a_time_bears_its_source_or_says_that_it_has_none() -> None:
    text = words(page(starters()))
    assert "(a) common practice, no source" in text
    assert "it is not law, and the authority decides" in text


def test_it_is_confidential_and_marram_s_own_has_nothing_late() -> None:
    found = page(composed("marram"))
    assert found.confidential
    assert found.audience == "owner"
    assert "Departure home, 9 June 2027" in screen_page(found)
    assert headings(found)[0].startswith("Still to be given")
    days = [row[0] for row in rows(tables(found)[0])]
    assert days == ["26 May 2027", "26 May 2027", "2 June 2027"]


def test_brief_and_programme_tell_how_many_or_what_it_would_take() -> None:
    brief = words(starters().edition("owner").sheets["brief"])
    assert "Late, missed or run out: Move of a dead ship." in brief
    assert "no register is kept, owner/approvals.yaml" in words(composed("starter").edition("owner").sheets["brief"])
    assert "approvals" not in composed("starter").edition("owner").sheets
    programme = words(part(composed("marram").edition("owner"), "owner-programme"))
    assert "The next has to be asked for by 26 May 2027." in programme
    assert "Condition: The list of openings, all closed and signed, is with the insurer's surveyor" in programme


def test_a_spreadsheet_has_a_row_for_each_thing_that_is_held_up() -> None:
    table = starters().edition("owner").tables["approvals"]
    rows = [dict(zip(table.header, row, strict=True)) for row in table.rows]
    assert [(one["approval"], one["holds_up"], one["on"]) for one in rows if one["approval"] == "consent"] == [
        ("consent", "issue", "2027-10-04"),
        ("consent", "start", "2028-04-05"),
    ]
    (tow,) = [one for one in rows if one["approval"] == "tow"]
    assert (tow["ask_by"], tow["lead_days"], tow["lead_source"], tow["state"]) == (
        "2028-02-03",
        60,
        "common practice, no source",
        "to be asked for",
    )
