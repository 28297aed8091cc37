"""`tenderwright add`: write a new file into a package: a usual work item, or the form of any other file of the format.

A work item is a file of starter/catalogue/: its folder begins with the hundred in which items of its sort are numbered,
and its name is what `add` is asked for. A new file there is an entry, with nothing else to write (starter/items.py says
what may stand in it). The forms of all other files are made from their schemas (starter/forms.py).
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from tenderwright.commands.exits import CLEAN
from tenderwright.commands.folder import WrongUse, package_folder

if TYPE_CHECKING:
    from tenderwright.reading.package import Files
    from tenderwright.starter.forms import Facts


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("what", nargs="?", metavar="WHAT", help="a work item or kind of file; left out, all are listed")
    parser.add_argument("name", nargs="?", metavar="NAME", help="the name of the new file, for kinds of several files")
    parser.add_argument("--in", dest="folder", type=Path, metavar="DIR", help="the package (default: here)")


def run(arguments: Namespace) -> int:
    """List what can be added, or add it."""
    if arguments.what is None:
        print("\n".join(listed()))
        return CLEAN
    from tenderwright.commands.output_folder import take_back_unfinished
    from tenderwright.reading.package import read_package
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.new_files import new_files

    root = package_folder(arguments.folder)
    take_back_unfinished(root)
    path, text = written(arguments.what, arguments.name or "", read_package(root))
    try:
        with new_files(root, {path: text.encode()}):
            pass
    except WritingError as error:
        raise WrongUse(str(error)) from error
    count = text.count("todo")
    print(f"{root / path}: written{f', with {count} `todo` to answer' if count else ''}")
    if path.startswith("owner/"):
        print("  it is confidential: nothing under owner/ reaches a yard", file=sys.stderr)
    return CLEAN


def listed() -> Iterator[str]:
    """Yield the work items by the blocks of their numbers, then the kinds of file."""
    from tenderwright.starter.forms import kinds, says
    from tenderwright.starter.items import HEADINGS, entries

    yield "Work items: tenderwright add ITEM"
    for hundred, heading in HEADINGS.items():
        yield f"  {hundred} {heading}"
        yield from (f"    {one.name:<32} {one.title}" for one in entries().values() if one.hundred == hundred)
    yield "Files: tenderwright add KIND, or KIND NAME where there may be several"
    for word, path in kinds().items():
        asked = f"{word} NAME" if "*" in path else word
        yield f"    {asked:<32} {path}: {says(word).partition('. ')[0].rstrip('.')}"


def written(what: str, name: str, files: Files) -> tuple[str, str]:
    """Give path and text of a new file; raises WrongUse where it cannot be made."""
    from tenderwright.notices.suggest import did_you_mean
    from tenderwright.starter.forms import NAME, form, kinds
    from tenderwright.starter.items import NoNumber, entries, file_name, free_number, item_text, numbers_of

    facts = facts_of(files)
    if what in entries():
        entry = entries()[what]
        there = [path.removeprefix("items/") for path in files.sources if path.startswith("items/")]
        numbers = (file.partition("-")[0].removesuffix(".yaml") for file in there)
        used = {int(one) for one in numbers if one.isdigit()}
        try:
            number = free_number(entry, used)
        except NoNumber as error:
            raise WrongUse(str(error)) from error
        text = item_text(entry, number, facts.system, numbers_of(there), "../.schemas/item.schema.json")
        return f"items/{file_name(entry, number)}", text
    if what not in kinds():
        hint = "; ".join(did_you_mean(what, [*entries(), *kinds()])) or "`tenderwright add` alone lists them"
        raise WrongUse(f"there is nothing to add by the name `{what}`: {hint}")
    if "*" not in kinds()[what] and name:
        raise WrongUse(f"a package has one file `{kinds()[what]}`, which takes no name")
    if "*" in kinds()[what] and not NAME.fullmatch(name):
        wrong = f"`{name}` is not a name for a file" if name else f"`{kinds()[what]}` needs a name"
        raise WrongUse(f"{wrong}: write small letters, figures and hyphens, as in `tenderwright add {what} north-dock`")
    return form(what, name, facts)


def facts_of(files: Files) -> Facts:
    """Give what a new file takes from a package, as far as that can be read."""
    from tenderwright.reading.issued_items import tender_number
    from tenderwright.starter.forms import Facts

    source = files.sources.get("package.yaml")
    tender = source.data if source is not None and isinstance(source.data, dict) else {}
    units, currency = tender.get("units"), tender.get("currency")
    return Facts(
        units if units in ("metric", "us", "both") else "metric",
        currency if isinstance(currency, str) else "",
        frozenset(files.sources),
        tender_number(files.sources),
        tuple(_lines(files)),
        dict(_paid(files)),
        _index(files),
    )


def _lines(files: Files) -> Iterator[str]:
    yield from (number for number, _ in _works(files))


def _works(files: Files) -> Iterator[tuple[str, str]]:
    """Yield the lines that ask a price, each with its work in the words of a closed account."""
    for item in _data(files, "items/"):
        for line in item.get("lines") or ():
            if isinstance(line, dict) and line.get("price") != "fixed":
                yield f"{item.get('item')}.{line.get('line')}", f"{item.get('title')}: {line.get('text')}"


def _paid(files: Files) -> Iterator[tuple[str, dict[str, str]]]:
    """Yield the lines whose very work was paid for at the last docking, each with where that stands."""
    ended = {str(one.get("docking")): str(one.get("undocked")) for one in _data(files, "history/")}
    closings = [one for one in _data(files, "owner/closing/") if str(one.get("docking")) in ended]
    last = max(closings, key=lambda one: ended[str(one.get("docking"))], default={})
    lines = [line for line in last.get("lines") or () if isinstance(line, dict)]
    paid = [line for line in lines if isinstance(line.get("final"), (int, float)) and line["final"] > 0]
    works = {(str(line.get("line")), str(line.get("work"))) for line in paid}
    for number, work in _works(files):
        if (number, work) in works:
            yield number, {"docking": str(last["docking"]), "work": work}


def _index(files: Files) -> str:
    indices = [one for data in _data(files, "owner/indices.yaml") for one in data.get("indices") or ()]
    return str(indices[0].get("index", "")) if indices and isinstance(indices[0], dict) else ""


def _data(files: Files, within: str) -> Iterator[dict[str, Any]]:
    for path, source in sorted(files.sources.items()):
        if path.startswith(within) and isinstance(source.data, dict):
            yield source.data
