"""One round of watching after another lays out only what changed; the tests are rounds that follow one another."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tenderwright.commands.build import build_once
from tenderwright.commands.watch import Rounds
from tenderwright.writing.pdf import Typeset, Typesetter

from .packages import edit, files_of, starter

RIVETS = "items/320-rivets-renew.yaml"


class _Recorder(Typesetter):
    """A typesetter that remembers which parts it laid out."""

    def __init__(self) -> None:
        super().__init__()
        self.rounds: list[set[str]] = []

    def typeset(self, *words: Any, **named: Any) -> Typeset:
        done = super().typeset(*words, **named)
        if len(words) == 2 and not named:  # the edition itself, not a sheet beside it
            self.rounds.append(set(done.laid_out))
        return done


@pytest.fixture(scope="module")
def watched(tmp_path_factory: pytest.TempPathFactory) -> tuple[Rounds, _Recorder]:
    base = tmp_path_factory.mktemp("watched")
    rounds = Rounds(starter(base / "sandling"), base / "build", "yard")
    recorder = _Recorder()
    rounds.typesetter = recorder
    rounds.once()
    return rounds, recorder


def test_the_first_round_lays_out_every_part(watched: tuple[Rounds, _Recorder]) -> None:
    _, recorder = watched
    assert {"cover", "contents", "item-110", "item-420", "schedule"} <= recorder.rounds[0]


def test_a_round_after_nothing_changed_lays_out_nothing(
    watched: tuple[Rounds, _Recorder], capsys: pytest.CaptureFixture[str]
) -> None:
    rounds, recorder = watched
    rounds.once()
    assert recorder.rounds[-1] == set()
    assert capsys.readouterr().out.startswith("nothing changed: no mistakes found\n")


def test_an_edited_item_alone_is_laid_out_again(
    watched: tuple[Rounds, _Recorder], capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    rounds, recorder = watched
    edit(rounds.root, RIVETS, "ream the hole", "ream the hole clean")
    rounds.once()
    assert recorder.rounds[-1] == {"item-320"}
    assert capsys.readouterr().out.startswith(f"{RIVETS}: no mistakes found\n")
    page = (rounds.out / "yard" / "specification.html").read_text("utf-8")
    assert "ream the hole clean" in page
    assert (rounds.out / "preview" / "specification.html").read_text("utf-8") == page
    assert build_once(rounds.root, tmp_path / "whole", "yard", Typesetter()) == 0
    assert files_of(tmp_path / "whole" / "yard") == files_of(rounds.out / "yard")


def test_an_item_that_grows_by_a_page_moves_the_contents_too(watched: tuple[Rounds, _Recorder]) -> None:
    rounds, recorder = watched
    more = "".join(f"  - Drill hole {number} of the row, and leave the others.\n" for number in range(60))
    edit(rounds.root, RIVETS, "  - Remove lining", f"{more}  - Remove lining")
    rounds.once()
    assert recorder.rounds[-1] == {"item-320", "contents"}


def test_a_new_title_reaches_the_parts_that_give_it(watched: tuple[Rounds, _Recorder]) -> None:
    rounds, recorder = watched
    edit(rounds.root, RIVETS, "title: Rivets, renew", "title: Rivets, renew hot")
    rounds.once()
    assert recorder.rounds[-1] == {"item-320", "asked", "contents", "schedule", "lists"}


def test_a_calculated_figure_reaches_the_parts_that_show_it(watched: tuple[Rounds, _Recorder]) -> None:
    rounds, recorder = watched
    edit(rounds.root, "vessel/tanks.yaml", "sounding: 0.30 m", "sounding: 0.45 m")
    rounds.once()
    laid = recorder.rounds[-1]
    assert "item-140" in laid
    assert not {"item-320", "item-420", "general-requirements", "cover"} & laid


def test_a_round_with_a_mistake_writes_nothing_and_the_next_goes_on(
    watched: tuple[Rounds, _Recorder], capsys: pytest.CaptureFixture[str]
) -> None:
    rounds, recorder = watched
    before, count = files_of(rounds.out), len(recorder.rounds)
    edit(rounds.root, RIVETS, "strakes: [A, B]", "strakes: [A, Q]")
    rounds.once()
    said = capsys.readouterr()
    assert "error[dead-reference]" in said.err
    assert "nothing written" in said.out
    assert (files_of(rounds.out), len(recorder.rounds)) == (before, count)
    edit(rounds.root, RIVETS, "strakes: [A, Q]", "strakes: [A, B]")
    rounds.once()
    assert recorder.rounds[-1] == set()


def test_a_round_that_cannot_be_written_does_not_end_the_watch(
    watched: tuple[Rounds, _Recorder], capsys: pytest.CaptureFixture[str]
) -> None:
    rounds, recorder = watched
    before = files_of(rounds.out / "yard")
    edit(rounds.root, RIVETS, "ream the hole clean", "ream the hole clean \U0001fae0")
    rounds.once()
    assert "not written: the yard edition cannot be written" in capsys.readouterr().err
    assert files_of(rounds.out / "yard") == before
    edit(rounds.root, RIVETS, " \U0001fae0", "")
    rounds.once()
    assert recorder.rounds[-1] == set()


def test_a_file_that_goes_is_named(watched: tuple[Rounds, _Recorder], capsys: pytest.CaptureFixture[str]) -> None:
    rounds, recorder = watched
    (rounds.root / "history" / "docking-2021.yaml").unlink()
    rounds.once()
    assert capsys.readouterr().out.startswith("history/docking-2021.yaml gone: ")
    assert "particulars" in recorder.rounds[-1], "the chapter of earlier dockings is short, and stands there"
