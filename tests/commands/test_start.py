"""`tenderwright start` takes its answers from flags or on a terminal, and without either writes an example."""

from __future__ import annotations

from pathlib import Path

import pytest

from .run import Runner


def test_flags_answer(run: Runner, tmp_path: Path) -> None:
    flags = ("--name", "Kestrel Bank", "--shafts", "2", "--units", "us", "--papers", "curves,capacity-plan")
    ran = run("start", tmp_path / "ship", *flags)
    assert ran.code == 0
    assert "invented" not in ran.out
    assert run("check", tmp_path / "ship").code == 0
    tender = (tmp_path / "ship" / "package.yaml").read_text("utf-8")
    assert "ship: Kestrel Bank" in tender
    assert "currency: USD" in tender


def test_without_flags_or_a_terminal_it_is_the_example_and_says_so(run: Runner, tmp_path: Path) -> None:
    ran = run("start", tmp_path / "ship")
    assert ran.code == 0
    assert "they are those of an invented ship" in ran.out
    assert "Sandling" in (tmp_path / "ship" / "package.yaml").read_text("utf-8")


@pytest.mark.parametrize(
    ("flags", "said"),
    [
        (("--material", "wood", "--fastening", "welded"), "`welded` is not a fastening: it is one of treenails, "),
        (("--papers", "offsets,lines"), "`lines` is not a paper: it is one of offsets, "),
        (("--currency", "dollars"), "`dollars` is not a currency: write its three letters, as in USD"),
        (("--example", "--name", "Withy"), "--example is the package of a ship of its own"),
    ],
)
def test_an_answer_that_cannot_be_is_refused_and_nothing_written(
    run: Runner, tmp_path: Path, flags: tuple[str, ...], said: str
) -> None:
    ran = run("start", tmp_path / "ship", *flags)
    assert ran.code == 2
    assert said in ran.err
    assert not (tmp_path / "ship").exists()


def test_on_a_terminal_it_asks(run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    answers = ["Withy", "wood", "", "0", "cubits", "metric", "gbp", "Saltings Creek", "Y"]
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda question: answers.pop(0) if answers else "")
    ran = run("start", tmp_path / "ship")
    assert ran.code == 0, ran.err
    assert "it is one of metric, us, both" in ran.out
    particulars = (tmp_path / "ship" / "vessel" / "particulars.yaml").read_text("utf-8")
    assert "name: Withy" in particulars
    assert "fastening: treenails" in particulars
    assert "shafts:" not in particulars
    assert (tmp_path / "ship" / "vessel" / "offsets.yaml").is_file()
    assert "currency: GBP" in (tmp_path / "ship" / "package.yaml").read_text("utf-8")


def test_where_the_answers_end_nothing_is_written(run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def ended(question: str) -> str:
        raise EOFError(question)

    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", ended)
    ran = run("start", tmp_path / "ship")
    assert ran.code == 2
    assert "the answers ended before the last question, so nothing was written" in ran.err
    assert not (tmp_path / "ship").exists()
