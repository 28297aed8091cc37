"""The docking report: what was put off comes first, and nothing that a docking record holds is lost on the way."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest

from tenderwright.calculations.ship.bare_places import bare_places
from tenderwright.calculations.ship.docking_totals import docking_totals
from tenderwright.documents.closing_desk import ClosedDocking, ReportDesk
from tenderwright.documents.desk import CAUTION
from tenderwright.documents.docking_report import docking_report, not_recorded
from tenderwright.documents.edition import Bullets, Edition, Facts, Paragraph, Stamp, Table, plain
from tenderwright.pricing.final_account import final_account
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.report_files import report_files

from .conftest import MARRAM, SMALL, Tendered

STAMP = Stamp("no-git", "DRAFT: a test")


def report(tendered: Tendered, file: Path, *, confidential: bool) -> Edition:
    found, compiled = tendered.check(file), tendered.compiled
    findings, package = found.findings, compiled.package
    assert findings is not None
    assert package.frames is not None
    assert package.particulars is not None
    closed = ClosedDocking(
        findings,
        docking_totals(findings, package, found.readings),
        bare_places(findings.blocks, package.frames, package.particulars.keel.width.si),
        final_account(findings, package, compiled.record, tendered.owner.estimate, None),
        not_recorded(findings, package, ()),
    )
    desk = ReportDesk(package, compiled.links, compiled.calculated)
    return docking_report(desk, closed, STAMP, "findings", confidential=confidential)


def words_of(edition: Edition, anchor: str = "") -> str:
    """Give the words of tables, facts, paragraphs and lists of one part, or of all."""
    found: list[str] = []
    for part in edition.parts:
        for block in part.blocks if anchor in ("", part.anchor) else ():
            if isinstance(block, Table):
                found += [column.title for column in block.columns]
                found += [plain(cell) for row in block.rows for cell in row.cells]
            elif isinstance(block, Facts):
                found += [plain(text) for _, text in block.pairs]
            elif isinstance(block, Bullets):
                found += [plain(text) for text in block.entries]
            elif isinstance(block, Paragraph):
                found.append(plain(block.text))
    return "\n".join(found)


@pytest.fixture(scope="module")
def secret(marram: Tendered) -> Edition:
    return report(marram, MARRAM, confidential=True)


def test_what_was_put_off_is_the_first_thing_in_the_summary(secret: Edition) -> None:
    summary = next(part for part in secret.parts if part.kind == "data")
    first = summary.blocks[0]
    assert summary.anchor == "summary"
    assert isinstance(first, Table)
    assert first.caption == "Work put off"
    assert [plain(cell) for cell in first.rows[0].cells] == [
        "Renewal of the 18 rivets ring-welded in strake F, starboard, lower seam, Fr 60 to Fr 66",
        "heads below half their height, ring-welded and tight",
        "gang gone by then, and two days on blocks saved",
        "next docking",
        "320",
    ]


def test_nothing_put_off_is_said(sandling: Tendered, small_text: str, tmp_path: Path) -> None:
    start = small_text.index("deferred:\n")
    end = small_text.index("lessons:")
    file = tmp_path / "findings.yaml"
    file.write_text(f"{small_text[:start]}deferred: []\n{small_text[end:]}", "utf-8")
    first = report(sandling, file, confidential=False).parts[2].blocks[0]
    assert isinstance(first, Paragraph)
    assert plain(first.text) == "Nothing was put off."


@pytest.mark.parametrize(
    ("part", "words"),
    [
        ("docking", ["Fr 73 + 450 mm", "painted, block moved", "underside of the sole piece", "thread torn"]),
        ("steel", ["192 kg", "ring-welded", "Fr 52.8, starboard"]),
        ("paint", ["A 2703-118, A 2703-121", "2027-05-20 09:30 to 2027-05-20 15:10", "5.2 K above", "n 96"]),
        ("anodes", ["p12", "stump rebuilt on a pad", "10 kg, zinc"]),
        ("fittings", ["NOT TIGHT", "yard's figure of 2007", "body cracked"]),
        ("conditions", ["Wet ash behind the lining of the boiler room.", "375 rivets, 118 m of seam"]),
        ("account", ["+22.2 %", "1 092 575.87", "late answer", "212 h", "2.71 t"]),
    ],
)
def test_each_part_holds_what_was_found(part: str, words: list[str], secret: Edition) -> None:
    text = words_of(secret, part).replace("\u00a0", " ").replace("\u202f", " ")
    for word in words:
        assert word in text, word


def test_the_columns_of_the_account_are_those_of_a_closing(secret: Edition) -> None:
    part = next(part for part in secret.parts if part.anchor == "account")
    table = next(block for block in part.blocks if isinstance(block, Table))
    assert [column.title for column in table.columns][1:] == [
        "Estimate", "Bid", "Awarded", "Changes", "Final", "Growth",
    ]  # fmt: skip


def test_the_open_report_holds_no_amount(marram: Tendered, secret: Edition) -> None:
    shown = report(marram, MARRAM, confidential=False)
    assert not shown.confidential
    assert secret.confidential
    columns = {c.title for part in shown.parts for b in part.blocks if isinstance(b, Table) for c in b.columns}
    assert not {"Awarded", "Final", "Estimate", "Bid", "Amount"} & columns
    assert "EUR" not in words_of(shown)
    assert "not published" in words_of(shown, "account")


def test_published_prices_stand_in_the_open_report_without_estimate(
    sandling: Tendered, small_text: str, tmp_path: Path
) -> None:
    file = tmp_path / "findings.yaml"
    file.write_text(small_text + "publish_prices: true\n", "utf-8")
    shown = words_of(report(sandling, file, confidential=False), "account")
    assert "Awarded" in shown
    assert "Estimate" not in shown
    assert "Bid" not in shown


def test_what_is_not_recorded_is_told(sandling: Tendered) -> None:
    findings = sandling.check(SMALL).findings
    assert findings is not None
    told = not_recorded(findings, sandling.compiled.package, ())
    assert "drafts on undocking" in told
    assert "clearances of shaft and rudder" in told
    assert "batch numbers of 1 coats" in told
    assert "drafts on docking" not in told
    assert not [words for words in told if "anodes" in words]


def test_parts_on_safety_carry_the_caution(secret: Edition) -> None:
    assert secret.caution == CAUTION
    assert {part.anchor for part in secret.parts if part.caution} >= {"summary", "docking", "steel", "fittings"}


def test_the_pages_are_set_and_can_be_read(sandling: Tendered, tmp_path: Path) -> None:
    one, other = (report(sandling, SMALL, confidential=confidential) for confidential in (False, True))
    written = report_files(one, other, Typesetter(), 0)
    (tmp_path / "report.pdf").write_bytes(written.files["docking-report.pdf"])
    reader = pypdf.PdfReader(tmp_path / "report.pdf")
    text = "\n".join(page.extract_text() for page in reader.pages)
    assert "Stern tube bearing" in text
    assert reader.metadata is not None
    assert "Docking report, Sandling, 2028" in str(reader.metadata.title)
    assert written.pages > 2 * len(reader.pages) - 3
    assert b"Work put off" in written.files["docking-report.html"]
