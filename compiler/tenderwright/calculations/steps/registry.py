"""Every step of the ship's calculation, as declared in the modules of `ship/`."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from typing import Any

import tenderwright.calculations.ship as ship
from tenderwright.calculations.steps.step import Step


@cache
def steps() -> tuple[Step[Any], ...]:
    """Give every step, module by module."""
    return tuple(_declared())


def _declared() -> Iterator[Step[Any]]:
    for module in pkgutil.iter_modules(ship.__path__, "tenderwright.calculations.ship."):
        for thing in vars(import_module(module.name)).values():
            if isinstance(thing, Step) and thing.function.__module__ == module.name:
                yield thing
