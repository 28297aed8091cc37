"""What a command does while something in the package is still `todo`."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence

from tenderwright.calculations.steps.outcome import without_file
from tenderwright.commands.dock_papers import FROM_THE_DOCK
from tenderwright.commands.folder import WrongUse
from tenderwright.notices.render import as_text
from tenderwright.pipeline import Compiled, OwnersSide
from tenderwright.reading.package import Files
from tenderwright.shapes.todos import Todo, refused

_NEEDED = {
    "tender": "package.yaml",
    "particulars": "vessel/particulars.yaml",
    "frames": "vessel/frames.yaml",
}


def need(compiled: Compiled, *parts: str) -> None:
    """Raise WrongUse where a part that the papers at hand need waits for something that is still `todo`."""
    package = compiled.package
    for part in ("tender", *parts):
        if part == "programme":
            if package.tender is not None and package.tender.programme is None:
                raise WrongUse("nothing can be written yet: the days under `programme` are still `todo`")
        elif getattr(package, part) is None:
            raise WrongUse(f"nothing can be written yet: {without_file(package, _NEEDED[part]).why}")


_BIDS = ("items/", "owner/bids/")
"""What the sums of bids are made of."""

_CONTRACT = (*_BIDS, *FROM_THE_DOCK)
"""What the sums of a contract are made of."""


def open_in_bids(compiled: Compiled, owner: OwnersSide) -> list[Todo]:
    """Give what is still `todo` in what the sums of bids are made of."""
    return _under(_BIDS, compiled, owner)


def open_in_contract(compiled: Compiled, owner: OwnersSide) -> list[Todo]:
    """Give what is still `todo` in what the sums of a contract are made of."""
    return _under(_CONTRACT, compiled, owner)


def _under(paths: tuple[str, ...], compiled: Compiled, owner: OwnersSide) -> list[Todo]:
    todos = (*compiled.package.todos, *owner.papers.todos)
    return [todo for todo in todos if todo.place.path.startswith(paths)]


def stopped_by(todos: Iterable[Todo], files: Files) -> int:
    """Tell the values that are still `todo` and may not be any more; gives how many there are."""
    notices = refused(todos)
    sys.stderr.write(as_text(notices, files.texts))
    return len(notices)


def counted(todos: Sequence[Todo]) -> str:
    """Count values in words, to go on with: `3 values are`."""
    return "1 value is" if len(todos) == 1 else f"{len(todos)} values are"
