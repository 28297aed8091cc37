"""Parts come out the same whoever sets them: this process, another, or an earlier run that kept them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tenderwright.documents.edition import Edition, Paragraph, Part, Span, inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.pdf import Typeset, Typesetter
from tenderwright.writing.typesetting import parts as module
from tenderwright.writing.typesetting.setter import tied
from tenderwright.writing.typesetting.worker import Answer, Task, Worker

from .conftest import TIMESTAMP
from .sample import sample_edition


class _InMemory:
    """Keeps parts in a mapping, and counts what is asked of it."""

    def __init__(self) -> None:
        self.parts: dict[str, bytes] = {}

    def get(self, page: str) -> bytes | None:
        return self.parts.get(page)

    def put(self, page: str, content: bytes) -> None:
        self.parts[page] = content


def _small(*words: str) -> Edition:
    parts = tuple(Part(f"p{n}", "", "Title", "front", "", (Paragraph(inline(w)),)) for n, w in enumerate(words))
    return replace(sample_edition(0), parts=parts)


@pytest.mark.parametrize("processes", [1, 3])
def test_any_number_of_processes_writes_the_same_bytes(
    typeset: Typeset, processes: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "_WORTH_A_PROCESS", 1)
    started: list[Worker] = []

    class Counted(Worker):
        def __init__(self) -> None:
            super().__init__()
            started.append(self)

    monkeypatch.setattr(module, "Worker", Counted)
    made = Typesetter(processes=processes).typeset(sample_edition(), TIMESTAMP)
    assert made == typeset
    assert len(started) == processes - 1


def test_few_words_are_set_here(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse() -> Worker:
        raise AssertionError("a process was started for two short parts")

    monkeypatch.setattr(module, "Worker", refuse)
    assert Typesetter(processes=8).typeset(_small("One.", "Two."), TIMESTAMP).page_count == 2


def test_what_the_typesetter_complains_of_in_another_process_is_told() -> None:
    worker = Worker()
    good = worker.set(Task("a", '<html lang="en"><body id="a"><p>Words.</p></body></html>'))
    bad = worker.set(Task("b", '<html lang="en"><body id="b"><a href="#none">Words.</a></body></html>'))
    worker.close()
    assert good.pdf.startswith(b"%PDF")
    assert good.complaint == ""
    assert bad.pdf == b""
    assert bad.complaint.startswith("part b: ")
    assert "none" in bad.complaint


def test_a_process_that_ends_is_no_part_of_a_document() -> None:
    worker = Worker()
    worker.close()
    with pytest.raises((RuntimeError, ValueError)):
        worker.set(Task("a", "<html></html>"))


def test_what_is_kept_is_not_set_again_and_gives_the_same_bytes(typeset: Typeset) -> None:
    kept = _InMemory()
    first = Typesetter(kept, 1).typeset(sample_edition(), TIMESTAMP)
    again = Typesetter(kept, 1).typeset(sample_edition(), TIMESTAMP)
    assert first == typeset
    assert again == replace(typeset, laid_out=())


def test_another_commit_sets_the_cover_alone(typeset: Typeset) -> None:
    kept = _InMemory()
    Typesetter(kept, 1).typeset(sample_edition(), TIMESTAMP)
    edition = sample_edition()
    other = replace(edition, stamp=replace(edition.stamp, label="Commit 5e6f7a8", commit="5e6f7a8"))
    assert Typesetter(kept, 1).typeset(other, TIMESTAMP + 60).laid_out == ("cover",)


def test_what_a_face_of_the_machine_sets_is_not_kept() -> None:
    kept = _InMemory()
    Typesetter(kept, 1).typeset(_small("Nabla \u2207 here", "Words."), TIMESTAMP)
    assert [page for page in kept.parts if "here" in page] == []
    assert len([page for page in kept.parts if "Words." in page]) == 1


def test_editions_share_the_parts_that_are_alike() -> None:
    setter = Typesetter(processes=1)
    assert setter.typeset(_small("One.", "Two."), TIMESTAMP).laid_out == ("p0", "p1")
    assert setter.typeset(_small("One.", "Three."), TIMESTAMP, "other").laid_out == ("p1",)


def test_the_first_part_in_the_order_of_the_edition_is_complained_of(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "answer", lambda _, task: Answer(complaint=f"part {task.anchor}: no"))
    with pytest.raises(WritingError, match="part p0"):
        Typesetter(processes=1).typeset(_small("Short.", "A longer one, which is set first."), TIMESTAMP)


def test_links_between_parts_are_no_complaint() -> None:
    ends = (Part("a", "", "T", "front", "", (Paragraph(inline(Span("b", target="b"))),)), _small("x").parts[0])
    other = replace(ends[1], anchor="b")
    assert (
        Typesetter(processes=1).typeset(replace(sample_edition(0), parts=(ends[0], other)), TIMESTAMP).page_count == 2
    )


def test_a_figure_stays_on_one_line_with_its_unit() -> None:
    page = '<p title="2 m">lies 180 mm below, within 3 d. 29.3 t/m at Fr 34; 5 items, 3 made</p><path d="M 1 2 h 3"/>'
    tie = "\N{NO-BREAK SPACE}"
    said = f"lies 180{tie}mm below, within 3{tie}d. 29.3{tie}t/m at Fr{tie}34; 5 items, 3 made"
    assert tied(page) == f'<p title="2 m">{said}</p><path d="M 1 2 h 3"/>'
