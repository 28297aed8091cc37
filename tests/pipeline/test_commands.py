"""The commands build and explain, as a user runs them."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pypdf
import pytest

from tenderwright.cli import main
from tenderwright.writing.pdf import Typesetter

from .conftest import Both
from .packages import edit, files_of, run, starter


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return starter(tmp_path_factory.mktemp("commands") / "sandling")


@pytest.fixture(autouse=True)
def typeset_once(monkeypatch: pytest.MonkeyPatch, typesetter: Typesetter) -> None:
    """Let every build in this process share one typesetter."""
    monkeypatch.setattr("tenderwright.writing.pdf.Typesetter", lambda *kept: typesetter)


def test_build_in_a_pipe_prints_what_it_wrote_and_nothing_else(both: Both) -> None:
    assert both.said.returncode == 0
    assert both.said.stderr == ""
    assert [line.partition(": ")[0] for line in both.said.stdout.splitlines()] == [
        str(both.out / "yard"),
        str(both.out / "owner"),
    ]
    assert "\x1b" not in both.said.stdout
    assert "\r" not in both.said.stdout


@pytest.mark.parametrize("name", ["yard", "owner"])
def test_build_writes_both_editions_where_it_is_told_and_counts_them(name: str, both: Both) -> None:
    assert sorted(path.name for path in both.out.parent.iterdir()) == ["made"]
    assert sorted(path.name for path in both.out.iterdir()) == ["owner", "yard"]
    manifest = json.loads((both.out / name / "manifest.json").read_text("utf-8"))
    written = files_of(both.out / name)
    assert manifest["edition"] == name
    assert {entry["path"] for entry in manifest["files"]} == {
        path for path in written if path != "manifest.json" and not path.endswith(".zip")
    }
    assert f"{name}: {_pages(both.out / name)} pages, {len(written)} files, DRAFT: " in both.said.stdout


def _pages(folder: Path) -> int:
    papers = folder.glob("*.pdf") if folder.name == "owner" else [folder / "specification.pdf"]
    return sum(len(pypdf.PdfReader(paper).pages) for paper in papers)


def test_build_only_the_yard_edition(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["build", str(root), "--only", "yard"]) == 0
    assert [path.name for path in (tmp_path / "build").iterdir()] == ["yard"]
    assert capsys.readouterr().out.startswith("build/yard: ")


def test_build_only_the_owner_edition_needs_rates(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    root = starter(tmp_path / "sandling")
    (root / "owner" / "rates.yaml").unlink()
    assert main(["build", str(root), "--only", "owner", "--out", str(tmp_path / "out")]) == 2
    assert "there is no owner/rates.yaml" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_the_priced_specification_is_made_when_it_is_asked_for(
    root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out"
    asked = ["build", str(root), "--only", "owner", "--out", str(out)]
    assert main([*asked, "--priced"]) == 0
    priced = pypdf.PdfReader(out / "owner" / "priced" / "specification.pdf")
    assert all("CONFIDENTIAL" in page.extract_text() for page in priced.pages)
    assert "CONFIDENTIAL" in (out / "owner" / "priced" / "specification.html").read_text("utf-8")
    assert main(asked) == 0
    assert not (out / "owner" / "priced").exists()
    capsys.readouterr()
    assert main(["build", str(root), "--only", "yard", "--priced", "--out", str(out)]) == 2
    assert "--priced is of the owner's papers" in capsys.readouterr().err


def test_build_of_mistakes_gives_notices_and_writes_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    root = starter(tmp_path / "sandling")
    edit(root, "items/320-rivets-renew.yaml", "strakes: [A, B]", "strakes: [A, Q]")
    assert main(["build", str(root), "--out", str(tmp_path / "out")]) == 1
    out, err = capsys.readouterr()
    assert out == ""
    assert "items/320-rivets-renew.yaml:12:16: error[dead-reference]" in err
    assert err.endswith("1 mistake; nothing was written\n")
    assert not (tmp_path / "out").exists()


def test_only_the_yard_edition_does_not_look_at_mistakes_of_the_owner(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = starter(tmp_path / "sandling")
    edit(root, "owner/rates.yaml", "rate: 650", "rate: -650")
    assert main(["check", str(root)]) == 1
    capsys.readouterr()
    assert main(["build", str(root), "--only", "yard", "--out", str(tmp_path / "out")]) == 0
    assert capsys.readouterr().err == ""


def _file(tmp_path: Path) -> Path:
    (tmp_path / "a-file").write_text("mine", "utf-8")
    return tmp_path / "a-file"


def _below_a_file(tmp_path: Path) -> Path:
    return _file(tmp_path) / "out"


def _link(tmp_path: Path) -> Path:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "elsewhere")
    return tmp_path / "link"


def _someone_elses(tmp_path: Path) -> Path:
    (tmp_path / "out" / "yard").mkdir(parents=True)
    (tmp_path / "out" / "yard" / "thesis.txt").write_text("mine", "utf-8")
    return tmp_path / "out"


@pytest.mark.parametrize("place", [_file, _below_a_file, _link, _someone_elses])
def test_a_place_that_cannot_be_written_is_wrong_use(
    place: Callable[[Path], Path], root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = place(tmp_path)
    before = files_of(tmp_path)
    assert main(["build", str(root), "--only", "yard", "--out", str(out)]) == 2
    err = capsys.readouterr().err
    assert err.startswith("tenderwright: ")
    assert err.count("\n") == 1
    assert files_of(tmp_path) == before


def test_the_package_itself_is_not_written_over(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = files_of(root)
    assert main(["build", str(root), "--out", str(root)]) == 2
    assert "over the package itself" in capsys.readouterr().err
    assert files_of(root) == before


def test_a_folder_that_is_none_is_wrong_use(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["build", str(tmp_path / "none")]) == 2
    assert "is not a folder" in capsys.readouterr().err


def test_without_a_folder_the_package_here_or_below_is_taken(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["explain", "320"]) == 2
    assert "there is no package.yaml here" in capsys.readouterr().err
    starter(tmp_path / "package_src")
    assert main(["explain", "320"]) == 0
    monkeypatch.chdir(tmp_path / "package_src")
    assert main(["explain", "320"]) == 0


def test_explain_a_value_gives_the_chain_down_to_lines_of_files(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(root), "value:coating.underwater-spot.area"]) == 0
    words = capsys.readouterr().out
    heads = [line.split(" = ")[0] for line in words.splitlines() if line and line[0] != " " and " = " in line]
    assert heads[0] == "coating.underwater-spot.area"
    assert heads.index("zone.underwater.area") < heads.index("zone.underwater.shell.area")
    for line in words.splitlines():
        if line.startswith("  input") and ".yaml:" in line:
            path, _, number = line.rsplit("[", 1)[1].rstrip("]").partition(":")
            assert (root / path).read_text("utf-8").splitlines()[int(number) - 1].strip()
    extent = 1 + (root / "vessel" / "zones.yaml").read_text("utf-8").split("extent:")[0].count("\n")
    assert f"[vessel/zones.yaml:{extent}]" in words
    assert words.count("  formula  ") == words.count("  source   ") == len(heads)
    assert "caution  Bulwarks" in words
    assert "used by item 420 at items/420-underwater-shell-coat.yaml:12:" in words


def test_explain_gives_the_same_figure_as_the_line_that_takes_it(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["explain", str(root), "coating.underwater-spot.area"]) == 0
    assert capsys.readouterr().out.startswith("coating.underwater-spot.area = 45.87")
    assert main(["explain", str(root), "420"]) == 0
    assert ": 50 m2, taken from coating.underwater-spot.area" in capsys.readouterr().out


def test_explain_a_value_that_only_the_editions_calculate(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(root), "condition.arrival.draft-aft"]) == 0
    assert "condition.arrival.draft-aft = " in capsys.readouterr().out


def test_explain_an_item_gives_lines_prices_and_who_refers_to_it(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["explain", str(root), "item:320"]) == 0
    words = capsys.readouterr().out
    assert words.startswith("item 320  Rivets, renew\n")
    assert "after items 130, 140, 210" in words
    written = (root / "items/320-rivets-renew.yaml").read_text("utf-8").splitlines()
    stands = f"items/320-rivets-renew.yaml:{written.index('  - line: a') + 1}:5"
    assert f"320.a  Renew one rivet: 40 each   [{stands}]" in words
    assert "at 95.00 = 3 800.00".replace(" ", "") in "".join(words.split())
    assert "referred to by item 420   [items/420-underwater-shell-coat.yaml:10:" in words
    assert "referred to by clause changes" in words
    assert "referred to by docking docking-2021" in words


def test_explain_a_code_needs_no_package(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["explain", "late-report"]) == 0
    assert capsys.readouterr().out.startswith("# A report is due after undocking")


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("zone.underwatr.area", "did you mean `zone.underwater.area`"),
        (
            "zone.underwater",
            "it holds zone.underwater.shell.area, zone.underwater.shell.uncertainty, zone.underwater.area",
        ),
        ("321", "nearest: `320"),
        ("late-raport", "did you mean `late-report`"),
    ],
)
def test_explain_something_unknown_says_what_is_near(
    name: str, hint: str, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["explain", str(root), name]) == 2
    assert hint in capsys.readouterr().err


def test_explain_takes_one_folder_at_most(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", str(root), str(root), "320"]) == 2
    assert "one folder at most" in capsys.readouterr().err


@pytest.mark.parametrize(("words", "code"), [([], 0), (["--strict"], 1)])
def test_check_counts_warnings_only_when_strict(words: list[str], code: int, tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    edit(root, "vessel/particulars.yaml", "displacement: 112 t", "displacement: 140 t")
    done = run("check", root, *words)
    assert done.returncode == code
    assert "warning[stated-differs]" in done.stdout
