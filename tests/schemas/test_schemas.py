"""The schemas themselves: JSON Schema 2020-12, our keywords, and that each key says what it is for."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tenderwright.calculations.alone import input_schema
from tenderwright.calculations.registry import methods
from tenderwright.linking.prose import KINDS
from tenderwright.model.format import schemas, written
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.quantities.units import base_expression
from tenderwright.reading.layout import TABLES, YAML_FILES
from tenderwright.shapes.keywords import format_checker, validator_class
from tenderwright.shapes.quick import quick
from tenderwright.shapes.schemas import load_schema, schema_folder, schema_names
from tenderwright.shapes.validate import _HANDLERS

from .walk import Schema, subschemas

SPECIAL = {"any", "position", "fraction", "angle", "temperature", "salinity"}
"""Dimensions that are not made of base units."""

SILENT = {"$schema", "title", "description", "examples", "properties", "items", "propertyNames", "allOf", "if", "then",
          "or", "signed", "within", "uncertainty", "prose", "refers"}  # fmt: skip
"""Keywords that cannot fail by themselves, or that pass on what fails below them."""

EVERY: dict[str, Schema] = {name: load_schema(name) for name in schema_names()}
ALONE: dict[str, Schema] = {name: input_schema(method) for name, method in methods().items()}
ALL = EVERY | ALONE


@pytest.mark.parametrize("name", EVERY)
def test_a_schema_file_is_a_schema(name: str) -> None:
    Draft202012Validator.check_schema(json.loads((schema_folder() / f"{name}.schema.json").read_text("utf-8")))


@pytest.mark.parametrize("name", ALL)
def test_a_schema_written_out_is_a_schema_without_references(name: str) -> None:
    Draft202012Validator.check_schema(ALL[name])
    assert "$ref" not in json.dumps(ALL[name])


def test_the_schemas_are_what_the_nouns_declare() -> None:
    """If this fails, `python -m tenderwright.model.format` writes them anew."""
    declared = {f"{name}.schema.json": written(schema) for name, schema in schemas().items()}
    assert {path.name: path.read_text("utf-8") for path in schema_folder().glob("*.schema.json")} == declared


def test_every_file_of_the_layout_has_its_schema_and_every_schema_its_file() -> None:
    assert sorted([*YAML_FILES.values(), *TABLES.values()]) == schema_names()


@pytest.mark.parametrize("name", ALONE)
def test_every_input_says_what_it_is(name: str) -> None:
    for key, below in ALONE[name]["properties"].items():
        assert below.get("description"), key


@pytest.mark.parametrize("name", EVERY)
def test_every_key_says_what_it_is(name: str) -> None:
    """One word teaches nobody what to write."""
    for path, schema in subschemas(EVERY[name]):
        assert len(schema.get("description", "Not said here.").split()) >= 2, path
        for key, below in schema.get("properties", {}).items():
            if "/allOf/" not in path:
                assert len(below.get("description", "").split()) >= 4, f"{path}/{key}"
        if isinstance(schema.get("additionalProperties"), dict):
            assert len(schema["additionalProperties"].get("description", "").split()) >= 3, path


@pytest.mark.parametrize("name", ALL)
def test_no_mapping_takes_keys_that_it_does_not_name(name: str) -> None:
    for path, schema in subschemas(ALL[name]):
        if schema.get("type") == "object":
            assert schema.get("additionalProperties", True) is not True, path


@pytest.mark.parametrize("name", ALL)
def test_every_keyword_that_can_fail_has_a_wording(name: str) -> None:
    for path, schema in subschemas(ALL[name]):
        assert set(schema) <= SILENT | set(_HANDLERS), path


@pytest.mark.parametrize("name", EVERY)
def test_every_keyword_is_known_to_the_quick_test(name: str) -> None:
    assert quick(EVERY[name])({}) in (True, False)


@pytest.mark.parametrize("name", ALL)
def test_every_quantity_has_a_dimension_that_there_is(name: str) -> None:
    for path, schema in subschemas(ALL[name]):
        if "quantity" in schema:
            assert schema["quantity"] in SPECIAL or base_expression(schema["quantity"]), path
            assert schema["type"] == "string", path
        else:
            assert "or" not in schema, path
            assert "within" not in schema, path
            assert schema.get("money") or "signed" not in schema, path


@pytest.mark.parametrize("name", EVERY)
def test_every_name_refers_to_a_kind_of_thing_that_there_is(name: str) -> None:
    for path, schema in subschemas(EVERY[name]):
        if "refers" in schema:
            assert schema["refers"] in KINDS, path


@pytest.mark.parametrize("name", ALL)
def test_every_form_can_be_shown_by_an_example(name: str) -> None:
    """The hint beside a wrong form is an example, never a regular expression."""
    for path, schema in subschemas(ALL[name]):
        if "pattern" in schema:
            assert schema.get("examples"), path


def _examples() -> list[Any]:
    return [
        pytest.param(schema, example, id=f"{name}{path}={example!r}"[:90])
        for name, top in ALL.items()
        for path, schema in subschemas(top)
        for example in schema.get("examples", ())
    ]


@pytest.mark.parametrize(("schema", "example"), _examples())
def test_every_example_fits_its_own_schema(schema: Schema, example: object) -> None:
    validator = validator_class()(schema, format_checker=format_checker())
    assert [error.message for error in validator.iter_errors(example)] == []


def _own_examples(schema: Any, example: Any, path: str) -> Iterator[tuple[str, str, bool]]:
    """Yield each example that an input's fragment holds itself, and whether the method's example is there as well."""
    if "examples" in schema and "enum" not in schema:
        yield json.dumps(schema, sort_keys=True), path, example is not None and schema["examples"][1:] == []
    if isinstance(schema.get("properties"), Mapping):
        for key, below in schema["properties"].items():
            yield from _own_examples(below, example.get(key) if isinstance(example, Mapping) else None, f"{path}.{key}")
    if schema.get("type") == "array":
        entries = example if isinstance(example, list) else []
        first: Any = {key: one for entry in entries if isinstance(entry, Mapping) for key, one in entry.items()}
        yield from _own_examples(schema["items"], first or next(iter(entries), None), f"{path}[]")


def test_an_example_stands_once() -> None:
    """An input shows what its method's example gives it; it has one of its own only where that leaves it out."""
    shown: dict[str, list[tuple[str, bool]]] = {}
    for name, method in methods().items():
        for key, schema in method.inputs.items():
            for fragment, path, doubled in _own_examples(schema, method.example.get(key), f"{name}: {key}"):
                shown.setdefault(fragment, []).append((path, doubled))
    assert [uses[0][0] for uses in shown.values() if all(doubled for _, doubled in uses)] == []
    length = input_schema(methods()["facility.fit"])["properties"]["ship"]["properties"]["length"]
    assert length["examples"] == [methods()["facility.fit"].example["ship"]["length"]]


def test_what_the_keys_mean_is_said_in_sentences() -> None:
    for name, top in EVERY.items():
        for path, schema in subschemas(top):
            text = schema.get("description", "None needed.")
            assert text[0].isupper() or text.split()[0].endswith(":"), f"{name}{path}: {text}"
            assert text.endswith((".", "?")), f"{name}{path}: {text}"


@pytest.mark.parametrize("name", EVERY)
def test_every_number_is_bounded(name: str) -> None:
    for path, schema in subschemas(EVERY[name]):
        if schema.get("type") in ("number", "integer") and not schema.get("money"):
            assert "maximum" in schema, path
            assert "minimum" in schema or "exclusiveMinimum" in schema, path


@pytest.mark.parametrize("name", EVERY)
def test_every_bound_of_a_quantity_can_be_read(name: str) -> None:
    for path, schema in subschemas(EVERY[name]):
        for text in filter(None, schema.get("within", ())):
            assert parse_quantity(text, schema["quantity"]).text == text, path
