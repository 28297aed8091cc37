"""The record of calculation as JSON, as `schemas/outputs/record.schema.json` describes it."""

from __future__ import annotations

import json
import math
from typing import Any

from tenderwright import __version__
from tenderwright.calculations.method import Method
from tenderwright.calculations.plain import plain
from tenderwright.calculations.shown import in_shown_units
from tenderwright.calculations.value import Given, Record, Value, Working
from tenderwright.notices import Place
from tenderwright.quantities.display import shown_unit, si_unit, significant
from tenderwright.writing.by_reference import Written
from tenderwright.writing.json_file import strict

SHOWN = 6
"""Significant digits of a figure as shown."""


def record_json(record: Record) -> bytes:
    """Write every value with the method, its source and the very inputs it was calculated from.

    A list or a record that stood before is named by where it did: the readings of a survey, the offsets of the hull.
    """
    uses: dict[int, tuple[Working, list[Value]]] = {}
    for value in record.values.values():
        uses.setdefault(id(value.working), (value.working, []))[1].append(value)
    methods = {working.method.name: working.method for working, _ in uses.values()}
    data = {
        "made_by": f"tenderwright {__version__}",
        "methods": {name: _method(method) for name, method in sorted(methods.items())},
        "uses": _each_once([_use(record, working, values) for working, values in uses.values()]),
        "not_calculated": [
            {"name": name, "outcome": outcome, "why": why}
            for outcome, kept in (("lacking", record.missing), ("failed", record.failed))
            for name, why in sorted(kept.items())
        ],
    }
    return (json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False) + "\n").encode()


def _each_once(uses: list[dict[str, Any]]) -> list[dict[str, Any]]:
    written = Written()
    for number, use in enumerate(uses):
        for key in ("inputs", "values"):
            for name, one in use[key].items() if key == "inputs" else enumerate(use[key]):
                one["figure"] = written.once(one["figure"], "uses", number, key, name, "figure")
    return uses


def _method(method: Method[Any]) -> dict[str, Any]:
    source = method.source
    return {
        "title": method.title,
        "formula": method.formula,
        "source": source.title,
        "clause": source.clause,
        "standing": source.standing,
        "valid": method.valid,
        "cautions": list(method.cautions),
    }


def _use(record: Record, working: Working, values: list[Value]) -> dict[str, Any]:
    return {
        "method": working.method.name,
        "about": working.about,
        "inputs": {name: _input(record, given) for name, given in working.inputs.items()},
        "values": [_value(value) for value in values],
    }


def _input(record: Record, given: Given) -> dict[str, Any]:
    return {"figure": strict(plain(given.si)), "shown": given.text, "origin": _origin(record, given)}


def _origin(record: Record, given: Given) -> dict[str, Any]:
    if isinstance(given.origin, Place):
        return {"file": given.origin.path, "line": given.origin.line, "column": given.origin.column}
    names = [part.strip() for part in given.origin.split(",")]
    return {"values": names} if all(name in record.values for name in names) else {"words": given.origin}


def _value(value: Value) -> dict[str, Any]:
    return {
        "name": value.name,
        "output": value.symbol.name,
        "meaning": value.symbol.meaning,
        "figure": strict(plain(value.si)),
        "si_unit": si_unit(value.dimension),
        "shown": strict(_digits(in_shown_units(value.symbol, plain(value.si)))),
        "unit": shown_unit(value.unit),
    }


def _digits(figure: Any) -> Any:
    if isinstance(figure, list):
        return [_digits(one) for one in figure]
    if isinstance(figure, dict):
        return {key: _digits(one) for key, one in figure.items()}
    if isinstance(figure, bool) or not isinstance(figure, (int, float)) or not math.isfinite(figure):
        return figure
    return significant(float(figure), SHOWN)
