"""Stop at once where the typesetter could not start."""

from __future__ import annotations

from tenderwright.commands.folder import WrongUse
from tenderwright.writing.typesetter_libraries import how_to_install, missing


def need_typesetter() -> None:
    """Raise WrongUse where a library of the typesetter is missing; a command that typesets asks before it reads."""
    libraries = missing()
    if libraries:
        raise WrongUse(how_to_install(libraries))
