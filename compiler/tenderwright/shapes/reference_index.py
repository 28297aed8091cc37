"""The first page of the reference: which page has which file, how values are written, and in which units."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from tenderwright.quantities.bounds import FIRST_FRAME, LAST_FRAME, Measure, unit_table
from tenderwright.reading.layout import IGNORED_FOLDERS, TABLES, YAML_FILES
from tenderwright.shapes.keywords import EARLIEST, LATEST
from tenderwright.shapes.schemas import load_schema

_INDEX = """# The format of a package

Every file of a package and every key in it, on three pages; below are the values that all of them share. The pages are
made from the schemas beside them by `python -m tenderwright.shapes.reference_page`. An editor that knows YAML schemas
shows the same text as you type: `tenderwright start` puts the schemas into `.schemas/` and names one in the first line
of each file.
{PAGES}
Files in {IGNORED}, and those named README.md or LICENSE, are left alone.

## How values are written

| written as | means |
|---|---|
| a length, a mass … | A number and its unit: `12.4 m`, `40 ft 8 in`, `24'-6 1/2"`, `24-6-4 ft-in-8` (feet, inches and eighths, as tables of offsets have it), `3/8 in`, `20.4 lb plate`, `120 m2`, `35 h`. A point for decimals. Commas are read where they can only set off thousands, as in `1,234,567 lb`; `1,200 lb` is refused. `ton`, `gallon`, `mile` and `cwt` are refused, since they mean several things: write `t`, `long_ton` or `short_ton`; `US_gal` or `imp_gal`; `nmi` or `statute_mile`; `long_cwt` or `short_cwt`. Never less than nothing, unless the table says *may be negative*. |
| ± | Where the table says *± may follow*, a figure may be written with half the width of the band in which it surely lies: `628 t ± 6 t`, `628 t ± 1 %`. It is taken as rectangular, its standard uncertainty being that half over √3 (GUM, JCGM 100:2008, 4.3.7). Where none is written, the usual standard uncertainty that the table names stands for it. |
| a quantity | The same, of any kind. |
| a position | A frame, `Fr 31`, `Fr 31 + 200 mm` (forward of it), a distance forward of the after perpendicular, `18.4 m`, or one from either perpendicular or a frame, `12 m abaft FP`, `40 ft aft of FP`, `3 m forward of AP`. |
| side | `port`, `starboard`, `both` or `centreline`. |
| identifier | A name that you give a thing, by which others refer to it: small letters, digits and hyphens, as `sea-chest-main`. |
| name of a tank, an item … | The identifier of a thing elsewhere in the package. A name that leads nowhere is a mistake. |
| prose | Text in CommonMark, without raw HTML. It may refer to things: `<item:420>`, `[the forepeak](tank:forepeak)`, `<value:coating.underwater.area>`, `<clause:hot-work>`, `<drawing:d-12>`, `<frame:31>`; or to a part of the specification, `<part:blocks>`, which is printed with its number and title. |
| money | A number in the currency of package.yaml, with at most two decimals: `1250`, `84.5`. |
| date | Year-month-day: `2027-04-12`. |
| day | A date, or a day counted from an event of the programme: `docking + 3 d`, `undocking - 1 d`, `arrival`. The events are award, arrival, docking, undocking and redelivery. |
| `todo` | Stands for any value that is not known yet; `todo, ask the yard` says more. It is no mistake: `check` lists it, drafts print text as "To be written", and what rests on it is left out and says so. `issue`, `addendum` and `close` refuse it. In quotes it is a word like others. |

A number is from nothing to a million and a date from {EARLIEST} to {LATEST}, unless the table says otherwise. A
position is on a frame from {FIRST_FRAME} to {LAST_FRAME}. What no ship has is reported at its place.

In the schemas these are the keywords `quantity` (with `or` for the words that may stand instead, `within` for bounds,
and `uncertainty` where ± may follow), `refers`, `prose` and `money`, with `signed` where a quantity or an amount may be
negative; all others are those of JSON Schema 2020-12.

## Units

These may be written, and others made of them, such as `kg/h`: with `/` or `per`, `*` or `·`, powers as `m2`, `m²`,
`sq m` or `m^2`, in the singular or the plural, with a full stop after an abbreviation or without, and words in small
letters or capitals. What is printed, such as `long ton/ft` or `US gal`, is read back. More of a thing than the last
column is refused, unless the table of the file says otherwise.

| what | units | also read as | at most |
|---|---|---|---|
{UNITS}
"""  # noqa: E501 - a row of a table is one line

CLAUSES_SAY = "General requirements and conditions, a clause to a file, in CommonMark without raw HTML."
CLAUSES = f"""
## `clauses/*.md`

{CLAUSES_SAY} The number before the first hyphen of the file's name is the number that is printed, and orders the
clauses; the rest of the name is the identifier by which items refer to the clause. The first line, where it begins with
`# `, is the title. The text may refer to things of the package as any prose does. This would stand in
`clauses/07-hot-work.md`, and be clause 7, `<clause:hot-work>`:

```markdown
# Hot work

No hot work begins before the certificate of the day is posted at the gangway; see <clause:gas-free>.
```
"""


def index_page(pages: Iterable[tuple[str, str, Iterable[tuple[str, str, str]]]]) -> str:
    """Make the first page; of each other page it tells what that holds, and its files with where they are explained."""
    lists = ""
    for title, says, files in pages:
        rows = "".join(f"| [`{pattern}`]({url}) | {_first_sentence(what)} |\n" for pattern, url, what in files)
        lists += f"\n## {title}\n\n{says}\n\n| file | what it holds |\n|---|---|\n{rows}"
    asked = {what.replace("_", " ") for name in (YAML_FILES | TABLES).values() for what in _measured(load_schema(name))}
    return _INDEX.format(
        PAGES=lists,
        IGNORED=", ".join(f"`{folder}`" for folder in IGNORED_FOLDERS),
        EARLIEST=EARLIEST,
        LATEST=LATEST,
        FIRST_FRAME=FIRST_FRAME,
        LAST_FRAME=LAST_FRAME,
        UNITS="\n".join(_unit_row(one) for one in unit_table() if one.what in asked),
    )


def _first_sentence(text: str) -> str:
    return text.split(". ")[0].removesuffix(".") + "."


def _measured(schema: Any) -> Iterator[str]:
    """Yield what the quantities below a schema measure."""
    entries = schema if isinstance(schema, list) else schema.values() if isinstance(schema, Mapping) else ()
    for below in entries:
        yield from _measured(below)
    if isinstance(schema, Mapping) and isinstance(schema.get("quantity"), str):
        yield schema["quantity"]


def _unit_row(one: Measure) -> str:
    known = {*one.units, *one.also}
    also = [name for name in one.also if not (name.endswith("s") and name[:-1] in known)]
    return f"| {one.what} | {_listed(one.units)} | {_listed(also)} | {one.most} |"


def _listed(names: Iterable[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
