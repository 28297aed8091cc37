"""The usual precautions that each hazard brings into an item; the clauses hold them in full."""

from __future__ import annotations

PRECAUTIONS: dict[str, tuple[str, str]] = {
    "hot work": (
        "Hot work only under the yard's permit, with the space and those next to it, corners included, found fit by "
        "the competent person or marine chemist, and a fire watch during the work and on after it.",
        "hot-work",
    ),
    "confined space": (
        "Entry only after tests in the order oxygen, flammability, toxicity, with ventilation, "
        "an attendant and rescue ready.",
        "confined-spaces",
    ),
    "coating disturbed": (
        "Old coating is taken to hold lead until a test shows otherwise: containment, respirators and waste to suit.",
        "hazardous-materials",
    ),
    "lead": (
        "Lead is present or suspected: exposure control, containment and manifested waste.",
        "hazardous-materials",
    ),
    "pcb": ("PCB is present or suspected in paint, cable or gaskets: sample before disturbing.", "hazardous-materials"),
    "asbestos": (
        "Asbestos is present or suspected: stop, leave it undisturbed and tell the owner.",
        "hazardous-materials",
    ),
    "working at height": (
        "Staging with guard rails, checked each shift, or restraint where there is none.",
        "access-and-working",
    ),
    "lifting": ("Lifts planned and led by a competent person; nobody below a load.", "access-and-working"),
    "pressure test": (
        "Pressure raised in steps by a tested gauge and a relief; people kept away while it is on.",
        "inspection-and-hold-points",
    ),
    "oil residue": ("Oil residue: vapour tests go on while it is moved, and no hot work until certified.", "hot-work"),
    "high-pressure water": ("A cordon about the jet, and a dead-man control on the lance.", "access-and-working"),
    "abrasive blasting": (
        "Screens, air-fed helmets, and openings and machinery covered against grit.",
        "environment-and-waste",
    ),
    "electrical": ("Circuits locked off and tagged by the ship manager before work begins.", "access-and-working"),
    "diving": (
        "Diving by the law of the yard's place; propeller, sea suctions and discharges locked off.",
        "access-and-working",
    ),
    "solvents": ("Ventilation, no ignition source, and vapour tests while coating and curing.", "coatings-general"),
}
"""By hazard: the usual precaution, without a figure of its own, and the clause that says more and holds the figures.

Facts from 29 CFR 1915 Subparts B, C, D and P.
"""


def anchor_of(hazard: str) -> str:
    """Give the anchor at which the usual precaution of a hazard stands."""
    return f"hazard-{hazard.replace(' ', '-')}"


def named(hazard: str) -> str:
    """Give the name of a hazard as a heading has it."""
    return "PCB" if hazard == "pcb" else f"{hazard[:1].upper()}{hazard[1:]}"
