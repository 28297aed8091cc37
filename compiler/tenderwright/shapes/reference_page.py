"""Write the reference of the format: `python -m tenderwright.shapes.reference_page` makes the pages in schemas/."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, NamedTuple

from tenderwright.reading.layout import NEEDED, OF_THE_DOCKING, OF_THE_OWNER, OF_THE_TENDER
from tenderwright.shapes.example_file import written_example
from tenderwright.shapes.reference_index import CLAUSES, CLAUSES_SAY, index_page
from tenderwright.shapes.reference_words import words_of, written_as
from tenderwright.shapes.schemas import load_schema, schema_folder

Schema = Mapping[str, Any]
_MANY_WORDS = 6
"""A choice of so many words is printed once, and linked where it stands again."""


class Page(NamedTuple):
    """A page of the reference: what it holds is for one kind of reader."""

    file: str
    title: str
    says: str
    files: Mapping[str, str]
    """Pattern of the path to the name of the schema."""


PAGES = (
    Page("tender.md", "The tender", "What yards read, or what follows from it: ship, surveys and work.", OF_THE_TENDER),
    Page(
        "owner.md",
        "The owner's papers",
        "What the owner alone reads, before and during the tender. All of it is confidential: it never reaches a yard.",
        OF_THE_OWNER,
    ),
    Page(
        "docking.md",
        "In dock and after",
        "What is written while she is in dock, and once she is afloat again. What lies under `owner/` is confidential: "
        "it never reaches a yard.",
        OF_THE_DOCKING,
    ),
)


class Use(NamedTuple):
    """Where some keys, or a choice of words, stand first: there they are explained."""

    pattern: str
    path: str


def pages() -> dict[str, str]:
    """Make all pages, by the name of the file."""
    index = index_page((page.title, page.says, _listed(page)) for page in PAGES)
    return {"README.md": index} | {page.file: _page(page) for page in PAGES}


def _listed(page: Page) -> list[tuple[str, str, str]]:
    """Give each kind of file of a page, where it is explained, and what it is."""
    files = [(pattern, str(load_schema(name)["description"])) for pattern, name in page.files.items()]
    if page is PAGES[0]:
        files.append(("clauses/*.md", CLAUSES_SAY))
    return [(pattern, f"{page.file}#{_anchor(pattern)}", says) for pattern, says in files]


def _page(page: Page) -> str:
    links = " · ".join(f"[`{pattern}`](#{_anchor(pattern)})" for pattern, _, _ in _listed(page))
    head = (
        f"# {page.title}\n\n{page.says} How values are written, and the other files: "
        f"[the format of a package](README.md).\n\n{links}\n\n"
        "A key inside another is written with a point (`dates.closing`), an entry of a list with `[]` "
        "(`tanks[].name`), and a key that you choose with `<…>`. **Bold** keys are needed, wherever what holds them "
        "is there. No other keys may stand.\n"
    )
    sections = "".join(_file(page, pattern, load_schema(name)) for pattern, name in page.files.items())
    return head + sections + (CLAUSES if page is PAGES[0] else "")


def _anchor(pattern: str) -> str:
    return re.sub(r"[^a-z0-9_-]", "", pattern.lower())


def _file(page: Page, pattern: str, schema: Schema) -> str:
    need = " Every package needs it." if pattern in NEEDED else ""
    secret = " Confidential." if page.file == "docking.md" and pattern.startswith("owner/") else ""
    title = f"\n## `{pattern}`\n\n{schema['description']}{need}{secret}\n"
    shown = f"\n```yaml\n{written_example(schema)}```\n"
    if pattern.endswith(".csv"):
        schema = _row_of(schema)
        shown = f"\n```text\n{_first_rows(schema)}```\n"
    lines = "".join(f"\n{sentence}\n" for sentence in _conditions(schema))
    rows = "".join(_row(page, Use(pattern, path), needed, below) for path, needed, below in _keys(schema, pattern))
    kind = "column" if pattern.endswith(".csv") else "key"
    return f"{title}{shown}{lines}\n| {kind} | what it is | written as |\n|---|---|---|\n{rows}"


def _row_of(schema: Schema) -> Schema:
    """Give the schema of a row, where that of a table is of the list of them."""
    row: Schema = next((one["items"] for one in schema["properties"].values() if "items" in one), schema)
    return row


def _first_rows(schema: Schema) -> str:
    """Write the first two rows of a table: the columns, and what stands in them."""
    columns = schema["properties"]
    other = ("tank", "member", "opening", "anode", "space")
    row = ",".join(
        "" if name in other else str((*one.get("examples", ()), *one.get("enum", ()))[0])
        for name, one in columns.items()
    )
    return f"{','.join(columns)}\n{row}\n"


def _keys(schema: Schema, pattern: str, path: str = "") -> Iterator[tuple[str, bool, Schema]]:
    """Yield every key below a schema, in order, with whether it is needed, but for what is explained elsewhere."""
    for key, needed, below in _own_keys(schema):
        yield f"{path}{key}", needed, below
        inner, mark = _inside(below)
        if inner and _first(inner, Use(pattern, f"{path}{key}")) is None:
            yield from _keys(inner, pattern, f"{path}{key}{mark}.")


def _own_keys(schema: Schema) -> Iterator[tuple[str, bool, Schema]]:
    required = schema.get("required", ())
    for key, below in schema.get("properties", {}).items():
        yield key, key in required, below
    extra = schema.get("additionalProperties")
    if isinstance(extra, dict):
        yield "<…>", False, extra


def _inside(schema: Schema) -> tuple[Schema, str]:
    """Give what has keys of its own inside a key: itself, or the entries of a list, which are marked so."""
    entry: Schema = schema.get("items", {})
    if entry.get("type") == "object":
        return entry, "[]"
    return (schema, "") if schema.get("type") == "object" else ({}, "")


@cache
def _uses() -> Mapping[str, Use]:
    """Find where each set of keys and each long choice of words stands first."""
    found: dict[str, Use] = {}
    for page in PAGES:
        for pattern, name in page.files.items():
            for use, schema in _all_of(load_schema(name), Use(pattern, "")):
                for known in filter(None, (_fingerprint(schema), _long_choice(schema))):
                    found.setdefault(known, use)
    return found


def _all_of(schema: Schema, use: Use) -> Iterator[tuple[Use, Schema]]:
    yield use, schema
    for key, _, below in _own_keys(schema):
        path = f"{use.path}.{key}" if use.path else key
        inner, mark = _inside(below)
        yield Use(use.pattern, path), below
        if inner:
            yield from ((one, each) for one, each in _all_of(inner, Use(use.pattern, path + mark)) if each is not below)


def _fingerprint(schema: Schema) -> str:
    """Tell apart what has several keys by the keys, and what they say."""
    properties = schema.get("properties", {})
    told = (properties, schema.get("required"), schema.get("allOf"))
    return json.dumps(told, sort_keys=True) if len(properties) > 1 else ""


def _long_choice(schema: Schema) -> str:
    words = words_of(schema)
    return json.dumps(words) if len(words) >= _MANY_WORDS else ""


def _first(schema: Schema, here: Use) -> Use | None:
    """Give the use by which these keys are explained, where that is another than this one."""
    first = _uses().get(_fingerprint(schema))
    return first if first and (first.pattern, first.path.removesuffix("[]")) != here else None


def _row(page: Page, use: Use, needed: bool, schema: Schema) -> str:
    name = f"**`{use.path}`**" if needed else f"`{use.path}`"
    return f"| {name} | {_cell(schema['description'])} | {_cell(_written(page, use, schema))} |\n"


def _cell(text: str) -> str:
    safe = text if "`" in text else text.replace("<", "&lt;")
    return safe.replace("|", "\\|").replace("\n", " ")


def _written(page: Page, use: Use, schema: Schema) -> str:
    """Say how a value is written, with a link where that is explained already."""
    inner, mark = _inside(schema)
    first = _first(inner, use)
    if first:
        return f"{'list, each' if mark else 'keys'} as {_link(page, use, first)}"
    words = _uses().get(_long_choice(schema))
    if words and words != use:
        what = "keys: " if schema.get("type") == "object" else "list: " if schema.get("type") == "array" else ""
        return f"{what}words as {_link(page, use, words)}"
    return written_as(schema)


def _link(page: Page, here: Use, to: Use) -> str:
    there = next(one for one in PAGES if to.pattern in one.files)
    url = f"{'' if there == page else there.file}#{_anchor(to.pattern)}"
    if not to.path:
        return f"[`{to.pattern}`]({url})"
    return f"[`{to.path}`]({url})" + ("" if to.pattern == here.pattern else f" of `{to.pattern}`")


def _conditions(schema: Schema) -> Iterator[str]:
    """Say what is needed only for some choices, such as the lines of an item that is priced."""
    needs: dict[tuple[str, str], list[str]] = {}
    for rule in schema.get("allOf", ()):
        for key, test in rule["if"].get("properties", {}).items():
            for needed in rule["then"].get("required", ()):
                needs.setdefault((key, needed), []).append(f"`{test['const']}`")
    for (key, needed), choices in needs.items():
        yield f"`{needed}` is needed where `{key}` is {', '.join(choices)}."


def main() -> None:
    """Write the pages beside the schemas."""
    for name, text in pages().items():
        (schema_folder() / name).write_text(text, "utf-8")


if __name__ == "__main__":
    main()
