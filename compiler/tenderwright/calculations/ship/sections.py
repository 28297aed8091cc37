"""The hull lofted from a few sections, where there is no table of offsets, and how sure it is."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tenderwright.calculations.hydrostatics.lofting import METHOD as LOFTING
from tenderwright.calculations.hydrostatics.lofting import Lofted
from tenderwright.calculations.steps.outcome import Absent, Failed, NotAsked, Resting
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.uncertainty.lofted import METHOD as SURE
from tenderwright.calculations.value import Given, given
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.sections import EndProfile, Sections
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

READING = 0.0005
"""Standard uncertainty of a reading with a rule, on the paper, m (common practice, no source)."""


@step_of(LOFTING, "hull.lofted")
def lofted(package: Package, particulars: Particulars) -> Uses | Absent:
    """Loft the hull from the sections; not where there is a table of offsets, which is better evidence."""
    for file, here in (("vessel/offsets.yaml", package.offsets), ("vessel/sections.yaml", package.sections)):
        if file in package.broken.files:
            return Resting(f"{file} has a mistake")
        if file == "vessel/offsets.yaml" and here is not None:
            return NotAsked("the hull is that of vessel/offsets.yaml")
    sections = package.sections
    if sections is None:
        return NotAsked("there is no vessel/sections.yaml")
    for notice in _uneven(sections):
        return Failed(notice.message, notice)
    return Uses(
        f"from {len(sections.sections)} sections", lofting_inputs(sections, particulars), sections.here, "the sections"
    )


def lofting_inputs(sections: Sections, particulars: Particulars) -> dict[str, Given]:
    """Give what the hull is lofted from."""
    rows = [
        {
            "name": one.section or one.at.text,
            "x": one.at.x,
            "heights": [z.si for z in one.heights],
            "half_breadths": [y.si for y in one.half_breadths],
        }
        for one in sections.sections
    ]
    reading = (sections.reading.si if sections.reading else READING) * sections.scale
    on_paper = show(sections.reading.si if sections.reading else READING, "thickness")
    inputs = {
        "length": given(particulars.dimensions.length_between_perpendiculars),
        "sections": Given(rows, f"{len(rows)} sections ({sections.source})", sections.here),
        "reading": Given(
            reading,
            f"{on_paper} at 1:{sections.scale:g} is {show(reading, 'size')}",
            sections.reading.at if sections.reading else "a rule on paper: common practice, no source",
        ),
    }
    for name, end in (("stern", sections.stern), ("stem", sections.stem)):
        if end is not None:
            inputs[name] = Given(_end(end), f"profile by {len(end.at)} places", end.here)
    return inputs


def _end(end: EndProfile) -> dict[str, Any]:
    row: dict[str, Any] = {"x": [at.x for at in end.at], "heights": [z.si for z in end.heights]}
    breadths = {"half_breadth": end.half_breadth, "deck_half_breadth": end.deck_half_breadth}
    return row | {name: y.si for name, y in breadths.items() if y is not None}


def _uneven(sections: Sections) -> Iterator[Notice]:
    """Tell of rows that have not one figure for each height."""
    rows = [(one.here, len(one.half_breadths), "half-breadth", len(one.heights)) for one in sections.sections]
    ends = [end for end in (sections.stern, sections.stem) if end is not None]
    rows += [(end.here, len(end.at), "place", len(end.heights)) for end in ends]
    for here, count, what, heights in rows:
        if count != heights:
            message = f"{count} {what}s for {heights} heights"
            yield Notice("bad-table", here, message, hints=(f"give one {what} for each height",))


@step_of(SURE, "uncertainty.lofted", kept=True)
def lofted_sure(lofted: Lofted, sections: Sections, particulars: Particulars) -> Uses:
    """Tell how sure the lofted hull is at the usual draft."""
    draft = particulars.dimensions.draft
    inputs = lofting_inputs(sections, particulars) | {"draft": given(draft)}
    return Uses(f"lofted from {len(lofted.sections)} sections, at the draft of {draft}", inputs, sections.here)
