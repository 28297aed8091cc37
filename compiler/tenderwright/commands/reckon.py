"""`tenderwright reckon`: run one calculation alone on a small YAML file."""

from __future__ import annotations

import json
import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Any

from tenderwright.calculations.alone import Output, input_schema, run_alone
from tenderwright.calculations.method import Method, OutOfRange
from tenderwright.calculations.registry import methods
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.folder import WrongUse
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.notices.render import as_text
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.display import shown_unit, significant
from tenderwright.reading.package import read_one
from tenderwright.shapes.keywords import format_checker, validator_class
from tenderwright.shapes.validate import validate_with


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("calculation", nargs="?", metavar="CALCULATION", help="its name, as in `reckon --list`")
    parser.add_argument(
        "file", nargs="?", type=Path, metavar="FILE.yaml", help="the inputs; without it an example is shown"
    )
    parser.add_argument("--list", action="store_true", help="list the calculations")
    parser.add_argument("--schema", action="store_true", help="print the JSON Schema of the input file")
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
    return _reckon(found, arguments.file, arguments.format)


def _show_example(method: Method[Any]) -> None:
    import yaml

    print(f"# {method.title}\n# {method.formula}\n# valid: {method.valid}\n# source: {method.source}")
    print(yaml.safe_dump(dict(method.example), sort_keys=False, allow_unicode=True), end="")


def _reckon(method: Method[Any], file: Path, form: str) -> int:
    source, notices = read_one(file)
    if source is not None and not notices:
        validator = validator_class()(input_schema(method), format_checker=format_checker())
        notices = [notice for _, notice in validate_with(source, validator)]
    outputs: list[Output] = []
    if source is not None and not notices:
        try:
            outputs = list(run_alone(method, source.data))
        except OutOfRange as error:
            notices = [Notice("out-of-range", Place(str(file)), str(error), hints=(f"valid: {method.valid}",))]
    if notices:
        texts = {str(file): source.text if source else ""}
        sys.stderr.write(as_text(sort_notices(notices), texts))
        return MISTAKES
    assert source is not None
    print(_as_json(method, source.data, outputs) if form == "json" else _as_text(method, source.data, outputs))
    return CLEAN


def _as_json(method: Method[Any], data: Any, outputs: list[Output]) -> str:
    return json.dumps(
        {
            "calculation": method.name,
            "title": method.title,
            "formula": method.formula,
            "source": str(method.source),
            "valid": method.valid,
            "inputs": _inputs(method.inputs, data),
            "outputs": [
                {
                    "name": o.name,
                    "meaning": o.meaning,
                    "value": o.value,
                    "si": o.si,
                    "unit": o.unit,
                    "dimension": o.dimension,
                }
                for o in outputs
            ],
            "cautions": list(method.cautions),
        },
        indent=2,
        ensure_ascii=False,
    )


def _inputs(schemas: Any, data: Any) -> dict[str, Any]:
    """Give every input as written, with its SI value and the SI unit where it is a quantity."""
    from tenderwright.calculations.alone import to_si
    from tenderwright.quantities.display import si_unit

    return {
        name: {
            "written": value,
            "si": to_si(schemas[name], value),
            "unit": si_unit(str(schemas[name].get("quantity", ""))),
            "meaning": schemas[name].get("description", ""),
        }
        for name, value in data.items()
    }


def _as_text(method: Method[Any], data: Any, outputs: list[Output]) -> str:
    lines = [
        method.title,
        f"  formula   {method.formula}",
        f"  source    {method.source}",
        f"  valid     {method.valid}",
        "inputs",
    ]
    for name, value in data.items():
        lines.append(f"  {name} = {value if isinstance(value, (str, int, float)) else f'({len(value)} entries)'}")
    lines.append("results")
    width = max((len(o.name) for o in outputs), default=0)
    for output in outputs:
        lines += _result(output, width)
    lines += [f"caution   {caution}" for caution in method.cautions]
    return "\n".join(lines)


def _result(output: Output, width: int) -> list[str]:
    value, unit = output.value, shown_unit(output.unit)
    head = f"  {output.name:<{width}}  "
    if isinstance(value, list) and value and isinstance(value[0], dict):
        rows = ["  ".join(f"{key} {_cell(entry)}" for key, entry in row.items()) for row in value]
        return [f"{head}{output.meaning}", *(f"      {row}" for row in rows)]
    if isinstance(value, list):
        return [f"{head}{', '.join(_cell(entry) for entry in value)} {unit}   {output.meaning}"]
    return [f"{head}{_cell(value)} {unit}".ljust(width + 26) + f"   {output.meaning}"]


def _cell(value: Any) -> str:
    if value is None:
        return "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    return significant(value, 6) if isinstance(value, float) else str(value)
