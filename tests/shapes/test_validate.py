"""Each keyword of the schemas gives a notice in our own words, at its place, with a cure."""

from __future__ import annotations

import re
from typing import Any

import pytest

from tenderwright.notices import Notice
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.keywords import format_checker, validator_class
from tenderwright.shapes.validate import validate, validate_with

RAW = re.compile(
    r"is not of type|is not one of \[|required property|does not match|non-empty|is too (short|long)|is not a '"
    r"|is not valid under|less than the m|greater than the m|were unexpected|enough properties|[{}\[\]]"
)
"""What sentences of the validator's own look like."""


def notices(schema: dict[str, Any], text: str) -> list[Notice]:
    source, unread = read_yaml("f.yaml", text)
    assert unread == []
    validator = validator_class()(schema, format_checker=format_checker())
    found = [notice for _, notice in validate_with(source, validator)]
    for notice in found:
        assert not RAW.search(notice.message), notice.message
        assert notice.place.path == "f.yaml"
    return found


def only(schema: dict[str, Any], text: str) -> Notice:
    (notice,) = notices(schema, text)
    return notice


def at(schema: dict[str, Any]) -> dict[str, Any]:
    """Put a schema under a key, after a text that is not ASCII."""
    return {"properties": {"é": {}, "key": schema}}


LENGTH = {"type": "string", "quantity": "length", "examples": ["4.2 m"]}
EXTENT = {"type": "string", "quantity": "any", "examples": ["120 m2", "35 each"]}
WORD = {"title": "Identifier", "pattern": "^[a-z-]+$", "examples": ["sea-chest"]}
CASES = [
    ("unknown-key", {"additionalProperties": False, "properties": {"trim": {}}}, "{trm: 1}", 14,
     "key `trm` is not known here", "did you mean `trim`?"),
    ("unknown-key", {"additionalProperties": False, "properties": {"trim": {}, "gm": {}}}, "{colour: 1}", 14,
     "key `colour` is not known here", "known keys: gm, trim"),
    ("unknown-key", {"additionalProperties": False, "properties": {"why": {}}}, "{why: paint, 2 m}", 26,
     "key `2 m` is not known here", "a comma inside `{ }` begins another key"),
    ("missing-key", {"required": ["trim"], "properties": {"trim": {"description": "Trim.", "examples": ["0.3 m"]}}},
     "{}", 8, "key `trim` is missing", "`trim`: Trim"),
    ("wrong-type", {"type": "object"}, "[1]", 13, "expected keys with their values, got a list", None),
    ("wrong-type", {"type": "array"}, "some text", 13, "expected a list, got text `some text`", None),
    ("wrong-type", {"type": "integer"}, "2.5", 13, "expected a whole number, got a number `2.5`", None),
    ("wrong-type", {"type": "number"}, "true", 13, "expected a number, got true or false `true`", None),
    ("wrong-type", {"type": "boolean"}, "no", 13, "expected true or false, got text `no`", None),
    ("wrong-type", {"type": "string"}, "1.10", 13, "expected text, got a number `1.10`", "put it in quotes"),
    ("wrong-type", {"type": "string"}, "", 13, "expected text, got nothing", "write a value after the colon"),
    ("wrong-type", {"type": ["string", "number"]}, "[]", 13, "expected text or a number, got a list", None),
    ("wrong-type", LENGTH, "4.2", 13, "expected text, got a number `4.2`", "write it with its unit, as in `4.2 m`"),
    ("wrong-type", EXTENT, "27", 13, "expected text, got a number `27`",
     "write it with its unit, as in `120 m2` or `35 each`"),
    ("wrong-choice", {"enum": ["dry", "afloat"]}, "aflaot", 13, "`aflaot` is not one of the choices",
     "did you mean `afloat`?"),
    ("wrong-choice", {"enum": ["dry", "afloat"]}, "zzz", 13, "`zzz` is not one of the choices",
     "one of `dry`, `afloat`"),
    ("wrong-choice", {"const": "keel"}, "kel", 13, "`kel` is not one of the choices", "did you mean `keel`?"),
    ("wrong-choice", {"propertyNames": {"enum": ["tugs"]}}, "{tug: 1}", 14, "`tug` is not one of the choices",
     "did you mean `tugs`?"),
    ("wrong-form", WORD, "Sea Chest", 13, "`Sea Chest` is not written as identifier", "write it as in `sea-chest`"),
    ("wrong-form", {"propertyNames": WORD}, "{A: 1}", 14, "`A` is not written as identifier",
     "write it as in `sea-chest`"),
    ("wrong-form", {"anyOf": [{"const": "soon"}, {"format": "date"}, WORD]}, "A b", 13,
     "`A b` is not `soon` or a date such as `2027-04-12` or identifier such as `sea-chest`", None),
    ("wrong-type", {"anyOf": [{"const": "soon"}, {"type": "string", "format": "date"}]}, "3", 13,
     "expected text, got a number `3`", None),
    ("bad-date", {"format": "date"}, "2026-02-30", 13, "`2026-02-30` is not a date of the calendar",
     "write year-month-day"),
    ("bad-date", {"format": "date"}, "12/04/2027", 13, "`12/04/2027` is not a date of the calendar",
     "write year-month-day"),
    ("bad-date", {"format": "date"}, "2027-W15-1", 13, "`2027-W15-1` is not a date of the calendar",
     "write year-month-day"),
    ("out-of-bounds", {"minItems": 1}, "[]", 13, "needs at least 1 entry", None),
    ("out-of-bounds", {"minItems": 2}, "[1]", 13, "needs at least 2 entries", None),
    ("out-of-bounds", {"maxItems": 1}, "[1, 2]", 13, "has more than 1 entry", None),
    ("out-of-bounds", {"minLength": 1}, "''", 13, "is empty", None),
    ("out-of-bounds", {"maxLength": 3}, "long", 13, "is longer than 3 characters", None),
    ("out-of-bounds", {"minimum": 1}, "0", 13, "`0` is less than 1", "write a number that is 1 or more"),
    ("out-of-bounds", {"maximum": 10}, "11", 13, "`11` is more than 10", "write a number that is 10 or less"),
    ("out-of-bounds", {"exclusiveMinimum": 0}, "0", 13, "`0` is not more than 0", "write a number that is more than 0"),
    ("out-of-bounds", {"exclusiveMaximum": 1}, "1", 13, "`1` is not less than 1", "write a number that is less than 1"),
    ("out-of-bounds", {"minProperties": 1}, "{}", 13, "needs at least 1 key", None),
    ("out-of-bounds", {"maxProperties": 1}, "{a: 1, b: 2}", 13, "has more than 1 key", None),
    ("out-of-bounds", {"type": "integer", "minimum": 1, "maximum": 9}, "10", 13, "`10` is more than 9",
     "write a number that is 1 or more and 9 or less"),
    ("out-of-bounds", {"format": "date"}, "9999-01-01", 13, "`9999-01-01` is not a date from 1500-01-01 to 2299-12-31",
     "look at the year"),
    ("out-of-bounds", {"quantity": "fraction"}, "650 %", 13, "`650 %` is more than 100 %",
     "write what it is, from nothing to 100 %; is the unit the right one?"),
    ("out-of-bounds", {"quantity": "position"}, "Fr 90000", 13, "`Fr 90000` is not a frame from -200 to 2000", None),
    ("bad-quantity", LENGTH, "12 metr", 13, "unknown unit `metr` in `12 metr`", "did you mean `metre`?"),
    ("bad-quantity", LENGTH, "'5,5 m'", 13, "`5,5 m` has a comma in its number", "write a point for decimals"),
    ("bad-quantity", LENGTH, "-1 m", 13, "`-1 m` is negative, and this cannot be", None),
    ("bad-quantity", {"quantity": "position"}, "frame 3", 13, "cannot read `frame 3` as a position along the ship",
     "write a frame as in `Fr 31 + 200 mm`"),
    ("wrong-dimension", LENGTH, "12 kg", 13, "expected a length, got a mass, `12 kg`", "write it as in `12.4 m`"),
    ("ambiguous-unit", {"quantity": "mass"}, "5 tons", 13, "`tons` in `5 tons` has several meanings",
     "write one of `t`"),
    ("bad-money", {"money": True}, "12.345", 13, "`12.345` is not an amount of money with at most two decimals",
     "write it as in `1250`"),
    ("bad-money", {"money": True}, "-1", 13, "`-1` is not an amount of money with at most two decimals",
     "write it as in `1250`"),
]  # fmt: skip


@pytest.mark.parametrize(("code", "schema", "text", "column", "message", "hint"), CASES)
def test_each_keyword_in_our_own_words(
    code: str, schema: dict[str, Any], text: str, column: int, message: str, hint: str | None
) -> None:
    notice = only(at(schema), f"{{é: ü, key: {text}}}")
    assert (notice.code, notice.place.line, notice.place.column) == (code, 1, column)
    assert notice.message == message
    if hint is None:
        assert notice.hints == ()
    else:
        assert notice.hints[0].startswith(hint)


def test_a_key_of_the_file_that_stands_in_a_list_is_sent_to_the_margin() -> None:
    entries = {"items": {"additionalProperties": False, "properties": {"found": {}}}}
    (notice,) = notices({"properties": {"findings": entries, "drafts": {}}}, "findings: [{drafts: 1}]")
    assert notice.message == "key `drafts` is not known here"
    assert notice.hints == (
        "`drafts` belongs to the file itself: begin its line at the left margin, outside all lists",
    )


@pytest.mark.parametrize(
    ("schema", "text"),
    [
        (LENGTH, "40 ft 8 in"),
        ({"quantity": "length", "or": ["keel"]}, "keel"),
        ({"quantity": "length", "signed": True}, "-1 m"),
        ({"quantity": "temperature"}, "-1 degC"),
        ({"quantity": "position"}, "Fr -3 - 200 mm"),
        ({"money": True}, "84.5"),
        ({"money": True}, "0"),
        ({"format": "date"}, "2028-02-29"),
        ({"type": "number"}, "1e3"),
        ({"type": "integer"}, "3.0"),
    ],
)
def test_what_is_well_gives_no_notice(schema: dict[str, Any], text: str) -> None:
    assert notices(at(schema), f"{{é: ü, key: {text}}}") == []


def test_an_example_of_the_missing_key_is_shown() -> None:
    schema = {"required": ["trim"], "properties": {"trim": {"description": "Trim.", "examples": ["0.3 m"]}}}
    assert only(schema, "{}").hints == ("`trim`: Trim", "for example `trim: 0.3 m`")


def test_a_choice_may_depend_on_a_kind_without_a_raw_sentence() -> None:
    text = "item: 420\ntitle: T\nkind: measured\nphase: dry\nscope: S\n"
    source, _ = read_yaml("items/420.yaml", text)
    ((path, notice),) = validate(source, "item")
    assert (path, notice.code, notice.message) == ((), "missing-key", "key `lines` is missing")


def test_every_mistake_of_a_file_is_told_in_one_pass() -> None:
    text = "item: 0\ntitel: T\nkind: mesured\nphase: dry\nscope: S\nwhere: {extent: {from: Fr 3, to: 12 kg}}\n"
    source, _ = read_yaml("items/420.yaml", text)
    found = [(notice.place.line, notice.code) for _, notice in validate(source, "item")]
    assert sorted(found) == [
        (1, "out-of-bounds"),
        (2, "unknown-key"),
        (3, "wrong-choice"),
        (6, "wrong-dimension"),
    ]


def test_a_lost_line_above_a_list_is_told_once() -> None:
    text = (
        "item: 420\ntitle: T\nkind: measured\nphase: dry\nscope: S\nrequirements:\n  - One.\n"
        "  - { line: a, text: A, price: lump }\n  - { line: b, text: B, price: lump }\n"
    )
    source, _ = read_yaml("items/420.yaml", text)
    found = {(notice.code, notice.cause) for _, notice in validate(source, "item")}
    assert {cause for code, cause in found if code == "wrong-type"} == {"items/420.yaml requirements"}
    assert all("lines" in note.text for _, one in validate(source, "item") for note in one.notes)
