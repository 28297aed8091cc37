"""Which files of a package are read as what, and which may lie in it without being read."""

from __future__ import annotations

from fnmatch import fnmatchcase

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading.layout import OTHER_FILES, YAML_FILES, is_ignored, is_other, schema_of

PARTS = ["items", "vessel", "owner", "bids", "surveys", "clauses", "build", "420-x.yaml", "tanks.yaml", "a.csv", "b.md"]


@given(st.lists(st.sampled_from(PARTS), min_size=1, max_size=4).map("/".join))
def test_a_star_stands_for_any_name_in_its_folder(path: str) -> None:
    def matches(pattern: str) -> bool:
        return path.count("/") == pattern.count("/") and fnmatchcase(path, pattern)

    assert schema_of(path) == next((schema for pattern, schema in YAML_FILES.items() if matches(pattern)), None)
    assert is_other(path) is any(matches(pattern) for pattern in OTHER_FILES)


LEFT = "README.md items/README.md LICENSE .git items/.swp items/.cache/a.yaml .github/a.yaml"


@pytest.mark.parametrize("path", [*LEFT.split(), "drawings/d/a.pdf", "owner/documents/a.pdf", "build/yard/a.html"])
def test_what_is_not_for_the_compiler_is_left(path: str) -> None:
    assert is_ignored(path)


@pytest.mark.parametrize("path", ["items/LICENSE", "readme.md", "owner/photographs/a.jpg", "drawings.yaml", "a.b/c.md"])
def test_what_has_no_place_is_not_ignored(path: str) -> None:
    assert not is_ignored(path)
