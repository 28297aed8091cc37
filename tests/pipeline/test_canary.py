"""Nothing under owner/ reaches the yard: words and amounts put into every field there are in no yard output."""

from __future__ import annotations

import json
import re

import pytest
import yaml

from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.reading.layout import YAML_FILES, schema_of
from tenderwright.shapes.schemas import load_schema
from tenderwright.writing.html import screen_page
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.documents.composed import composed

from .conftest import Both
from .contents import pages_of, texts_in
from .owner_papers import WORD, Canaries, digits, leaks_in
from .packages import MARRAM, files_of
from .two import Two


def test_no_canary_reaches_the_yard(two_starters: Two) -> None:
    read_out = dict(texts_in(files_of(two_starters.guarded)))
    leaks = [leak for name, text in read_out.items() for leak in leaks_in(name, text, two_starters.canaries)]
    assert leaks == []
    assert any("specification.pdf: page 20" in name for name in read_out)
    assert any(name.endswith("price-form.xlsx/xl/worksheets/sheet2.xml") for name in read_out)
    assert any(name.endswith(".pdf: information") for name in read_out)
    assert any(name.endswith(".zip: comment") for name in read_out)


def test_the_yards_side_never_holds_a_file_of_the_owner(both: Both) -> None:
    compiled = compile_package(read(both.root))
    assert compiled.files.sources
    assert not [path for path in compiled.files.sources if path.startswith("owner/")]
    assert not [notice for notice in compiled.notices if notice.place.path.startswith("owner/")]
    assert WORD not in repr((compiled.package, compiled.links, compiled.calculated))


def test_the_canaries_fill_every_field_of_every_file_of_the_owner(two_starters: Two) -> None:
    files = read(two_starters.package).owner_only()
    schemas = {schema for pattern, schema in YAML_FILES.items() if pattern.startswith("owner/")}
    given = {str(schema_of(path)): _fields(source.data) for path, source in files.sources.items()}
    assert {"rates", "funding", "risks", "bid"} <= schemas <= set(given)
    # Days and the measures of a dock carry neither words nor money; `tables` are rows of tables, which no item has.
    measures = {"block_spacing"} | _known(load_schema("facility")) - {"name", "tide", "by", "number"}
    for name in schemas:
        bare = measures if name == "bid" else set()
        assert _known(load_schema(name)) - given[name] <= {"dock_days", "tables"} | bare, name
    texts = files.texts.values()
    assert all(any(word in text for text in texts) for word in two_starters.canaries.words if word[-6:] != "letter")


def test_the_papers_that_an_estimate_rests_on_are_sound(both: Both) -> None:
    files = read(both.root)
    assert compile_owner(files, compile_package(files)).notices == ()


def _fields(data: object) -> set[str]:
    if isinstance(data, dict):
        return set(data) | {name for below in data.values() for name in _fields(below)}
    return {name for below in data for name in _fields(below)} if isinstance(data, list) else set()


def _known(schema: object) -> set[str]:
    if not isinstance(schema, dict):
        return set()
    below = [*schema.get("properties", {}).values(), schema.get("items"), schema.get("additionalProperties")]
    return set(schema.get("properties", {})) | {name for one in below for name in _known(one)}


@pytest.fixture(scope="module")
def owner_edition(both: Both) -> dict[str, str]:
    files = files_of(both.out / "owner")
    wanted = ("book.html", "price-form.xlsx", "manifest.json")
    pages = {f"page {number}": words for number, words in enumerate(pages_of(files["book.pdf"]), start=1)}
    return pages | dict(texts_in({name: files[name] for name in wanted}))


def test_the_owner_edition_holds_the_owners_words_and_amounts(both: Both, owner_edition: dict[str, str]) -> None:
    bases = [word for word in both.canaries.words if word.endswith("a basis")]
    rates = both.canaries.amounts[1 : 3 * 8 : 3]  # eight lines have a stated rate, each after its low
    assert (len(bases), len(rates)) == (10, 8)
    page = digits(owner_edition["book.html"])
    paper = digits("".join(text for name, text in owner_edition.items() if name.startswith("page ")))
    sheets = "".join(text for name, text in owner_edition.items() if "/worksheets/" in name)
    cells = {round(float(number), 2) for number in re.findall(r"<v>([\d.]+)</v>", sheets)}
    for basis in bases:
        assert basis in page
        assert basis.split()[0] in re.sub(r"[\s\u2010\u00ad-]", "", paper)
    for rate in rates:
        assert rate in page
        assert rate in paper
        assert float(rate) in cells


def test_the_owner_edition_says_that_it_is_confidential(owner_edition: dict[str, str]) -> None:
    assert json.loads(owner_edition["manifest.json"])["confidential"] is True
    assert all("CONFIDENTIAL" in text for name, text in owner_edition.items() if name.startswith("page "))


def test_the_owners_own_words_of_the_demonstration_do_not_reach_the_yard() -> None:
    edition, form = composed("marram").yard
    shown = [screen_page(edition), *dict(texts_in({"price-form.xlsx": price_form_workbook(form)})).values()]
    sold = _owners_words()
    assert len(sold) > 20
    assert [words for words in sold if any(words in text for text in shown)] == []


def _owners_words() -> list[str]:
    """Give texts of the demonstration's owner/ that are long enough to be nobody else's."""
    found: list[str] = []
    for path in sorted((MARRAM / "owner").rglob("*.yaml")):
        waiting = [yaml.safe_load(path.read_text("utf-8"))]
        while waiting:
            one = waiting.pop()
            if isinstance(one, dict):
                waiting += [below for key, below in one.items() if key != "ask"]  # the owner's own published questions
            elif isinstance(one, list):
                waiting += one
            elif isinstance(one, str) and len(one) > 30:
                found.append(one.strip())
    return found


def test_what_looks_for_canaries_finds_them() -> None:
    canaries = Canaries()
    amount = canaries.amount()
    assert leaks_in("page", f"at {int(amount[:8]):,} a day".replace(",", "\u202f"), canaries) == [f"page: {amount[:8]}"]
    assert leaks_in("page", f"so {WORD.upper()}004 says", canaries) == [f"page: {WORD}"]
