"""Find every method that `reckon` runs alone: each module of a subject that declares a METHOD."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from typing import Any

import tenderwright.calculations as calculations
from tenderwright.calculations.method import Method

_NOT_SUBJECTS = {"tenderwright.calculations.ship", "tenderwright.calculations.steps"}
"""Folders that feed methods and declare none to be run alone."""


def _declared() -> Iterator[Method[Any]]:
    for subject in pkgutil.iter_modules(calculations.__path__, "tenderwright.calculations."):
        if not subject.ispkg or subject.name in _NOT_SUBJECTS:
            continue
        folder = import_module(subject.name)
        for module in pkgutil.iter_modules(folder.__path__, f"{subject.name}."):
            method = getattr(import_module(module.name), "METHOD", None)
            if isinstance(method, Method):
                yield method


@cache
def methods() -> dict[str, Method[Any]]:
    """Give every method by name, in order of the names."""
    return {method.name: method for method in sorted(_declared(), key=lambda method: method.name)}
