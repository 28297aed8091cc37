"""`tenderwright reckon`: run one calculation alone on a small YAML file."""

from __future__ import annotations

import json
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from itertools import zip_longest
from math import isfinite
from pathlib import Path
from typing import Any

from tenderwright.calculations.alone import Output, input_schema, run_alone, to_si
from tenderwright.calculations.method import BY_ROW, Method, OutOfRange, Symbol
from tenderwright.calculations.registry import methods
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.notices.render import as_text
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.customs import telling_in
from tenderwright.quantities.display import shown_unit, si_unit, significant
from tenderwright.reading.package import read_one
from tenderwright.shapes.keywords import format_checker, validator_class
from tenderwright.shapes.validate import validate_with
from tenderwright.writing.json_file import strict

NOT_FOUND = "not found for these inputs"
"""What is said where a method has no figure for an output."""


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("calculation", nargs="?", metavar="CALCULATION", help="its name, as in `reckon --list`")
    parser.add_argument(
        "file", nargs="?", type=Path, metavar="FILE.yaml", help="the inputs; without it an example is shown"
    )
    parser.add_argument("--list", action="store_true", help="list the calculations")
    parser.add_argument("--schema", action="store_true", help="print the JSON Schema of the input file")
    parser.add_argument("--units", choices=("metric", "us", "both"), default="metric", help="the units of the result")
    parser.add_argument("--format", choices=("full", "json"), default="full", help="how the result is written")


def run(arguments: Namespace) -> int:
    """Run one calculation."""
    if arguments.list:
        width = max(len(name) for name in methods())
        for method in methods().values():
            print(f"{method.name:<{width}}  {method.title}")
        return CLEAN
    if not arguments.calculation:
        raise WrongUse("name a calculation, or ask for `reckon --list`")
    found = methods().get(arguments.calculation)
    if found is None:
        hint = "; ".join(did_you_mean(arguments.calculation, methods())) or "see `reckon --list`"
        raise WrongUse(f"there is no calculation `{arguments.calculation}`: {hint}")
    if arguments.schema:
        print(json.dumps(input_schema(found), indent=2, ensure_ascii=False))
        return CLEAN
    if arguments.file is None:
        _show_example(found)
        return CLEAN
    return _reckon(found, arguments.file, arguments.format, arguments.units)


def _show_example(method: Method[Any]) -> None:
    import yaml

    print(f"# {method.title}\n# {method.formula}\n# valid: {method.valid}\n# source: {method.source}")
    print(yaml.safe_dump(dict(method.example), sort_keys=False, allow_unicode=True), end="")


def _reckon(method: Method[Any], file: Path, form: str, units: str) -> int:
    source, notices = read_one(file)
    if source is not None and not notices:
        validator = validator_class()(input_schema(method), format_checker=format_checker())
        notices = [notice for _, notice in validate_with(source, validator)]
    outputs: list[list[Output]] = []
    if source is not None and not notices:
        try:
            for system in ("metric", "us") if units == "both" else (units,):
                with telling_in(system):
                    outputs.append(run_alone(method, source.data))
        except OutOfRange as error:
            notices = [Notice("out-of-range", Place(str(file)), str(error), hints=(f"valid: {method.valid}",))]
    if source is None or notices:
        texts = {str(file): source.text if source else ""}
        sys.stderr.write(as_text(sort_notices(notices), texts))
        return MISTAKES
    told, *more = outputs
    print(_as_json(method, source.data, told) if form == "json" else _as_text(method, source.data, told, *more))
    return CLEAN


def _as_json(method: Method[Any], data: Any, outputs: list[Output]) -> str:
    made = {
        "calculation": method.name,
        "title": method.title,
        "formula": method.formula,
        "source": str(method.source),
        "valid": method.valid,
        "inputs": _inputs(method.inputs, data),
        "outputs": [_output(one) for one in outputs],
        "cautions": list(method.cautions),
    }
    return json.dumps(strict(made), indent=2, ensure_ascii=False, allow_nan=False)


def _output(output: Output) -> dict[str, Any]:
    symbol = output.symbol
    named = {"name": symbol.name, "meaning": symbol.meaning, "unit": symbol.unit, "dimension": symbol.dimension}
    columns = {"columns": [_column(one) for one in symbol.columns]} if symbol.columns else {}
    said = {"said": NOT_FOUND} if output.value is None else {}
    return named | columns | {"value": output.value, "si": output.si} | said


def _column(symbol: Symbol) -> dict[str, str]:
    return {"name": symbol.name, "meaning": symbol.meaning, "unit": symbol.unit, "dimension": symbol.dimension}


def _inputs(schemas: Any, data: Any) -> dict[str, Any]:
    """Give every input as written, with its SI value and the SI unit where it is a quantity."""
    return {
        name: {
            "written": value,
            "si": to_si(schemas[name], value),
            "unit": si_unit(str(schemas[name].get("quantity", ""))),
            "meaning": schemas[name].get("description", ""),
        }
        for name, value in data.items()
    }


def _as_text(method: Method[Any], data: Any, outputs: list[Output], beside: Sequence[Output] = ()) -> str:
    """Write the result, and where `beside` gives it in the other units, each figure once more in those."""
    lines = [
        method.title,
        f"  formula   {method.formula}",
        f"  source    {method.source}",
        f"  valid     {method.valid}",
        "inputs",
    ]
    for name, value in data.items():
        lines += _input(name, value)
    lines.append("results")
    width = max(len(one.symbol.name) for one in outputs)
    for one, other in zip_longest(outputs, beside):
        lines += _result(one, width)
        if other is not None and other.symbol != one.symbol:
            lines += _result(other, width)
    lines += [f"caution   {caution}" for caution in method.cautions]
    return "\n".join(lines)


def _input(name: str, value: Any) -> list[str]:
    """Write an input in full, as it could stand in a file."""
    if not isinstance(value, (list, dict)):
        return [f"  {name} = {_cell(value)}"]
    import yaml

    text = yaml.safe_dump(value, sort_keys=False, allow_unicode=True, default_flow_style=None, width=110)
    return [f"  {name} =", *(f"    {line}" for line in text.splitlines())]


def _result(output: Output, width: int) -> list[str]:
    symbol, value = output.symbol, output.value
    head = f"  {symbol.name:<{width}}  "
    if isinstance(value, list) and value and symbol.dimension in ("table", "text"):
        lines = _table(symbol, value) if symbol.columns else map(str, value)
        return [f"{head}{symbol.meaning}", *(f"      {line}" for line in lines)]
    return [f"{head}{_figure(value, symbol.unit)}".ljust(width + 26) + f"   {symbol.meaning}"]


def _figure(value: Any, unit: str) -> str:
    if value is None:
        return NOT_FOUND
    if value == []:
        return "none"
    figures = value if isinstance(value, list) else [value]
    return f"{', '.join(_cell(one, unit) for one in figures)} {shown_unit(unit)}".rstrip()


def _table(symbol: Symbol, rows: list[dict[str, Any]]) -> list[str]:
    """Set the rows of a table under its columns, each with its unit."""
    lines = [[f"{one.name} {shown_unit(one.unit)}".rstrip() for one in symbol.columns]]
    lines += [[_in_row(one, row) for one in symbol.columns] for row in rows]
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    return ["  ".join(map(str.ljust, line, widths)).rstrip() for line in lines]


def _in_row(column: Symbol, row: dict[str, Any]) -> str:
    value = row[column.name]
    if column.dimension == BY_ROW and value is not None:
        return f"{_cell(value, row['unit'])} {shown_unit(row['unit'])}"
    return _cell(value, column.unit)


def _cell(value: Any, unit: str = "") -> str:
    if value is None:
        return "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, float):
        return str(value)
    if not isfinite(value):
        return "beyond all bounds"
    return str(int(value)) if unit in ("", "each") and value.is_integer() else significant(value, 6)
