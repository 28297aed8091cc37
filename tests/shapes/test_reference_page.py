from __future__ import annotations

import re

import pytest
from markdown_it import MarkdownIt

from tenderwright.quantities.bounds import unit_table
from tenderwright.reading.layout import OTHER_FILES, ROWS, TABLES, YAML_FILES
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.reference_page import PAGES, pages
from tenderwright.shapes.schemas import load_schema, schema_folder
from tenderwright.shapes.validate import validate
from tests.schemas.walk import subschemas


@pytest.fixture(scope="module")
def written() -> dict[str, str]:
    return pages()


@pytest.fixture(scope="module")
def sections(written: dict[str, str]) -> dict[str, str]:
    found = {}
    for page in PAGES:
        parts = re.split(r"^## `(.+)`$", written[page.file], flags=re.MULTILINE)
        found |= dict(zip(parts[1::2], parts[2::2], strict=True))
    return found


def test_the_pages_are_what_the_schemas_say(written: dict[str, str]) -> None:
    """If this fails, `python -m tenderwright.shapes.reference_page` writes them anew."""
    assert {path.name: path.read_text("utf-8") for path in schema_folder().glob("*.md")} == written


def test_every_kind_of_file_has_a_section_on_one_page(written: dict[str, str], sections: dict[str, str]) -> None:
    headings = [line for text in written.values() for line in text.splitlines() if line.startswith("## `")]
    assert len(headings) == len(sections)
    assert set(sections) == {*YAML_FILES, *TABLES, "clauses/*.md"}
    assert set(OTHER_FILES) - set(sections) == {"owner/findings/*.csv"}
    assert "`readings_file`" in sections["owner/findings/*.yaml"]


def test_what_is_confidential_stands_apart_from_what_yards_read() -> None:
    tender, owner, docking = (set(page.files) for page in PAGES)
    assert not any(pattern.startswith("owner/") for pattern in tender)
    assert all(pattern.startswith("owner/") for pattern in owner)
    assert "owner/in-dock/*.yaml" in docking


def test_every_link_leads_to_a_section(written: dict[str, str]) -> None:
    for name, text in written.items():
        for page, anchor in re.findall(r"\]\(([a-z]*\.?[a-zA-Z]*)#([^)]+)\)", text):
            there = written[page or name]
            assert any(re.sub(r"[^a-z0-9-]", "", line[3:].lower()) == anchor for line in there.splitlines()), anchor
        for page in re.findall(r"\]\(([^)#]+)\)", text):
            assert page in written or page.startswith("tank:"), page


@pytest.mark.parametrize(("pattern", "name"), (YAML_FILES | TABLES).items())
def test_every_key_of_a_schema_has_its_row(sections: dict[str, str], pattern: str, name: str) -> None:
    """Its own row, or that of the same keys where they stand first, to which a link leads."""
    keys = {
        key
        for path, schema in subschemas(load_schema(name))
        if "allOf" not in path
        for key in schema.get("properties", {})
    }
    linked = set(re.findall(r"as \[`[^`]*`\]\([^)]*\)(?: of `([^`]*)`)?", sections[pattern]))
    there = [sections[one] for one in linked if one] + [sections["surveys/*.yaml"]]
    last = _last_keys(sections[pattern])
    assert set(load_schema(name)["properties"]) - {ROWS.get(pattern)} <= last
    assert keys - {ROWS.get(pattern)} <= last.union(*map(_last_keys, there))


def _last_keys(section: str) -> set[str]:
    rows = [line for line in section.splitlines() if line.startswith(("| `", "| **`"))]
    return {re.split(r"[.\]]+", row.split("`")[1])[-1] for row in rows}


@pytest.mark.parametrize(("pattern", "name"), YAML_FILES.items())
def test_every_section_begins_with_a_whole_file_that_fits(sections: dict[str, str], pattern: str, name: str) -> None:
    text = sections[pattern].split("```yaml\n")[1].split("```")[0]
    path = pattern.replace("*", "example")
    source, unread = read_yaml(path, text)
    assert unread == []
    assert validate(source, name) == []
    assert "as-it-is" not in text, "every text that it shows has an example at its key"
    assert sections[pattern].index("```yaml") < sections[pattern].index("| key |")


@pytest.mark.parametrize("name", [*YAML_FILES.values(), *TABLES.values()])
def test_what_people_write_in_words_has_an_example_fit_for_it(name: str) -> None:
    for path, schema in subschemas(load_schema(name)):
        if schema.get("examples", [""])[0] == "forepeak":
            assert "tank" in path + schema["description"].lower() or "called here" in schema["description"], path
        for key, below in schema.get("properties", {}).items():
            entry = below.get("items", below)
            if entry.get("type") == "string" and "enum" not in entry and "/allOf/" not in path:
                assert below.get("examples") or entry.get("examples"), f"{path}/{key}"


def test_the_same_keys_are_explained_once(sections: dict[str, str]) -> None:
    history = sections["history/*.yaml"]
    assert (
        "| `blocks.sides` | The side blocks that were hauled in under her. | list, each as [`blocks.keel[]`]("
        in history
    )
    assert "`blocks.sides[].at`" not in history
    assert "(#historyyaml) of `history/*.yaml`" in sections["owner/findings/*.yaml"]
    assert "keys as [`limits`](tender.md#facilitiesyaml) of `facilities/*.yaml`" in sections["owner/bids/*.yaml"]
    assert "words as [`changes[].cause`](docking.md" not in sections["owner/in-dock/*.yaml"]


def test_a_unit_is_listed_once_and_for_what_it_is_used_for(written: dict[str, str]) -> None:
    for what, names, _, _ in unit_table():
        assert len(set(names)) == len(names), what
    listed = {one.what: one.units for one in unit_table()}
    assert "t*m/cm" not in listed["mass"]
    assert "t*m" in listed["moment"]
    lengths = next(line for line in written["README.md"].splitlines() if line.startswith("| length |"))
    assert "`metre`" in lengths
    assert "`metres`" not in lengths, "the page says that plurals are read"


def test_every_table_is_well_made(written: dict[str, str]) -> None:
    tables = 0
    for text in written.values():
        tokens = MarkdownIt("commonmark", {"html": False}).enable("table").parse(text)
        tables += sum(token.type == "table_open" for token in tokens)
        for line in text.splitlines():
            if line.startswith("|"):
                assert len(re.findall(r"(?<!\\)\|", line)) - 1 in (2, 3, 4), line
    assert tables == len(YAML_FILES) + len(TABLES) + len(PAGES) + 2


def test_needed_keys_and_conditions_are_marked(sections: dict[str, str]) -> None:
    item = sections["items/*.yaml"]
    assert "| **`title`** |" in item
    assert "| `holds` |" in item
    assert "| **`holds[].accept`** |" in item
    assert "`lines` is needed where `kind` is `definite`, `measured`" in item
    assert "Every package needs it." in sections["package.yaml"]


@pytest.mark.parametrize("pattern", [*(pattern for pattern in YAML_FILES if pattern.startswith("owner/"))])
def test_what_is_confidential_says_so(written: dict[str, str], sections: dict[str, str], pattern: str) -> None:
    page = next(page for page in PAGES if pattern in page.files)
    assert "Confidential" in sections[pattern] or "All of it is confidential" in written[page.file]


@pytest.mark.parametrize(
    ("pattern", "row"),
    [
        ("vessel/frames.yaml", "| **`direction`** | "),
        ("vessel/zones.yaml", "| `keel` or a length: `keel` |"),
        ("vessel/openings.yaml", "| Side of the ship. | side |"),
        ("items/*.yaml", "| name of a value: "),
        ("items/*.yaml", "| day: "),
        ("owner/rates.yaml", "| Likely rate or lump sum. Or give `history`, or `hours`. | money: `84.5` |"),
    ],
)
def test_values_are_said_in_the_words_of_the_page(sections: dict[str, str], pattern: str, row: str) -> None:
    assert row in sections[pattern]
