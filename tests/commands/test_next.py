"""`tenderwright next`: the package after a closed tender asks what is open, and keeps and proves what is over."""

from __future__ import annotations

import re
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tenderwright.commands.listed_todos import listed_todos
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.reading.issued import Issued, tag_message
from tenderwright.starter.write import write_starter
from tests.pipeline.packages import commit, edit, files_of, git

from .run import Runner

OLD, NEW = "BWT-2028-01", "BWT-2036-01"
DOCKED = """\
docking: docking-2028
yard: Ostrey Slip Company
dock_type: slipway
docked: 2028-04-05
undocked: 2028-04-20
deferred:
  - { what: Rivets of strake B aft, condition: loose, why: gang gone, by: next docking, item: "320" }
  - { what: "Bollard, forward", where: fore deck, why: no crane }
"""


APPROVALS = f"""\
tender: {OLD}
until: 2028-04-20
approvals:
  # The ship
  - approval: consent
    title: Consent to the rivets
    kind: heritage
    gates: [issue, start]
    items: ["320"]
    given_by: Monuments office
    lead: 60 d
    lead_source: its letter of 2027-05-02
    asked: 2027-06-01
    granted: 2027-08-02
    expires: 2028-12-31
    paper: MO-12
    conditions:
      - what: Photographs of each rivet
        before: flooding
        met: 2028-04-18
      - {{ what: Trial rivets, before: start, met: 2028-04-06 }}
  - approval: load-line
    title: Exemption from load lines
    kind: flag
    gates: [departure]
    given_by: Flag administration
    not_needed:
      why: She stays in the harbour
      by: Flag administration
      day: 2028-02-01
  - approval: grant
    title: Leave to begin
    kind: funder
    gates: [start]
    given_by: Fund
    source: reserve
"""
FUNDING = "sources:\n  - { source: reserve, name: Reserve, amount: 900, status: in hand, likelihood: 100 % }\n"
SAME_APPROVALS = f"""\
tender: {NEW}
approvals:
  # The ship
  - approval: consent
    title: Consent to the rivets
    kind: heritage
    gates: [issue, start]
    items: ["320"]
    given_by: Monuments office
    lead: 60 d
    lead_source: its letter of 2027-05-02
    conditions:
      - what: Photographs of each rivet
        before: flooding
      - {{ what: Trial rivets, before: start, met: todo }}
  - approval: load-line
    title: Exemption from load lines
    kind: flag
    gates: [departure]
    given_by: Flag administration
"""


@pytest.fixture(scope="module")
def closed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Sandling's tender of 2028, issued, changed since and closed, with a question and a bid as it came."""
    root = tmp_path_factory.mktemp("closed") / "sandling"
    write_starter(root)
    first = commit(root)
    issue = Issued("tender-1", OLD, 1, first, datetime(2027, 10, 4, tzinfo=UTC), "e", "p.zip", "1" * 64, "2" * 64, "0")
    git(root, "tag", "--annotate", "--message", tag_message(issue, "Docking"), "tender-1")
    edit(root, "items/130-fire-watch-provide.yaml", "quantity: 40 h", "quantity: 60 h")
    (root / "history/docking-2028.yaml").write_text(DOCKED, "utf-8")
    (root / "questions").mkdir()
    (root / "questions/01-power.yaml").write_text("question: 1\nasked: 2027-10-20\nask: Which voltage?\n", "utf-8")
    (root / "owner/documents/bids").mkdir(parents=True)
    (root / "owner/documents/bids/ostrey.xlsx").write_bytes(b"as it came")
    (root / "build/addendum-1").mkdir(parents=True)
    (root / "photographs").mkdir()
    (root / "photographs/bow.jpg").write_bytes(b"\xff\xd8\xff")
    (root / "photographs.csv").write_text("file,date,caption\nbow.jpg,2027-10-09,The bow\n", "utf-8")
    (root / "README.md").write_text("# Sandling\n", "utf-8")
    (root / "owner/approvals.yaml").write_text(APPROVALS, "utf-8")
    (root / "owner/funding.yaml").write_text(FUNDING, "utf-8")
    edit(root, "package.yaml", "currency:", "addenda:\n  - { number: 1, date: 2027-11-01, summary: Power }\ncurrency:")
    (root / "build/addendum-1/addendum.pdf").write_bytes(b"%PDF")
    return root


@pytest.fixture
def new(run: Runner, closed: Path, tmp_path: Path) -> Path:
    ran = run("next", closed, tmp_path / "new", "--number", NEW)
    assert ran.code == 0, ran.err
    return tmp_path / "new"


def compiled(root: Path) -> tuple[Compiled, OwnersSide]:
    files = read(root)
    package = compile_package(files)
    return package, compile_owner(files, package)


def test_it_is_sound_and_asks_only_what_is_open(new: Path) -> None:
    package, owner = compiled(new)
    assert [*package.notices, *owner.notices] == []
    asked = {(todo.place.path, todo.at) for todo in package.package.todos}
    dates = {("package.yaml", ("dates", key)) for key in ("issued", "questions_until", "closing", "award")}
    assert asked >= dates | {("package.yaml", ("dates", "site_visit", "date")), ("package.yaml", ("tender", "title"))}
    assert ("package.yaml", ("dates", "valid")) not in asked
    scopes = {path for path, at in asked if at == ("scope",)}
    work = ("140-bilge-oil-tank-clean", "210-hull-wash", "320-rivets-renew", "420-underwater-shell-coat")
    assert scopes == {f"items/{name}.yaml" for name in (*work, "425-bollard-forward")}
    assert any(line.startswith("still `todo`") for line in listed_todos(package.package.todos, {}))


def test_the_tender_is_the_new_one_and_tells_what_the_closed_one_had(new: Path) -> None:
    text = (new / "package.yaml").read_text("utf-8")
    assert f"  number: {NEW} # yours; printed on every page\n" in text
    assert f"  closing: todo ({OLD} had 2027-12-10)\n" in text
    assert "addenda" not in text
    assert "  dock_days: todo (BWT-2028-01 had 14)\n" in text


def test_the_approvals_are_the_same_and_none_is_asked_for_yet(new: Path) -> None:
    assert (new / "owner/approvals.yaml").read_text("utf-8") == SAME_APPROVALS


def test_what_was_put_off_is_told_where_it_is_done_again(new: Path) -> None:
    rivets = (new / "items/320-rivets-renew.yaml").read_text("utf-8")
    assert f"todo, put off in the docking of {OLD}; say how it is done now:" in rivets
    assert "- Rivets of strake B aft (loose). Why it was put off: gang gone. To be done: next docking" in rivets
    bollard = (new / "items/425-bollard-forward.yaml").read_text("utf-8")
    assert f"# Put off in the docking of {OLD}. Why: no crane" in bollard
    assert 'title: "Bollard, forward"' in bollard or "title: Bollard, forward" in bollard
    assert "text: fore deck" in bollard
    missing = compiled(new)[0].record.missing.values()
    assert not [why for why in missing if "items/425" in why], "an item still to be described keeps no figure back"


def test_the_ship_goes_along_as_she_is(new: Path, closed: Path) -> None:
    for path, content in files_of(closed).items():
        if path.startswith(("vessel/", "history/", "facilities/", "surveys/", "photographs/", "owner/closing/")):
            assert (new / path).read_bytes() == content, path
    assert not (new / "questions").exists()
    assert not (new / "owner/rates.yaml").exists()


def test_the_archive_is_the_closed_package_byte_for_byte(new: Path, closed: Path) -> None:
    archive = new / "owner/archive" / OLD
    kept = {path: one for path, one in files_of(closed).items() if not path.startswith((".", "build/"))}
    assert files_of(archive / "package") == kept
    assert files_of(archive / "issued/tender-1").keys() == {
        "README.md",
        "items/130-fire-watch-provide.yaml",
        "package.yaml",
    }
    assert b"quantity: 40 h" in files_of(archive)["issued/tender-1/items/130-fire-watch-provide.yaml"]
    assert (archive / "addenda/addendum-1/addendum.pdf").read_bytes() == b"%PDF"
    readme = (archive / "README.md").read_text("utf-8")
    assert "`tender-1`: issue 1, commit" in readme
    assert "- 1, 2027-11-01: Power" in readme


def test_the_closed_package_stays_as_it_is(run: Runner, closed: Path, tmp_path: Path) -> None:
    before = files_of(closed)
    assert run("next", closed, tmp_path / "again", "--number", NEW).code == 0
    assert files_of(closed) == before


def test_the_archive_is_proved_and_a_change_in_it_is_told(run: Runner, new: Path) -> None:
    archive = new / "owner/archive" / OLD
    ran = run("verify", archive)
    assert ran.code == 0
    assert ran.out.startswith("Whole: ")
    with open(archive / "package/owner/rates.yaml", "a", encoding="utf-8") as rates:
        rates.write("# dearer\n")
    ran = run("verify", archive)
    assert ran.code == 1
    assert "package/owner/rates.yaml was changed" in ran.out
    assert "archive-changed" in run("check", new, "--format", "line").out
    assert run("verify", new / "vessel").code == 2


def test_the_checksum_that_is_told_is_that_of_the_list(run: Runner, closed: Path, tmp_path: Path) -> None:
    ran = run("next", closed, tmp_path / "new", "--number", NEW)
    told = re.findall("[0-9a-f]{64}", ran.out)
    assert told == re.findall("[0-9a-f]{64}", run("verify", tmp_path / "new/owner/archive" / OLD).out)


def test_the_archives_of_earlier_tenders_go_along(run: Runner, new: Path, tmp_path: Path) -> None:
    third = tmp_path / "third"
    ran = run("next", new, third, "--number", "BWT-2044-01")
    assert ran.code == 0, ran.err
    assert "nothing of it counts as done" in ran.out
    assert sorted(one.name for one in (third / "owner/archive").iterdir()) == [OLD, NEW]
    assert files_of(third / "owner/archive" / OLD) == files_of(new / "owner/archive" / OLD)
    assert not (third / "owner/archive" / NEW / "package/owner/archive").exists()
    assert [*compiled(third)[0].notices] == []


def test_a_paper_of_the_closed_tender_is_refused_in_the_next(run: Runner, new: Path) -> None:
    assert run("add", "award", "--in", new).code == 0
    assert f"\ntender: {NEW} #" in (new / "owner/award.yaml").read_text("utf-8")
    assert [*compiled(new)[1].notices] == []
    (new / "owner/risks.yaml").write_text(f"tender: {OLD}\nrisks: []\n", "utf-8")
    assert [notice.code for notice in compiled(new)[1].notices] == ["paper-of-another-tender"]


def test_it_is_refused_where_it_would_do_harm(run: Runner, closed: Path, new: Path, tmp_path: Path) -> None:
    (tmp_path / "full").mkdir()
    (tmp_path / "full/note.txt").write_text("mine", "utf-8")
    for words, said in (
        ((closed, tmp_path / "full", "--number", NEW), "is not empty"),
        ((closed, closed / "next", "--number", NEW), "lies in the package"),
        ((closed, tmp_path / "third", "--number", OLD), "needs a number of its own"),
        ((new, tmp_path / "third", "--number", OLD), f"{OLD} is closed already"),
    ):
        ran = run("next", *words)
        assert (ran.code, said in ran.err) == (2, True), ran.err
    assert not (tmp_path / "third").exists()
    assert [one.name for one in (tmp_path / "full").iterdir()] == ["note.txt"]


def test_a_package_with_mistakes_is_no_beginning(run: Runner, tmp_path: Path) -> None:
    write_starter(tmp_path / "old")
    edit(tmp_path / "old", "package.yaml", "currency: EUR", "currency: 12")
    ran = run("next", tmp_path / "old", tmp_path / "new", "--number", NEW)
    assert ran.code == 1
    assert "nothing was written" in ran.err
    assert not (tmp_path / "new").exists()
