"""The standard uncertainty of a quantity: by the ± that is written after it, or the usual one of its field."""

from __future__ import annotations

from math import sqrt

from tenderwright.model.marks import Measured
from tenderwright.model.noun import Noun
from tenderwright.quantities.quantity import Quantity, parse_quantity


def standard_uncertainty(noun: Noun, field: str) -> float:
    """Give the standard uncertainty of a field, in SI; the usual one where it is left out.

    Formula: u = a/sqrt(3) for a band of half-width a. Source: JCGM 100:2008, 4.3.7.
    """
    figure = getattr(noun, field)
    if isinstance(figure, Quantity) and figure.within is not None:
        return figure.within / sqrt(3)
    usual = usual_uncertainty(type(noun), field).usual
    if not usual.endswith("%"):
        return parse_quantity(usual, "any").si
    share = parse_quantity(usual, "fraction").si
    return share * abs(figure.si) if isinstance(figure, Quantity) else 0.0


def usual_uncertainty(noun: type[Noun], field: str) -> Measured:
    """Give the usual standard uncertainty of a field, with its source."""
    return next(mark for mark in noun.__annotations__[field].__metadata__ if isinstance(mark, Measured))
