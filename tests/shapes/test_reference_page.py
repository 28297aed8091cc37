from __future__ import annotations

import re

import pytest
from markdown_it import MarkdownIt

from tenderwright.quantities.bounds import unit_table
from tenderwright.reading.layout import TABLES, YAML_FILES
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.reference_page import reference_page
from tenderwright.shapes.schemas import load_schema, schema_folder
from tenderwright.shapes.validate import validate
from tests.schemas.walk import subschemas


def test_the_page_is_what_the_schemas_say() -> None:
    """If this fails, `python -m tenderwright.shapes.reference_page` writes it anew."""
    assert (schema_folder() / "README.md").read_text("utf-8") == reference_page()


@pytest.fixture(scope="module")
def sections() -> dict[str, str]:
    parts = re.split(r"^## `(.+)`$", reference_page(), flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def test_every_kind_of_file_has_a_section_in_the_order_of_the_layout(sections: dict[str, str]) -> None:
    assert list(sections) == [*YAML_FILES, *TABLES, "clauses/*.md"]


@pytest.mark.parametrize(("pattern", "name"), YAML_FILES.items())
def test_every_key_of_a_schema_has_its_row(sections: dict[str, str], pattern: str, name: str) -> None:
    keys = {
        key
        for path, schema in subschemas(load_schema(name))
        if "allOf" not in path
        for key in schema.get("properties", {})
    }
    rows = [line for line in sections[pattern].splitlines() if line.startswith(("| `", "| **`"))]
    last = {re.split(r"[.\]]+", row.split("`")[1])[-1] for row in rows}
    assert keys <= last
    assert len(rows) >= len(keys)


@pytest.mark.parametrize(("pattern", "name"), YAML_FILES.items())
def test_every_section_begins_with_a_whole_file_that_fits(sections: dict[str, str], pattern: str, name: str) -> None:
    text = sections[pattern].split("```yaml\n")[1].split("```")[0]
    path = pattern.replace("*", "example")
    source, unread = read_yaml(path, text)
    assert unread == []
    assert validate(source, name) == []
    assert "as-it-is" not in text, "every text that it shows has an example at its key"
    assert sections[pattern].index("```yaml") < sections[pattern].index("| key |")


def test_a_unit_is_listed_once_and_for_what_it_is_used_for() -> None:
    for what, names, _, _ in unit_table():
        assert len(set(names)) == len(names), what
    listed = {one.what: one.units for one in unit_table()}
    assert "t*m/cm" not in listed["mass"]
    assert "t*m" in listed["moment"]


def test_every_table_is_well_made() -> None:
    tokens = MarkdownIt("commonmark", {"html": False}).enable("table").parse(reference_page())
    assert sum(token.type == "table_open" for token in tokens) == len(YAML_FILES) + len(TABLES) + 2
    for line in reference_page().splitlines():
        if line.startswith("|") and "written as | means" not in line:
            cells = len(re.findall(r"(?<!\\)\|", line)) - 1
            assert cells in (2, 3, 4), line


def test_needed_keys_and_conditions_are_marked(sections: dict[str, str]) -> None:
    item = sections["items/*.yaml"]
    assert "| **`title`** |" in item
    assert "| `holds` |" in item
    assert "| **`holds[].accept`** |" in item
    assert "`lines` is needed where `kind` is `definite`, `measured`" in item
    assert "Confidential" in sections["owner/rates.yaml"]
    assert "Every package needs it." in sections["package.yaml"]


@pytest.mark.parametrize(
    ("pattern", "row"),
    [
        ("vessel/frames.yaml", "| **`direction`** | "),
        ("vessel/zones.yaml", "| `keel` or a length |"),
        ("items/*.yaml", "| name of a value |"),
        ("items/*.yaml", "| day |"),
        ("owner/rates.yaml", "| `lines.<…>.rate` | Likely rate or lump sum. Or give `history`, or `hours`. | money |"),
    ],
)
def test_values_are_said_in_the_words_of_the_page(sections: dict[str, str], pattern: str, row: str) -> None:
    assert row in sections[pattern]
