"""`record` lists what was calculated and what was not, as lines and as JSON, and runs it all again."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tenderwright.calculations.plain import plain
from tenderwright.calculations.registry import methods
from tenderwright.shapes.schemas import schema_folder
from tenderwright.writing.by_reference import LEAST
from tenderwright.writing.json_file import strict
from tests.pipeline.packages import marram

from .run import Runner, package

AFLOAT = ("condition.arrival.trim", "tank.forepeak.volume", "hydrostatics.stated.displacement")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return package(tmp_path / "package")


def test_it_lists_what_was_calculated_and_what_the_rest_would_take(run: Runner, root: Path) -> None:
    lines = run("record", root).out.splitlines()
    assert lines[0].startswith("calculated: ")
    assert any(line.endswith("Drafts, trim, list and metacentric height from weights") for line in lines)
    (lacking,) = [line for line in lines if line.startswith("  it needs vessel/docking-plan.yaml: ")]
    assert "docking.*" in lacking


def test_check_ends_with_what_was_not_calculated_and_how_to_learn_more(run: Runner, root: Path) -> None:
    out = run("check", root).out
    assert "  it needs vessel/docking-plan.yaml: " in out
    assert "More about what was calculated and what was not: tenderwright record\nnext: " in out


def test_as_json_it_is_what_its_schema_says(run: Runner, root: Path) -> None:
    made = json.loads(run("record", root, "--format", "json").out, parse_constant=pytest.fail)
    schema = json.loads((schema_folder() / "outputs" / "record.schema.json").read_text("utf-8"))
    Draft202012Validator.check_schema(schema)
    Draft202012Validator(schema).validate(made)
    assert {use["method"] for use in made["uses"]} == set(made["methods"])
    names = [value["name"] for use in made["uses"] for value in use["values"]]
    assert len(names) == len(set(names))
    assert set(AFLOAT) <= set(names)


def whole(data: Any, made: Any) -> Any:
    """Put what stands elsewhere in the file where it is named, as a reader who has nothing but the file would."""
    if isinstance(data, dict) and list(data) == ["$ref"]:
        found = made
        for step in data["$ref"].removeprefix("#/").split("/"):
            found = found[int(step) if isinstance(found, list) else step.replace("~1", "/").replace("~0", "~")]
        return whole(found, made)
    if isinstance(data, list):
        return [whole(entry, made) for entry in data]
    return {key: whole(entry, made) for key, entry in data.items()} if isinstance(data, dict) else data


@pytest.mark.parametrize("name", ["starter", "marram"])
def test_a_reader_can_calculate_every_value_from_the_json_alone(run: Runner, tmp_path: Path, name: str) -> None:
    root = package(tmp_path / "package") if name == "starter" else marram(tmp_path / "marram")
    made = json.loads(run("record", root, "--format", "json").out, parse_constant=pytest.fail)
    known = methods()
    for use in made["uses"]:
        given = {key: whole(one["figure"], made) for key, one in use["inputs"].items()}
        found = plain(dict(known[use["method"]].run(**given)))
        for value in use["values"]:
            assert repr(whole(value["figure"], made)) == repr(strict(found[value["output"]])), value["name"]


def test_nothing_long_is_written_twice(run: Runner, tmp_path: Path) -> None:
    made = json.loads(run("record", marram(tmp_path / "marram"), "--format", "json").out)
    texts = [text for use in made["uses"] for one in use["inputs"].values() for text in long_ones(one["figure"])]
    assert len(texts) == len(set(texts)) > 100


def long_ones(data: Any) -> Iterator[str]:
    if isinstance(data, (list, dict)):
        text = json.dumps(data)
        yield from [text] if len(text) >= LEAST else []
        for entry in data.values() if isinstance(data, dict) else data:
            yield from long_ones(entry)


def test_each_origin_among_values_is_a_value(run: Runner, root: Path) -> None:
    made = json.loads(run("record", root, "--format", "json").out)
    names = {value["name"] for use in made["uses"] for value in use["values"]}
    named = [origin for use in made["uses"] for given in use["inputs"].values() for origin in [given["origin"]]]
    assert {name for origin in named for name in origin.get("values", ())} <= names


@pytest.mark.parametrize("name", AFLOAT)
def test_a_value_carried_out_to_reckon_gives_the_same_figure(
    run: Runner, root: Path, tmp_path: Path, name: str
) -> None:
    written = run("explain", root, name, "--format", "yaml").out
    file = tmp_path / "carried.yaml"
    file.write_text(written, "utf-8")
    method = written.splitlines()[1].split()[3]
    reckoned = json.loads(run("reckon", method, file, "--format", "json").out)
    record = json.loads(run("record", root, "--format", "json").out)
    (value,) = [v for use in record["uses"] for v in use["values"] if v["name"] == name]
    (output,) = [o for o in reckoned["outputs"] if o["name"] == value["output"]]
    assert output["si"] == value["figure"]
