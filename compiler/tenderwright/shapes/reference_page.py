"""Write the reference of the format: `python -m tenderwright.shapes.reference_page` makes schemas/README.md."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from tenderwright.quantities.bounds import FIRST_FRAME, LAST_FRAME, unit_table
from tenderwright.reading.layout import NEEDED, TABLES, YAML_FILES
from tenderwright.shapes.example_file import written_example
from tenderwright.shapes.keywords import EARLIEST, LATEST
from tenderwright.shapes.schemas import load_schema, schema_folder

Schema = Mapping[str, Any]

_HEAD = """# The format of a package

Every file of a package and every key in it. This page is made from the schemas beside it by
`python -m tenderwright.shapes.reference_page`; an editor that knows YAML schemas shows the same text as you type, where
a file begins with `# yaml-language-server: $schema=` and the path of its schema.

In the tables a key inside another is written with a point (`dates.closing`), an entry of a list with `[]`
(`tanks[].name`), and a key that you choose with `<…>`. **Bold** keys are needed, wherever what holds them is there.
No other keys may stand.

## How values are written

| written as | means |
|---|---|
| a length, a mass … | Text: a number and its unit. `12.4 m`, `40 ft 8 in`, `24'-6 1/2"`, `24-6-4 ft-in-8` (feet, inches and eighths, as tables of offsets have it), `3/8 in`, `1-3/8"`, `20.4 lb plate`, `10.2# plate`, `120 m2`, `35 h`. A point for decimals. Commas are read where they can only set off thousands, as in `1,234,567 lb`; `1,200 lb` is refused. `ton`, `gallon`, `mile` and `cwt` are refused, since they mean several things: write `t`, `long_ton` (also `LT`) or `short_ton`; `US_gal` or `imp_gal`; `nmi` or `statute_mile`; `long_cwt` or `short_cwt`. Never less than nothing, unless the table says *may be negative*. |
| ± | Where the table says *± may follow*, a figure may be written with half the width of the band in which it surely lies: `628 t ± 6 t`, `628 t ± 1 %`. It is taken as rectangular, its standard uncertainty being that half over √3 (GUM, JCGM 100:2008, 4.3.7). Where none is written, the usual standard uncertainty stands for it that the table names. |
| a quantity | The same, of any kind. |
| a position | A frame, `Fr 31`, `Fr 31 + 200 mm` (forward of it), a distance forward of the after perpendicular, `18.4 m`, or one from either perpendicular or a frame, `12 m abaft FP`, `40 ft aft of FP`, `3 m forward of AP`. |
| `word` or a length | One of the words, or a quantity. |
| name of a tank, an item … | The identifier of a thing elsewhere in the package. A name that leads nowhere is a mistake. |
| prose | Text in CommonMark, without raw HTML. It may refer to things: `<item:420>`, `[the forepeak](tank:forepeak)`, `<value:coating.underwater.area>`, `<clause:hot-work>`, `<drawing:d-12>`, `<frame:31>`; or to a part of the specification, `<part:blocks>`, which is printed with its number and title. |
| money | A number in the currency of package.yaml, with at most two decimals: `1250`, `84.5`. |
| date | Year-month-day: `2027-04-12`. |
| day | A date, or a day counted from an event of the programme: `docking + 3 d`, `undocking - 1 d`, `arrival`. The events are award, arrival, docking, undocking and redelivery. |
| `todo` | Stands for any value that is not known yet; `todo, ask the yard` says more. It is no mistake: `check` lists it, drafts print text as "To be written", and what rests on it is left out and says so. `issue`, `addendum` and `close` refuse it. In quotes it is a word like others. |

A number is from nothing to a million and a date from {EARLIEST} to {LATEST}, unless the table says otherwise. A
position is on a frame from {FIRST_FRAME} to {LAST_FRAME}. What no ship has is reported at its place.

In the schemas these are the keywords `quantity` (with `or` for the words that may stand instead, `within` for
bounds, and `uncertainty` where ± may follow), `refers`, `prose` and `money`, with `signed` where a quantity or an amount may be negative; all others are those
of JSON Schema 2020-12.

## Units

These may be written, and others made of them, such as `kg/h`: with `/` or `per`, `*` or `·`, powers as `m2`, `m²`,
`sq m` or `m^2`, in the singular or the plural, with a full stop after an abbreviation or without, and words in small
letters or capitals. What is printed, such as `long ton/ft` or `US gal`, is read back. More of a thing than the last
column is refused, unless the table of the file says otherwise.

| what | units | also read as | at most |
|---|---|---|---|
{UNITS}
"""  # noqa: E501 - a row of a table is one line

_TYPES = {
    "string": "text",
    "integer": "whole number",
    "number": "number",
    "boolean": "`true` or `false`",
    "object": "keys",
    "array": "list",
}


def reference_page() -> str:
    """Make the page: how values are written, and a table of keys for every kind of file."""
    files = "".join(_file(pattern, load_schema(name)) for pattern, name in YAML_FILES.items())
    files += "".join(_table(pattern, load_schema(name)) for pattern, name in TABLES.items()) + _CLAUSES
    groups: dict[str, list[str]] = {}
    for pattern in (*YAML_FILES, *TABLES, "clauses/*.md"):
        groups.setdefault(_part(pattern), []).append(f"- [`{pattern}`](#{_anchor(pattern)})\n")
    contents = "\n".join(f"{title}:\n\n{''.join(lines)}" for title, lines in groups.items())
    asked = {what.replace("_", " ") for what in _measured(list(map(load_schema, YAML_FILES.values())))}
    units = "\n".join(
        f"| {one.what} | {_listed(one.units)} | {_listed(one.also)} | {one.most} |"
        for one in unit_table()
        if one.what in asked
    )
    head = _HEAD.format(EARLIEST=EARLIEST, LATEST=LATEST, FIRST_FRAME=FIRST_FRAME, LAST_FRAME=LAST_FRAME, UNITS=units)
    return f"{head}\n## Files\n\n{contents}{files}"


def _measured(schema: Any) -> Iterator[str]:
    """Yield what the quantities below a schema measure."""
    entries = schema if isinstance(schema, list) else schema.values() if isinstance(schema, Mapping) else ()
    for below in entries:
        yield from _measured(below)
    if isinstance(schema, Mapping) and isinstance(schema.get("quantity"), str):
        yield schema["quantity"]


def _part(pattern: str) -> str:
    """Name the part of a package's life that a file belongs to."""
    if pattern.startswith(("owner/in-dock", "owner/findings", "owner/closing")):
        return "In dock and after"
    if pattern.startswith("owner/"):
        return "The owner's own papers"
    return "The ship" if pattern.startswith(("vessel/", "history/", "surveys/")) else "The tender"


def _listed(names: tuple[str, ...]) -> str:
    return ", ".join(f"`{name}`" for name in names)


def _anchor(pattern: str) -> str:
    return re.sub(r"[^a-z0-9_-]", "", pattern.lower())


def _file(pattern: str, schema: Schema) -> str:
    need = " Every package needs it." if pattern in NEEDED else ""
    secret = " Confidential: it never reaches the yard." if pattern.startswith("owner/") else ""
    rows = "".join(_row(path, needed, below) for path, needed, below in _keys(schema))
    lines = "".join(f"\n{sentence}\n" for sentence in _conditions(schema))
    title = f"\n## `{pattern}`\n\n{schema.get('description', schema['title'])}{need}{secret}\n"
    return f"{title}{lines}{_shown(schema)}\n| key | what it is | written as | for example |\n|---|---|---|---|\n{rows}"


def _shown(schema: Schema) -> str:
    """Show a short whole file; a table of rows shows its own."""
    if "as_built_mm" in schema.get("properties", {}):
        return ""
    return f"\n```yaml\n{written_example(schema)}```\n"


def _table(pattern: str, schema: Schema) -> str:
    """Describe the rows of a CSV file, a line for each column, and show the beginning of one."""
    columns = schema["properties"]
    row = ",".join(
        str(one["examples"][0]) if name != "tank" and name != "member" else "" for name, one in columns.items()
    )
    shown = f"\n```text\n{','.join(columns)}\n{row}\n```\n"
    return _file(pattern, schema).replace("| key |", "| column |") + shown


_CLAUSES = """
## `clauses/*.md`

General requirements and conditions, a clause to a file, in CommonMark without raw HTML. The number before the first
hyphen of the file's name is the number that is printed, and orders the clauses; the rest of the name is the identifier
by which items refer to the clause. The first line, where it begins with `# `, is the title. The text may refer to
things of the package as any prose does.

```markdown
# Hot work

No hot work begins before the certificate of the day is posted at the gangway; see <clause:gas-free>.
```

This would stand in `clauses/07-hot-work.md`, and be clause 7, `<clause:hot-work>`.
"""


def _keys(schema: Schema, path: str = "") -> Iterator[tuple[str, bool, Schema]]:
    """Yield every key below a schema, in order, with whether it is needed."""
    required = schema.get("required", ())
    for key, below in schema.get("properties", {}).items():
        yield from _key(f"{path}{key}", key in required, below)
    extra = schema.get("additionalProperties")
    if isinstance(extra, dict):
        yield from _key(f"{path}<…>", False, extra)


def _key(path: str, needed: bool, schema: Schema) -> Iterator[tuple[str, bool, Schema]]:
    yield path, needed, schema
    entry = schema.get("items", {})
    if entry.get("type") == "object":
        yield from _keys(entry, f"{path}[].")
    elif schema.get("type") == "object":
        yield from _keys(schema, f"{path}.")


def _row(path: str, needed: bool, schema: Schema) -> str:
    name = f"**`{path}`**" if needed else f"`{path}`"
    what = schema.get("description") or schema.get("title", "")
    return f"| {name} | {_cell(what)} | {_cell(_written_as(schema))} | {_cell(_example(schema))} |\n"


def _cell(text: str) -> str:
    safe = text if "`" in text else text.replace("<", "&lt;")
    return safe.replace("|", "\\|").replace("\n", " ")


def _written_as(schema: Schema) -> str:
    """Say how a value is written, in a few words."""
    if schema.get("type") == "array":
        entry = schema.get("items", {})
        return "list" if entry.get("type") == "object" else f"list: {_written_as(entry)}"
    if schema.get("type") == "object":
        return _names(schema) if isinstance(schema.get("additionalProperties"), dict) else "keys"
    return _scalar(schema) + _bounds(schema)


def _scalar(schema: Schema) -> str:
    if "quantity" in schema:
        return _quantity(schema)
    if "refers" in schema:
        return f"name of {_a(schema['refers'])}"
    if "enum" in schema:
        return ", ".join(f"`{choice}`" for choice in schema["enum"])
    if "anyOf" in schema:
        return "day"
    for keyword in ("prose", "money"):
        if schema.get(keyword):
            return keyword + (", may be negative" if schema.get("signed") else "")
    if schema.get("format") == "date":
        return "date"
    if str(schema.get("pattern", "")).startswith("^(award|"):
        return "day"
    return "identifier" if schema.get("title") == "Identifier" else _TYPES[str(schema.get("type", "string"))]


def _quantity(schema: Schema) -> str:
    dimension = str(schema["quantity"])
    words = [f"`{word}`" for word in schema.get("or", ())]
    what = "a quantity" if dimension == "any" else _a(dimension.replace("_", " "))
    negative = ", may be negative" if schema.get("signed") else ""
    known = schema.get("uncertainty")
    band = f"; ± may follow, usually {known['usual']} ({known['source']})" if known else ""
    return " or ".join([*words, what]) + negative + _said_bounds(*schema.get("within", ("", ""))) + band


def _a(word: str) -> str:
    return {"each": "a count"}.get(word, f"{'an' if word[0] in 'aeiou' else 'a'} {word}")


def _bounds(schema: Schema) -> str:
    """Say the bounds of a number, but for the most of all, which the head of the page gives."""
    low, high = schema.get("minimum", ""), schema.get("maximum", "")
    if "exclusiveMinimum" in schema:
        return f", more than {schema['exclusiveMinimum']}" + (f", {high} or less" if high not in _ALL else "")
    if low == -(10**12):
        return ", may be negative"
    return _said_bounds(low if low != 0 else "", high if high not in _ALL else "") if schema.get("type") else ""


_ALL = ("", 1_000_000, 10**12)


def _said_bounds(low: object, high: object) -> str:
    if low != "" and high != "":
        return f", {low} to {high}"
    return f", {low} or more" if low != "" else f", {high} or less" if high != "" else ""


def _names(schema: Schema) -> str:
    names = schema.get("propertyNames", {})
    if "enum" in names:
        return "keys: " + ", ".join(f"`{name}`" for name in names["enum"])
    return "keys of your own"


def _example(schema: Schema) -> str:
    examples = schema.get("examples") or schema.get("items", {}).get("examples") or ()
    return f"`{examples[0]}`" if examples and not isinstance(examples[0], (dict, list)) else ""


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
    """Write the page beside the schemas."""
    (schema_folder() / "README.md").write_text(reference_page(), "utf-8")


if __name__ == "__main__":
    main()
