"""The approvals that the docking of a ship kept for her history usually needs, for the form that `add` writes."""

from __future__ import annotations

from tenderwright.writing.yaml_file import one_line

_ASBESTOS = "ten working days, 40 CFR 61.145, from memory; ask whose law holds at the yard's place"
_USUAL: tuple[tuple[str, str, str, list[str], str, str], ...] = (
    ("heritage-consent", "Consent to the work on her fabric", "heritage", ["issue", "start"], "60 d", ""),
    ("funder-agrees", "Agreement to specification and award", "funder", ["issue", "award"], "30 d", ""),
    ("leave-to-begin", "Leave to begin, before which no cost is paid", "funder", ["start"], "30 d", ""),
    ("yard-cover", "Ship-repairer's liability cover, shown", "insurer", ["award", "enter dock"], "7 d", ""),
    ("yard-discharge", "Permits of the yard for wash water and blasting, shown", "environment", ["start"], "7 d", ""),
    ("asbestos-notice", "Notice of work on asbestos", "hazardous waste", ["start"], "14 d", _ASBESTOS),
    ("hull-cover", "Cover for tow and docking", "insurer", ["departure", "flooding", "departure home"], "30 d", ""),
    ("single-voyage", "Leave for a single voyage, each way", "flag", ["departure", "departure home"], "28 d", ""),
    ("tow-survey", "Tow surveyor's certificate", "survey", ["departure"], "14 d", ""),
    ("harbour-move", "Move of a dead ship out of the harbour", "harbour", ["departure"], "14 d", ""),
    ("surveyor-floats-her", "Word of the surveyor that she may float", "flag", ["flooding"], "7 d", ""),
    ("loans-landed", "Leave to land what is lent to the ship", "lender", ["departure"], "28 d", ""),
    ("berth", "Berth kept, or ready again, for her return", "landlord", ["departure home"], "60 d", ""),
)
"""Identifier, title, kind, gates, how long the answer takes, and who says so: else it is common practice, no source."""


_HEAD = """\
# yaml-language-server: $schema={schema}
# The register of approvals: what each holds up, who gives it, how long that takes, and how far it is. The authority
# decides; the register lists and plans.
#
# Below are those that a docking usually needs. Say of each who gives it, and delete what is not yours. Where somebody
# decided that one is not needed, say so: `not_needed: {{ why: …, by: …, day: 2027-02-01 }}`.
# `lead` is how long the answer takes. Ask, and write who says so under `lead_source:`; else it is common practice.
# When you ask, add `asked:` with the day; when the answer is there, `granted:`, `expires:` and `paper:`.
# What it asks of you goes under `conditions:`, each with `what:`, `before:` and, once it is done, `met:`.
# `items: ["310"]` names the items that one is about; `source:` the source of owner/funding.yaml whose word it is.
{tender}approvals:
"""


def register_form(tender: str, schema: str) -> str:
    """Write the register with the usual approvals; who gives each is asked."""
    head = _HEAD.format(schema=schema, tender=f"tender: {one_line(tender)}\n" if tender else "")
    return head + "".join(
        f"  - approval: {name}\n    title: {title}\n    kind: {kind}\n    gates: [{', '.join(gates)}]\n"
        f"    given_by: todo\n    lead: {lead}\n" + (f"    lead_source: {source}\n" if source else "")
        for name, title, kind, gates, lead, source in _USUAL
    )
