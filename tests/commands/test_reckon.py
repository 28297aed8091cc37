from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
import yaml
from jsonschema import Draft202012Validator

from tenderwright.calculations.registry import methods
from tenderwright.commands.reckon import NOT_FOUND

from .run import Runner

NAMES = list(methods())


@pytest.fixture
def example(tmp_path: Path) -> Path:
    return tmp_path / "input.yaml"


def write(file: Path, name: str, **changed: object) -> Path:
    file.write_text(
        yaml.safe_dump({**methods()[name].example, **changed}, sort_keys=False, allow_unicode=True), "utf-8"
    )
    return file


def no_constant(name: str) -> None:
    raise AssertionError(f"{name} is no JSON")


def test_the_list_names_every_calculation(run: Runner) -> None:
    ran = run("reckon", "--list")
    assert ran.code == 0
    assert [line.split()[0] for line in ran.out.splitlines()] == NAMES


@pytest.mark.parametrize("name", NAMES)
def test_every_example_runs_as_it_is_printed(run: Runner, example: Path, name: str) -> None:
    printed = run("reckon", name)
    assert printed.code == 0
    example.write_text(printed.out, "utf-8")
    ran = run("reckon", name, example)
    assert (ran.code, ran.err) == (0, "")
    assert methods()[name].title in ran.out
    assert "results" in ran.out


@pytest.mark.parametrize("name", NAMES)
def test_every_example_gives_its_outputs_as_json(run: Runner, example: Path, name: str) -> None:
    ran = run("reckon", name, write(example, name), "--format", "json")
    assert ran.code == 0
    made = json.loads(ran.out, parse_constant=no_constant)
    method = methods()[name]
    assert made["calculation"] == name
    assert made["inputs"].keys() == method.example.keys()
    names = [symbol.name for symbol in method.outputs]
    assert [output["name"] for output in made["outputs"]] == names
    assert all(output.get("said") == NOT_FOUND for output in made["outputs"] if output["value"] is None)
    assert made["source"]


@pytest.mark.parametrize("name", NAMES)
def test_every_schema_is_a_schema(run: Runner, name: str) -> None:
    ran = run("reckon", name, "--schema")
    assert ran.code == 0
    Draft202012Validator.check_schema(json.loads(ran.out))


@pytest.mark.parametrize("name", NAMES)
def test_every_input_is_needed_unless_it_is_optional(run: Runner, example: Path, name: str) -> None:
    method = methods()[name]
    for key in method.inputs:
        data = {k: v for k, v in method.example.items() if k != key}
        example.write_text(yaml.safe_dump(data) if data else "{}", "utf-8")
        ran = run("reckon", name, example)
        if key not in method.optional:
            assert ran.code == 1
            assert f"error[missing-key]: key `{key}` is missing" in ran.err


MEASURED, KEY = next(
    (name, key)
    for name, method in methods().items()
    for key, schema in method.inputs.items()
    if schema.get("quantity") == "length"
)
"""A calculation, and an input of it that is a length."""


@pytest.mark.parametrize(
    ("text", "column", "code"),
    [("3 kg", 1, "wrong-dimension"), ("&x 3 m", 1, "yaml-feature"), ("3", 1, "wrong-type"), ("b: c", 2, "yaml-syntax")],
)
def test_bad_input_is_told_at_its_place(run: Runner, example: Path, text: str, column: int, code: str) -> None:
    rest = {key: value for key, value in methods()[MEASURED].example.items() if key != KEY}
    example.write_text(f"{KEY}: {text}\n" + (yaml.safe_dump(rest) if rest else ""), "utf-8")
    ran = run("reckon", MEASURED, example)
    assert (ran.code, ran.out) == (1, "")
    assert f"{example}:1:{len(KEY) + 2 + column}: error[{code}]" in ran.err


def test_an_empty_file_is_told(run: Runner, example: Path) -> None:
    example.write_text("", "utf-8")
    ran = run("reckon", MEASURED, example)
    assert ran.code == 1
    assert "error[wrong-type]: expected keys with their values, got nothing" in ran.err


def test_a_key_that_is_not_known_is_told_with_the_nearest(run: Runner, example: Path) -> None:
    ran = run("reckon", MEASURED, write(example, MEASURED, **{f"{KEY}s": "1 m"}))
    assert ran.code == 1
    assert f"error[unknown-key]: key `{KEY}s` is not known here" in ran.err
    assert f"hint: did you mean `{KEY}`?" in ran.err


def test_a_file_that_is_not_there(run: Runner, tmp_path: Path) -> None:
    for path, code in ((tmp_path / "absent.yaml", "no-such-file"), (tmp_path, "not-a-file")):
        ran = run("reckon", NAMES[0], path)
        assert ran.code == 1
        assert f"error[{code}]" in ran.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["coating.paint-volum"], "there is no calculation `coating.paint-volum`"),
        (["nonsense"], "see `reckon --list`"),
        ([], "name a calculation"),
    ],
)
def test_wrong_use(run: Runner, words: list[str], said: str) -> None:
    ran = run("reckon", *words)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err


def test_a_table_is_written_in_the_units_of_its_columns(run: Runner, example: Path) -> None:
    ran = run("reckon", "condition.target-trim", write(example, "condition.target-trim"))
    head, row = ran.out.partition("transfers")[2].splitlines()[1:3]
    assert head.split() == ["source", "destination", "liquid", "mass", "t"]
    assert row.split() == ["fore", "peak", "after", "peak", "sea", "water", "0.479867"]


def test_limits_are_each_written_in_the_unit_of_their_dimension(run: Runner, example: Path) -> None:
    ran = run("reckon", "facility.slipway", write(example, "facility.slipway"))
    assert "980.000 kN" in next(line for line in ran.out.splitlines() if line.split()[:2] == ["haul", "force"])
    as_json = json.loads(run("reckon", "facility.slipway", example, "--format", "json").out)
    limits = next(one for one in as_json["outputs"] if one["name"] == "limits")
    assert (limits["value"][0]["limit"], limits["value"][0]["unit"], limits["si"][0]["limit"]) == (980.0, "kN", 980e3)
    assert [column["name"] for column in limits["columns"]][:3] == ["name", "dimension", "demand"]


def test_the_use_of_a_limit_that_is_nothing_is_null(run: Runner, example: Path) -> None:
    file = write(example, "facility.slipway", haul="0 kN")
    made = json.loads(run("reckon", "facility.slipway", file, "--format", "json").out, parse_constant=no_constant)
    use = next(one for one in made["outputs"] if one["name"] == "use")
    assert (use["value"], use["si"], use["said"]) == (None, None, NOT_FOUND)


def test_nested_inputs_are_echoed_whole(run: Runner, example: Path) -> None:
    ran = run("reckon", "condition.floating", write(example, "condition.floating"))
    echoed = ran.out.partition("inputs\n")[2].partition("results\n")[0]
    assert "- {name: lightship, mass: 440 t, x: 18.9 m, z: 3.1 m}" in echoed
    assert "half_breadths: [0.4 m, 2.5 m, 3.2 m, 3.6 m, 3.9 m]" in echoed


def test_a_list_that_is_not_found_is_said(run: Runner, example: Path) -> None:
    high = [{"name": "lightship", "mass": "440 t", "x": "18.9 m", "z": "5.0 m"}]
    ran = run("reckon", "condition.floating", write(example, "condition.floating", weights=high))
    assert ran.code == 0
    line = next(line for line in ran.out.splitlines() if line.split()[:1] == ["list"])
    assert NOT_FOUND in line


def test_the_result_is_told_in_the_units_asked_for(run: Runner, example: Path) -> None:
    write(example, "coating.soluble-salts")
    told = {units: run("reckon", "coating.soluble-salts", example, "--units", units).out for units in ("us", "both")}
    metric = run("reckon", "coating.soluble-salts", example).out
    figure = {units: re.search(r"salts +([0-9.]+) (mg/m²|µg/cm²)", text) for units, text in told.items()}
    assert "mg/m²" in metric
    assert "mg/m²" not in told["us"]
    assert figure["us"] is not None
    assert float(figure["us"][1]) * 10 == pytest.approx(float(re.findall(r"([0-9.]+) mg/m²", metric)[0]), rel=1e-5)
    assert "mg/m²" in told["both"]
    assert "µg/cm²" in told["both"]
    ran = json.loads(run("reckon", "coating.soluble-salts", example, "--units", "us", "--format", "json").out)
    salts = next(one for one in ran["outputs"] if one["name"] == "salts")
    assert salts["unit"] == "ug/cm2"
    assert salts["value"] == pytest.approx(salts["si"] * 1e5)
