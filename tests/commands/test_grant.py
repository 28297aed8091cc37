"""`tenderwright grant`: a whole paper or nothing, by application or by profile, with nothing in it but its own."""

from __future__ import annotations

import csv
import io
import json
from decimal import Decimal
from pathlib import Path

import pytest

from tests.pipeline.packages import files_of

from .run import Runner, package

FUNDING = """sources:
  - { source: county, name: County fund, amount: 9000, match: 100 %, status: applied for, public: County fund,
      notes: whispered-of-county }
  - { source: legacy, name: whispered-legacy, amount: 5000, status: in hand, notes: whispered-of-legacy }
  - { source: friends, name: whispered-friends, amount: 6000, status: promised, public: Friends of the ship }
"""
GRANT = """profile: capital-activity
title: Rivets of the Sandling
source: county
items: ["320", "420"]
headings:
  project: She needs <item:320>, and coating as in <item:420>, over <value:coating.underwater-spot.area>.
  activity: People look on.
costs:
  - { what: Naval architect, category: fees, amount: 1200, basis: letter }
outputs:
  - { output: rivets driven, lines: [320.a] }
"""
PAPER = ["budget.csv", "grant.docx", "grant.html", "grant.md", "grant.pdf", "items.csv", "manifest.json", "outputs.csv"]
FORMS = ["grant.html", "grant.md"]


@pytest.fixture(scope="session")
def applying(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = package(tmp_path_factory.mktemp("grants") / "package")
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    (root / "owner" / "grants" / "county.yaml").write_text(GRANT, "utf-8")
    return root


def rows(data: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))


def summed(data: bytes, column: str) -> Decimal:
    return sum((Decimal(row[column]) for row in rows(data)), Decimal(0))


@pytest.fixture
def written(applying: Path, run: Runner, tmp_path: Path) -> dict[str, bytes]:
    ran = run("grant", applying, "county", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    return files_of(tmp_path / "out" / "grant-county")


def test_an_application_is_written_in_every_form_and_its_tables_agree(written: dict[str, bytes]) -> None:
    assert sorted(written) == PAPER
    manifest = json.loads(written["manifest.json"])
    assert manifest["edition"] == "grant"
    assert manifest["confidential"] is True
    assert {one["path"] for one in manifest["files"]} == set(PAPER) - {"manifest.json"}
    for column in ("total", "grant", "match", "not_eligible"):
        assert summed(written["budget.csv"], column) == summed(written["items.csv"], column)
    whole = summed(written["items.csv"], "total")
    assert whole == sum(summed(written["items.csv"], column) for column in ("likely", "contingency"))
    assert f"{whole:,.2f}".replace(",", " ") in written["grant.md"].decode().replace("\u202f", " ")
    first = rows(written["outputs.csv"])[0]
    assert (first["output"], first["ordered"], first["contingent"]) == ("rivets driven", "0", "40")


def test_the_paper_holds_nothing_that_is_not_its_own(written: dict[str, bytes]) -> None:
    for form in FORMS:
        text = written[form].decode("utf-8")
        assert "whispered" not in text
        assert "County fund" in text
        assert "Friends of the ship" in text
        assert "Other money" in text


def test_the_paper_stands_by_itself(written: dict[str, bytes]) -> None:
    page = written["grant.html"].decode("utf-8")
    assert 'href="#item-320"' in page
    assert 'href="#item-210"' not in page, "which is not among its items"
    assert "funder's current notice" in page.replace("&#39;", "'")
    assert "CONFIDENTIAL" in page


def test_the_same_source_gives_the_same_bytes(applying: Path, run: Runner, tmp_path: Path) -> None:
    for name in ("one", "other"):
        assert run("grant", applying, "county", "--out", tmp_path / name).code == 0
    assert files_of(tmp_path / "one") == files_of(tmp_path / "other")


def test_a_profile_alone_takes_every_item_and_asks_nothing(applying: Path, run: Runner, tmp_path: Path) -> None:
    ran = run("grant", applying, "object-classes", "--out", tmp_path / "out")
    assert ran.code == 0
    assert "still to be written: Summary of the project" in ran.err
    files = files_of(tmp_path / "out" / "grant-object-classes")
    assert summed(files["budget.csv"], "grant") == 0
    assert {row["item"] for row in rows(files["items.csv"]) if row["sort"] == "work"} == {"140", "210", "320", "420"}


def test_a_name_that_is_neither_is_wrong_use(applying: Path, run: Runner) -> None:
    ran = run("grant", applying, "countey")
    assert ran.code == 2
    assert "did you mean `county`?" in ran.err


@pytest.mark.parametrize(
    ("old", "new", "code", "said"),
    [
        ("source: county", "source: county\nasked: 9000.01", 1, "error[grant-unmatched]"),
        ("lines: [320.a]", "lines: [210.a]", 1, "error[dead-reference]"),
        ('items: ["320", "420"]', 'items: ["110"]', 2, "has no item of work"),
        ("category: fees", "category: feez", 1, "error[dead-reference]"),
    ],
)
def test_a_mistake_writes_nothing(run: Runner, tmp_path: Path, old: str, new: str, code: int, said: str) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    assert old in GRANT
    (root / "owner" / "grants" / "county.yaml").write_text(GRANT.replace(old, new), "utf-8")
    ran = run("grant", root, "county", "--out", tmp_path / "out")
    assert ran.code == code
    assert said in ran.err
    assert not (tmp_path / "out").exists()


def test_without_an_estimate_there_is_no_application(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "rates.yaml").unlink()
    ran = run("grant", root, "object-classes", "--out", tmp_path / "out")
    assert (ran.code, "owner/rates.yaml" in ran.err) == (2, True)


def test_an_owners_own_profile_goes_before_the_one_shipped(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "profiles").mkdir()
    (root / "owner" / "profiles" / "own.yaml").write_text(
        "name: object-classes\ntitle: The town's own form\nmodelled_on: One heading.\ncheck_notice: Ask the clerk.\n"
        "headings:\n  - { heading: costs, title: Costs, asks: Give the costs., takes: [budget] }\n"
        "categories:\n  - { category: all, title: Everything }\n"
        "default_category: all\ncontingency: allowed\nshared: apportioned\n",
        "utf-8",
    )
    assert run("grant", root, "object-classes", "--out", tmp_path / "out").code == 0
    files = files_of(tmp_path / "out" / "grant-object-classes")
    assert [row["category"] for row in rows(files["budget.csv"])] == ["all"]
    assert "town's own form" in files["grant.md"].decode()


_OWN = "".join(f"  {name}: What we say of it.\n" for name in ("activity", "risks", "after", "supporting-documents"))
FINAL = GRANT.replace("  activity: People look on.\n", _OWN)


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("  activity: What we say of it.\n", "", "heading-empty"),
        ("activity: What we say of it.", "activity: todo", "still-todo"),
        ("headings:", "limits:\n  activity: { most: 4, of: words }\nheadings:", "heading-too-long"),
        ("headings:", "limit: { most: 1, of: pages }\nheadings:", "heading-too-long"),
    ],
)
def test_a_final_paper_is_refused_while_it_is_open_or_too_long(
    run: Runner, tmp_path: Path, old: str, new: str, code: str
) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    assert old in FINAL
    (root / "owner" / "grants" / "county.yaml").write_text(FINAL.replace(old, new), "utf-8")
    ran = run("grant", root, "county", "--final", "--out", tmp_path / "out")
    assert (ran.code, f"error[{code}]" in ran.err) == (1, True), ran.err
    assert not (tmp_path / "out").exists()
    assert run("grant", root, "county", "--out", tmp_path / "out").code == 0, "a draft is written all the same"


def test_a_final_paper_has_no_marks_and_a_draft_tells_the_lengths(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    limited = FINAL.replace("headings:", "limits:\n  activity: { most: 5, of: words }\nheadings:")
    (root / "owner" / "grants" / "county.yaml").write_text(limited, "utf-8")
    for name, more in (("draft", ()), ("final", ("--final",))):
        assert run("grant", root, "county", *more, "--out", tmp_path / name).code == 0
    draft = (tmp_path / "draft" / "grant-county" / "grant.md").read_text("utf-8")
    final = (tmp_path / "final" / "grant-county" / "grant.md").read_text("utf-8")
    assert "Draft: 5 of at most 5 words" in draft
    assert "Draft" not in final
    assert "draft" not in final


def test_a_profile_alone_is_never_final(applying: Path, run: Runner) -> None:
    ran = run("grant", applying, "object-classes", "--final")
    assert (ran.code, "words of yours" in ran.err) == (2, True)


def test_rules_on_match_are_told_and_those_in_words_are_named_as_not_worked_out(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "grants").mkdir()
    rule = "match_rule: { statuses: [in hand], in_kind: 50 %, otherwise: Money of the state counts by half. }"
    funding = FUNDING.replace("match: 100 %", f"match: 100 %, {rule}").replace(
        "status: promised", "status: promised, match: 50 %"
    )
    (root / "owner" / "funding.yaml").write_text(funding, "utf-8")
    (root / "owner" / "grants" / "county.yaml").write_text(GRANT, "utf-8")
    ran = run("grant", root, "county", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    assert "match: `county` gives" in ran.err
    assert "match: `friends` gives" in ran.err
    assert "not worked out, a rule of `county` on match: Money of the state counts by half." in ran.err
    page = (tmp_path / "out" / "grant-county" / "grant.md").read_text("utf-8")
    assert "not worked out: Money of the state counts by half." in page
    assert "whispered" not in page


EITHER = """alternatives:
  - { title: Rivets renewed, items: ["320"], words: She keeps her rivets. }
  - { title: Coating alone, items: ["210"] }
"""
PHASED = """phases:
  - { phase: rivets, title: Rivets first, items: ["320"], begins: 2028-04-18, asked: 1000 }
  - { phase: coat, title: Coat then, items: ["420"], asked: 500 }
"""


@pytest.mark.parametrize(
    ("more", "table", "said"),
    [(EITHER, "alternatives", ["Either: Rivets renewed", "Or: Coating alone", "Instead: Coating alone", "She keeps"]),
     (PHASED, "phases", ["By phase", "Rivets first", "Coat then"])],
)  # fmt: skip
def test_phases_and_what_is_asked_either_or_stand_in_paper_and_table(
    run: Runner, tmp_path: Path, more: str, table: str, said: list[str]
) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    made = GRANT.replace('items: ["320", "420"]\n', 'items: ["420"]\n' if more == EITHER else "")
    (root / "owner" / "grants" / "county.yaml").write_text(made + more, "utf-8")
    ran = run("grant", root, "county", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    files = files_of(tmp_path / "out" / "grant-county")
    page = files["grant.md"].decode()
    assert [words for words in said if words not in page] == []
    found = rows(files[f"{table}.csv"])
    whole = summed(files["budget.csv"], "total")
    if more == PHASED:
        assert summed(files["phases.csv"], "total") == whole
        assert [row["grant"] for row in found] == ["1000.00", "500.00", "0.00"]
    else:
        assert Decimal(found[0]["total"]) == whole
        assert [row["items"] for row in found] == ["320 420", "210 420"]


def test_more_than_a_phase_comes_to_is_refused(run: Runner, tmp_path: Path) -> None:
    root = package(tmp_path / "package")
    (root / "owner" / "grants").mkdir()
    (root / "owner" / "funding.yaml").write_text(FUNDING, "utf-8")
    asked = GRANT.replace('items: ["320", "420"]\n', "") + PHASED.replace("1000", "900000")
    (root / "owner" / "grants" / "county.yaml").write_text(asked, "utf-8")
    ran = run("grant", root, "county", "--out", tmp_path / "out")
    assert (ran.code, "is asked for phase `rivets`" in ran.err) == (1, True), ran.err
