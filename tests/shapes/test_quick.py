"""The quick test says of any data what the full validator says of it."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.reading.layout import schema_of
from tenderwright.reading.package import read_package
from tenderwright.shapes.keywords import format_checker, validator_class
from tenderwright.shapes.quick import NotQuick, quick
from tenderwright.shapes.schemas import load_schema, schema_names
from tenderwright.shapes.validate import validator_of
from tenderwright.starter.write import write_starter

anything = st.recursive(
    st.none() | st.booleans() | st.integers(-3, 12) | st.floats(-2, 12) | st.sampled_from(["", "a", "keel",
    "3 m", "-3 m", "3 kg", "2026-02-30", "2027-04-12", "Fr 3"]),
    lambda below: st.lists(below, max_size=3) | st.dictionaries(st.sampled_from(["a", "b", "c"]), below, max_size=3),
    max_leaves=6,
)  # fmt: skip
leaves = st.fixed_dictionaries({}, optional={
    "type": st.sampled_from(["string", "object", "array", "integer", "number", "boolean", "null", ["string", "null"]]),
    "exclusiveMinimum": st.integers(-1, 5), "exclusiveMaximum": st.integers(0, 9),
    "minProperties": st.integers(0, 2), "maxProperties": st.integers(0, 2),
    "enum": st.just(["a", "keel"]), "const": st.just("a"), "pattern": st.just("^[a-z]+$"), "format": st.just("date"),
    "minLength": st.integers(0, 3), "maxLength": st.integers(0, 3), "minItems": st.integers(0, 2),
    "maxItems": st.integers(0, 2),
    "minimum": st.integers(-1, 5), "maximum": st.integers(0, 9), "quantity": st.sampled_from(["length",
    "position", "any"]),
    "or": st.just(["keel"]), "signed": st.booleans(),
    "within": st.sampled_from([["", "2 m"], ["4 m", ""]]), "money": st.booleans(), "required": st.just(["a"]),
    "description": st.just("A word."),
})  # fmt: skip
schemas = st.recursive(
    leaves,
    lambda below: st.fixed_dictionaries({}, optional={
        "properties": st.dictionaries(st.sampled_from(["a", "b"]), below, max_size=2),
        "additionalProperties": st.booleans() | below, "items": below, "propertyNames": below,
        "required": st.just(["b"]),
        "if": below, "then": below, "allOf": st.lists(below, min_size=1, max_size=2),
        "anyOf": st.lists(below, min_size=1, max_size=2),
    }),
    max_leaves=5,
)  # fmt: skip


@settings(max_examples=400)
@given(schemas, anything)
def test_quick_and_full_agree_on_any_schema_and_any_data(schema: dict[str, Any], data: object) -> None:
    full = validator_class()(schema, format_checker=format_checker())
    assert quick(schema)(data) == full.is_valid(data)


@pytest.mark.parametrize("keyword", ["oneOf", "not", "else", "$ref", "multipleOf", "dependentRequired", "misspelt"])
def test_a_keyword_that_is_not_known_is_not_passed_over(keyword: str) -> None:
    with pytest.raises(NotQuick):
        quick({"properties": {"a": {"items": {keyword: 1}}}})


def test_a_choice_that_is_not_text_and_a_form_that_is_no_date_are_refused() -> None:
    for schema in ({"enum": [1]}, {"const": True}, {"format": "email"}):
        with pytest.raises(NotQuick):
            quick(schema)


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    root = tmp_path_factory.mktemp("package")
    write_starter(root)
    return {name: source.data for path, source in read_package(root).sources.items() if (name := schema_of(path))}


def _spots(data: object, at: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    below = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    return [at, *(spot for key, value in below for spot in _spots(value, (*at, key)))]


@settings(max_examples=150)
@given(st.data())
def test_quick_and_full_agree_on_a_spoilt_file(files: dict[str, Any], data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(sorted(files)))
    spoilt = copy.deepcopy(files[name])
    spot = data.draw(st.sampled_from(_spots(spoilt)[1:]))
    holder = spoilt
    for key in spot[:-1]:
        holder = holder[key]
    if data.draw(st.booleans()):
        holder[spot[-1]] = data.draw(anything)
    else:
        del holder[spot[-1]]
    assert quick(load_schema(name))(spoilt) == validator_of(name).is_valid(spoilt)


def test_nothing_fits_no_schema_of_a_file() -> None:
    assert not any(quick(load_schema(name))(None) for name in schema_names())
