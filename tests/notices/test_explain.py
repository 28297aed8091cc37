"""Explanations are short and whole, and their examples can be read."""

from __future__ import annotations

import re

import pytest

from tenderwright.notices.codes import CHECK_CODES, CODES, OWNER_CHECK_CODES
from tenderwright.notices.explain import UnknownCode, explanation
from tenderwright.reading.yaml_file import read_yaml

_SECTIONS = ["Why it matters", "Wrong", "Right", "How to mend it"]
_READ_WRONGLY = {"yaml-syntax", "duplicate-key", "yaml-feature", "lost-comment"}
"""Codes whose wrong example is one that reading refuses."""


def _example(code: str, section: str) -> tuple[str, str]:
    match = re.search(rf"## {section}\n\n```(\w+)\n(.*?)\n```\n", explanation(code), re.DOTALL)
    assert match, (code, section)
    return match[1], match[2]


@pytest.mark.parametrize("code", CODES)
def test_an_explanation_has_its_parts_in_order(code: str) -> None:
    text = explanation(code)
    assert text.startswith("# ")
    assert re.findall(r"^## (.*)$", text, re.MULTILINE) == _SECTIONS
    assert len(text.split()) < 260


@pytest.mark.parametrize("code", CODES)
def test_the_right_example_is_read_and_differs_from_the_wrong_one(code: str) -> None:
    language, right = _example(code, "Right")
    _, wrong = _example(code, "Wrong")
    assert right != wrong
    if language == "yaml":
        _, notices = read_yaml("example.yaml", right)
        assert notices == []


@pytest.mark.parametrize("code", sorted(_READ_WRONGLY))
def test_the_wrong_example_gives_its_notice(code: str) -> None:
    _, wrong = _example(code, "Wrong")
    _, notices = read_yaml("example.yaml", wrong)
    assert code in {notice.code for notice in notices}


@pytest.mark.parametrize("code", [*CHECK_CODES, *OWNER_CHECK_CODES])
def test_a_trade_check_states_its_ground(code: str) -> None:
    why = explanation(code).split("## Why it matters")[1].split("## Wrong")[0]
    assert re.search(
        r"CFR|FAR|UFC|ISO|GAO|ASCE|NAVSEA|Derrett|MSC/Circ|TB 55-|no source|no single source|geometry|derived", why
    )


def test_an_unknown_code_suggests_a_known_one() -> None:
    with pytest.raises(UnknownCode, match="no notice code `late-raport`") as raised:
        explanation("late-raport")
    assert raised.value.hints == ("did you mean `late-report`?",)
