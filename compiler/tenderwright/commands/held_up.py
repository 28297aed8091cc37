"""Tell what the owner's register of approvals holds up: the issue of a tender, or the close of a docking."""

from __future__ import annotations

import sys
from datetime import date

from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices.render import as_text
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package
from tenderwright.planning.approvals import register
from tenderwright.planning.schedule import Schedule
from tenderwright.quantities.customs import telling_in
from tenderwright.reading.package import Files

REGISTER = "owner/approvals.yaml"


def held_up(gate: str, day: date | None, what: str, compiled: Compiled, owner: OwnersSide) -> bool:
    """Name each approval that holds up a gate on a day, and say what was not done; tell whether there is any."""
    if REGISTER in owner.papers.broken.files:
        todos = [f"`{one.key}` on line {one.place.line}" for one in owner.papers.todos if one.place.path == REGISTER]
        why = f"still `todo`: {', '.join(todos)}" if todos else "it has a mistake"
        print(f"{REGISTER} cannot be read whole ({why}), so what holds this up is not known; {what}", file=sys.stderr)
        return True
    told = _told(gate, day, compiled.package, owner.papers, owner.schedule) if day is not None else []
    if told:
        sys.stderr.write("".join(f"{one}\n" for one in told))
        cure = "when they are given, write `granted:` with the day of the letter, or of a condition `met:`"
        print(f"{REGISTER} says that this waits for them: {cure}; {what}", file=sys.stderr)
    return bool(told)


def issue_held_up(files: Files) -> bool:
    """Tell whether the issue of a tender is held up, by the owner's papers as they lie beside the package."""
    if REGISTER not in files.sources and not any(one.place.path == REGISTER for one in files.notices):
        return False
    compiled = compile_package(files)
    tender = compiled.package.tender
    if tender is None or not compiled.sound:
        return False  # told as the commit is compiled
    owner = compile_owner(files, compiled)
    mistakes = [one for one in owner.notices if one.place.path == REGISTER and one.severity == "error"]
    sys.stderr.write(as_text(mistakes, files.texts))
    return held_up("issue", tender.dates.issued, "nothing was issued", compiled, owner)


def _told(gate: str, day: date, package: Package, papers: OwnerPapers, schedule: Schedule | None) -> list[str]:
    with telling_in(package.units, american=package.american):
        kept = register(papers, package, schedule)
        found = kept.holding(gate, day) if kept is not None else ()
        return [f"{one.here.path}:{one.here.line}: {one.title} ({one.given_by}): {why}" for one, why in found]
