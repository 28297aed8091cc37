"""Break the example of a method that `reckon` runs alone, and judge what comes of it."""

from __future__ import annotations

import json
import random
import re
import warnings
from argparse import Namespace
from collections.abc import Callable, Iterator, Mapping
from contextlib import redirect_stderr, redirect_stdout
from copy import deepcopy
from io import StringIO
from pathlib import Path
from typing import Any

import yaml

from tenderwright.calculations.method import Method
from tenderwright.commands.exits import CLEAN, MISTAKES
from tenderwright.commands.reckon import run
from tenderwright.quantities.bounds import MOST

_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")

Break = Callable[[Any], Any]


def _times(factor: float) -> Break:
    return lambda number: number * factor


NUMBERS: dict[str, Break] = {
    "nothing": lambda _: 0,
    "negative": _times(-1),
    "tiny": _times(1e-9),
    "small": _times(1e-2),
    "double": _times(2),
    "large": _times(1e3),
    "huge": lambda _: 1e15,
}
LISTS: dict[str, Break] = {
    "emptied": lambda _: [],
    "shortened": lambda entries: entries[:-1],
    "one only": lambda entries: entries[:1],
    "lengthened": lambda entries: [*entries, *deepcopy(entries[-1:])],
    "repeated": lambda entries: deepcopy(entries) * 40,
    "turned round": lambda entries: entries[::-1],
}
WORDS: dict[str, Break] = {"another word": lambda _: "thwart", "no word": lambda _: ""}


def broken(method: Method[Any], chance: random.Random, most: int = 2) -> tuple[dict[str, Any], str]:
    """Give the example of a method with one break, or up to `most`, and say what was done."""
    data = deepcopy(dict(method.example))
    done = []
    for name in sorted(method.optional - data.keys()):
        if chance.random() < 0.3:
            data[name] = _written(method.inputs[name], chance)
            done.append(f"{name} given")
    for _ in range(chance.randint(1, most)):
        places = list(_places(data))
        if not places:
            break
        path = chance.choice(places)
        done.append(f"{'.'.join(map(str, path))} {_break(data, path, chance)}")
    return data, "; ".join(done)


def _written(schema: Mapping[str, Any], chance: random.Random) -> Any:
    """Write what a schema asks for."""
    if "oneOf" in schema or "anyOf" in schema:
        return _written(chance.choice(schema.get("oneOf") or schema["anyOf"]), chance)
    if "enum" in schema:
        return chance.choice(schema["enum"])
    if "quantity" in schema:
        return chance.choice(schema.get("examples") or [MOST[schema["quantity"]]])
    match schema["type"]:
        case "object":
            return {name: _written(one, chance) for name, one in schema["properties"].items()}
        case "array":
            return [_written(schema["items"], chance) for _ in range(chance.randint(schema.get("minItems", 0), 3))]
        case "boolean":
            return chance.random() < 0.5
        case "integer":
            return chance.choice([0, 1, 3, 1000])
        case "number":
            return chance.choice([0, 0.5, 1, 20.0])
        case "string":
            return chance.choice(["keel", "sea water", ""])
    raise ValueError(f"no example of {schema}")


def _places(data: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    if path:
        yield path
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for key, entry in entries:
        yield from _places(entry, (*path, key))


def _break(data: Any, path: tuple[Any, ...], chance: random.Random) -> str:
    holder = data
    for key in path[:-1]:
        holder = holder[key]
    value = holder[path[-1]]
    if isinstance(value, dict):
        del holder[path[-1]]
        return "gone"
    if isinstance(value, bool):
        holder[path[-1]] = not value
        return "turned"
    number = value if isinstance(value, (int, float)) else _NUMBER.match(value) if isinstance(value, str) else None
    kinds = LISTS if isinstance(value, list) else WORDS if number is None else NUMBERS
    kind = chance.choice(list(kinds))
    if isinstance(number, re.Match):
        new = NUMBERS[kind](float(number[0]))
        holder[path[-1]] = f"{new!r}{value[number.end() :]}"
    else:
        new = kinds[kind](value)
        holder[path[-1]] = int(new) if isinstance(value, int) and float(new).is_integer() else new
    return kind


def reckoned(method: Method[Any], data: dict[str, Any], file: Path, form: str = "full") -> tuple[int, str, str]:
    """Give exit code, output and notices of `reckon` for an input; a warning is an exception."""
    file.write_text(yaml.safe_dump(data, sort_keys=False, allow_unicode=True), "utf-8")
    asked = Namespace(calculation=method.name, file=file, list=False, schema=False, format=form, units="metric")
    with redirect_stdout(StringIO()) as out, redirect_stderr(StringIO()) as err, warnings.catch_warnings():
        warnings.simplefilter("error")
        return run(asked), out.getvalue(), err.getvalue()


def fault_of(method: Method[Any], data: dict[str, Any], file: Path) -> str:
    """Say what is wrong with how `reckon` takes an input: an answer in strict JSON, or a notice; else nothing."""
    for form in ("json", "full"):
        code, out, err = reckoned(method, data, file, form)
        if code == MISTAKES:
            return "" if "error[" in err and not out else "a mistake without a notice"
        if code != CLEAN:
            return f"exit {code}"
        if form == "json":
            json.loads(out, parse_constant=_refuse)
        elif "beyond all bounds" in out:
            return f"a figure beyond all bounds:\n{out}"
    return ""


def _refuse(name: str) -> None:
    raise ValueError(f"{name} is no JSON")
