"""What is written as YAML is read back the same by the reader of packages."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.reading.yaml_file import read_yaml
from tenderwright.writing.yaml_file import yaml_text

letters = st.one_of(
    st.characters(exclude_categories=("Cc", "Cs"), exclude_characters="\ufffe\uffff"), st.sampled_from("\t\n")
)
"""What may stand in a package: no control characters but tabs and ends of lines."""

words = st.one_of(
    st.text(letters, max_size=20),
    st.text(alphabet="ab1 :#-,[]{}'\"|>&*!%@`\n\t.~é\u2028\ufeff\xa0", max_size=14),
    st.sampled_from(
        [
            "",
            "yes",
            "no",
            "null",
            "true",
            "~",
            "010",
            "1e3",
            "1.10",
            "2027-05-05",
            "12:30",
            "a: b",
            "a #4",
            "- a",
            "a,b",
        ]
    ),
    st.sampled_from(
        ["lines\nof text", "lines\n\n  of text", "one\n", "\none", " a", "a ", "a:", "<item:310>", "Sa 2 1/2"]
    ),
    st.sampled_from(
        ["Fr 31 + 200 mm", "-5", "+1", ".5", "?", "---", "...", "2027-05-05 08:30", "1_000", "0x1f", ".inf"]
    ),
)
scalars = st.one_of(st.none(), st.booleans(), st.integers(-(10**16), 10**16), st.floats(-1e9, 1e9), words)
plain = st.recursive(
    scalars,
    lambda below: st.lists(below, max_size=3) | st.dictionaries(words, below, max_size=3),
    max_leaves=10,
)


def _read(text: str) -> Any:
    source, notices = read_yaml("made.yaml", text)
    assert notices == [], text
    return source.data


@settings(max_examples=600)
@given(st.dictionaries(words, plain, max_size=4))
def test_any_plain_data_comes_back(data: dict[str, Any]) -> None:
    assert _read(yaml_text(data)) == data


def test_quantities_stand_as_written_and_keys_in_their_order() -> None:
    text = yaml_text({"b": "40 ft 8 in", "a": "3/8 in", "grade": "Sa 2 1/2", "at": "Fr 31 + 200 mm", "share": "5 %"})
    assert text == "b: 40 ft 8 in\na: 3/8 in\ngrade: Sa 2 1/2\nat: Fr 31 + 200 mm\nshare: 5 %\n"


def test_short_lists_stand_on_a_line_and_prose_in_a_block() -> None:
    data = {
        "drafts": {"aft": "3.4 m", "forward": "2.9 m"},
        "blocks": {"keel": [{"at": "Fr 3", "length": "400 mm"}, {"at": "Fr 8", "note": "first\nsecond"}]},
    }
    assert yaml_text(data) == (
        "drafts: { aft: 3.4 m, forward: 2.9 m }\n"
        "blocks:\n"
        "  keel:\n"
        "    - { at: Fr 3, length: 400 mm }\n"
        "    - at: Fr 8\n"
        "      note: |-\n"
        "        first\n"
        "        second\n"
    )


def test_what_reads_as_another_type_is_quoted() -> None:
    assert yaml_text({"item": "310", "batch": "0101", "answer": "true"}) == 'item: "310"\nbatch: 0101\nanswer: "true"\n'


def test_amounts_keep_their_cents_and_days_their_form() -> None:
    assert yaml_text({"amount": Decimal("4510.40"), "day": date(2027, 5, 5)}) == "amount: 4510.40\nday: 2027-05-05\n"


def test_another_type_is_refused() -> None:
    with pytest.raises(TypeError, match="set cannot be written"):
        yaml_text({"a": {1}})  # type: ignore[dict-item]
